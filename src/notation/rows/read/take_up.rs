//! Stitches that come back to the needle: `Return 40 held sts to needle and pick up and knit 8 sts`.

use super::super::statement::{Doing, TakenUp};
use super::cursor::{Bad, Cursor};
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

/// Reads such a sentence; nothing where none stands here.
pub(super) fn take_up(cursor: &mut Cursor<'_>) -> Result<Option<Doing>, Bad> {
    // Only words that speak of stitches put aside: "Place 20 sts on needle 2" moves those that are worked.
    let mut held = cursor.eat("return");
    if !held && !cursor.any(&["place", "transfer", "slip", "put", "move"]) {
        return Ok(None);
    }
    let at = cursor.at;
    cursor.any(&["the"]);
    held |= cursor.any(&["held", "reserved"]);
    let number = cursor.number()?;
    held |= cursor.any(&["held", "reserved"]);
    let mut of: Vec<String> = kind(cursor).into_iter().collect();
    while !of.is_empty() && (cursor.sign(',') || cursor.any(&["and"])) {
        cursor.any(&["held", "reserved"]);
        of.extend(kind(cursor));
    }
    held |= cursor.any(&["held", "reserved"]);
    // "Place front and back sts on one needle": those that are named come from wherever they are.
    held |= number.is_none() && of.len() > 1;
    if !cursor.any(&["sts", "st", "stitches"]) || (number.is_none() && of.is_empty()) {
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
    while cursor.sign(',') || cursor.sign(';') || cursor.any(&["and", "then"]) {}
    let mut more = None;
    if cursor.any(&["pick up and knit", "pick up and purl", "pick up", "cast on", "co"]) {
        more = cursor.number()?;
    }
    cursor.skip_sentence();
    Ok(Some(Doing::TakeUp(TakenUp { number, of, at, more })))
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
