//! How far and how often: "to last 2 sts", "around", "3 times more".

use super::super::tree::{How, Number, To, Until, Which};
use super::cursor::{Bad, Cursor};

const STITCHES: [&str; 4] = ["sts", "st", "stitches", "stitch"];
/// Markers, each with which it is.
const MARKERS: [(&[&str], Which); 6] = [
    (&["m", "marker", "next m", "next marker", "the m", "the marker"], Which::Next),
    (&["first m", "first marker"], Which::Number(1)),
    (&["second m", "second marker"], Which::Number(2)),
    (&["third m", "third marker"], Which::Number(3)),
    (&["fourth m", "fourth marker"], Which::Number(4)),
    (&["last m", "last marker"], Which::Last),
];
/// What else a knitter sees on the needle, which the words do not place.
const PLACES: [&str; 26] = [
    "gap",
    "turn",
    "last turn",
    "previous turn",
    "turning point",
    "wrapped st",
    "wrapped stitch",
    "last wrapped st",
    "last wrapped stitch",
    "first wrapped st",
    "first wrapped stitch",
    "next wrapped st",
    "next wrapped stitch",
    "previously wrapped st",
    "last wrap",
    "ds",
    "last ds",
    "first ds",
    "previous ds",
    "double st",
    "marked st",
    "marked stitch",
    "centre st",
    "centre stitch",
    "center st",
    "center stitch",
];
const ENDS: [&str; 9] = [
    "end of row",
    "end of rnd",
    "end of round",
    "end of the row",
    "end of the round",
    "end",
    "bor m",
    "bor marker",
    "bor",
];

/// Reads "8 sts rem" and "8 sts are left on the needle"; nothing where that does not stand here.
pub(super) fn stitches_left(cursor: &mut Cursor<'_>) -> Result<Option<Number>, Bad> {
    let before = cursor.at;
    let there = cursor.any(&["there are", "there is", "you have"]);
    cursor.any(&["a total of", "only", "just"]);
    if let Some(number) = cursor.number()?
        && cursor.any(&STITCHES)
    {
        let left = cursor.any(&["rem", "remain", "remains", "remaining", "are left", "is left", "left", "are", "is"]);
        let on =
            cursor.any(&["on needles", "on the needles", "on needle", "on the needle", "on your needles", "in total"]);
        // Those between the turns of short rows, or between markers, are not all.
        let part = ["unwrapped", "unworked", "between", "in the middle", "in the centre", "in the center"];
        if (there || left || on) && !part.iter().any(|words| cursor.sees(words)) {
            return Ok(Some(number));
        }
    }
    cursor.at = before;
    Ok(None)
}

/// Reads "there are 12 sts" and "12 sts are on right needle", which are those that were worked.
fn there(cursor: &mut Cursor<'_>) -> Result<Option<Number>, Bad> {
    let there = cursor.any(&["there are", "you have", "there is"]);
    let Some(number) = cursor.number()?.filter(|_| cursor.any(&STITCHES)) else { return Ok(None) };
    cursor.any(&["are", "is"]);
    let right = cursor.any(&["on right", "on the right", "on rh", "on the rh"]);
    if right {
        cursor.sign('-');
        cursor.any(&["hand"]);
        cursor.any(&["needle"]);
    }
    let on = !right && cursor.any(&["on needle", "on the needle", "on needles"]);
    let since = cursor.any(&["after", "since"]);
    let right = right || on && since;
    cursor.any(&["the"]);
    cursor.any(&["last"]);
    if cursor.any(&["bo", "bind", "cast"]) {
        cursor.sign('-');
        cursor.any(&["off"]);
    }
    let left = ["rem", "remain", "remaining", "left"].iter().any(|word| cursor.sees(word));
    Ok(((there || right) && !left).then_some(number))
}

/// Reads how far something goes; nothing where that is not said here.
pub(super) fn until(cursor: &mut Cursor<'_>) -> Result<Option<Until>, Bad> {
    let before = cursor.at;
    // "Across to end" and "across to last 2 sts" say more.
    if cursor.any(&["around", "across"]) && !cursor.sees("to") && !cursor.sees("until") {
        return Ok(Some(Until::End));
    }
    if cursor.any(&[
        "all sts",
        "all stitches",
        "rem sts",
        "remaining sts",
        "all rem sts",
        "all remaining sts",
        "every st",
        "all the way round",
    ]) {
        return Ok(Some(Until::End));
    }
    if cursor.eat("until") {
        if cursor.any(&ENDS) {
            return Ok(Some(Until::End));
        }
        if let Some(number) = cursor.attempt(there)? {
            return Ok(Some(Until::There(number)));
        }
        if let Some(number) = stitches_left(cursor)? {
            return Ok(Some(Until::Last(number)));
        }
        if let Some(number) = cursor.number()?
            && cursor.any(&STITCHES)
            && cursor.any(&["before end", "before the end"])
        {
            return Ok(Some(Until::Last(number)));
        }
        cursor.at = before;
        return Ok(None);
    }
    if !cursor.eat("to") {
        return Ok(None);
    }
    cursor.eat("the");
    if cursor.any(&ENDS) {
        return Ok(Some(Until::End));
    }
    if let Some(which) = marker(cursor) {
        let none = Number { values: crate::measure::SizeRun::one(0), at: cursor.at..cursor.at };
        return Ok(Some(Until::Marker(To { which, by: none, past: false })));
    }
    let last = cursor.eat("last");
    cursor.eat("within");
    let number = cursor.number()?.unwrap_or_else(|| cursor.once());
    let sts = cursor.any(&STITCHES);
    let before_what = cursor.any(&["before", "from", "of"]);
    if sts && before_what {
        cursor.eat("the");
        if cursor.any(&ENDS) {
            return Ok(Some(Until::Last(number)));
        }
        if let Some(which) = marker(cursor) {
            return Ok(Some(Until::Marker(To { which, by: number, past: false })));
        }
    } else if sts && cursor.any(&["past", "after", "beyond"]) {
        cursor.eat("the");
        if let Some(which) = marker(cursor) {
            return Ok(Some(Until::Marker(To { which, by: number, past: true })));
        }
    } else if last && sts {
        if cursor.any(&["on needle", "on the needle", "on this needle", "on each needle", "of needle", "of the needle"])
        {
            // "Needle 1"
            cursor.number()?;
            return Ok(Some(Until::Marker(To { which: Which::Unknown, by: number, past: false })));
        }
        return Ok(Some(Until::Last(number)));
    }
    cursor.at = before;
    Ok(None)
}

/// Reads which marker stands here, or what is like one.
fn marker(cursor: &mut Cursor<'_>) -> Option<Which> {
    let before = cursor.at;
    // "Side m": which of them, the words do not tell.
    cursor.any(&["the"]);
    if cursor.any(&["side", "raglan", "thumb", "gusset", "centre", "center", "left", "right"])
        && cursor.any(&["m", "marker"])
    {
        return Some(Which::Unknown);
    }
    cursor.at = before;
    let found = MARKERS.iter().find(|(words, _)| cursor.any(words)).map(|(_, which)| *which);
    found.or_else(|| cursor.any(&PLACES).then_some(Which::Unknown))
}

/// Reads how often something is worked, and whether that is more than once already; nothing where that is not said here.
pub(super) fn times(cursor: &mut Cursor<'_>) -> Result<Option<(Number, bool)>, Bad> {
    let before = cursor.at;
    cursor.spaces();
    // `x6` is written in one.
    let glued =
        cursor.rest().strip_prefix(['x', '×']).is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit()));
    if glued {
        cursor.at += cursor.peek().map_or(0, char::len_utf8);
    }
    if glued || cursor.any(&["x", "×"]) || cursor.sign('×') {
        if let Some(number) = cursor.number()? {
            return Ok(Some((number, false)));
        }
        cursor.at = before;
        return Ok(None);
    }
    for (word, often) in [("once", 1), ("twice", 2), ("thrice", 3)] {
        let start = cursor.at;
        if cursor.eat(word) {
            let number = Number { values: crate::measure::SizeRun::one(often), at: start..cursor.at };
            return Ok(Some((number, cursor.eat("more"))));
        }
    }
    if let Some(number) = cursor.number()? {
        let more = cursor.eat("more");
        if cursor.any(&["times", "time", "x"]) || cursor.sign('×') {
            let more = cursor.eat("more") || more;
            cursor.any(&["in all", "in total", "total", "altogether"]);
            return Ok(Some((number, more)));
        }
    }
    cursor.at = before;
    Ok(None)
}

/// Reads how a repeat goes on that is said to be repeated "from" its sign.
pub(super) fn again(cursor: &mut Cursor<'_>) -> Result<Option<How>, Bad> {
    if let Some(until) = until(cursor)? {
        return Ok(Some(How::Until(until)));
    }
    let start = cursor.at;
    let Some((number, more)) = times(cursor)? else { return Ok(None) };
    let all = cursor.text.get(start..cursor.at).is_some_and(|words| words.contains("total") || words.contains("all"));
    Ok(Some(match (more, all) {
        (true, _) => How::More(number),
        (_, true) => How::Times(number),
        _ => How::Again(number),
    }))
}
