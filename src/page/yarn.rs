//! A yarn's page.

use super::view::{Band, Both, Head, Line, PatternItem, Picture, ProjectItem};
use super::{Item, Shown, lists, page_path, project, words};
use crate::entry::{Entry, Yarn};
use schemars::JsonSchema;
use serde::Serialize;

/// What `yarn.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct YarnContext {
    /// The page's head.
    pub head: Head,
    /// The yarn.
    pub yarn: YarnView,
    /// The yarn's text as HTML.
    pub body: String,
}

/// A yarn.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct YarnView {
    /// What it is called.
    pub title: String,
    /// One sentence about it; may be empty.
    pub summary: String,
    /// Its picture.
    pub picture: Option<Picture>,
    /// Its ball band.
    pub band: Band,
    /// What it is made of; may be empty.
    pub fibre: String,
    /// Its standard category: `3 Light`; may be empty.
    pub category: String,
    /// The length in 100 g; absent where the put-up is not known.
    pub grist: Option<Both>,
    /// The gauge on its label; may be empty.
    pub gauge: String,
    /// Its shades.
    pub shades: Vec<Shade>,
    /// How to wash it.
    pub care: Vec<String>,
    /// Whether it is no longer made.
    pub discontinued: bool,
    /// The published patterns that take it.
    pub patterns: Vec<Item<PatternItem>>,
    /// The public projects it is in.
    pub projects: Vec<Item<ProjectItem>>,
    /// Where else it is mentioned.
    pub mentioned: Vec<Line>,
}

/// One shade of a yarn.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Shade {
    /// Its name.
    pub name: String,
    /// Its colour, `#rrggbb`.
    pub colour: String,
}

/// Returns the context of a yarn's page, its text still to be filled in.
pub fn context(shown: &Shown<'_>, entry: &Entry, yarn: &Yarn) -> YarnContext {
    let picture = shown.picture(entry);
    let view = YarnView {
        title: entry.common.title.clone(),
        summary: entry.common.summary.clone().unwrap_or_default(),
        picture: picture.clone(),
        band: list_band(shown, entry, yarn),
        fibre: yarn.fibre.clone().unwrap_or_default(),
        category: yarn
            .weight
            .as_ref()
            .map(|weight| format!("{} {}", weight.category.number, weight.category.name))
            .unwrap_or_default(),
        grist: yarn.put_up.and_then(|put_up| put_up.length_in_100_g()).map(|length| shown.length(length)),
        gauge: gauge(shown, yarn),
        shades: yarn
            .shades
            .0
            .iter()
            .map(|(name, colour)| Shade { name: words::sentence(name), colour: colour.to_string() })
            .collect(),
        care: yarn.care.clone(),
        discontinued: yarn.discontinued == Some(true),
        patterns: lists::patterns_that_take(shown, &entry.id),
        projects: project::linked_by(shown, &entry.id, "yarn"),
        mentioned: lists::mentions(shown, &entry.id, |link| !link.is_via("yarn")),
    };
    let head = shown.head(
        &entry.common.title,
        &shown.summary(entry),
        &page_path(&entry.id),
        "yarns",
        "website",
        picture.as_ref(),
    );
    YarnContext { head, yarn: view, body: String::new() }
}

/// Returns a yarn's band for its own page and for lists: its first shade's colour stands for it.
pub fn list_band(shown: &Shown<'_>, entry: &Entry, yarn: &Yarn) -> Band {
    let mut band = shown.band(Some(&entry.id), None);
    band.colour = yarn.shades.0.first().map(|(_, colour)| colour.to_string());
    if yarn.discontinued == Some(true) {
        band.role = "no longer made".to_owned();
    }
    band
}

fn gauge(shown: &Shown<'_>, yarn: &Yarn) -> String {
    let Some(gauge) = &yarn.gauge else { return String::new() };
    let inch = shown.catalogue.studio.settings().inch;
    let over = gauge.over.map_or_else(|| "10 cm".to_owned(), |over| over.show(shown.system, inch));
    let rows = gauge.rows.map(|rows| format!(" and {} rows", rows.show())).unwrap_or_default();
    let needle =
        gauge.needle.as_ref().map(|needle| format!(" on {}", needle.show(shown.system, inch))).unwrap_or_default();
    format!("{} sts{rows} to {over}{needle}", gauge.stitches.show())
}
