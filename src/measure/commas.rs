//! Commas that may belong to a number although commas separate the sizes.

use std::ops::Range;

use super::misread::{Misread, Problem};
use super::number;
use super::shape::{Part, positions};

/// Whether the comma at a byte has a digit directly on both sides.
pub(super) fn is_tight(text: &str, at: usize) -> bool {
    let digit = |byte: Option<&u8>| byte.is_some_and(u8::is_ascii_digit);
    let bytes = text.as_bytes();
    digit(at.checked_sub(1).and_then(|before| bytes.get(before))) && digit(bytes.get(at + 1))
}

/// The digits on both sides of a tight comma.
fn around(text: &str, at: usize) -> Range<usize> {
    let before = number::slice(text, 0..at).bytes().rev().take_while(u8::is_ascii_digit).count();
    let after = number::from(text, at + 1).bytes().take_while(u8::is_ascii_digit).count();
    at - before..at + 1 + after
}

/// The problem of a comma at a byte.
pub(super) fn comma_decimal(text: &str, at: usize) -> Misread {
    let at = around(text, at);
    let written = number::slice(text, at.clone()).to_owned();
    Misread::new(at, Problem::CommaDecimal { written })
}

/// Commas that may belong to a number although commas separate the sizes.
///
/// `12,5 (13, 13,5)` shows one outside the brackets. Inside, a comma without a space is suspect where
/// others have one, and where it would make a size less than a tenth of the one before: `820 (905, …, 1,085)`.
pub(super) fn check(text: &str, parts: &[Part]) -> Result<(), Misread> {
    for part in parts {
        if let Part::Outside(at) = part
            && let Some(comma) = positions(text, at.clone(), ',').first()
        {
            if is_tight(text, *comma) {
                return Err(comma_decimal(text, *comma));
            }
            let written = ",".to_owned();
            let problem = Problem::Leftover { written, example: "84 (92, 100) (108, 116)" };
            return Err(Misread::new(*comma..comma + 1, problem));
        }
    }
    let commas: Vec<usize> = parts
        .iter()
        .flat_map(|part| match part {
            Part::Inside { at } => positions(text, at.clone(), ','),
            Part::Outside(_) => Vec::new(),
        })
        .collect();
    let spaced = commas.iter().any(|comma| !is_tight(text, *comma));
    for comma in commas.iter().filter(|comma| is_tight(text, **comma)) {
        let at = around(text, *comma);
        let after = at.end - comma - 1;
        if after <= 3 && (spaced || drops(text, &at, *comma)) {
            return Err(comma_decimal(text, *comma));
        }
    }
    Ok(())
}

/// Whether three digits follow the comma and reading it as a separator gives a size that falls off steeply.
fn drops(text: &str, at: &Range<usize>, comma: usize) -> bool {
    if at.end - comma - 1 != 3 {
        return false;
    }
    let before = number::slice(text, 0..at.start);
    let previous = before.trim_end_matches(|c: char| !c.is_ascii_digit());
    let digits = previous.bytes().rev().take_while(u8::is_ascii_digit).count();
    let previous = previous.get(previous.len() - digits..).unwrap_or("").parse::<u64>();
    let this = number::slice(text, at.start..comma).parse::<u64>();
    match (previous, this) {
        (Ok(previous), Ok(this)) => this.saturating_mul(10) < previous,
        _ => false,
    }
}
