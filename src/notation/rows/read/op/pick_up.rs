//! Stitches that are cast on or picked up within a row: `CO 8`, `pick up and k3 sts along the edge`.

use super::super::super::statement::Trouble;
use super::super::super::tree::{How, Item};
use super::super::cast_on::{EDGES, STITCHES, past_edge};
use super::super::cursor::{Bad, Cursor};
use super::bind::in_next_rows;
use super::times::finish;

/// Ways to cast on that are named before it.
const METHODS: [&str; 7] =
    ["backward-loop", "backward loop", "backwards loop", "backwards-loop", "knitted", "cable", "provisionally"];

const BEGIN: [&str; 8] =
    ["co", "cast on", "pick up and knit", "pick up and purl", "pick up & knit", "pick up", "pick-up and knit", "pu"];

/// Words behind which stands where they are picked up, or how they are cast on: that is for the knitter alone.
const WHERE: [&str; 14] = [
    "along",
    "from",
    "around",
    "using",
    "with",
    "over",
    "across",
    "at the gap",
    "in the gap",
    "at underarm",
    "at the underarm",
    "in the underarm",
    "from the underarm",
    "by",
];

/// Reads so many that are cast on or picked up; nothing where no such words stand here.
pub(super) fn pick_up(cursor: &mut Cursor<'_>, start: usize) -> Result<Option<Item>, Bad> {
    let named = METHODS.iter().any(|method| method.contains('-') && hyphened(cursor, method)) || cursor.any(&METHODS);
    if named && !cursor.sees("co") && !cursor.sees("cast on") {
        cursor.at = start;
        return Ok(None);
    }
    if !cursor.any(&BEGIN) {
        cursor.at = start;
        return Ok(None);
    }
    // "Pick up and k3".
    if cursor.any(&["and", "&"]) && !cursor.eat_prefix("k") {
        cursor.eat_prefix("p");
    }
    let number = cursor.number()?.ok_or((Trouble::Unread, start..cursor.at))?;
    let item = Item::Work { takes: 0, leaves: 1, times: number, binds: false, at: start..cursor.at };
    let item = finish(cursor, item);
    if cursor.any(&WHERE) || cursor.any(&EDGES) {
        past_edge(cursor);
    }
    let mut all = vec![in_next_rows(cursor, item)?];
    while let Some(more) = cursor.attempt(further)? {
        all.push(more);
    }
    if all.len() == 1 {
        return Ok(all.pop());
    }
    Ok(Some(Item::Repeat { items: all, how: How::Times(cursor.once()), at: start..cursor.at }))
}

/// Reads ", 14 sts across front neck": more that are picked up, along another edge.
fn further(cursor: &mut Cursor<'_>) -> Result<Option<Item>, Bad> {
    let mut parted = false;
    while cursor.sign(',') || cursor.sign(';') || cursor.any(&["and", "then"]) {
        parted = true;
    }
    cursor.spaces();
    let start = cursor.at;
    let Some(times) = cursor.number()?.filter(|_| parted) else { return Ok(None) };
    cursor.any(&STITCHES);
    if !cursor.any(&EDGES) {
        return Ok(None);
    }
    past_edge(cursor);
    Ok(Some(Item::Work { takes: 0, leaves: 1, times, binds: false, at: start..cursor.at }))
}

/// Moves past a word with hyphens.
fn hyphened(cursor: &mut Cursor<'_>, wanted: &str) -> bool {
    let word = cursor.long_word();
    let found = word.eq_ignore_ascii_case(wanted);
    cursor.at += if found { word.len() } else { 0 };
    found
}
