//! A row that is told by what it adds or takes away: `Knit, increasing 8 sts evenly`, `Inc 1 st at each end of row`.

use super::super::tree::{How, Item, Number, Span, Until};
use super::cursor::{Bad, Cursor};

const MORE: [&str; 4] = ["increasing", "increase", "inc", "incr"];
const LESS: [&str; 4] = ["decreasing", "decrease", "dec", "decr"];

/// What is worked besides.
const VERBS: [&str; 10] = ["knit", "purl", "k", "p", "work", "rib", "patt", "continue", "cont", "next"];

/// What may stand between that and the change: one row, worked anyhow.
const BESIDES: [&str; 26] = [
    "1 row",
    "one row",
    "1 rnd",
    "one rnd",
    "1 round",
    "one round",
    "1 more row",
    "next row",
    "next rnd",
    "next round",
    "row",
    "rnd",
    "round",
    "the",
    "this",
    "across",
    "around",
    "to end",
    "in",
    "as",
    "pattern",
    "patt",
    "set",
    "established",
    "even",
    "rib",
];

/// At the ends of a row.
pub(super) const ENDS: [&str; 7] =
    ["each end", "both ends", "each side", "both sides", "each edge", "both edges", "either end"];

/// At the beginning of a row and at its end.
pub(super) const BOTH: [&str; 3] = ["beg and end", "beginning and end", "start and end"];

/// At one of them, of a row that is named.
pub(super) const ONE: [&str; 8] =
    ["beg", "beginning", "start", "end", "neck edge", "front edge", "armhole edge", "side edge"];

/// Reads a whole row of that kind; nothing where none stands here.
pub(super) fn evenly(cursor: &mut Cursor<'_>) -> Result<Option<Item>, Bad> {
    cursor.attempt(read)
}

fn read(cursor: &mut Cursor<'_>) -> Result<Option<Item>, Bad> {
    cursor.spaces();
    let start = cursor.at;
    if cursor.any(&VERBS) {
        while cursor.any(&BESIDES) || cursor.any(&["st st", "stockinette st", "stockinette", "garter st", "garter"]) {}
        cursor.sign(',');
        cursor.any(&["and", "while", "at the same time"]);
    }
    let less = cursor.any(&LESS);
    if !less && !cursor.any(&MORE) {
        return Ok(None);
    }
    let Some(number) = cursor.number()? else { return Ok(None) };
    cursor.any(&["sts", "st", "stitches", "stitch"]);
    let mut one_edge = false;
    let edges = if cursor.any(&["evenly spaced", "evenly"]) {
        1
    } else {
        cursor.any(&["at"]);
        cursor.any(&["the"]);
        if cursor.any(&ENDS) || cursor.any(&BOTH) {
            2
        } else if cursor.any(&ONE) {
            one_edge = true;
            1
        } else {
            return Ok(None);
        }
    };
    cursor.any(&["across", "around", "over", "along", "in", "on", "of", "throughout"]);
    while cursor.any(&["the", "this", "next", "following", "foll", "a", "whole"]) {}
    let row = cursor.any(&["row", "rnd", "round"]);
    if one_edge && !row {
        return Ok(None);
    }
    let whole = cursor.is_stop() || super::stated::is_here(cursor) || matches!(cursor.peek(), Some(',' | ';'));
    Ok(whole.then(|| changed(&number, less, edges, start..cursor.at)))
}

/// A row worked to its end with so many increases or decreases, at so many edges.
fn changed(number: &Number, less: bool, edges: i64, at: Span) -> Item {
    let one = |often: i64| Number { values: crate::measure::SizeRun::one(often), at: at.end..at.end };
    let (takes, leaves) = if less { (2, 1) } else { (0, 1) };
    let shaped = Item::Work { takes, leaves, times: number.clone(), binds: false, at: at.clone() };
    let edges = Item::Repeat { items: vec![shaped], how: How::Times(one(edges)), at: at.clone() };
    let rest = Item::Even { until: Until::End, binds: false, at: at.clone() };
    Item::Repeat { items: vec![edges, rest], how: How::Times(one(1)), at }
}
