//! Pages of little more than text: plain pages, techniques, and the page for what is not there.

use super::view::{Head, Line, PatternItem, Picture};
use super::{Item, Shown, lists, page_path};
use crate::entry::{Entry, Kind};
use schemars::JsonSchema;
use serde::Serialize;

/// What `page.html` and `technique.html` see.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PlainContext {
    /// The page's head.
    pub head: Head,
    /// What it is called.
    pub title: String,
    /// One sentence about it; may be empty.
    pub summary: String,
    /// Its picture.
    pub picture: Option<Picture>,
    /// The published patterns that use a technique; empty for plain pages.
    pub patterns: Vec<Item<PatternItem>>,
    /// Where else a technique is mentioned; empty for plain pages.
    pub mentioned: Vec<Line>,
    /// The text as HTML.
    pub body: String,
}

/// What `missing.html`, the page for an address that leads nowhere, sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct MissingContext {
    /// The page's head.
    pub head: Head,
}

/// Returns the context of a plain page or a technique, its text still to be filled in.
pub fn context(shown: &Shown<'_>, entry: &Entry) -> PlainContext {
    let picture = shown.picture(entry);
    let technique = entry.id.kind == Kind::Technique;
    PlainContext {
        head: shown.head(
            &entry.common.title,
            &shown.summary(entry),
            &page_path(&entry.id),
            if technique { "techniques" } else { "" },
            "website",
            picture.as_ref(),
        ),
        title: entry.common.title.clone(),
        summary: entry.common.summary.clone().unwrap_or_default(),
        picture,
        patterns: if technique { lists::patterns_that_take(shown, &entry.id) } else { Vec::new() },
        mentioned: if technique {
            lists::mentions(shown, &entry.id, |link| !link.is_via("techniques"))
        } else {
            Vec::new()
        },
        body: String::new(),
    }
}

/// Returns the context of the page for an address that leads nowhere.
pub fn missing(shown: &Shown<'_>) -> MissingContext {
    MissingContext { head: shown.head("Not found", "", "404.html", "", "website", None) }
}
