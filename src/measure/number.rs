//! Numbers as writers put them: decimals, fractions, glyphs.

use std::ops::Range;

use super::misread::{Misread, Problem};
use super::rounding;

/// A written number, as an exact fraction.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Number {
    pub above: i128,
    pub below: i128,
}

impl Number {
    /// The number times a whole unit, to the nearest whole, halves away from zero.
    ///
    /// `None` where the result does not fit.
    pub fn times_near(self, unit: i64) -> Option<i64> {
        let above = self.above.checked_mul(i128::from(unit))?;
        i64::try_from(rounding::divide_near(above, self.below)?).ok()
    }

    fn plus(self, other: Self) -> Option<Self> {
        let left = self.above.checked_mul(other.below)?;
        let right = other.above.checked_mul(self.below)?;
        Some(Self { above: left.checked_add(right)?, below: self.below.checked_mul(other.below)? })
    }
}

/// A number and where it stands.
#[derive(Clone, Debug)]
pub(super) struct Scanned {
    pub number: Number,
    pub at: Range<usize>,
    /// How many decimals were written.
    pub decimals: usize,
}

/// What a comma means in the text at hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Comma {
    /// It may be a decimal comma; before three digits it is ambiguous.
    Decimal,
    /// It separates values, so a number ends before it.
    Separates,
}

/// The longest whole part and the longest decimal part that are kept: all of 64 bits, and 31 digits in 128.
const WHOLE_DIGITS: usize = 19;
const DECIMAL_DIGITS: usize = 12;

/// The text from a byte on; empty past the end.
pub(super) fn from(text: &str, at: usize) -> &str {
    text.get(at..).unwrap_or("")
}

/// The text of a byte range; empty if it is not one.
pub(super) fn slice(text: &str, at: Range<usize>) -> &str {
    text.get(at).unwrap_or("")
}

/// The first byte at or after `at` that is not a space.
pub(super) fn past_spaces(text: &str, at: usize) -> usize {
    let rest = from(text, at);
    at + (rest.len() - rest.trim_start().len())
}

fn glyph(c: char) -> Option<Number> {
    let (above, below) = match c {
        '¼' => (1, 4),
        '½' => (1, 2),
        '¾' => (3, 4),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        _ => return None,
    };
    Some(Number { above, below })
}

/// Whether a character can begin a number (signs left aside).
pub(super) fn begins_number(c: char) -> bool {
    c.is_ascii_digit() || glyph(c).is_some()
}

/// Whether a character is one of the dashes a writer may type.
pub(super) const fn is_dash(c: char) -> bool {
    matches!(c, '-' | '–' | '—' | '−' | '‐' | '‑')
}

fn digits_end(text: &str, at: usize) -> usize {
    let rest = from(text, at);
    at + rest.bytes().take_while(u8::is_ascii_digit).count()
}

/// Whether a slash between two whole numbers makes a fraction of the trade.
///
/// Tape measures are marked in halves to sixteenths, and thirds occur in yarn. `2/4` is not in lowest
/// terms, so nobody writes it for a half: it is two sizes.
pub(super) fn is_trade_fraction(above: &str, below: &str) -> bool {
    let (Ok(above), Ok(below)) = (above.parse::<u32>(), below.parse::<u32>()) else {
        return false;
    };
    let lowest = match below {
        2 | 4 | 8 | 16 => above % 2 == 1,
        3 => above % 3 != 0,
        _ => false,
    };
    lowest && above < below
}

/// Whether the slash at a byte stands within a fraction of the trade.
pub(super) fn is_fraction_slash(text: &str, slash: usize) -> bool {
    let before = slice(text, 0..slash);
    let after = from(text, slash + 1);
    let above = before.len() - before.bytes().rev().take_while(u8::is_ascii_digit).count();
    let below = after.bytes().take_while(u8::is_ascii_digit).count();
    is_trade_fraction(before.get(above..).unwrap_or(""), after.get(..below).unwrap_or(""))
}

/// A fraction such as `1/2` at a byte, and where it ends.
fn fraction(text: &str, at: usize) -> Result<Option<(Number, usize)>, Misread> {
    let above_end = digits_end(text, at);
    if above_end == at {
        return Ok(None);
    }
    let Some(slash) = from(text, above_end).chars().next().filter(|c| matches!(c, '/' | '⁄')) else {
        return Ok(None);
    };
    let below_start = above_end + slash.len_utf8();
    let below_end = digits_end(text, below_start);
    let above = slice(text, at..above_end);
    let below = slice(text, below_start..below_end);
    if below.is_empty() || (slash == '/' && !is_trade_fraction(above, below)) {
        return Ok(None);
    }
    let (Ok(above), Ok(below)) = (above.parse::<u32>(), below.parse::<u32>()) else {
        let written = slice(text, at..below_end).to_owned();
        return Err(Misread::new(at..below_end, Problem::TooBig { written }));
    };
    if below == 0 {
        let written = slice(text, at..below_end).to_owned();
        return Err(Misread::new(at..below_end, Problem::ZeroBelow { written }));
    }
    Ok(Some((Number { above: above.into(), below: below.into() }, below_end)))
}

/// Reads the number that begins at a byte; `None` where none does.
///
/// Understands `84`, `12.5`, `.5`, `12,5` (unless commas separate), `½`, `1½`, `1 ½`, `1/2`, `1 1/2`,
/// `1-1/2`, and a minus sign directly before it. `84/94` is not one number: it ends after `84`.
pub(super) fn scan(text: &str, at: usize, comma: Comma) -> Result<Option<Scanned>, Misread> {
    let mut here = at;
    let mut negative = false;
    let mut chars = from(text, at).chars();
    if let Some(sign) = chars.next().filter(|c| is_dash(*c)) {
        let next = chars.next();
        let point = next == Some('.') && chars.next().is_some_and(|c| c.is_ascii_digit());
        if next.is_some_and(begins_number) || point {
            negative = true;
            here += sign.len_utf8();
        }
    }
    // A fraction alone, before the whole part could swallow its upper number.
    if let Some((number, end)) = fraction(text, here)? {
        return Ok(Some(finish(number, negative, at..end, 0)));
    }
    if let Some((number, c)) = from(text, here).chars().next().and_then(|c| Some((glyph(c)?, c))) {
        return Ok(Some(finish(number, negative, at..here + c.len_utf8(), 0)));
    }
    let Some((plain, end, decimals)) = decimal(text, here, comma)? else {
        return Ok(None);
    };
    if decimals > 0 {
        return Ok(Some(finish(plain, negative, at..end, decimals)));
    }
    let (more, end) = match fraction_part(text, end)? {
        Some((part, end)) => (plain.plus(part), end),
        None => (Some(plain), end),
    };
    match more {
        Some(number) => Ok(Some(finish(number, negative, at..end, 0))),
        None => Err(too_big(text, at..end)),
    }
}

fn finish(number: Number, negative: bool, at: Range<usize>, decimals: usize) -> Scanned {
    let above = if negative { -number.above } else { number.above };
    Scanned { number: Number { above, below: number.below }, at, decimals }
}

fn too_big(text: &str, at: Range<usize>) -> Misread {
    let written = slice(text, at.clone()).to_owned();
    Misread::new(at, Problem::TooBig { written })
}

/// The fraction after a whole number: `½`, ` ½`, ` 1/2`, `-1/2`.
fn fraction_part(text: &str, at: usize) -> Result<Option<(Number, usize)>, Misread> {
    let spaced = past_spaces(text, at);
    let Some(next) = from(text, spaced).chars().next() else {
        return Ok(None);
    };
    if let Some(number) = glyph(next) {
        return Ok(Some((number, spaced + next.len_utf8())));
    }
    if spaced > at {
        return fraction(text, spaced);
    }
    if is_dash(next) { fraction(text, at + next.len_utf8()) } else { Ok(None) }
}

/// Digits with at most one decimal sign, where they end, and how many decimals there are.
fn decimal(text: &str, at: usize, comma: Comma) -> Result<Option<(Number, usize, usize)>, Misread> {
    let mut end = digits_end(text, at);
    let whole = slice(text, at..end);
    let mut signs: Vec<(char, Range<usize>)> = Vec::new();
    loop {
        let sign = match from(text, end).chars().next() {
            Some('.') => '.',
            Some(',') if comma == Comma::Decimal && end > at => ',',
            _ => break,
        };
        let digits = end + 1..digits_end(text, end + 1);
        if digits.is_empty() {
            break;
        }
        end = digits.end;
        signs.push((sign, digits));
    }
    if end == at {
        return Ok(None);
    }
    let written = || slice(text, at..end).to_owned();
    let (sign, parts) = match signs.as_slice() {
        [] => ('.', ""),
        [(sign, digits)] => (*sign, slice(text, digits.clone())),
        _ => {
            return Err(Misread::new(at..end, Problem::AmbiguousComma { written: written() }));
        }
    };
    // `1,270` is a thousand to one reader and a little over one to another; `0,125` and `1270,500` are plain.
    if sign == ',' && parts.len() == 3 && whole.len() <= 3 && !whole.starts_with('0') {
        return Err(Misread::new(at..end, Problem::AmbiguousComma { written: written() }));
    }
    if whole.len() > WHOLE_DIGITS || parts.len() > DECIMAL_DIGITS {
        return Err(too_big(text, at..end));
    }
    let mut above: i128 = 0;
    let mut below: i128 = 1;
    for digit in whole.bytes() {
        above = above * 10 + i128::from(digit - b'0');
    }
    for digit in parts.bytes() {
        above = above * 10 + i128::from(digit - b'0');
        below *= 10;
    }
    Ok(Some((Number { above, below }, end, parts.len())))
}

/// The unit-like word at a byte: its text, and where reading goes on.
///
/// Letters, or one of the signs `"`, `″`, `”`, `%`. A full stop after an abbreviation is passed over.
pub(super) fn word(text: &str, at: usize) -> Option<(&str, usize)> {
    let rest = from(text, at);
    let first = rest.chars().next()?;
    if matches!(first, '"' | '″' | '”' | '%') {
        let end = at + first.len_utf8();
        return Some((slice(text, at..end), end));
    }
    let length: usize = rest.chars().take_while(|c| c.is_alphabetic()).map(char::len_utf8).sum();
    if length == 0 {
        return None;
    }
    let end = at + length;
    let mut after = from(text, end).chars();
    let stop = after.next() == Some('.') && !after.next().is_some_and(|c| c.is_alphanumeric());
    Some((slice(text, at..end), if stop { end + 1 } else { end }))
}

/// The words that directly follow a number, closing brackets between them passed over.
pub(super) fn units_after_numbers(text: &str) -> impl Iterator<Item = &str> {
    let mut in_number = false;
    text.char_indices().filter_map(move |(at, c)| {
        if begins_number(c) || (in_number && matches!(c, '.' | ',' | '/' | '⁄')) {
            in_number = true;
            return None;
        }
        if in_number && (c.is_whitespace() || matches!(c, ')' | ']' | '}')) {
            return None;
        }
        let after = in_number;
        in_number = false;
        if after { word(text, at).map(|(word, _)| word) } else { None }
    })
}

/// A whole number of small units as a decimal of a larger one, without trailing zeros.
///
/// Rounded near at `decimals` decimals; with enough of them, reading it again gives the same number.
pub(super) fn show_decimal(small: i64, unit: i64, decimals: u32) -> String {
    let scale = 10_i128.checked_pow(decimals).unwrap_or(1);
    let scaled = rounding::divide_near(i128::from(small).saturating_mul(scale), i128::from(unit)).unwrap_or(0);
    show_scaled(scaled, decimals)
}

/// A number of hundredths, thousandths and so on as a decimal without trailing zeros.
pub(super) fn show_scaled(scaled: i128, decimals: u32) -> String {
    let scale = 10_u128.checked_pow(decimals).unwrap_or(1);
    let sign = if scaled < 0 { "-" } else { "" };
    let whole = scaled.unsigned_abs() / scale;
    let part = scaled.unsigned_abs() % scale;
    if part == 0 {
        return format!("{sign}{whole}");
    }
    let digits = format!("{part:0width$}", width = decimals as usize);
    format!("{sign}{whole}.{}", digits.trim_end_matches('0'))
}

/// A whole number with commas between thousands.
pub(super) fn show_thousands(number: i64) -> String {
    let mut shown = number.to_string();
    let first_digit = usize::from(number < 0);
    let mut at = shown.len();
    while at > first_digit + 3 {
        at -= 3;
        shown.insert(at, ',');
    }
    shown
}
