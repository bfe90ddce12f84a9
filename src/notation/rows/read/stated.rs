//! The stitches that a row says there are: `[78 sts; 2 dec'd]`.

use super::super::statement::Change;
use super::super::tree::Number;
use super::cursor::{Bad, Cursor};
use super::part::part;

const MORE: [&str; 8] = ["inc'd", "inc’d", "increased", "incd", "inc", "more", "st increase", "added"];
const LESS: [&str; 8] = ["dec'd", "dec’d", "decreased", "decd", "dec", "fewer", "less", "st decrease"];
/// Words before a count without brackets.
const SAYS: [&str; 8] = [
    "total",
    "total of",
    "there should be",
    "there should now be",
    "you should have",
    "you should now have",
    "you will have",
    "you now have",
];
const NOW: [&str; 12] = [
    "on needles",
    "on the needles",
    "on needle",
    "on the needle",
    "remain",
    "remaining",
    "rem",
    "in total",
    "in all",
    "total",
    "left",
    "now",
];

/// What a row says of its count.
#[derive(Debug, Default)]
pub(super) struct Stated {
    pub count: Option<Number>,
    pub change: Option<Change>,
    /// Whether it says how many a part has, which is not looked at.
    pub of_part: bool,
}

/// Whether a count stands here.
pub(super) fn is_here(cursor: &mut Cursor<'_>) -> bool {
    let (before, kept) = (cursor.at, cursor.numbers.len());
    let found = matches!(stated(cursor), Ok(Some(_)));
    cursor.at = before;
    cursor.numbers.truncate(kept);
    found
}

/// Reads a count; nothing where none stands here.
pub(super) fn stated(cursor: &mut Cursor<'_>) -> Result<Option<Stated>, Bad> {
    cursor.attempt(read)
}

fn read(cursor: &mut Cursor<'_>) -> Result<Option<Stated>, Bad> {
    cursor.spaces();
    let mut dash = cursor.any(&SAYS);
    cursor.sign(':');
    while let Some(c @ ('-' | '–' | '—' | '=')) = cursor.peek() {
        cursor.at += c.len_utf8();
        cursor.spaces();
        dash = true;
    }
    let close = match cursor.peek() {
        Some('[') if !dash => ']',
        Some('(') if !dash => ')',
        Some('<') if !dash => '>',
        Some(c) if c.is_ascii_digit() || dash => ' ',
        _ => return Ok(None),
    };
    if close != ' ' {
        cursor.at += 1;
    }
    let mut stated = Stated::default();
    loop {
        cursor.any(&["now"]);
        // "(+4 sts)"
        let sign = close != ' ' && stated.count.is_none() && stated.change.is_none();
        let signed = if sign { self::sign(cursor) } else { None };
        if !cursor.rest().trim_start().starts_with(|c: char| c.is_ascii_digit() || matches!(c, '–' | '-' | '—')) {
            return Ok(None);
        }
        let Some(number) = cursor.number()? else { return Ok(None) };
        // "4 gusset sts" are some of all.
        let some = !cursor.sees("st") && !cursor.sees("sts") && part(cursor).is_some();
        let stitches = cursor.any(&["sts", "st", "stitches", "stitch"]);
        if let Some(less) = signed.filter(|_| stitches) {
            cursor.any(if less { &LESS } else { &MORE });
            stated.change = Some(Change { by: number, less });
        } else if cursor.any(&MORE) {
            stated.change = Some(Change { by: number, less: false });
        } else if cursor.any(&LESS) {
            stated.change = Some(Change { by: number, less: true });
        } else if stitches {
            cursor.any(&NOW);
            if some || cursor.any(&["each", "per", "for each", "in each", "between", "for front", "for back"]) {
                // Of a part, not of all.
                let rest = cursor.rest();
                cursor.at += rest.find([')', ']', ';', '.']).unwrap_or(rest.len());
                stated.of_part = true;
            } else {
                stated.count = Some(number);
            }
        } else {
            return Ok(None);
        }
        cursor.spaces();
        match cursor.peek() {
            Some(c @ (';' | ',')) => cursor.at += c.len_utf8(),
            _ if cursor.eat("and") => {}
            _ => break,
        }
    }
    if close != ' ' && !cursor.sign(close) {
        return Ok(None);
    }
    if close == ' ' && !cursor.is_stop() && !matches!(cursor.peek(), Some('[' | '(')) {
        return Ok(None);
    }
    Ok(Some(stated))
}

/// Moves past a sign before a number; returns whether it is that of a decrease.
fn sign(cursor: &mut Cursor<'_>) -> Option<bool> {
    cursor.spaces();
    let sign = cursor.peek()?;
    let behind = cursor.rest().get(sign.len_utf8()..)?.trim_start();
    // A dash may be the first value of a run, one for a size that does not work it.
    let number = behind.starts_with(|c: char| c.is_ascii_digit());
    let less = match sign {
        '+' => false,
        '-' | '–' | '−' => true,
        _ => return None,
    };
    number.then(|| {
        cursor.at += sign.len_utf8();
        less
    })
}
