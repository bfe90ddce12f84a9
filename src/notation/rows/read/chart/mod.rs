//! Rows of a chart of the same text: `Work rounds 1–24 of chart lamps`, `k3, work row 1 of the chart to last 3 sts, k3`.

mod extent;
mod phrase;
mod rows;

pub(super) use rows::{is_unsure, row_by_row};

use super::super::statement::{Charted, Doing};
use super::super::tree::{Item, Reach, Until};
use super::cursor::{Bad, Cursor};
use super::plain::tokens;
use extent::{extent, is_parted, is_whole};
use phrase::phrase;

const VERBS: [&str; 12] = [
    "work",
    "knit",
    "follow",
    "foll",
    "continue working",
    "continue",
    "cont",
    "working",
    "following",
    "continuing",
    "repeat",
    "rep",
];

/// Reads a sentence that works rows of a chart; nothing where its words are not certain to mean that.
pub(super) fn sentence(cursor: &mut Cursor<'_>) -> Result<Option<Doing>, Bad> {
    if !speaks_of_chart(cursor) {
        return Ok(None);
    }
    cursor.attempt(|cursor| {
        let start = cursor.at;
        if !cursor.any(&VERBS) {
            return Ok(None);
        }
        let again = cursor.text.get(start..cursor.at).is_some_and(|verb| verb.to_lowercase().starts_with("rep"));
        let Some(phrase) = phrase(cursor)? else { return Ok(None) };
        // "Beginning with row 3, work chart A" and "repeat chart A" leave open which rows.
        if phrase.rows.is_none() && (again || names_rows_before(cursor, start)) {
            return Ok(None);
        }
        let written = cursor.text.get(start..cursor.at).unwrap_or_default();
        let at = start..start + written.trim_end().len();
        let extent = extent(cursor, true)?;
        // Stitches beside those of the chart are none of what the sentence tells.
        let along = extent.reach.unwrap_or(Reach::Until(Until::End));
        if !matches!(along, Reach::Until(Until::End) | Reach::Times(_)) || !is_whole(cursor) {
            return Ok(None);
        }
        let rows = phrase.rows.unwrap_or_else(|| (1..=phrase.chart.last()).collect());
        // "Repeat rows 1–4 twice" may be meant in all.
        if again && extent.times.is_some() && !extent.more && !phrase.chart.is_even(&rows) {
            return Ok(None);
        }
        let once = cursor.once();
        let times = if extent.open { None } else { Some(extent.times.unwrap_or(once)) };
        Ok(Some(Doing::Chart(Charted { chart: phrase.chart, rows, reach: along, times, at })))
    })
}

/// Reads what of a row is worked from a chart; nothing where its words are not certain to mean that.
pub(super) fn item(cursor: &mut Cursor<'_>) -> Result<Option<Item>, Bad> {
    if !speaks_of_chart(cursor) {
        return Ok(None);
    }
    cursor.attempt(|cursor| {
        let start = cursor.at;
        cursor.any(&VERBS);
        let Some(phrase) = phrase(cursor)? else { return Ok(None) };
        // "Until 8 sts rem" may be said of rows.
        let several = phrase.rows.as_ref().is_none_or(|rows| rows.len() > 1);
        let extent = extent(cursor, several)?;
        let written = cursor.text.get(start..cursor.at).unwrap_or_default();
        let at = start..start + written.trim_end().len();
        let rest = extent.times.map_or(Reach::Rest, Reach::Times);
        let reach = extent.reach.unwrap_or(rest);
        // Within brackets nobody knows what follows.
        let unsure = reach == Reach::Rest && cursor.depth > 0;
        if unsure || extent.open || !is_parted(cursor) {
            return Ok(None);
        }
        let rows = phrase.rows.unwrap_or_else(|| (1..=phrase.chart.last()).collect());
        Ok(Some(Item::Chart { chart: phrase.chart, rows, reach, at }))
    })
}

/// Whether what is left of the sentence speaks of a chart, in a text that has some.
fn speaks_of_chart(cursor: &Cursor<'_>) -> bool {
    let rest = cursor.rest();
    !cursor.lexicon.charts().is_empty()
        && rest.as_bytes().windows("chart".len()).any(|word| word.eq_ignore_ascii_case(b"chart"))
}

/// Whether words before a place in its sentence say from which row something begins.
fn names_rows_before(cursor: &Cursor<'_>, at: usize) -> bool {
    let before = cursor.text.get(..at).unwrap_or_default();
    let start = before.rfind(['.', '\n', ':']).map_or(0, |end| end + 1);
    let words = before.get(start..).unwrap_or_default().to_lowercase();
    tokens(&words).any(|word| ["row", "rnd", "round", "line"].iter().any(|row| word.starts_with(row)))
}
