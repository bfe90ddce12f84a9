//! What stands before stitches and is for the knitter alone: the side that faces her, how stitches are cast on.

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

/// Moves past "with RS facing" or "using the backward-loop method"; returns whether such words stood here.
pub(super) fn facing(cursor: &mut Cursor<'_>) -> bool {
    cursor.any(&FACING) || method(cursor)
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

/// The longest name of a method, in characters.
const LONGEST: usize = 60;

/// Moves past "using the backward-loop method" up to the next words.
fn method(cursor: &mut Cursor<'_>) -> bool {
    const WORD: &str = "method";
    let before = cursor.at;
    if cursor.any(&["using", "with"]) {
        let rest = cursor.rest();
        let of_name = |c: char| c.is_alphabetic() || matches!(c, ' ' | '-' | '\'' | '’');
        let end = rest.char_indices().take(LONGEST).take_while(|(_, c)| of_name(*c)).last();
        let words = end.and_then(|(at, c)| rest.get(..at + c.len_utf8())).unwrap_or_default();
        if let Some(at) = words.find(WORD) {
            cursor.at += at + WORD.len();
            return true;
        }
    }
    cursor.at = before;
    false
}
