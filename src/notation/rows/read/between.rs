//! How the rows are worked that lie between others: `Work the rnds between in pattern as established`, `Knit all other rows`.

use super::cursor::Cursor;
use super::plain::is_quiet;

const ROWS: [&str; 3] = ["rows", "rnds", "rounds"];

/// Moves past a sentence that says so and changes no count; returns whether one stood here.
///
/// It works no rows of its own: those that it speaks of are told with the others.
pub(super) fn between(cursor: &mut Cursor<'_>) -> bool {
    let before = cursor.at;
    let found = cursor.any(&["work", "knit", "purl", "keep", "working", "keeping"]) && names_them(cursor);
    let body = cursor.at;
    cursor.skip_sentence();
    let is_so = found && is_quiet(cursor.text.get(body..cursor.at).unwrap_or_default(), cursor.lexicon);
    if !is_so {
        cursor.at = before;
    }
    is_so
}

fn names_them(cursor: &mut Cursor<'_>) -> bool {
    while cursor.any(&["all", "the", "every"]) {}
    if cursor.any(&["other", "rem", "remaining", "intervening"]) {
        return cursor.any(&ROWS);
    }
    let between = cursor.any(&ROWS) && cursor.any(&["between", "in between", "inbetween"]);
    if between {
        cursor.any(&["the"]);
        if cursor.any(&["decs", "incs", "decreases", "increases", "dec", "inc", "decrease", "increase", "shaping"]) {
            cursor.any(&ROWS);
        }
    }
    between
}
