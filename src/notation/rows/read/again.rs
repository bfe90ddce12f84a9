//! Rows that are worked again: `Repeat rows 1-8 3 times more`.

use super::super::lexicon::Lexicon;
use super::super::statement::{Again, Every, Repeated, Rows, Spell};
use super::super::tree::Number;
use super::cursor::{Bad, Cursor};
use super::effect::{alters, works_here};
use super::named::{led, named, spaced};
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
    let start = cursor.at;
    let further = cursor.any(&["another", "a further", "for another", "for a further"]);
    cursor.any(&["for a total of", "a total of"]);
    if let Some((number, more)) = until::times(cursor)? {
        let words = cursor.text.get(start..cursor.at).unwrap_or_default().to_lowercase();
        let in_all = ["total", " all", "altogether"].iter().any(|word| words.contains(word));
        let again = match (more || further, in_all) {
            (true, _) => Again::More(number),
            // The rows as they are written are the first of so many.
            (false, true) => Again::More(one_less(&number)),
            (false, false) => Again::Times(number),
        };
        let stated = stated::is_here(cursor);
        let before = cursor.at;
        cursor.sign(',');
        // "Or until it is long enough": what is counted is what is said.
        let or = cursor.eat("or");
        if !or {
            cursor.at = before;
        }
        let rest = cursor.at;
        if or || !stated && !cursor.is_stop() && !matches!(cursor.peek(), Some(',' | ';')) {
            cursor.skip_sentence();
        }
        let words = cursor.text.get(rest..cursor.at).unwrap_or_default();
        return Ok(leaves_alone(words, cursor.lexicon).then_some(again));
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
    leaves_alone(cursor.text.get(start..cursor.at).unwrap_or_default(), cursor.lexicon)
}

/// Whether words behind a repeat change no stitches of their own.
fn leaves_alone(words: &str, lexicon: &Lexicon) -> bool {
    !works_here(words, lexicon) && !alters(words)
}

/// A number less one, size by size; a size without one is left as it is.
fn one_less(number: &Number) -> Number {
    let less = |value: &i64| Some(value.saturating_sub(1).max(0));
    let values = number.values.try_map(less).unwrap_or_else(|| number.values.clone());
    Number { values, at: number.at.clone() }
}
