//! The figures of a pattern that a knitter decides and buys by: on its page, and on that of its call for test knitters.

use super::basis::basis;
use super::facts::{Fact, facts};
use super::sizes::{size_labels, size_table};
use crate::entry::Pattern;
use crate::page::buy::{self, YarnTable};
use crate::page::view::{Band, Link, SizeTable};
use crate::page::{Item, Shown, fit};
use crate::reckon::{LineNeeds, Purchase};
use schemars::JsonSchema;
use serde::Serialize;

/// The figures of a pattern.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Figures {
    /// The names of its sizes; empty for one size.
    pub sizes: Vec<String>,
    /// The facts a knitter decides by, in order.
    pub facts: Vec<Fact>,
    /// The techniques a knitter will meet.
    pub techniques: Vec<Item<Link>>,
    /// To-fit and finished measurements for each size.
    pub size_table: SizeTable,
    /// Where names of fits and standard sizes come from; may be empty.
    pub credit: String,
    /// How many centimetres an inch of fabric counts here: `2.5`.
    pub inch: String,
    /// The yarns to buy.
    pub bands: Vec<Band>,
    /// Length, mass and unrounded skeins of each yarn for each size, and of all together.
    pub yarn_tables: Vec<YarnTable>,
    /// What is added before whole skeins are bought: `10%`.
    pub margin: String,
    /// What the lengths rest on, in a sentence or two; may be empty.
    pub basis: String,
}

/// Returns the figures of a pattern, of what each of its lines of yarn needs and what is to be bought for that.
pub fn figures(shown: &Shown<'_>, pattern: &Pattern, needs: &[LineNeeds], purchases: &[Purchase<'_>]) -> Figures {
    let fit = fit::fit(shown, pattern);
    Figures {
        sizes: size_labels(pattern),
        facts: facts(shown, pattern, needs, fit.fact),
        // As far as readers may know of them.
        techniques: pattern.techniques.iter().filter_map(|one| shown.public_link(&one.reference())).collect(),
        size_table: size_table(shown, pattern, fit.rows),
        credit: fit.credit,
        inch: shown.catalogue.studio.settings().inch.show(),
        bands: buy::bands(shown, pattern, purchases),
        yarn_tables: buy::tables(shown, pattern, purchases, needs),
        margin: shown.margin(pattern).show(),
        basis: basis(shown, pattern, purchases),
    }
}
