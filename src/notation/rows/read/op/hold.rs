//! Stitches put aside within a row, stitches worked from where they wait, and stitches of a piece that is named.

use super::super::super::tree::Item;
use super::super::cursor::{Bad, Cursor};
use super::super::part::part;
use super::times::finish_how;

/// Words that put stitches aside.
const VERBS: [&str; 13] = [
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
        let rest = which(cursor);
        let number = cursor.number()?;
        let rest = which(cursor) || rest;
        // "Place rem sts on hold" needs no number.
        if number.is_none() && !rest {
            return Ok(None);
        }
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
        cursor.any(&["across", "over"]);
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
            _ => None,
        })
    })?;
    if read.is_some() {
        finish_how(cursor);
    }
    Ok(read)
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
