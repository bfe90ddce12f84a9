//! A pattern's page.

use super::buy;
use super::cautions::{self, CautionView};
use super::other_yarns::{self, OtherYarn};
use super::testers::{self, TesterView};
use super::view::{Head, Line, Picture, ProjectItem};
use super::{AbbreviationView, Item, Shown, lists, page_path, project, rows, words};
use crate::entry::value::Stage;
use crate::entry::{Entry, Kind, Pattern};
use crate::reckon::LineNeeds;
use schemars::JsonSchema;
use serde::Serialize;

mod basis;
mod facts;
mod figures;
mod sizes;
mod sold;

pub use basis::basis_in_words;
pub use facts::yarn_in_words;
pub use figures::{Figures, figures};
pub use sizes::{size_labels, size_table, sizes_in_words, table_sizes};
pub use sold::{ErratumView, SaleView, sales, source_address, source_entry};

use sold::{errata, source};

/// What `pattern.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PatternContext {
    /// The page's head.
    pub head: Head,
    /// The pattern.
    pub pattern: PatternView,
    /// The pattern's text as HTML.
    pub body: String,
}

/// A pattern.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PatternView {
    /// What it is called.
    pub title: String,
    /// One sentence about it; may be empty.
    pub summary: String,
    /// Garment, number of sizes and month of publication: `Pullover · nine sizes · March 2026`.
    pub kicker: String,
    /// Whether it can no longer be had.
    pub retired: bool,
    /// Its picture.
    pub picture: Option<Picture>,
    /// What a knitter decides and buys by.
    #[serde(flatten)]
    pub figures: Figures,
    /// How it is made, in working order.
    pub construction: Vec<String>,
    /// What testers used who let it be shown, by size; never their names.
    pub testers: Vec<TesterView>,
    /// Other yarns of the studio that may do, the nearest first.
    pub other_yarns: Vec<OtherYarn>,
    /// What may hurt whoever wears it.
    pub cautions: Vec<CautionView>,
    /// What else it takes.
    pub notions: Vec<String>,
    /// The abbreviations of its rows and charts, by their letters.
    pub abbreviations: Vec<AbbreviationView>,
    /// Where it can be had.
    pub sold_at: Vec<SaleView>,
    /// Corrections, the latest first.
    pub errata: Vec<ErratumView>,
    /// Whose ideas it builds on.
    pub after: Vec<Line>,
    /// The public projects made from it.
    pub made: Vec<Item<ProjectItem>>,
    /// Where else it is mentioned.
    pub mentioned: Vec<Line>,
}

/// Returns the context of a pattern's page, its text still to be filled in.
pub fn context(shown: &Shown<'_>, entry: &Entry, pattern: &Pattern) -> PatternContext {
    let needs = shown.needs(pattern);
    let view = view(shown, entry, pattern, &needs);
    let head = Head {
        json_ld: super::json_ld::pattern(shown, entry, pattern, &needs),
        published: pattern.published.map(|date| date.moment()),
        ..shown.head(
            &entry.common.title,
            &shown.summary(entry),
            &page_path(&entry.id),
            "patterns",
            "article",
            view.picture.as_ref(),
        )
    };
    PatternContext { head, pattern: view, body: String::new() }
}

fn view(shown: &Shown<'_>, entry: &Entry, pattern: &Pattern, needs: &[LineNeeds]) -> PatternView {
    let purchases = buy::purchases(shown, pattern);
    PatternView {
        title: entry.common.title.clone(),
        summary: entry.common.summary.clone().unwrap_or_default(),
        kicker: kicker(pattern),
        retired: pattern.stage() == Stage::Retired,
        picture: shown.picture(entry),
        figures: figures(shown, pattern, needs, &purchases),
        construction: pattern.construction.clone(),
        testers: testers::testers(shown, pattern),
        other_yarns: other_yarns::other_yarns(shown, pattern, &purchases),
        cautions: cautions::cautions(pattern),
        notions: pattern.notions.clone(),
        abbreviations: rows::abbreviations(entry, pattern),
        sold_at: sales(shown, pattern),
        errata: errata(shown, pattern),
        after: pattern
            .after
            .iter()
            .filter_map(|after| {
                Some(Line { link: source(shown, &after.source)?, words: after.what.clone(), sponsored: false })
            })
            .collect(),
        made: project::linked_by(shown, &entry.id, "pattern"),
        mentioned: lists::mentions(shown, &entry.id, |link| {
            !(link.from.kind == Kind::Project && link.is_via("pattern"))
        }),
    }
}

fn kicker(pattern: &Pattern) -> String {
    let garment = pattern.garment.as_deref().map(words::sentence);
    let published = pattern.published.map(|date| date.month_in_words());
    let parts = [garment, Some(sizes_in_words(pattern)), published];
    parts.into_iter().flatten().collect::<Vec<_>>().join(" · ")
}
