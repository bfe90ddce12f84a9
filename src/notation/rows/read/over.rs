//! Some of the stitches alone are worked from here on: `The heel is worked back and forth over the next 28 sts`.

use super::super::tree::Number;
use super::cursor::{Bad, Cursor};
use super::op::{kind, which};

/// What may be said between the verb and the stitches.
const HOW: [&str; 12] = [
    "back and forth",
    "flat",
    "in rows",
    "in short rows",
    "in garter stitch",
    "in st st",
    "in stockinette",
    "in stockinette st",
    "in stockinette stitch",
    "in heel stitch",
    "now",
    "only",
];

/// Reads how many are worked on; nothing where no such sentence stands here.
pub(super) fn over(cursor: &mut Cursor<'_>) -> Result<Option<Number>, Bad> {
    cursor.attempt(|cursor| {
        let start = cursor.at;
        cursor.any(&["the"]);
        while cursor.any(&["heel", "flap", "heel flap", "short-row heel", "thumb", "strap", "tab", "neck"]) {}
        let named = cursor.at > start;
        let worked = named && cursor.any(&["is worked", "are worked", "will be worked"]);
        if !worked && (named || !cursor.any(&["working", "work", "cont", "continue", "continue working"])) {
            return Ok(None);
        }
        let before = cursor.at;
        while cursor.any(&HOW) {}
        let apart = cursor.text.get(before..cursor.at).unwrap_or_default().to_lowercase();
        if !cursor.any(&["over", "on"]) {
            return Ok(None);
        }
        which(cursor);
        let Some(number) = cursor.number()? else { return Ok(None) };
        which(cursor);
        kind(cursor);
        if !cursor.any(&["sts", "st", "stitches"]) {
            return Ok(None);
        }
        let only = cursor.any(&["only"]) || cursor.any(&["alone"]);
        // "Work over 28 sts" may be of a chart.
        let certain =
            worked || only || ["back and forth", "rows", "only", "flat"].iter().any(|words| apart.contains(words));
        if !certain {
            return Ok(None);
        }
        let rest = cursor.rest();
        let end = rest.find([',', ';', '.', '[', '(', ':']).unwrap_or(rest.len());
        let quiet = super::plain::is_quiet(rest.get(..end).unwrap_or_default(), cursor.lexicon);
        cursor.at += end;
        cursor.sign(':');
        Ok(quiet.then_some(number))
    })
}
