//! The page of designs on the way.

use crate::entry::Entry;
use crate::entry::value::{Choice, Stage};
use crate::page::view::{Head, Line};
use crate::page::{Shown, events, test_knit, words};
use schemars::JsonSchema;
use serde::Serialize;
use std::cmp::Reverse;

/// The path of the page of designs on the way.
pub const ON_THE_WAY: &str = "patterns/on-the-way/";

/// What `on-the-way.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct OnTheWayContext {
    /// The page's head.
    pub head: Head,
    /// The designs, the furthest along first.
    pub designs: Vec<Design>,
    /// The address of the calendar of publications and test knits; absent while there is no day in it.
    pub calendar: Option<String>,
}

/// A design that cannot be had yet: all that readers may know of it.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Design {
    /// What it is called.
    pub title: String,
    /// An id for it, unique on the page.
    pub id: String,
    /// One sentence about it; may be empty.
    pub summary: String,
    /// What it is: `Pullover`; may be empty.
    pub garment: String,
    /// The stage in words: `Being test knitted`.
    pub stage: String,
    /// The stage's number, from 1 for a sketch to 5 for a test knit.
    pub step: usize,
    /// What happens to it at that stage, in a sentence.
    pub happens: String,
    /// The day it is planned to be published, in words; may be empty.
    pub planned: String,
    /// Its call for test knitters, where there is one.
    pub call: Option<Line>,
}

/// Returns the context of the page of designs on the way.
pub fn on_the_way(shown: &Shown<'_>) -> OnTheWayContext {
    let mut designs: Vec<_> = shown.catalogue.on_the_way().collect();
    designs.sort_by(|a, b| Reverse(a.1.stage()).cmp(&Reverse(b.1.stage())).then_with(|| a.0.id.cmp(&b.0.id)));
    let has_days = !events::events(shown).is_empty();
    let step = |stage: Stage| Stage::ALL.iter().position(|(_, one)| *one == stage).map_or(0, |at| at + 1);
    OnTheWayContext {
        head: shown.head(
            "On the way",
            "Designs that are not published yet, and how far they have come.",
            ON_THE_WAY,
            "patterns",
            "website",
            None,
        ),
        calendar: has_days.then(|| shown.addresses.local("calendar.ics")),
        designs: designs
            .into_iter()
            .map(|(entry, pattern)| Design {
                title: entry.common.title.clone(),
                id: entry.id.key.to_string(),
                summary: entry.common.summary.clone().unwrap_or_default(),
                garment: pattern.garment.as_deref().map(words::sentence).unwrap_or_default(),
                stage: stage_in_words(pattern.stage()).to_owned(),
                step: step(pattern.stage()),
                happens: happens(pattern.stage()).to_owned(),
                call: test_knit::link(shown, entry, pattern),
                planned: pattern
                    .published
                    .filter(|date| *date > shown.catalogue.view.today)
                    .map(|date| date.in_words())
                    .unwrap_or_default(),
            })
            .collect(),
    }
}

fn stage_in_words(stage: Stage) -> &'static str {
    match stage {
        Stage::Sketch => "A sketch",
        Stage::Swatch => "Being swatched",
        Stage::Sample => "The sample is on the needles",
        Stage::TechEdit => "With the technical editor",
        Stage::TestKnit => "Being test knitted",
        Stage::Published => "Published",
        Stage::Retired => "Retired",
    }
}

impl Shown<'_> {
    /// Returns the address of a design's line on the page of designs on the way.
    pub fn address_on_the_way(&self, entry: &Entry) -> String {
        format!("{}#{}", self.addresses.local(ON_THE_WAY), entry.id.key)
    }
}

/// Returns what happens to a design at a stage (common practice of designers), in a sentence for readers.
fn happens(stage: Stage) -> &'static str {
    match stage {
        Stage::Sketch => "An idea, perhaps drawn; neither yarn nor sizes are settled.",
        Stage::Swatch => "Yarn and stitch are tried on small pieces, which are washed, measured and weighed.",
        Stage::Sample => "The first whole one is being knitted, with all its yarn weighed beforehand.",
        Stage::TechEdit => "Somebody who checks patterns for a living goes through every sentence and every number.",
        Stage::TestKnit => "Other knitters make it in their own sizes and say where the pattern leaves them alone.",
        Stage::Published => "It can be had.",
        Stage::Retired => "It can no longer be had.",
    }
}
