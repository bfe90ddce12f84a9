//! A table of a pattern that stands in a text.

use super::buy::{self, YarnTable};
use super::fit::FitView;
use super::pattern;
use super::view::{Band, Link, SizeTable};
use super::{Item, Shown, fit};
use crate::entry::block::Block;
use crate::entry::{Entry, Pattern};
use schemars::JsonSchema;
use serde::Serialize;

/// What `block.html` sees: a block of a text that shows the yarn or the sizes of a pattern.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct BlockContext {
    /// An id that no other block of the text has.
    pub id: String,
    /// The pattern.
    pub pattern: Item<Link>,
    /// The measurements of its sizes; absent in a block of yarn.
    pub sizes: Option<SizeTable>,
    /// Where names of fits and standard sizes come from; may be empty, as in a block of yarn.
    pub credit: String,
    /// The yarns to buy; empty in a block of sizes.
    pub bands: Vec<Band>,
    /// Length, mass and skeins of each yarn for each size; empty in a block of sizes.
    pub yarn_tables: Vec<YarnTable>,
    /// What is added before whole skeins are bought: `10%`.
    pub margin: String,
}

/// Returns what a block shows of a public pattern.
pub fn context(shown: &Shown<'_>, block: Block, entry: &Entry, of: &Pattern, number: usize) -> BlockContext {
    let purchases = buy::purchases(shown, of);
    let yarn = block == Block::Needs;
    let fit = if yarn { FitView::default() } else { fit::fit(shown, of) };
    BlockContext {
        id: format!("leaflet-block-{number}"),
        pattern: shown.own_link(entry),
        sizes: (!yarn).then(|| pattern::size_table(shown, of, fit.rows)),
        credit: fit.credit,
        bands: if yarn { buy::bands(shown, of, &purchases) } else { Vec::new() },
        yarn_tables: if yarn { buy::tables(shown, of, &purchases, &shown.needs(of)) } else { Vec::new() },
        margin: shown.margin(of).show(),
    }
}
