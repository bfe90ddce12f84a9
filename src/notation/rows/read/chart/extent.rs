//! How far along the row a chart is worked, and how often its rows are.

use super::super::super::tree::{Number, Reach, Until};
use super::super::aside::aside;
use super::super::cursor::{Bad, Cursor};
use super::super::effect::{names_stitches, works_here};
use super::super::plain::{is_quiet, tokens};
use super::super::{stated, until};

/// Words by which a repeat is meant to go on along the row.
const ALONG: [&str; 17] = [
    "around",
    "across",
    "in each rnd",
    "in each round",
    "in each row",
    "on each rnd",
    "on each round",
    "on each row",
    "each rnd",
    "each round",
    "each row",
    "per rnd",
    "per round",
    "per row",
    "across each row",
    "around each rnd",
    "around each round",
];

/// How far and how often.
#[derive(Default)]
pub(super) struct Extent {
    pub(super) reach: Option<Reach>,
    /// Times of which the words do not say whether they go along the row or up the chart.
    pub(super) times: Option<Number>,
    /// Whether these come after a first time.
    pub(super) more: bool,
    /// Whether it goes on until something is as long as is wished.
    pub(super) open: bool,
}

/// Reads how far and how often, of several rows perhaps "until it is long enough".
pub(super) fn extent(cursor: &mut Cursor<'_>, several: bool) -> Result<Extent, Bad> {
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
pub(super) fn is_whole(cursor: &mut Cursor<'_>) -> bool {
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
    let side = ["ending with a ws row", "ending with an rs row", "ending with a rs row"];
    if cursor.any(&side) && (cursor.is_stop() || stated::is_here(cursor)) {
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
pub(super) fn is_parted(cursor: &mut Cursor<'_>) -> bool {
    let before = cursor.at;
    let parted = cursor.is_stop()
        || stated::is_here(cursor)
        || matches!(cursor.peek(), Some(',' | ';' | ')' | ']' | '*'))
        || cursor.any(&["then", "and"]);
    cursor.at = before;
    parted
}
