//! Rows that are worked again: `Repeat rows 1-8 3 times more`.

use super::super::statement::{Again, Every, Repeated, Rows, Spell};
use super::cursor::{Bad, Cursor};
use super::named::{led, named, spaced};
use super::special::works_here;
use super::{label, stated, until};

/// Reads "Repeat rows 1-8 3 times more", "Rep last 2 rows until 8 sts rem", "Work dec rnd every 8th rnd 5 times more", and the
/// "row 1 once more" that may follow.
pub(super) fn repeat(cursor: &mut Cursor<'_>) -> Result<Option<Repeated>, Bad> {
    let again = led(cursor) || cursor.any(&["rep", "repeat", "work"]);
    let start = cursor.at;
    let rows = match label::last(cursor)? {
        Some(last) => Rows::Last(last),
        None if again && !label::is_numbered(cursor) => return named(cursor),
        None => {
            if !label::row_word(cursor) {
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
    let one = match &rows {
        Rows::Last(rows) => *rows == 1,
        Rows::Numbered(rows) => rows.len() == 1,
        Rows::Named(_) => false,
    };
    if one && let Some(spells) = spaced(cursor)? {
        return Ok(Some(Repeated { rows, spells, at }));
    }
    let again = how_often(cursor, again)?;
    Ok(again.map(|again| Repeated { rows, spells: vec![Spell { every: Every::Row, again }], at }))
}

/// Reads how often rows are worked again one after another.
fn how_often(cursor: &mut Cursor<'_>, again: bool) -> Result<Option<Again>, Bad> {
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
        return Ok(Some(again));
    }
    if !again {
        return Ok(None);
    }
    if cursor.any(&["until", "to"]) {
        let before = cursor.at;
        if let Some(number) = until::stitches_left(cursor)? {
            return Ok(Some(Again::UntilStitches(number)));
        }
        cursor.at = before;
        return Ok(skip_aside(cursor).then_some(Again::Unsaid));
    }
    if cursor.any(&["for"]) {
        return Ok(skip_aside(cursor).then_some(Again::Unsaid));
    }
    Ok((cursor.is_stop() || stated::is_here(cursor)).then(|| Again::More(cursor.once())))
}

/// Moves past the rest of the sentence; returns whether it works no stitch of its own.
fn skip_aside(cursor: &mut Cursor<'_>) -> bool {
    let start = cursor.at;
    cursor.skip_sentence();
    !works_here(cursor.text.get(start..cursor.at).unwrap_or_default(), cursor.lexicon)
}
