//! Stitches put aside within a row, stitches worked from where they wait, and stitches of a piece that is named.

use super::super::super::tree::{How, Item, Until};
use super::super::cursor::{Bad, Cursor};
use super::super::part::part;
use super::super::plain::tokens;
use super::times::finish_how;

/// Words that put stitches aside.
pub(super) const VERBS: [&str; 13] = [
    "place",
    "put",
    "slip",
    "sl",
    "transfer",
    "move",
    "leave",
    "placing",
    "putting",
    "slipping",
    "transferring",
    "moving",
    "leaving",
];

/// Words that say which stitches are put aside, those that remain left out.
const WHICH: [&str; 12] =
    ["the", "next", "first", "last", "these", "following", "foll", "centre", "center", "middle", "all", "other"];

/// Words that say that they are all that remain.
const REST: [&str; 3] = ["rem", "remaining", "unworked"];

/// Where stitches wait.
const PLACES: [&str; 16] = [
    "hold",
    "holder",
    "holders",
    "st holder",
    "st holders",
    "stitch holder",
    "stitch holders",
    "sleeve holder",
    "waste yarn",
    "scrap yarn",
    "spare yarn",
    "spare needle",
    "piece of waste yarn",
    "length of waste yarn",
    "safety pin",
    "safety pins",
];

/// Reads "place next 20 sts on hold" and "sl rem 15 sts to holder"; nothing where neither stands here.
pub(super) fn hold(cursor: &mut Cursor<'_>, start: usize) -> Result<Option<Item>, Bad> {
    cursor.attempt(|cursor| {
        if !cursor.any(&VERBS) {
            return Ok(None);
        }
        let words = cursor.at;
        let rest = which(cursor);
        let said = cursor.text.get(words..cursor.at).unwrap_or_default();
        let these = tokens(said).any(|word| word.eq_ignore_ascii_case("these"));
        let number = cursor.number()?;
        let rest = which(cursor) || rest;
        // "Place rem sts on hold" needs no number.
        if number.is_none() && !rest && !these {
            return Ok(None);
        }
        // "These" are those that were just worked.
        let number = number.filter(|_| !these || rest || is_turned(cursor, start));
        let mut of = kind(cursor);
        if !cursor.any(&["sts", "st", "stitches"]) {
            return Ok(None);
        }
        // "Place next 20 sts for sleeve on hold".
        if cursor.any(&["for"]) {
            of = part(cursor).or(of);
        }
        if !cursor.any(&["on to", "onto", "on", "to"]) || !waits(cursor) {
            return Ok(None);
        }
        let at = start..cursor.at;
        if cursor.any(&["for"]) {
            of = part(cursor).or(of);
            // What else they will be is for the knitter alone.
            let rest = cursor.rest();
            cursor.at += rest.find([',', ';', '.', '[', '(', ']', ')', '*']).unwrap_or(rest.len());
        }
        Ok(Some(Item::Hold { number, rest, of, at }))
    })
}

/// Reads "k60 held sts", "k across 60 sts from holder" and "k across 62 back sts"; nothing where none stands here.
pub(super) fn from_hold(cursor: &mut Cursor<'_>, start: usize) -> Result<Option<Item>, Bad> {
    let read = cursor.attempt(|cursor| {
        let verb = cursor.any(&["knit", "purl", "work", "patt", "rib"]);
        if !verb && !cursor.eat_prefix("k") && !cursor.eat_prefix("p") {
            return Ok(None);
        }
        let across = cursor.any(&["across", "over"]);
        let words = cursor.at;
        cursor.any(&["all"]);
        let mut waiting = held(cursor);
        let number = cursor.number()?;
        waiting |= held(cursor);
        let mut of = kind(cursor);
        waiting |= held(cursor);
        if !cursor.any(&["sts", "st", "stitches"]) {
            return Ok(None);
        }
        if cursor.any(&["of", "from"]) {
            match part(cursor) {
                Some(part) => of = Some(part),
                None => waiting |= waits(cursor),
            }
        } else if cursor.any(&["held on", "off", "on"]) {
            waiting |= waits(cursor);
        }
        let at = start..cursor.at;
        Ok(match (number, of) {
            (Some(number), of) if waiting => Some(Item::FromHold { number, of, at }),
            (number, Some(of)) => Some(Item::Piece { number, of, at }),
            // "Knit across these sts".
            (None, None) if across && !waiting && at.end == cursor.at => {
                let said = cursor.text.get(words..at.end).unwrap_or_default().to_lowercase();
                let all = tokens(&said).any(|word| matches!(word, "these" | "all"));
                all.then_some(Item::Even { until: Until::End, binds: false, at })
            }
            _ => None,
        })
    })?;
    let Some(first) = read else { return Ok(None) };
    finish_how(cursor);
    if !matches!(first, Item::Piece { .. } | Item::FromHold { .. }) {
        return Ok(Some(first));
    }
    // "Knit across 58 sleeve sts, 72 body sts".
    let mut all = vec![first];
    while let Some(next) = cursor.attempt(further)? {
        all.push(next);
    }
    match (all.pop(), all.is_empty()) {
        (Some(only), true) => Ok(Some(only)),
        (last, _) => {
            all.extend(last);
            let at = start..cursor.at;
            Ok(Some(Item::Repeat { items: all, how: How::Times(cursor.once()), at }))
        }
    }
}

/// Reads ", 72 body sts", without a verb.
fn further(cursor: &mut Cursor<'_>) -> Result<Option<Item>, Bad> {
    let mut parted = false;
    while cursor.sign(',') || cursor.any(&["and", "then"]) {
        parted = true;
    }
    cursor.spaces();
    let start = cursor.at;
    let Some(number) = cursor.number()?.filter(|_| parted) else { return Ok(None) };
    let waiting = held(cursor);
    let Some(of) = kind(cursor) else { return Ok(None) };
    let waiting = held(cursor) || waiting;
    if !cursor.any(&["sts", "stitches"]) {
        return Ok(None);
    }
    let at = start..cursor.at;
    Ok(Some(if waiting {
        Item::FromHold { number, of: Some(of), at }
    } else {
        Item::Piece { number: Some(number), of, at }
    }))
}

/// Whether the words before a place turn the work.
pub(super) fn is_turned(cursor: &Cursor<'_>, at: usize) -> bool {
    let before = cursor.text.get(..at).unwrap_or_default().trim_end_matches([' ', ',', ';']);
    let before = before.strip_suffix(" and").unwrap_or(before).trim_end_matches([' ', ',', ';']);
    before.to_lowercase().ends_with("turn")
}

/// Moves past words that say which stitches; returns whether they are all that remain.
pub(in super::super) fn which(cursor: &mut Cursor<'_>) -> bool {
    let mut rest = false;
    loop {
        if cursor.any(&REST) {
            rest = true;
        } else if !cursor.any(&WHICH) {
            return rest;
        }
    }
}

/// Reads which stitches, by what they are of; words for the knitter alone are moved past.
pub(in super::super) fn kind(cursor: &mut Cursor<'_>) -> Option<String> {
    while cursor.any(&["live", "centre", "center"]) {}
    part(cursor)
}

/// Moves past "the held"; returns whether stitches are said to have been put aside.
fn held(cursor: &mut Cursor<'_>) -> bool {
    cursor.any(&["the", "these"]);
    cursor.any(&["held", "reserved"])
}

/// Moves past a place where stitches wait; returns whether it is one.
fn waits(cursor: &mut Cursor<'_>) -> bool {
    cursor.any(&["a", "the", "another", "one"]);
    cursor.any(&["separate", "spare"]) && cursor.any(&["needle", "holder", "yarn"]) || cursor.any(&PLACES)
}
