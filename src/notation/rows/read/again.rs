//! Rows that are worked again: `Repeat rows 1-8 3 times more`.

use super::super::statement::{Again, Repeated, Rows};
use super::cursor::{Bad, Cursor};
use super::special::works_here;
use super::{label, stated, until};

/// Reads "Repeat rows 1-8 3 times more", "Rep last 2 rows until 8 sts rem", and the "row 1 once more" that may follow.
pub(super) fn repeat(cursor: &mut Cursor<'_>) -> Result<Option<Repeated>, Bad> {
    let again = cursor.any(&["rep", "repeat"]) || cursor.eat("work");
    let start = cursor.at;
    let rows = match label::last(cursor)? {
        Some(last) => Rows::Last(last),
        None => {
            if !cursor.any(&["rows", "rnds", "rounds", "row", "rnd", "round"]) {
                return Ok(None);
            }
            let rows = label::list(cursor)?;
            if rows.is_empty() {
                return Ok(None);
            }
            Rows::Numbered(rows)
        }
    };
    let named = cursor.text.get(start..cursor.at).unwrap_or_default();
    let at = cursor.at - named.trim_start().len()..start + named.trim_end().len();
    cursor.sign(',');
    cursor.any(&["another", "a further", "a total of"]);
    if let Some((number, more)) = until::times(cursor)? {
        let again = if more { Again::More(number) } else { Again::Times(number) };
        let stated = stated::is_here(cursor);
        let before = cursor.at;
        cursor.sign(',');
        // "Or until it is long enough": what is counted is what is said.
        let or = cursor.eat("or");
        if !or {
            cursor.at = before;
        }
        if or || !stated && !cursor.is_stop() && !matches!(cursor.peek(), Some(',' | ';')) {
            cursor.skip_sentence();
        }
        return Ok(Some(Repeated { rows, again, at }));
    }
    if !again {
        return Ok(None);
    }
    if cursor.any(&["until", "to"]) {
        let before = cursor.at;
        if let Some(number) = until::stitches_left(cursor)? {
            return Ok(Some(Repeated { rows, again: Again::UntilStitches(number), at }));
        }
        cursor.at = before;
        if !skip_aside(cursor) {
            return Ok(None);
        }
        return Ok(Some(Repeated { rows, again: Again::Unsaid, at }));
    }
    if cursor.any(&["for"]) {
        if !skip_aside(cursor) {
            return Ok(None);
        }
        return Ok(Some(Repeated { rows, again: Again::Unsaid, at }));
    }
    if cursor.is_stop() || stated::is_here(cursor) {
        let number = cursor.once();
        return Ok(Some(Repeated { rows, again: Again::More(number), at }));
    }
    Ok(None)
}

/// Moves past the rest of the sentence; returns whether it works no stitch of its own.
fn skip_aside(cursor: &mut Cursor<'_>) -> bool {
    let start = cursor.at;
    cursor.skip_sentence();
    !works_here(cursor.text.get(start..cursor.at).unwrap_or_default(), cursor.lexicon)
}
