//! Which rows of which chart are meant: "rounds 1–24 of chart lamps", "the lace chart, row 3", "all rows of the chart".

use super::super::super::charts::ChartRows;
use super::super::cursor::{Bad, Cursor};
use super::super::label::{list, row_word};
use std::sync::Arc;

/// What may stand between the verb and what is worked.
const FROM: [&str; 14] = [
    "in patt from",
    "in pattern from",
    "in patt foll",
    "in pattern following",
    "in patt following",
    "in pattern as shown on",
    "according to",
    "as shown in",
    "as shown on",
    "following",
    "foll",
    "from",
    "in",
    "through",
];

/// What kind of chart it is, in words that are no name.
const KINDS: [&str; 10] =
    ["colour", "color", "colourwork", "colorwork", "stranded", "lace", "cable", "stitch", "motif", "pattern"];

/// A chart and the rows of it that are named.
pub(super) struct Phrase {
    pub(super) chart: Arc<ChartRows>,
    /// Their numbers; nothing where none are named.
    pub(super) rows: Option<Vec<u32>>,
}

/// Reads a chart with its rows: "rounds 1–24 of chart lamps", "the lace chart, row 3".
pub(super) fn phrase(cursor: &mut Cursor<'_>) -> Result<Option<Phrase>, Bad> {
    if !by_kind(cursor) {
        cursor.any(&FROM);
    }
    let before = cursor.at;
    if let Some(named) = rows(cursor)? {
        if cursor.any(&["of", "from", "in", "on"])
            && let Some(chart) = chart(cursor)
        {
            let all = chart.last();
            let rows = match named {
                Named::Rows(rows) => Some(rows),
                Named::All(count) if count.is_none_or(|count| count == i64::from(all)) => Some((1..=all).collect()),
                Named::All(_) => None,
            };
            return Ok(rows.map(|rows| Phrase { chart, rows: Some(rows) }));
        }
        return Ok(None);
    }
    cursor.at = before;
    let Some(chart) = chart(cursor) else { return Ok(None) };
    let behind = cursor.at;
    let bracket = cursor.sign('(');
    cursor.sign(',');
    let rows = match rows(cursor)? {
        Some(Named::Rows(rows)) if !bracket || cursor.sign(')') => Some(rows),
        _ => {
            cursor.at = behind;
            None
        }
    };
    Ok(Some(Phrase { chart, rows }))
}

/// Moves past "in stranded knitting from", "in lace patt following"; returns whether that stood here.
fn by_kind(cursor: &mut Cursor<'_>) -> bool {
    let before = cursor.at;
    let found = cursor.any(&["in"]) && cursor.any(&KINDS) && {
        while cursor.any(&KINDS) || cursor.any(&["knitting", "patt", "work"]) {}
        cursor.any(&["from", "foll", "following", "according to"])
    };
    if !found {
        cursor.at = before;
    }
    found
}

/// Rows that are named.
enum Named {
    /// By their numbers.
    Rows(Vec<u32>),
    /// All of them, perhaps with how many these are.
    All(Option<i64>),
}

/// Reads "rounds 1–24", "row 3", "all rows", "the 8 rounds"; nothing where none stand here.
fn rows(cursor: &mut Cursor<'_>) -> Result<Option<Named>, Bad> {
    let before = cursor.at;
    let all = cursor.any(&["all the", "all", "every", "each"]);
    let the = cursor.any(&["the"]);
    if row_word(cursor) {
        let numbers = list(cursor).unwrap_or_default();
        if !numbers.is_empty() && !all {
            return Ok(Some(Named::Rows(numbers)));
        }
        if numbers.is_empty() && all {
            return Ok(Some(Named::All(None)));
        }
    } else if (all || the)
        && let Some(number) = cursor.number()?
        && number.values.is_one()
        && cursor.any(&["rows", "rnds", "rounds"])
    {
        return Ok(Some(Named::All(Some(number.of(0)))));
    }
    cursor.at = before;
    Ok(None)
}

/// Reads which chart it is: "chart lamps", "the lamps chart", or "the chart" of a text that has one.
fn chart(cursor: &mut Cursor<'_>) -> Option<Arc<ChartRows>> {
    let before = cursor.at;
    let charts = cursor.lexicon.charts();
    let find = |cursor: &mut Cursor<'_>| {
        cursor.spaces();
        charts.at(cursor.rest()).map(|(length, chart)| {
            cursor.at += length;
            chart.clone()
        })
    };
    cursor.any(&["the"]);
    let named = find(cursor);
    if named.is_some() {
        if cursor.any(&["chart"]) {
            return named;
        }
        cursor.at = before;
        cursor.any(&["the"]);
    }
    while cursor.any(&KINDS) {}
    if !cursor.any(&["chart"]) {
        cursor.at = before;
        return None;
    }
    let behind = cursor.at;
    let written = cursor.any(&["patt", "pattern"]) || cursor.sign('“') || cursor.sign('"');
    if let Some(chart) = find(cursor) {
        cursor.sign('”');
        cursor.sign('"');
        return Some(chart);
    }
    if !written {
        cursor.at = behind;
    }
    // Another name than those that are there belongs to a chart that is not: what stands here is no part of the phrase, and
    // whoever reads on will find that it is not whole.
    charts.only().cloned()
}
