//! Progress only grows, up to the whole, between the first day and the last.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::value::Date;
use crate::entry::{Data, Entry, Note, Placing, Reference};
use crate::finding::{Code, Finding, Severity};
use crate::measure::Percent;
use crate::reckon::{Telling, WHOLE, tellings};
use crate::source::Place;

/// A progress below that of an earlier note.
pub static PROGRESS_BACK: Code = Code {
    name: "progress-back",
    severity: Severity::Warning,
    what: "A note says that a project has come less far than an earlier note says.",
    why: "One of the two is mistyped, and readers see the thing shrink.",
    bad: "progress: 56%, a week after 65%",
    good: "progress: 66%, a week after 65%",
};

/// A progress that no thing can have.
pub static PROGRESS_BEYOND: Code = Code {
    name: "progress-beyond",
    severity: Severity::Warning,
    what: "A progress is above 100 % or below nothing.",
    why: "Nothing can be more than done, so the figure is mistyped.",
    bad: "worked on: [ { project: storm-lantern, progress: 650% } ]",
    good: "worked on: [ { project: storm-lantern, progress: 65% } ]",
};

/// Notes and `finished` that do not agree on whether a thing is done.
pub static PROGRESS_DONE: Code = Code {
    name: "progress-done",
    severity: Severity::Warning,
    what: "A note says that a project is all done and the project has no `finished`, or the other way about.",
    why: "It would stand on the needles although it is done, or be called finished while it grows.",
    bad: "finished: 2026-11-12, and 60% in the note of 2026-11-13",
    good: "finished: 2026-11-12, and 60% in the note of 2026-11-06",
};

/// A project worked on while it was not on the needles.
pub static WORKED_OUTSIDE: Code = Code {
    name: "worked-outside",
    severity: Severity::Warning,
    what: "A note tells of work on a project before it was begun or after it was finished.",
    why: "One of the days is mistyped, or another project is meant.",
    bad: "started: 2026-10-05, and worked on in the note of 2026-10-02",
    good: "started: 2026-10-01, and worked on in the note of 2026-10-02",
};

/// How many days after a thing was finished a note may still tell of it, such as of weaving in ends and washing (our rule).
const DAYS_AFTER: i64 = 14;

/// Finds what a note says of projects that cannot be, and a project that notes call done and that has no end.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    match &entry.data {
        Data::Note(note) if !entry.is_spoilt("worked on") => {
            for at in 0..note.worked_on.len() {
                findings.extend(line(catalogue, entry, note, at, placing));
            }
        }
        Data::Project(project) if project.finished.is_none() && !entry.is_spoilt("finished") => {
            findings.extend(not_finished(catalogue, entry, placing));
        }
        _ => {}
    }
}

/// Finds what is wrong in one line of what was worked on: the gravest only, since one slip makes several.
fn line(catalogue: &Catalogue, entry: &Entry, note: &Note, at: usize, placing: &Placing<'_>) -> Option<Finding> {
    let (worked, day) = (note.worked_on.get(at)?, note.date?);
    let id = worked.project.reference();
    let other = catalogue.entry(&id)?;
    let project = other.project()?;
    let place = |key: &str| entry.origin.value(&place::item("worked on", at, &[key]), placing);
    let of_project = |key: &str| other.origin.field(&[key], placing);
    let title = &other.common.title;
    if let Some(progress) = worked.progress.filter(|progress| !(Percent::ZERO..=WHOLE).contains(progress)) {
        let what = if progress > WHOLE { "more than the whole" } else { "less than nothing" };
        let message = format!("{} of `{title}` is {what}", progress.show());
        return Some(
            Finding::new(&PROGRESS_BEYOND, place("progress"), message)
                .help("write how much of it is done, from `0%` to `100%`"),
        );
    }
    if let Some(started) = project.started.filter(|started| day < *started) {
        let message = format!("`{title}` was begun on {}, after this note", started.in_words());
        return Some(
            Finding::new(&WORKED_OUTSIDE, place("project"), message)
                .help("look for a slip in either day, or take the line out")
                .also(of_project("started"), "the day it was begun"),
        );
    }
    if let Some(finished) = project.finished.filter(|finished| *finished <= day) {
        if let Some(progress) = worked.progress.filter(|progress| *progress < WHOLE) {
            let message = format!("{} of `{title}`, which was finished on {}", progress.show(), finished.in_words());
            return Some(
                Finding::new(&PROGRESS_DONE, place("progress"), message)
                    .help("write `100%` here, or mend the project's `finished`")
                    .also(of_project("finished"), "the day it was finished"),
            );
        }
        // A note tells of what was done since the one before it, and ends and washing come after casting off.
        let is_late = finished.days_to(day) > DAYS_AFTER;
        if let Some(before) = note_between(catalogue, &entry.id, finished, day).filter(|_| is_late) {
            let message = format!(
                "`{title}` was finished on {}, and a note came after that already, on {}",
                finished.in_words(),
                before.in_words()
            );
            return Some(
                Finding::new(&WORKED_OUTSIDE, place("project"), message)
                    .help("look for a slip in either day, or take the line out")
                    .also(of_project("finished"), "the day it was finished"),
            );
        }
    }
    let progress = worked.progress?;
    let all = tellings(catalogue, &id);
    // One that no thing can have is told of where it stands.
    let mut earlier = all.iter().rev().filter(|told| (told.day, &told.note) < (day, &entry.id));
    let before = earlier.find(|told| (Percent::ZERO..=WHOLE).contains(&told.progress))?;
    if progress >= before.progress {
        return None;
    }
    let message = format!(
        "{} of `{title}`, less than the {} of {}",
        progress.show(),
        before.progress.show(),
        before.day.in_words()
    );
    let finding = Finding::new(&PROGRESS_BACK, place("progress"), message)
        .help("look for a slip in either figure; what was unravelled may be told in words");
    Some(match place_of(catalogue, before, placing) {
        Some(place) => finding.also(place, "the earlier figure"),
        None => finding,
    })
}

/// Returns the day of a public note that came on or after `from` and before a note of `to`.
fn note_between(catalogue: &Catalogue, note: &Reference, from: Date, to: Date) -> Option<Date> {
    let days = catalogue.notes().filter(|(entry, _)| entry.id != *note).filter_map(|(_, note)| note.date);
    days.filter(|day| (from..to).contains(day)).min()
}

fn not_finished(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>) -> Option<Finding> {
    let told = tellings(catalogue, &entry.id).pop().filter(|told| told.progress == WHOLE)?;
    let note = match &catalogue.entry(&told.note)?.data {
        Data::Note(note) => note.number,
        _ => None,
    };
    let note = match note {
        Some(number) => format!("note {number}"),
        None => format!("the note of {}", told.day.in_words()),
    };
    let message = format!("{} in {note} and not finished", told.progress.show());
    let finding = Finding::new(&PROGRESS_DONE, entry.origin.start(placing), message)
        .help("add `finished:` with the day, or say in the note how much is done");
    Some(match place_of(catalogue, &told, placing) {
        Some(place) => finding.also(place, "where it is said"),
        None => finding,
    })
}

fn place_of(catalogue: &Catalogue, told: &Telling, placing: &Placing<'_>) -> Option<Place> {
    let note = catalogue.entry(&told.note)?;
    Some(note.origin.value(&place::item("worked on", told.line, &["progress"]), placing))
}
