//! What is done in a row: stitches, repeats, brackets.

use super::super::statement::Trouble;
use super::super::tree::{How, Item, Number, Span, To, Until, Which};
use super::aside::aside;
use super::cursor::{Bad, Cursor};
use super::facing::facing;
use super::open::open;
use super::until::{again, times, until};
use super::{colour, op};

/// What ends a list of items.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Close<'a> {
    /// The end of the sentence, or a count.
    Sentence,
    /// A bracket.
    Bracket(char),
    /// Its own sign again, or "rep from" it.
    Star(&'a str),
}

/// Moves past commas and the words between items; returns the colour that they say what follows is worked in.
pub(super) fn separators(cursor: &mut Cursor<'_>) -> Option<Item> {
    let mut colour = None;
    // Behind a stitch without a sign a colour is that of what was worked, not of what comes.
    let before = cursor.text.get(..cursor.at).unwrap_or_default().trim_end();
    let mut parted = !before.ends_with(|c: char| c.is_alphanumeric() || matches!(c, ')' | ']' | '}'));
    loop {
        parted |= cursor.hyphen();
        cursor.spaces();
        match cursor.peek() {
            Some(c @ (',' | ';' | ':')) => {
                cursor.at += c.len_utf8();
                parted = true;
            }
            Some('(') if aside(cursor) => {}
            Some(_) if facing(cursor) => parted = true,
            Some(_) if cursor.any(&["and", "then"]) => parted = true,
            // Markers lie between stitches, and a colour is no stitch.
            Some(_) if cursor.any(&["slipping markers", "slipping all markers", "slipping marker", "slipping m"]) => {
                cursor.any(&["as you come to them", "as you go", "as they appear", "as you come to it"]);
            }
            Some(_) => match colour::before_stitches(cursor) {
                Some(Item::Colour { at, .. }) if !parted => colour = Some(Item::Colour { label: None, at }),
                Some(named) => colour = Some(named),
                None => return colour,
            },
            None => return colour,
        }
    }
}

/// Reads items up to what ends them; those read so far stay in `items` if one cannot be read.
pub(super) fn items(cursor: &mut Cursor<'_>, close: Close<'_>, items: &mut Vec<Item>) -> Result<(), Bad> {
    loop {
        let colour = separators(cursor);
        if cursor.is_done() {
            return Ok(());
        }
        match close {
            Close::Bracket(close) if cursor.peek() == Some(close) => return Ok(()),
            Close::Star(_) if cursor.peek() == Some('*') && closes_here(cursor, close) => return Ok(()),
            Close::Star(_) if is_repeat(cursor) => return Ok(()),
            Close::Sentence if super::stated::is_here(cursor) => return Ok(()),
            _ if cursor.is_stop() => return Ok(()),
            _ => {}
        }
        items.extend(colour);
        items.push(item(cursor)?);
    }
}

fn is_repeat(cursor: &mut Cursor<'_>) -> bool {
    let before = cursor.at;
    let is = cursor.any(&["rep", "repeat"]);
    cursor.at = before;
    is
}

/// The asterisks here.
fn mark<'a>(cursor: &mut Cursor<'a>) -> &'a str {
    cursor.spaces();
    let rest = cursor.rest();
    rest.get(..rest.bytes().take_while(|byte| *byte == b'*').count()).unwrap_or_default()
}

/// Whether the asterisks here are those that a repeat began with.
fn closes_here(cursor: &mut Cursor<'_>, close: Close<'_>) -> bool {
    matches!(close, Close::Star(own) if mark(cursor) == own)
}

fn item(cursor: &mut Cursor<'_>) -> Result<Item, Bad> {
    match cursor.peek() {
        Some('*') => star(cursor),
        Some('(') => brackets(cursor, ')'),
        Some('[') => brackets(cursor, ']'),
        Some('{') => brackets(cursor, '}'),
        _ => op::op(cursor),
    }
}

/// Reads `*…; rep from * to end` and `*…* 3 times`.
fn star(cursor: &mut Cursor<'_>) -> Result<Item, Bad> {
    cursor.deeper()?;
    let start = cursor.at;
    let own = mark(cursor);
    cursor.at += own.len();
    let mut inside = Vec::new();
    items(cursor, Close::Star(own), &mut inside)?;
    let unclear = |at: Span| Err((Trouble::Unclear, at));
    let closed = mark(cursor) == own;
    if closed {
        cursor.at += own.len();
        separators(cursor);
    }
    // "*K2, p2. Rep from * to end."
    let before = cursor.at;
    if !(cursor.sign('.') && (cursor.sees("rep") || cursor.sees("repeat"))) {
        cursor.at = before;
    }
    let repeated = cursor.any(&["rep", "repeat"]);
    let mut from = false;
    if repeated {
        from = cursor.any(&["from", "instructions from", "between"]);
        if !mark(cursor).is_empty() && mark(cursor) != own {
            return unclear(start..cursor.at);
        }
        let named = mark(cursor).len();
        cursor.at += named;
        cursor.any(&["s"]);
        let before = cursor.at;
        if cursor.eat("to") && mark(cursor) == own {
            cursor.at += own.len();
        } else {
            // "to end" belongs to what follows.
            cursor.at = before;
        }
    }
    let before = cursor.at;
    let how = match again(cursor)? {
        None if repeated => open(cursor, &inside)?,
        how => how,
    };
    // "To last st; rep from * on second needle" is the last of that needle.
    if cursor.text.get(before..cursor.at).is_some_and(|words| words.trim_end().ends_with("needle")) {
        inside.iter_mut().for_each(of_needle);
    }
    cursor.depth -= 1;
    let inside = colour::of_all(cursor, inside);
    let at = start..cursor.at;
    match how {
        // Without "rep" the stars only bracket what stands between them.
        Some(How::Again(number)) if !repeated || closed && !from => {
            Ok(Item::Repeat { items: inside, how: How::Times(number), at })
        }
        Some(how) => Ok(Item::Repeat { items: inside, how, at }),
        None => unclear(at),
    }
}

/// What goes to the last stitches of a needle goes to a place that the words do not tell.
fn of_needle(item: &mut Item) {
    if let Item::Even { until, .. } = item
        && let Until::Last(by) = until
    {
        *until = Until::Marker(To { which: Which::Unknown, by: by.clone(), past: false });
    }
}

/// Reads what stands in brackets and what is done with it.
fn brackets(cursor: &mut Cursor<'_>, close: char) -> Result<Item, Bad> {
    cursor.deeper()?;
    let start = cursor.at;
    cursor.at += 1;
    let mut inside = Vec::new();
    items(cursor, Close::Bracket(close), &mut inside)?;
    if !cursor.sign(close) {
        return Err((Trouble::Unclear, start..cursor.at));
    }
    cursor.depth -= 1;
    let inside = colour::of_all(cursor, inside);
    if let Some(of) = into(cursor)? {
        colour::colour(cursor);
        return Ok(Item::Into { items: inside, of, at: start..cursor.at });
    }
    cursor.any(&["rep", "repeat"]);
    let how = match until(cursor)? {
        Some(until) => Some(How::Until(until)),
        None => times(cursor)?.map(|(number, _)| How::Times(number)),
    };
    if matches!(how, Some(How::Times(_))) {
        cursor.any(&["around", "across"]);
    }
    let inside = colour::of_all(cursor, inside);
    let at = start..cursor.at;
    match how {
        Some(how) => Ok(Item::Repeat { items: inside, how, at }),
        None => Err((Trouble::Unclear, at)),
    }
}

/// Reads "in next st", "all into the same st", "in next 3 sts tog".
pub(super) fn into(cursor: &mut Cursor<'_>) -> Result<Option<Number>, Bad> {
    let before = cursor.at;
    cursor.eat("all");
    if cursor.any(&["in", "into"]) {
        cursor.eat("the");
        let next = cursor.any(&["next", "same", "first", "last", "following", "foll"]);
        let of = cursor.number()?;
        if (next || of.is_some()) && cursor.any(&["st", "sts", "stitch", "stitches"]) {
            cursor.any(&["tog", "together"]);
            return Ok(Some(of.unwrap_or_else(|| cursor.once())));
        }
    }
    cursor.at = before;
    Ok(None)
}
