//! What stands behind a stitch: how it is worked, in which colour, and how often.

use super::super::super::lexicon::Counts;
use super::super::super::tree::{How, Item, Until};
use super::super::colour::colour;
use super::super::cursor::{Bad, Cursor};
use super::super::part::part;
use super::super::stated;
use super::super::until::{times, until};
use super::NOTHING;

/// Words behind a stitch that say how it is worked and change no count.
const HOW: [&str; 40] = [
    "tbl",
    "wyif",
    "wyib",
    "wyf",
    "wyb",
    "kwise",
    "pwise",
    "knitwise",
    "purlwise",
    "sts",
    "st",
    "stitches",
    "stitch",
    "through the back loop",
    "through back loop",
    "through the back loops",
    "through back loops",
    "as if to knit",
    "as if to purl",
    "with yarn in front",
    "with yarn in back",
    "wrapping yarn twice",
    "wrapping twice",
    "and hold in front",
    "and hold in back",
    "hold in front",
    "hold in back",
    "hold to front",
    "hold to back",
    "hold at front",
    "hold at back",
    "tightly",
    "loosely",
    "in patt",
    "in pattern",
    "in rib",
    "as established",
    "as set",
    "together",
    "one at a time",
];

/// Reads what stands behind a stitch, and how often it is worked.
pub(super) fn work(cursor: &mut Cursor<'_>, start: usize, counts: Counts, binds: bool) -> Result<Item, Bad> {
    let once = cursor.once();
    let item = Item::Work { takes: counts.takes, leaves: counts.leaves, times: once, binds, at: start..cursor.at };
    finish_how(cursor);
    if counts != NOTHING {
        super::super::items::into(cursor)?;
    }
    let item = finish(cursor, item);
    repeated(cursor, item)
}

/// Reads "3 times" behind a stitch.
pub(super) fn repeated(cursor: &mut Cursor<'_>, item: Item) -> Result<Item, Bad> {
    let start = item.at().start;
    let Some((number, _)) = times(cursor)? else { return all_along(cursor, item) };
    match item {
        Item::Work { takes, leaves, times, binds, .. } if times.values.get(0) == Some(&1) && times.values.is_one() => {
            Ok(Item::Work { takes, leaves, times: number, binds, at: start..cursor.at })
        }
        other => Ok(Item::Repeat { items: vec![other], how: How::Times(number), at: start..cursor.at }),
    }
}

/// Reads "around" or "to end" behind a stitch that is worked over and over: "K2tog around".
fn all_along(cursor: &mut Cursor<'_>, item: Item) -> Result<Item, Bad> {
    let before = cursor.at;
    let one = matches!(&item, Item::Work { takes: 1.., times, .. } if times.values.is_one() && times.of(0) == 1);
    if one && cursor.any(&["around", "across"]) {
        cursor.any(&["the"]);
        cursor.any(&["row", "rnd", "round"]);
        if cursor.is_stop() || matches!(cursor.peek(), Some(',' | ';')) || stated::is_here(cursor) {
            let at = item.at().start..cursor.at;
            return Ok(Item::Repeat { items: vec![item], how: How::Until(Until::End), at });
        }
    }
    cursor.at = before;
    if one && let Some(until @ (Until::End | Until::Last(_))) = cursor.attempt(until)? {
        let at = item.at().start..cursor.at;
        return Ok(Item::Repeat { items: vec![item], how: How::Until(until), at });
    }
    cursor.at = before;
    Ok(item)
}

pub(super) fn finish(cursor: &mut Cursor<'_>, item: Item) -> Item {
    finish_how(cursor);
    let end = cursor.at;
    match item {
        Item::Work { takes, leaves, times, binds, at } => Item::Work { takes, leaves, times, binds, at: at.start..end },
        other => other,
    }
}

/// Moves past what stitches are for, "for back"; returns whether that stood here.
fn for_part(cursor: &mut Cursor<'_>) -> bool {
    let before = cursor.at;
    let found = cursor.eat("for") && part(cursor).is_some();
    if !found {
        cursor.at = before;
    }
    found
}

/// Moves past the words that say how a stitch is worked, and in which colour.
pub(super) fn finish_how(cursor: &mut Cursor<'_>) {
    loop {
        let before = cursor.at;
        // `k1-tbl`
        let joined = cursor.hyphen();
        if cursor.any(&HOW) || for_part(cursor) {
            continue;
        }
        cursor.at = before;
        if joined {
            return;
        }
        if colour(cursor).is_none() {
            return;
        }
    }
}
