//! How a repeat goes on that does not say how often: `rep from *`, `rep from *, end k2`, `rep from * until it measures 30 cm`.

use super::super::count::{Reading, once};
use super::super::tree::{How, Item, Number, To, Until, Which};
use super::cursor::{Bad, Cursor};
use super::effect::works_here;
use super::items::{Close, items, separators};
use super::plain::is_quiet;
use crate::measure::{SizeNames, SizeRun};

/// Reads it; nothing where something else stands here.
pub(super) fn open(cursor: &mut Cursor<'_>, inside: &[Item]) -> Result<Option<How>, Bad> {
    if cursor.is_stop() || super::stated::is_here(cursor) {
        return Ok(Some(How::Until(Until::End)));
    }
    let start = cursor.at;
    if cursor.sees("until") || cursor.sees("for") {
        cursor.skip_sentence();
        let words = format!("work {}", cursor.text.get(start..cursor.at).unwrap_or_default());
        // However often they are worked, they are as many as after once.
        let neutral = once(inside, 0, Reading::More).is_some_and(|counts| counts.takes == counts.leaves);
        if neutral && is_quiet(&words, cursor.lexicon) {
            return Ok(Some(How::Times(cursor.once())));
        }
        if works_here(&words, cursor.lexicon) {
            cursor.at = start;
            return Ok(None);
        }
        // "Until all shawl sts have been worked": how often, nobody knows.
        let by = Number { values: SizeRun::one(0), at: cursor.at..cursor.at };
        return Ok(Some(How::Until(Until::Marker(To { which: Which::Unknown, by, past: false }))));
    }
    if cursor.any(&[
        "on second needle",
        "on the second needle",
        "on other needle",
        "on the other needle",
        "on needle 2",
    ]) {
        return Ok(Some(How::More(cursor.once())));
    }
    separators(cursor);
    if !cursor.any(&["ending with", "ending", "end with", "end"]) {
        cursor.at = start;
        return Ok(None);
    }
    let (tail, kept) = (cursor.at, cursor.numbers.len());
    let mut behind = Vec::new();
    items(cursor, Close::Sentence, &mut behind)?;
    let end = cursor.at;
    cursor.at = tail;
    cursor.numbers.truncate(kept);
    let sizes = cursor.lexicon.sizes().map_or(1, SizeNames::len);
    let takes: Option<Vec<i64>> = (0..sizes).map(|size| Some(once(&behind, size, Reading::More)?.takes)).collect();
    let Some(takes) = takes.filter(|takes| takes.iter().any(|takes| *takes > 0)) else {
        cursor.at = start;
        return Ok(None);
    };
    let first = takes.first().copied().unwrap_or(0);
    let values = if takes.iter().all(|other| *other == first) {
        SizeRun::one(first)
    } else {
        SizeRun::from_values(takes.into_iter().map(Some).collect())
    };
    Ok(Some(How::Until(Until::Last(Number { values, at: tail..end }))))
}
