//! How far a project had come, day by day.

use super::view::{Both, Link};
use super::{Item, Shown, words};
use crate::entry::{Data, Entry, Reference};
use crate::measure::Percent;
use crate::reckon::{self, Reached, ToldBy};
use schemars::JsonSchema;
use serde::Serialize;

/// How far a project had come, day by day: what the filter `chart` draws.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ProgressView {
    /// What the drawing is called.
    pub title: String,
    /// What it shows, in a sentence.
    pub words: String,
    /// The days, the first above; two at least.
    pub points: Vec<ProgressPoint>,
}

/// A day on which it is known how far a project had come.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ProgressPoint {
    /// The day in words.
    pub date: String,
    /// The day as ISO 8601 has it.
    pub iso_date: String,
    /// The days that had gone by since the first.
    pub days: i64,
    /// How much was done, in whole percent, rounded down.
    pub percent: i64,
    /// What tells it: a note, or the words `begun` and `finished`.
    pub told: Item<Link>,
    /// The yarn that went into it each week since the day before it in the list; absent where that is not known.
    pub a_week: Option<Both>,
}

/// Returns how far a project had come, day by day; nothing where no note tells it, or only one day is known.
pub fn progress(shown: &Shown<'_>, entry: &Entry) -> Option<ProgressView> {
    let history = reckon::history(shown.catalogue, entry);
    let by_note = history.iter().any(|reached| matches!(reached.told, ToldBy::Note(_)));
    let (first, last) = (history.first()?, history.last()?);
    if !by_note || history.len() < 2 {
        return None;
    }
    let whole = reckon::whole_length(shown.catalogue, entry);
    let a_week = |from: &Reached, to: &Reached| {
        let came_on = to.progress.checked_sub(from.progress).filter(|came_on| *came_on > Percent::ZERO)?;
        let length = reckon::part(whole?, came_on)?;
        Some(shown.length(reckon::per_week(length, from.day.days_to(to.day))?))
    };
    let befores = std::iter::once(None).chain(history.iter().map(Some));
    let points = history.iter().zip(befores).map(|(reached, before)| ProgressPoint {
        date: reached.day.in_words(),
        iso_date: reached.day.to_string(),
        days: first.day.days_to(reached.day),
        percent: percent(reached.progress),
        told: told(shown, &reached.told),
        a_week: before.and_then(|before| a_week(before, reached)),
    });
    Some(ProgressView {
        title: format!("Progress of {}", entry.common.title),
        words: format!(
            "From {}% on {} to {}% on {}.",
            percent(first.progress),
            first.day.in_words(),
            percent(last.progress),
            last.day.in_words()
        ),
        points: points.collect(),
    })
}

/// Returns the yarn that went into a project each week from cast-on to cast-off, or to the last note that tells how far it
/// is; nothing where its length or either day is not known.
///
/// What was done on the day of cast-on counts, so all of it does, over all of its days.
pub fn a_week(shown: &Shown<'_>, entry: &Entry) -> Option<Both> {
    let started = entry.project()?.started?;
    let history = reckon::history(shown.catalogue, entry);
    let last = history.last().filter(|last| last.told != ToldBy::CastOn && last.progress > Percent::ZERO)?;
    let length = reckon::part(reckon::whole_length(shown.catalogue, entry)?, last.progress)?;
    Some(shown.length(reckon::per_week(length, started.days_to(last.day))?))
}

/// Returns a share in whole percent, rounded down: a thing is not done before it is.
fn percent(share: Percent) -> i64 {
    share.hundredths().div_euclid(100)
}

fn told(shown: &Shown<'_>, told: &ToldBy) -> Item<Link> {
    let plain = |words: &str| Item::from(Link { title: words.to_owned(), url: None });
    match told {
        ToldBy::CastOn => plain("begun"),
        ToldBy::CastOff => plain("finished"),
        ToldBy::Note(id) => note(shown, id).unwrap_or_else(|| plain("a note")),
    }
}

/// Returns a link to a note by its number, or by its title where it has none.
fn note(shown: &Shown<'_>, id: &Reference) -> Option<Item<Link>> {
    let link = shown.link(id)?;
    let number = match &shown.catalogue.entry(id)?.data {
        Data::Note(note) => note.number,
        _ => None,
    };
    Some(match number {
        Some(number) => Item::from(Link { title: format!("note {number}"), url: link.url.clone() }),
        None => link,
    })
}

/// The yarn that went into things this year so far.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ThisYear {
    /// The year.
    pub year: i16,
    /// What was finished in it and has yarn: `ten things`; empty if nothing was.
    pub finished: String,
    /// The yarn in that.
    pub finished_length: Both,
    /// Whether it is more, since not all of it is known.
    pub finished_is_least: bool,
    /// What is on the needles and has grown in it: `four things`; empty if nothing has.
    pub needles: String,
    /// The yarn in that.
    pub needles_length: Both,
    /// Whether it is more, since not all of it is known.
    pub needles_is_least: bool,
    /// What has grown in it by a length of which nothing is known: `two things`; empty if nothing has.
    pub unknown: String,
}

/// Returns the yarn that went into things this year; nothing where none is known.
pub fn this_year(shown: &Shown<'_>) -> Option<ThisYear> {
    let sum = reckon::this_year(shown.catalogue);
    let things = |count: usize| if count == 0 { String::new() } else { words::counted(count, "thing", "things") };
    (sum.finished.things + sum.needles.things > 0).then(|| ThisYear {
        year: shown.catalogue.view.today.year(),
        finished: things(sum.finished.things),
        finished_length: shown.length(sum.finished.length),
        finished_is_least: sum.finished.is_least,
        needles: things(sum.needles.things),
        needles_length: shown.length(sum.needles.length),
        needles_is_least: sum.needles.is_least,
        unknown: things(sum.unknown),
    })
}

/// Returns how long a thing took, in words: `47 days`; a day where it was finished the day it was begun.
pub fn took(days: i64) -> Option<String> {
    let days = usize::try_from(days).ok()?;
    Some(words::counted(days.max(1), "day", "days"))
}
