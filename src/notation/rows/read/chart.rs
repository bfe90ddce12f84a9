//! Rows of a chart of the same text: `Work rounds 1–24 of chart lamps`, `k3, work row 1 of the chart to last 3 sts, k3`.

use super::super::charts::ChartRows;
use super::super::statement::{Charted, Doing, Label};
use super::super::tree::{Item, Number, Reach, Until};
use super::aside::aside;
use super::cursor::{Bad, Cursor};
use super::label::{list, row_word};
use super::plain::{is_quiet, tokens};
use super::put_aside::names_stitches;
use super::special::works_here;
use super::{stated, until};
use std::sync::Arc;

const VERBS: [&str; 12] = [
    "work", "knit", "follow", "foll", "continue working", "continue", "cont", "working", "following", "continuing",
    "repeat", "rep",
];

/// What may stand between the verb and what is worked.
const FROM: [&str; 14] = [
    "in patt from", "in pattern from", "in patt foll", "in pattern following", "in patt following", "in pattern as shown on",
    "according to", "as shown in", "as shown on", "following", "foll", "from", "in", "through",
];

/// What kind of chart it is, in words that are no name.
const KINDS: [&str; 10] =
    ["colour", "color", "colourwork", "colorwork", "stranded", "lace", "cable", "stitch", "motif", "pattern"];

/// Words by which a repeat is meant to go on along the row.
const ALONG: [&str; 17] = [
    "around", "across", "in each rnd", "in each round", "in each row", "on each rnd", "on each round", "on each row", "each rnd",
    "each round", "each row", "per rnd", "per round", "per row", "across each row", "around each rnd", "around each round",
];

/// A chart and the rows of it that are named.
struct Phrase {
    chart: Arc<ChartRows>,
    /// Their numbers; nothing where none are named.
    rows: Option<Vec<u32>>,
}

/// How far and how often.
#[derive(Default)]
struct Extent {
    reach: Option<Reach>,
    /// Times of which the words do not say whether they go along the row or up the chart.
    times: Option<Number>,
    /// Whether these come after a first time.
    more: bool,
    /// Whether it goes on until something is as long as is wished.
    open: bool,
}

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

/// Whether a sentence without a label that is only this may work more than one row of the chart, or other stitches beside it.
pub(super) fn is_unsure(items: &[Item]) -> bool {
    let [Item::Chart { rows, reach, .. }] = items else { return false };
    rows.len() != 1 || matches!(reach, Reach::Over(_))
}

/// The items of each of the rows that a label stands for, where they work as many rows of a chart, or a part of them over and
/// over; nothing where they work none.
pub(super) fn row_by_row(label: &Label, items: &[Item]) -> Option<Vec<(Label, Vec<Item>)>> {
    const MOST: i64 = 999;
    if label.others.is_some() {
        return None;
    }
    let said = label.rows.as_ref().filter(|rows| rows.values.is_one()).map(|rows| rows.of(0));
    let count = match label.numbers.len() {
        0 => usize::try_from(said.filter(|rows| *rows <= MOST)?).ok()?,
        numbers => numbers,
    };
    let fits = |item: &Item| matches!(item, Item::Chart { rows, .. } if rows.len() > 1 && count.is_multiple_of(rows.len()));
    if count < 2 || !items.iter().any(fits) {
        return None;
    }
    let of = |at: usize| {
        let items = items.iter().map(|item| match item {
            Item::Chart { chart, rows, reach, at: place } if fits(item) => {
                let row = rows.iter().cycle().nth(at.checked_rem(rows.len()).unwrap_or(0)).copied();
                let (chart, reach, at) = (chart.clone(), reach.clone(), place.clone());
                Item::Chart { chart, rows: row.into_iter().collect(), reach, at }
            }
            other => other.clone(),
        });
        let one = label.rows.as_ref().map(|rows| Number { values: crate::measure::SizeRun::one(1), at: rows.at.clone() });
        let numbers = label.numbers.get(at).copied().into_iter().collect();
        (Label { numbers, rows: one, ..label.clone() }, items.collect())
    };
    Some((0..count).map(of).collect())
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

/// Reads a chart with its rows: "rounds 1–24 of chart lamps", "the lace chart, row 3".
fn phrase(cursor: &mut Cursor<'_>) -> Result<Option<Phrase>, Bad> {
    cursor.any(&FROM);
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
    cursor.sign(',');
    let rows = match rows(cursor)? {
        Some(Named::Rows(rows)) => Some(rows),
        _ => {
            cursor.at = behind;
            None
        }
    };
    Ok(Some(Phrase { chart, rows }))
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

/// Reads how far and how often, of several rows perhaps "until it is long enough".
fn extent(cursor: &mut Cursor<'_>, several: bool) -> Result<Extent, Bad> {
    let mut extent = Extent::default();
    loop {
        let before = cursor.at;
        if extent.times.is_none()
            && extent.reach.is_none()
            && let Some(times) = repeated_along(cursor)?
        {
            extent.reach = Some(Reach::Times(times));
            continue;
        }
        cursor.at = before;
        if extent.times.is_none()
            && let Some((number, more)) = until::times(cursor)?
        {
            if extent.reach.is_none() && !more && cursor.any(&ALONG) {
                extent.reach = Some(Reach::Times(number));
            } else {
                (extent.times, extent.more) = (Some(number), more);
            }
            continue;
        }
        cursor.at = before;
        if extent.reach.is_none()
            && let Some(reach) = reach(cursor, several)?
        {
            extent.reach = Some(reach);
            continue;
        }
        cursor.at = before;
        if several && !extent.open && extent.times.is_none() && (cursor.sees("until") || cursor.sees("for")) {
            cursor.skip_sentence();
            let words = format!("work {}", cursor.text.get(before..cursor.at).unwrap_or_default());
            let left = tokens(&words).any(|word| matches!(word, "rem" | "remain" | "remains" | "left"));
            extent.open = is_quiet(&words, cursor.lexicon) && !left;
            if extent.open {
                continue;
            }
            cursor.at = before;
        }
        return Ok(extent);
    }
}

/// Reads ", repeating the chart 8 (9, 10) times around".
fn repeated_along(cursor: &mut Cursor<'_>) -> Result<Option<Number>, Bad> {
    cursor.attempt(|cursor| {
        cursor.sign(',');
        if !cursor.any(&["repeating", "rep", "repeat", "working"]) {
            return Ok(None);
        }
        cursor.any(&["the"]);
        if !cursor.any(&["chart", "motif", "pattern", "patt", "repeat", "rep", "it"]) {
            return Ok(None);
        }
        let Some((number, false)) = until::times(cursor)? else { return Ok(None) };
        Ok(cursor.any(&ALONG).then_some(number))
    })
}

/// Reads how far it goes along the row; where there may be several rows, "until" is said of these.
fn reach(cursor: &mut Cursor<'_>, several: bool) -> Result<Option<Reach>, Bad> {
    let over = cursor.attempt(|cursor| {
        if !cursor.any(&["over", "across", "on"]) {
            return Ok(None);
        }
        if cursor.any(&["all sts", "all stitches", "rem sts", "remaining sts", "all rem sts", "every st"]) {
            return Ok(Some(Reach::Until(Until::End)));
        }
        cursor.any(&["the"]);
        cursor.any(&["next", "foll", "following"]);
        let Some(number) = cursor.number()? else { return Ok(None) };
        Ok(cursor.any(&["sts", "st", "stitches", "stitch"]).then_some(Reach::Over(number)))
    })?;
    if over.is_some() || (several && cursor.sees("until")) {
        return Ok(over);
    }
    cursor.attempt(|cursor| Ok(until::until(cursor)?.map(Reach::Until)))
}

/// Whether a sentence ends here, or goes on with what works no stitch: ", reading all rows from right to left".
fn is_whole(cursor: &mut Cursor<'_>) -> bool {
    cursor.spaces();
    if cursor.peek() == Some('(') && !stated::is_here(cursor) {
        aside(cursor);
    }
    if cursor.is_stop() || stated::is_here(cursor) {
        return true;
    }
    let before = cursor.at;
    if !(cursor.sign(',') || cursor.sign(';')) {
        return false;
    }
    if cursor.any(&["then", "and then"]) {
        cursor.at = before;
        return true;
    }
    let body = cursor.at;
    let harmless = cursor.any(&["reading", "changing", "carrying", "catching", "joining", "slipping"]);
    cursor.skip_sentence();
    let words = cursor.text.get(body..cursor.at).unwrap_or_default();
    let beside = words.to_lowercase();
    let changes = tokens(&beside).any(|word| word.starts_with("inc") || word.starts_with("dec"));
    let quiet = harmless && !works_here(words, cursor.lexicon) && !names_stitches(&beside) && !changes;
    if !quiet {
        cursor.at = before;
    }
    quiet
}

/// Whether what is worked in a row is parted from what follows.
fn is_parted(cursor: &mut Cursor<'_>) -> bool {
    let before = cursor.at;
    let parted = cursor.is_stop()
        || stated::is_here(cursor)
        || matches!(cursor.peek(), Some(',' | ';' | ')' | ']' | '*'))
        || cursor.any(&["then", "and"]);
    cursor.at = before;
    parted
}
