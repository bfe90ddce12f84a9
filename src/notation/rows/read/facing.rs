//! What stands before stitches and is for the knitter alone: the side that faces her, her needles, how stitches are cast on.

use super::colour::before_stitches;
use super::cursor::Cursor;

/// Which side faces the knitter.
const FACING: [&str; 8] = [
    "with rs facing",
    "with ws facing",
    "with right side facing",
    "with wrong side facing",
    "with the right side facing",
    "with the wrong side facing",
    "rs facing",
    "ws facing",
];

/// Moves past "with RS facing", "and larger needles" or "using the backward-loop method"; returns whether such words stood here.
pub(super) fn facing(cursor: &mut Cursor<'_>) -> bool {
    cursor.any(&FACING) || needles(cursor) || method(cursor) || place(cursor)
}

/// Moves past what a sentence may begin with, "With MC," and "With RS facing and CC,"; returns whether such words stood here.
pub(super) fn begins(cursor: &mut Cursor<'_>) -> bool {
    let mut found = false;
    loop {
        let coloured =
            ["in", "with", "using"].iter().any(|word| cursor.sees(word)) && before_stitches(cursor).is_some();
        if coloured || facing(cursor) {
            found = true;
        } else if !(found && (cursor.sign(',') || cursor.any(&["and"]))) {
            return found;
        }
    }
}

/// Needles, and words that may stand before them.
const NEEDLES: [&str; 6] = ["needles", "needle", "dpns", "dpn", "circular needle", "circulars"];
const WHICH: [&str; 11] = ["the", "a", "larger", "smaller", "main", "size", "us", "mm", "straight", "long", "circular"];

/// Moves past "with larger needles" and "and 3.5 mm dpns".
fn needles(cursor: &mut Cursor<'_>) -> bool {
    let before = cursor.at;
    let mut begun = cursor.any(&["with", "using", "and"]);
    while begun && !cursor.any(&NEEDLES) {
        cursor.spaces();
        let rest = cursor.rest();
        let size = rest.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(rest.len());
        if rest.starts_with(|c: char| c.is_ascii_digit()) {
            cursor.at += size;
        } else {
            begun = cursor.any(&WHICH);
        }
    }
    cursor.at = if begun { cursor.at } else { before };
    begun
}

/// The longest name of a method, in characters.
const LONGEST: usize = 60;

/// Moves past "using the backward-loop method" up to the next words.
fn method(cursor: &mut Cursor<'_>) -> bool {
    const WORDS: [&str; 2] = ["method", "cast-on"];
    let before = cursor.at;
    if cursor.any(&["using", "with"]) {
        let rest = cursor.rest();
        let of_name = |c: char| c.is_alphabetic() || matches!(c, ' ' | '-' | '\'' | '’');
        let end = rest.char_indices().take(LONGEST).take_while(|(_, c)| of_name(*c)).last();
        let words = end.and_then(|(at, c)| rest.get(..at + c.len_utf8())).unwrap_or_default();
        if let Some(end) = WORDS.iter().find_map(|word| Some(words.find(word)? + word.len())) {
            cursor.at += end;
            return true;
        }
    }
    cursor.at = before;
    false
}

/// Words for a place at which a round begins.
const PLACE: [&str; 20] = [
    "the", "a", "of", "at", "centre", "center", "middle", "underarm", "co", "cast", "on", "sts", "edge", "left",
    "right", "neck", "back", "front", "shoulder", "seam",
];

/// Moves past "Beg at centre of underarm CO," with its comma.
fn place(cursor: &mut Cursor<'_>) -> bool {
    let before = cursor.at;
    if cursor.any(&["beg at", "beginning at", "begin at", "starting at", "start at"]) {
        while cursor.any(&PLACE) || cursor.hyphen() {}
        if cursor.sign(',') {
            return true;
        }
    }
    cursor.at = before;
    false
}
