//! Stitches that come back to the needle: `Return 40 held sts to needle and pick up and knit 8 sts`.

use super::super::statement::{Doing, TakenUp};
use super::super::tree::Number;
use super::cursor::{Bad, Cursor};
use super::effect::works;
use super::facing::facing;
use super::op::kind;

/// Where stitches wait.
const FROM: [&str; 12] = [
    "from hold",
    "from holder",
    "from the holder",
    "from st holder",
    "from stitch holder",
    "from waste yarn",
    "from the waste yarn",
    "from scrap yarn",
    "from the scrap yarn",
    "from the st holder",
    "from holders",
    "from the stitch holder",
];

/// Reads such a sentence; nothing where none stands here. What it works behind the taking up is left to be read as a row.
pub(super) fn take_up(cursor: &mut Cursor<'_>) -> Result<Option<Doing>, Bad> {
    let start = cursor.at;
    if let Some(doing) = rejoined(cursor)? {
        return Ok(Some(doing));
    }
    cursor.at = start;
    // Only words that speak of stitches put aside: "Place 20 sts on needle 2" moves those that are worked.
    let returned = cursor.eat("return");
    let mut held = returned;
    if !held && !cursor.any(&["place", "transfer", "slip", "put", "move"]) {
        return Ok(None);
    }
    let at = cursor.at;
    cursor.any(&["the"]);
    let waits =
        |cursor: &mut Cursor<'_>| cursor.any(&["held", "reserved"]) || (returned && cursor.any(&["remaining", "rem"]));
    held |= waits(cursor);
    let number = cursor.number()?;
    held |= waits(cursor);
    let mut of: Vec<String> = kind(cursor).into_iter().collect();
    while !of.is_empty() && (cursor.sign(',') || cursor.any(&["and"])) {
        waits(cursor);
        of.extend(kind(cursor));
    }
    held |= waits(cursor);
    // "Place front and back sts on one needle": those that are named come from wherever they are.
    held |= number.is_none() && of.len() > 1;
    if !cursor.any(&["sts", "st", "stitches"]) || (number.is_none() && of.is_empty() && !held) {
        return Ok(None);
    }
    let at = at..cursor.at;
    held |= cursor.any(&FROM);
    held |= cursor.any(&["back"]);
    if !held || !cursor.any(&["on to", "onto", "on", "to"]) {
        return Ok(None);
    }
    if !to_needle(cursor) {
        return Ok(None);
    }
    let more = more(cursor)?;
    Ok(Some(Doing::TakeUp(TakenUp { number, of, at, more })))
}

/// Reads "Rejoin yarn to 20 held sts"; nothing where that does not stand here.
fn rejoined(cursor: &mut Cursor<'_>) -> Result<Option<Doing>, Bad> {
    if !cursor.any(&["rejoin", "join", "attach"]) {
        return Ok(None);
    }
    cursor.any(&["the"]);
    if !cursor.any(&["yarn", "new yarn", "mc"]) || !cursor.eat("to") {
        return Ok(None);
    }
    let at = cursor.at;
    cursor.any(&["the"]);
    const WAITING: [&str; 4] = ["held", "reserved", "remaining", "rem"];
    let mut held = cursor.any(&WAITING);
    let number = cursor.number()?;
    held |= cursor.any(&WAITING);
    let of = kind(cursor).into_iter().collect();
    if !cursor.any(&["sts", "stitches"]) {
        return Ok(None);
    }
    let at = at..cursor.at;
    held |= cursor.any(&FROM) || cursor.any(&["on hold", "on holder", "on the holder", "on waste yarn"]);
    if !held {
        return Ok(None);
    }
    let more = more(cursor)?;
    Ok(Some(Doing::TakeUp(TakenUp { number, of, at, more })))
}

/// Reads how many are picked up or cast on behind the taking up, if that is all that is done; else what is done is left.
fn more(cursor: &mut Cursor<'_>) -> Result<Option<Number>, Bad> {
    let end = cursor.at;
    loop {
        while cursor.sign(',') || cursor.sign(';') || cursor.any(&["and", "then"]) {}
        if !(cursor.any(&["rejoin yarn", "join yarn", "join new yarn", "attach yarn"]) || facing(cursor)) {
            break;
        }
    }
    let begun = cursor.at;
    let mut number = None;
    if cursor.any(&["pick up and knit", "pick up and purl", "pick up and k", "pick up", "cast on", "co"]) {
        number = cursor.number()?;
    }
    let behind = cursor.at;
    cursor.skip_sentence();
    let rest = cursor.text.get(behind..cursor.at).unwrap_or_default().to_lowercase();
    let all = cursor.text.get(begun..cursor.at).unwrap_or_default().to_lowercase();
    let row = if number.is_some() { works(&rest, cursor.lexicon) } else { works(&all, cursor.lexicon) };
    if row {
        cursor.at = end;
        return Ok(None);
    }
    Ok(number)
}

/// Moves past the needle that they come to, up to the next clause; returns whether it is one.
fn to_needle(cursor: &mut Cursor<'_>) -> bool {
    let mut needle = false;
    while !cursor.is_stop() && !matches!(cursor.peek(), Some(',' | ';' | '(' | '[')) {
        if cursor.sees("and") || cursor.sees("then") {
            break;
        }
        let word = cursor.word();
        let lower = word.to_lowercase();
        needle |= matches!(lower.as_str(), "needle" | "needles" | "dpn" | "dpns" | "circular");
        let sign = cursor.peek().map_or(0, char::len_utf8);
        cursor.at += word.len().max(sign);
    }
    needle
}
