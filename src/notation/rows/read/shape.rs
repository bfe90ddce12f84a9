//! Shaping at both ends, told in a sentence: `Dec 1 st at each end of every 4th row until 40 sts rem`.

use super::super::statement::{Again, Doing, Every, Shaped, Spell};
use super::cursor::{Bad, Cursor};
use super::evenly::ENDS;
use super::every::spells;
use super::until::{stitches_left, times};

/// Reads such a sentence; nothing where none stands here.
pub(super) fn shape(cursor: &mut Cursor<'_>) -> Result<Option<Doing>, Bad> {
    let less = cursor.any(&["dec", "decrease"]);
    if !less && !cursor.any(&["inc", "increase"]) {
        return Ok(None);
    }
    let by = cursor.number()?.unwrap_or_else(|| cursor.once());
    cursor.any(&["sts", "st", "stitches", "stitch"]);
    cursor.any(&["at"]);
    if !cursor.any(&ENDS) {
        return Ok(None);
    }
    let whole = cursor.attempt(|cursor| {
        cursor.sign(',');
        let spells = spells(cursor)?;
        Ok(spells.filter(|_| super::named::is_whole(cursor)))
    })?;
    if let Some(mut spells) = whole {
        // No row before it is among so many times, as it tells of all.
        if let Some(Spell { again, .. }) = spells.first_mut()
            && let Again::Times(number) | Again::Either(number) = again
        {
            *again = Again::More(number.clone());
        }
        return Ok(Some(Doing::Shape(Shaped { by, less, spells })));
    }
    let again = anyhow_often(cursor)?;
    Ok(Some(Doing::Shape(Shaped { by, less, spells: vec![Spell { every: Every::Row, again }] })))
}

/// Reads how often among words that say more than that.
fn anyhow_often(cursor: &mut Cursor<'_>) -> Result<Again, Bad> {
    // "On the next and every 4th row 5 times" may be five or six.
    let mut clear = true;
    while !cursor.is_stop() && !super::stated::is_here(cursor) {
        if cursor.any(&["until", "to"]) {
            let before = cursor.at;
            let mut number = stitches_left(cursor)?;
            if number.is_none() {
                number = cursor.number()?.filter(|_| cursor.any(&["sts", "st", "stitches", "stitch"]));
            }
            if let Some(number) = number {
                return Ok(Again::UntilStitches(number));
            }
            cursor.at = before;
        } else if let Some((number, more)) = times(cursor)? {
            return Ok(if more || !clear { Again::Unsaid } else { Again::More(number) });
        } else if cursor.any(&["and", "then"]) {
            clear = false;
        } else {
            let word = cursor.long_word().len();
            let sign = cursor.peek().map_or(0, char::len_utf8);
            cursor.at += word.max(sign);
        }
    }
    Ok(Again::Unsaid)
}
