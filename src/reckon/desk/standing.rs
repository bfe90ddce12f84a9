//! How long a design has stood where it is, as far as its dates tell.

use crate::catalogue::Catalogue;
use crate::entry::value::{Date, Stage};
use crate::entry::{Data, Entry, Pattern, Reference};

/// What happened on a day that tells where a design stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum What {
    /// It came to the stage it is at, as she wrote it down.
    Reached,
    /// It could be had from then on.
    Published,
    /// Its test knit was opened.
    TestKnitOpened,
    /// Its test knit was closed.
    TestKnitClosed,
    /// A note told of it, and none has since.
    ToldOf(Reference),
}

/// A day, and what happened on it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Since {
    /// The day.
    pub day: Date,
    /// What happened.
    pub what: What,
}

/// Returns the day that tells best how long a design has stood at its stage; nothing where no day tells anything.
///
/// The day under `reached` tells it exactly. Without it a published or retired design stands since its publication, one in
/// its test knit since that was opened, or closed if that has passed. Of any other the last note that mentions it is all
/// that is known, which is no more than that. Days after today tell nothing.
pub fn since(catalogue: &Catalogue, entry: &Entry, pattern: &Pattern) -> Option<Since> {
    let today = catalogue.view.today;
    let past = |day: Option<Date>, what: What| Some(Since { day: day.filter(|day| *day <= today)?, what });
    let test_knit = || {
        let call = pattern.test_knit.as_ref()?;
        past(call.closes, What::TestKnitClosed).or_else(|| past(call.opens, What::TestKnitOpened))
    };
    let own = match pattern.stage() {
        Stage::Published | Stage::Retired => past(pattern.published, What::Published),
        Stage::TestKnit => test_knit(),
        Stage::Sketch | Stage::Swatch | Stage::Sample | Stage::TechEdit => None,
    };
    let reached = pattern.reached.for_desk().as_ref().and_then(|reached| reached.day(pattern.stage()));
    past(reached, What::Reached).or(own).or_else(|| told_of(catalogue, entry))
}

fn told_of(catalogue: &Catalogue, entry: &Entry) -> Option<Since> {
    let notes = catalogue.linked_from(&entry.id).iter().filter_map(|link| {
        let Data::Note(note) = &catalogue.entry(&link.from)?.data else { return None };
        let day = note.date.filter(|day| *day <= catalogue.view.today)?;
        Some(Since { day, what: What::ToldOf(link.from.clone()) })
    });
    notes.max_by_key(|since| since.day)
}
