//! A piece that is worked as another: `Work as for left sleeve`, `Make second sleeve the same`.

use super::super::statement::Doing;
use super::cursor::{Bad, Cursor};
use super::part::part;

/// Reads such a sentence; nothing where it says more than that both are alike.
pub(super) fn alike(cursor: &mut Cursor<'_>) -> Result<Option<Doing>, Bad> {
    cursor.any(&["now"]);
    if !cursor.any(&["work", "make", "knit"]) {
        return Ok(None);
    }
    let name = part(cursor);
    let as_of =
        if cursor.any(&["as for the", "as for", "same as the", "same as", "exactly as", "as", "like the", "like"]) {
            let first = cursor.any(&["the first", "first"]);
            match part(cursor) {
                Some(of) => Some(of),
                None if first && name.is_some() => None,
                None => return Ok(None),
            }
        } else if name.is_some() && cursor.any(&["the same way", "the same", "in the same way", "to match", "alike"]) {
            None
        } else {
            return Ok(None);
        };
    // Which side is shaped changes no count.
    cursor.sign(',');
    cursor.any(&["reversing all shaping", "reversing all shapings", "reversing shaping", "reversing shapings"]);
    Ok(cursor.is_stop().then_some(Doing::Alike { as_of, name }))
}
