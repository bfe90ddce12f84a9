//! Stitches put aside within a row, and stitches worked from where they wait.

use super::super::super::tree::{Item, Number};
use super::super::cursor::{Bad, Cursor};
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

/// What stitches are of, which is for the knitter alone.
pub(in super::super) const PARTS: [&str; 13] = [
    "sleeve", "body", "front", "back", "thumb", "underarm", "neck", "live", "shoulder", "centre", "center", "heel",
    "instep",
];

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
        cursor.any(&PARTS);
        if !cursor.any(&["sts", "st", "stitches"]) {
            return Ok(None);
        }
        // "Place next 20 sts for sleeve on hold".
        if cursor.any(&["for"]) {
            cursor.any(&["the", "each", "left", "right", "first", "second"]);
            cursor.any(&["left", "right"]);
            cursor.any(&PARTS);
        }
        if !cursor.any(&["on to", "onto", "on", "to"]) || !waits(cursor) {
            return Ok(None);
        }
        let at = start..cursor.at;
        if cursor.any(&["for"]) {
            // What they will be is for the knitter alone.
            let rest = cursor.rest();
            cursor.at += rest.find([',', ';', '.', '[', '(', ']', ')', '*']).unwrap_or(rest.len());
        }
        Ok(Some(Item::Hold { number, rest, at }))
    })
}

/// Reads "k60 held sts" and "k across 60 sts from holder"; nothing where neither stands here.
pub(super) fn from_hold(cursor: &mut Cursor<'_>, start: usize) -> Result<Option<Item>, Bad> {
    let read = cursor.attempt(|cursor| {
        let verb = cursor.any(&["knit", "purl", "work", "patt", "rib"]);
        if !verb && !cursor.eat_prefix("k") && !cursor.eat_prefix("p") {
            return Ok(None);
        }
        cursor.any(&["across", "over"]);
        let mut held = held(cursor);
        let Some(number) = cursor.number()? else { return Ok(None) };
        held |= self::held(cursor);
        cursor.any(&PARTS);
        held |= self::held(cursor);
        if !cursor.any(&["sts", "st", "stitches"]) {
            return Ok(None);
        }
        let number: Number = number;
        held |= cursor.any(&["held on", "from", "off", "on"]) && waits(cursor);
        Ok(held.then_some(number))
    })?;
    let Some(number) = read else { return Ok(None) };
    finish_how(cursor);
    Ok(Some(Item::FromHold { number, at: start..cursor.at }))
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
