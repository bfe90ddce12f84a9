//! Stitches that are bound off, and those at the beginning of the next rows.

use super::super::super::tree::{How, Item, Until};
use super::super::cursor::{Bad, Cursor};
use super::super::until::until;
use super::times::{finish, finish_how};

pub(super) fn bind_off(cursor: &mut Cursor<'_>, start: usize) -> Result<Item, Bad> {
    finish_how(cursor);
    cursor.any(&["next"]);
    if let Some(number) = cursor.number()? {
        let item = Item::Work { takes: 1, leaves: 0, times: number, binds: true, at: start..cursor.at };
        let item = finish(cursor, item);
        return in_next_rows(cursor, item);
    }
    let until = until(cursor)?.unwrap_or(Until::End);
    finish_how(cursor);
    if until == Until::End {
        cursor.skip_sentence();
    }
    Ok(Item::Even { until, binds: true, at: start..cursor.at })
}

/// Reads "at beg of next 2 rows" behind what is cast on or bound off: so many rows, each worked to its end.
pub(super) fn in_next_rows(cursor: &mut Cursor<'_>, item: Item) -> Result<Item, Bad> {
    let before = cursor.at;
    let start = item.at().start;
    cursor.any(&["at the", "at"]);
    if cursor.any(&["beg of", "beginning of", "start of", "end of"]) {
        cursor.any(&["the", "this"]);
        cursor.any(&["next", "foll", "following"]);
        let rows = cursor.number()?.unwrap_or_else(|| cursor.once());
        if cursor.any(&["rows", "row", "rnds", "rnd", "rounds", "round"]) {
            let at = start..cursor.at;
            let edges = Item::Repeat { items: vec![item], how: How::Times(rows), at: at.clone() };
            let rest = Item::Even { until: Until::End, binds: false, at: at.clone() };
            return Ok(Item::Repeat { items: vec![edges, rest], how: How::Times(cursor.once()), at });
        }
    }
    cursor.at = before;
    Ok(item)
}
