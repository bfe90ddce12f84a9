//! What stands before a row's colon: `Row 1 (RS):`, `Rnds 2-9:`, `Next row:`.

use super::super::name::RowName;
use super::super::statement::{Label, Side};
use super::super::tree::Number;
use super::cursor::{Bad, Cursor};
use super::label_end::{label_end, short_row};

pub(super) const ROW: [&str; 8] = ["row", "rows", "rnd", "rnds", "round", "rounds", "short row", "short rows"];

/// The most rows one label may name.
const MOST: i64 = 999;

/// Reads a label with its colon or dash; nothing where none stands here.
pub(super) fn label(cursor: &mut Cursor<'_>) -> Result<Option<Label>, Bad> {
    cursor.spaces();
    let start = cursor.at;
    let head = cursor.rest();
    let Some((length, after)) = label_end(head) else { return Ok(None) };
    let words = head.get(..length).unwrap_or_default();
    let lower = words.to_lowercase();
    let named = lower.split(|c: char| !c.is_alphanumeric()).any(|word| ROW.contains(&word));
    if !(named || short_row(words).is_some()) || is_heading(head) {
        return Ok(None);
    }
    let round =
        lower.split(|c: char| !c.is_alphanumeric()).any(|word| word.starts_with("rnd") || word.starts_with("round"));
    let side = match (words.contains("RS"), words.contains("WS")) {
        // "Row 2 and all WS rows" says it too.
        (true, false) => Some(Side::Right),
        (false, true) => Some(Side::Wrong),
        _ => None,
    };
    let line_end = std::mem::replace(&mut cursor.end, start + length);
    let numbers = if row_word(cursor) { list(cursor) } else { Ok(Vec::new()) };
    let rows = if numbers.is_ok() { several(cursor, start, &lower) } else { Ok(None) };
    cursor.end = line_end;
    let (numbers, rows) = (numbers?, rows?);
    let every = |words: &[&str]| words.iter().any(|words| lower.contains(words));
    let others = if !numbers.is_empty() && every(&["and all", "and every", "and foll alt", "and following alternate"]) {
        numbers.first().copied()
    } else if numbers.is_empty() && every(&["ws rows", "even rows", "even rnds", "even rounds", "even-numbered"]) {
        // "All WS rows" and "Even rnds" have no number of their own.
        Some(2)
    } else {
        None
    };
    let name = name(words, !numbers.is_empty(), round);
    cursor.at = start + after;
    Ok(Some(Label { numbers, others, side, round, name, rows, at: start..start + length }))
}

/// Moves past the word row, or the letter that stands for it before a number; returns whether it stood here.
pub(super) fn row_word(cursor: &mut Cursor<'_>) -> bool {
    cursor.spaces();
    let short = short_row(cursor.rest());
    cursor.at += short.unwrap_or(0);
    short.is_some() || cursor.any(&ROW)
}

/// Whether the word row stands here with a number behind it.
pub(super) fn is_numbered(cursor: &mut Cursor<'_>) -> bool {
    let before = cursor.at;
    let found = row_word(cursor) && cursor.word().starts_with(|c: char| c.is_ascii_digit());
    cursor.at = before;
    found
}

/// The name in a label: all its words, or those in brackets behind a row that goes by its number or its place:
/// `Row 5 (dec row)`, `Next rnd (inc)`.
fn name(words: &str, numbered: bool, round: bool) -> Option<RowName> {
    let whole = if numbered { None } else { RowName::of(words) };
    let pieces = words.split(['(', '[']).skip(1).filter_map(|inside| inside.split([')', ']']).next());
    let row = if round { "rnd" } else { "row" };
    let named = |piece: &str| {
        let shapes = ["dec", "inc", "decrease", "increase"].iter().any(|shape| piece.eq_ignore_ascii_case(shape));
        if shapes { RowName::of(&format!("{piece} {row}")) } else { RowName::of(piece) }
    };
    whole.or_else(|| pieces.flat_map(|inside| inside.split([',', ';'])).find_map(|piece| named(piece.trim())))
}

/// How many rows a label is that has no number of its own: 4 of "Next 4 rows"; nothing where it does not tell.
fn several(cursor: &mut Cursor<'_>, start: usize, lower: &str) -> Result<Option<Number>, Bad> {
    cursor.at = start;
    let several = cursor.attempt(|cursor| {
        cursor.eat("the");
        if !cursor.any(&["next", "following", "foll"]) {
            return Ok(None);
        }
        let number = cursor.number()?;
        Ok(number.filter(|_| cursor.any(&["rows", "rnds", "rounds", "row", "rnd", "round"])))
    })?;
    // "Every row:" is as many as there are.
    let many = |word: &str| matches!(word, "rows" | "rnds" | "rounds" | "every" | "each" | "all");
    let one = !lower.split(|c: char| !c.is_alphanumeric()).any(many);
    Ok(several.or_else(|| one.then(|| cursor.once())))
}

/// Whether a line with the word row or round in it is a heading all the same: `Short rows:`, `Round the ankle:`. `Next row:`
/// and `All WS rows:` are none; there something is missing.
fn is_heading(line: &str) -> bool {
    let Some(name) = line.strip_suffix(':') else { return false };
    let lower = name.to_lowercase();
    let mut words = lower.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
    let of_some = ["rs", "ws", "all", "every", "even", "odd"];
    let figures = name.contains(|c: char| c.is_ascii_digit());
    let of_rows = words.clone().any(|word| of_some.contains(&word));
    let of_one = words.next_back().is_some_and(|last| ["row", "rnd", "round"].contains(&last));
    !(figures || of_rows || of_one)
}

/// Reads row numbers: `1`, `2-9`, `3 and 5`, `1, 3 and 5`; a size run's brackets are not read.
pub(super) fn list(cursor: &mut Cursor<'_>) -> Result<Vec<u32>, Bad> {
    let mut numbers: Vec<u32> = Vec::new();
    loop {
        let before = cursor.at;
        row_word(cursor);
        let Some(first) = whole(cursor) else {
            cursor.at = before;
            return Ok(numbers);
        };
        let dash = cursor.sign('-') || cursor.sign('–') || cursor.sign('—') || cursor.eat("to");
        if dash {
            row_word(cursor);
        }
        let last = if dash { whole(cursor).unwrap_or(first) } else { first };
        // The even or odd ones of a range, or all.
        let step = if cursor.any(&["odd", "even"]) { 2 } else { 1 };
        if last < first || last - first > MOST {
            return Err((super::super::statement::Trouble::Unread, before..cursor.at));
        }
        let mut row = first;
        while row <= last {
            numbers.extend(u32::try_from(row));
            row += step;
        }
        let before = cursor.at;
        let comma = cursor.sign(',');
        let and = cursor.any(&["and", "&"]) || cursor.sign('&');
        let behind = cursor.at;
        row_word(cursor);
        let figures = cursor.word();
        // "Rows 1-2, 9 more times" names no row 9.
        cursor.at += figures.len();
        let often = ["times", "time", "more", "x"].iter().any(|word| cursor.sees(word));
        let on = figures.starts_with(|c: char| c.is_ascii_digit()) && !often;
        cursor.at = behind;
        if !((comma || and) && on) {
            cursor.at = before;
            return Ok(numbers);
        }
    }
}

/// A whole number without brackets behind it.
fn whole(cursor: &mut Cursor<'_>) -> Option<i64> {
    cursor.spaces();
    let rest = cursor.rest();
    let digits = rest.get(..rest.bytes().take_while(u8::is_ascii_digit).count())?;
    let number = digits.parse().ok().filter(|number| (0..=99_999).contains(number))?;
    cursor.at += digits.len();
    Some(number)
}

/// Reads how many rows "last 4 rows" are; one for "last row".
pub(super) fn last(cursor: &mut Cursor<'_>) -> Result<Option<u32>, Bad> {
    let before = cursor.at;
    cursor.eat("the");
    if cursor.any(&["last", "previous", "prev", "these", "this"]) {
        let number: Option<Number> = cursor.number()?;
        let number = number.as_ref().and_then(|number| number.values.get(0).copied()).unwrap_or(1);
        if cursor.any(&ROW) {
            return Ok(u32::try_from(number).ok());
        }
    }
    cursor.at = before;
    Ok(None)
}
