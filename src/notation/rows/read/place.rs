//! In which rows something is worked: `on every foll 4th row`, `on 5th row`, `every 2.5 cm`.

use super::super::statement::Every;
use super::super::tree::Number;
use super::cursor::{Bad, Cursor};
use crate::measure::SizeRun;

/// Numbers that count places, in words.
const PLACES: [(&[&str], i64); 11] = [
    (&["other", "alternate", "alt", "second"], 2),
    (&["third"], 3),
    (&["fourth"], 4),
    (&["fifth"], 5),
    (&["sixth"], 6),
    (&["seventh"], 7),
    (&["eighth"], 8),
    (&["ninth"], 9),
    (&["tenth"], 10),
    (&["eleventh"], 11),
    (&["twelfth"], 12),
];

/// In which rows something is worked.
pub(super) struct Place {
    pub(super) every: Every,
    /// How often, where that is said with it: `foll 5 alt rows`.
    pub(super) times: Option<Number>,
    /// Whether it is one row: `next row`, `5th row`.
    pub(super) one: bool,
}

/// Reads in which rows: `on every foll 4th row`, `on next row`, `foll 5 alt rows`, `every RS row`.
pub(super) fn place(cursor: &mut Cursor<'_>) -> Result<Option<Place>, Bad> {
    cursor.attempt(|cursor| {
        cursor.any(&["on", "in", "at", "of"]);
        cursor.eat("the");
        let next = cursor.eat("next");
        let all = !next && cursor.any(&["every", "each"]);
        if all && length(cursor) {
            return Ok(Some(Place { every: Every::Unsaid, times: None, one: false }));
        }
        let mut following = follows(cursor);
        let mut number = None;
        let mut every = interval(cursor)?;
        if every.is_none() {
            number = cursor.number()?;
            following |= follows(cursor);
            if number.is_some() {
                every = interval(cursor)?;
            }
        }
        following |= follows(cursor);
        let side = cursor.any(&["rs", "ws", "right side", "wrong side", "right-side", "wrong-side"]);
        let plural = cursor.any(&["rows", "rnds", "rounds"]);
        // "On 5th and every foll 6th row" names the row once.
        let one =
            !plural && (cursor.any(&["row", "rnd", "round"]) || ((next || every.is_some()) && cursor.sees("and")));
        if !(plural || one) {
            return Ok(None);
        }
        let end = cursor.at;
        cursor.any(&["thereafter", "after that", "from here", "following", "foll"]);
        let rows = |every: Option<Number>, side: bool| match every {
            // Every other row is a right-side row.
            Some(every) if side => {
                Every::Rows(Number { values: every.values.map(|rows| rows.saturating_mul(2)), at: every.at })
            }
            Some(every) => Every::Rows(every),
            None if side => Every::Rows(Number { values: SizeRun::one(2), at: end..end }),
            None => Every::Row,
        };
        let place = match (all, number) {
            // "Every 8 rows" is every 8th row.
            (true, Some(number)) if every.is_none() && plural && !side => {
                Some(Place { every: Every::Rows(number), times: None, one: false })
            }
            (true, Some(_)) => None,
            (true, None) => Some(Place { every: rows(every, side), times: None, one: false }),
            (false, Some(times)) if next || following => {
                Some(Place { every: rows(every, side), times: Some(times), one: false })
            }
            // Whether the next row of that side is the next, the words do not tell.
            (false, None) if one && next && side => Some(Place { every: Every::Unsaid, times: None, one: true }),
            (false, None) if one && (next || following || every.is_some()) => {
                Some(Place { every: rows(every, side), times: None, one: true })
            }
            (false, None) if plural && !next && (every.is_some() || side) => {
                Some(Place { every: rows(every, side), times: None, one: false })
            }
            (false, _) => None,
        };
        Ok(place)
    })
}

fn follows(cursor: &mut Cursor<'_>) -> bool {
    cursor.any(&["following", "foll"])
}

/// Reads which of the rows: `4th`, `8th (7th, 6th)`, `other`, `alt`.
fn interval(cursor: &mut Cursor<'_>) -> Result<Option<Number>, Bad> {
    cursor.spaces();
    let start = cursor.at;
    if let Some((_, rows)) = PLACES.iter().find(|(words, _)| cursor.any(words)) {
        return Ok(Some(Number { values: SizeRun::one(*rows), at: start..cursor.at }));
    }
    cursor.ordinal()
}

/// Moves past a length with its unit, sizes and the other system included: `2.5 (3) cm`, `1"`, `2.5 cm / 1 in`; returns whether
/// one stood here.
fn length(cursor: &mut Cursor<'_>) -> bool {
    let before = cursor.at;
    let found = one_length(cursor);
    if !found {
        cursor.at = before;
        return false;
    }
    let end = cursor.at;
    let bracket = cursor.sign('(') || cursor.sign('[');
    let slash = !bracket && cursor.sign('/');
    let other = (bracket || slash) && one_length(cursor) && (!bracket || cursor.sign(')') || cursor.sign(']'));
    if !other {
        cursor.at = end;
    }
    true
}

fn one_length(cursor: &mut Cursor<'_>) -> bool {
    cursor.spaces();
    let rest = cursor.rest();
    let of_number =
        |c: char| c.is_numeric() || c.is_whitespace() || matches!(c, '.' | ',' | '(' | ')' | '[' | ']' | '-' | '–');
    let figures = rest.find(|c| !of_number(c)).unwrap_or(rest.len());
    if !rest.starts_with(char::is_numeric) {
        return false;
    }
    cursor.at += figures;
    cursor.any(&["cm", "mm", "in", "ins", "inch", "inches"]) || cursor.sign('"') || cursor.sign('″')
}
