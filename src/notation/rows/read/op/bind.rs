//! Stitches that are bound off, and those at the beginning of the next rows.

use super::super::super::tree::{How, Item, Number, Until};
use super::super::cursor::{Bad, Cursor};
use super::super::plain::tokens;
use super::super::until::until;
use super::times::{finish, finish_how};
use super::unread;
use crate::measure::SizeRun;

pub(super) fn bind_off(cursor: &mut Cursor<'_>, start: usize) -> Result<Item, Bad> {
    finish_how(cursor);
    if let Some(number) = so_many(cursor)? {
        let item = Item::Work { takes: 1, leaves: 0, times: number, binds: true, at: start..cursor.at };
        let item = finish(cursor, item);
        return in_next_rows(cursor, item);
    }
    let remain = cursor.sees("until");
    let until = match until(cursor)? {
        Some(until) => until,
        None if cursor.any(&["all", "everything", "rem", "remaining"]) || ends(cursor) => Until::End,
        None => return Err(unread(cursor, start)),
    };
    finish_how(cursor);
    if until == Until::End {
        let body = cursor.at;
        cursor.skip_sentence();
        let words = cursor.text.get(body..cursor.at).unwrap_or_default();
        if tokens(words).any(|word| matches!(word, "but" | "except" | "last" | "first" | "centre" | "center")) {
            return Err(unread(cursor, start));
        }
    }
    let at = start..cursor.at;
    let bound = Item::Even { until, binds: true, at: at.clone() };
    if remain && (cursor.is_stop() || super::super::stated::is_here(cursor)) {
        // "BO until 5 sts rem" says what is left, and nothing has to work those.
        let rest = Item::Even { until: Until::End, binds: false, at: at.clone() };
        return Ok(Item::Repeat { items: vec![bound, rest], how: How::Times(cursor.once()), at });
    }
    Ok(bound)
}

/// Reads how many are bound off, whichever they are: `3`, `the next 3`, `centre 10`; nothing where no number is said.
pub(in super::super) fn so_many(cursor: &mut Cursor<'_>) -> Result<Option<Number>, Bad> {
    const WHICH: [&str; 16] = [
        "the",
        "next",
        "following",
        "foll",
        "centre",
        "center",
        "central",
        "middle",
        "first",
        "last",
        "these",
        "rem",
        "remaining",
        "neck",
        "underarm",
        "all",
    ];
    let before = cursor.at;
    while cursor.any(&WHICH) {}
    let number = cursor.number()?;
    if number.is_none() {
        cursor.at = before;
    } else {
        // "The 10 centre sts".
        cursor.any(&["next", "centre", "center", "central", "middle", "neck", "underarm", "front", "back"]);
    }
    Ok(number)
}

/// Whether nothing more is said of what is bound off.
fn ends(cursor: &mut Cursor<'_>) -> bool {
    cursor.is_stop() || matches!(cursor.peek(), Some(',' | ';' | '(' | '[')) || cursor.sees("and")
}

/// Reads "at beg of next 2 rows" behind what is cast on or bound off: so many rows, each worked to its end. More may follow:
/// "then 8 sts at beg of foll 2 rows".
pub(super) fn in_next_rows(cursor: &mut Cursor<'_>, item: Item) -> Result<Item, Bad> {
    let start = item.at().start;
    let Some(mut rows) = next_rows(cursor)? else { return Ok(item) };
    let mut edges = Vec::new();
    let mut one = item.clone();
    loop {
        edges.push(Item::Repeat { items: vec![one], how: How::Times(rows), at: start..cursor.at });
        let more = cursor.attempt(|cursor| {
            while cursor.sign(',') || cursor.sign(';') || cursor.any(&["then", "and"]) {}
            let Some(times) = cursor.number()? else { return Ok(None) };
            cursor.any(&["sts", "st", "stitches"]);
            Ok(next_rows(cursor)?.map(|rows| (times, rows)))
        })?;
        match (more, &item) {
            (Some((times, further)), Item::Work { takes, leaves, binds, at, .. }) => {
                one = Item::Work { takes: *takes, leaves: *leaves, times, binds: *binds, at: at.clone() };
                rows = further;
            }
            _ => break,
        }
    }
    let at = start..cursor.at;
    edges.push(Item::Even { until: Until::End, binds: false, at: at.clone() });
    Ok(Item::Repeat { items: edges, how: How::Times(cursor.once()), at })
}

/// Reads "at beg of next 2 rows", "at beg of next and foll 3 alt rows"; returns in how many rows; nothing where that does not
/// stand here.
fn next_rows(cursor: &mut Cursor<'_>) -> Result<Option<Number>, Bad> {
    const ROWS: [&str; 6] = ["rows", "row", "rnds", "rnd", "rounds", "round"];
    cursor.attempt(|cursor| {
        cursor.any(&["at the", "at"]);
        if !cursor.any(&["beg of", "beginning of", "start of", "end of"]) {
            return Ok(None);
        }
        cursor.any(&["the", "this"]);
        let next = cursor.any(&["next"]);
        cursor.any(&["foll", "following"]);
        let begun = cursor.at;
        let first = cursor.number()?;
        cursor.any(&["alt", "alternate"]);
        let rows = cursor.any(&ROWS);
        if next && first.is_none() {
            // "Next and foll 3 alt rows": those between are worked even.
            let before = cursor.at;
            if cursor.any(&["and"]) && cursor.any(&["foll", "following"]) {
                let more = cursor.number()?.unwrap_or_else(|| cursor.once());
                if cursor.any(&["alt", "alternate", "ws", "rs"]) && cursor.any(&ROWS) {
                    return Ok(Some(one_more(&more, begun)));
                }
            }
            cursor.at = before;
        }
        Ok(rows.then(|| first.unwrap_or_else(|| cursor.once())))
    })
}

/// A number and one, size by size.
fn one_more(number: &Number, start: usize) -> Number {
    let count = number.values.len();
    let values = if number.values.is_one() {
        SizeRun::one(number.of(0).saturating_add(1))
    } else {
        SizeRun::from_values((0..count).map(|size| Some(number.of(size).saturating_add(1))).collect())
    };
    Number { values, at: start..number.at.end }
}
