//! How far things have come, as notes tell it.

use crate::catalogue::Catalogue;
use crate::entry::value::Date;
use crate::entry::{Data, Entry, Reference};
use crate::measure::Percent;

/// The whole of a thing.
pub const WHOLE: Percent = Percent::from_hundredths(10_000);

/// How far one note says that a project had come.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Telling {
    /// The note's day.
    pub day: Date,
    /// The note.
    pub note: Reference,
    /// Which line of its `worked on` says it, from 0.
    pub line: usize,
    /// How far, as it is written: below nothing or above the whole where she mistyped it.
    pub progress: Percent,
}

/// What tells that a project had come so far.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ToldBy {
    /// The day it was begun: nothing of it was done.
    CastOn,
    /// A note.
    Note(Reference),
    /// The day it was finished: all of it was done.
    CastOff,
}

/// A day on which it is known how far a project had come.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reached {
    /// The day.
    pub day: Date,
    /// How far, from nothing to the whole.
    pub progress: Percent,
    /// What tells it.
    pub told: ToldBy,
}

/// Returns what public notes tell of a project's progress, by day, those of one day by key.
///
/// Of several lines of one note the last that gives a progress counts.
pub fn tellings(catalogue: &Catalogue, project: &Reference) -> Vec<Telling> {
    let notes = catalogue.linked_from(project).iter().filter(|link| link.is_via("worked on"));
    let told = notes.filter_map(|link| {
        let Data::Note(note) = &catalogue.entry(&link.from)?.data else { return None };
        let mut lines = note.worked_on.iter().enumerate().rev();
        let (line, progress) =
            lines.find_map(|(at, line)| Some((at, line.progress.filter(|_| line.project.reference() == *project)?)))?;
        Some(Telling { day: note.date?, note: link.from.clone(), line, progress })
    });
    let mut told: Vec<Telling> = told.collect();
    told.sort_by(|a, b| (a.day, &a.note).cmp(&(b.day, &b.note)));
    told
}

/// Returns the progress of a project as the latest public note that tells it has it.
pub fn progress(catalogue: &Catalogue, project: &Reference) -> Option<Percent> {
    tellings(catalogue, project).pop().map(|told| told.progress)
}

/// Returns how far a project had come, day by day, from cast-on to cast-off or to the catalogue's day.
///
/// One line a day: a note goes before the beginning, the end before a note. What a note says of days outside those of the
/// project is left out, and a progress beyond nothing or the whole is taken for that; both are told as findings.
pub fn history(catalogue: &Catalogue, entry: &Entry) -> Vec<Reached> {
    let Some(project) = entry.project() else { return Vec::new() };
    let today = catalogue.view.today;
    let finished = project.finished_by(today);
    let started = project.started.filter(|day| *day <= today);
    let mut all: Vec<Reached> = Vec::new();
    all.extend(started.map(|day| Reached { day, progress: Percent::ZERO, told: ToldBy::CastOn }));
    for told in tellings(catalogue, &entry.id) {
        let begun = started.is_none_or(|day| day <= told.day);
        let going_on = finished.is_none_or(|day| told.day < day) && told.day <= today;
        if begun && going_on {
            let progress = told.progress.clamp(Percent::ZERO, WHOLE);
            all.push(Reached { day: told.day, progress, told: ToldBy::Note(told.note) });
        }
    }
    all.extend(finished.map(|day| Reached { day, progress: WHOLE, told: ToldBy::CastOff }));
    // The later line of a day stands for it.
    all.reverse();
    all.dedup_by_key(|reached| reached.day);
    all.reverse();
    all
}
