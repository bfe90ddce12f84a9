//! Some stitches are worked alone behind a turn, or others are left: `work on these 20 sts only`, `leave rem sts unworked`.

use super::super::super::tree::{Item, Span};
use super::super::cursor::{Bad, Cursor};
use super::hold::{VERBS, is_turned, kind, which};

/// Reads "work on these 20 sts only" and "leave rem sts unworked" behind a turn; nothing where neither stands here.
pub(super) fn over_these(cursor: &mut Cursor<'_>, start: usize) -> Result<Option<Item>, Bad> {
    cursor.attempt(|cursor| {
        if cursor.any(&["leave", "leaving"]) {
            let rest = which(cursor);
            cursor.number()?;
            let rest = which(cursor) || rest;
            let unworked = cursor.any(&["sts", "stitches"]) && rest && cursor.eat("unworked");
            let at = start..cursor.at;
            let turned = is_turned(cursor, start) || cursor.attempt(|cursor| turns_next(cursor))?.is_some();
            return Ok(
                unworked.then(|| if turned { nothing(cursor, at) } else { Item::Unsaid { as_before: false, at } })
            );
        }
        if !is_turned(cursor, start) || !cursor.any(&["work", "working", "continue", "cont", "knit"]) {
            return Ok(None);
        }
        cursor.any(&["working"]);
        let apart = cursor.any(&["back and forth"]);
        if !cursor.any(&["on", "over"]) || !cursor.any(&["these", "the first", "those"]) {
            return Ok(None);
        }
        cursor.number()?;
        kind(cursor);
        if !cursor.any(&["sts", "stitches"]) || !(cursor.any(&["only", "alone"]) || apart) {
            return Ok(None);
        }
        let at = start..cursor.at;
        // The words behind may put the others aside themselves.
        let before = cursor.at;
        while cursor.sign(',') || cursor.sign(';') || cursor.any(&["and"]) {}
        let puts = VERBS.iter().any(|verb| cursor.sees(verb));
        cursor.at = before;
        Ok(Some(if puts { nothing(cursor, at) } else { Item::Hold { number: None, rest: true, of: None, at } }))
    })
}

/// Moves past a turn that comes next.
fn turns_next(cursor: &mut Cursor<'_>) -> Result<Option<()>, Bad> {
    while cursor.sign(',') || cursor.sign(';') || cursor.any(&["and", "then"]) {}
    Ok(cursor.sees("turn").then_some(()))
}

/// What works no stitch.
fn nothing(cursor: &Cursor<'_>, at: Span) -> Item {
    Item::Work { takes: 0, leaves: 0, times: cursor.once(), binds: false, at }
}
