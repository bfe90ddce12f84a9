//! Runs without brackets: a lone value, or sizes between slashes.

use std::ops::Range;

use super::commas::{comma_decimal, is_tight};
use super::misread::{Misread, Problem};
use super::number::{self, Comma};
use super::shape::{Shape, positions, trim};

/// A lone value, or sizes between slashes.
pub(super) fn without_brackets(text: &str, all: Range<usize>) -> Result<Shape, Misread> {
    let tail = all.end..all.end;
    let within = number::slice(text, 0..all.end);
    let slashes = positions(text, all.clone(), '/');
    let lone = match number::scan(within, all.start, Comma::Decimal) {
        // A fraction uses its slash up; whatever follows it must not be another.
        Ok(Some(scanned)) => !number::slice(text, scanned.at.end..all.end).contains('/'),
        // An ambiguous comma is told as such, unless it is one of several.
        Ok(None) | Err(_) => slashes.is_empty(),
    };
    for list in [';', ','] {
        let marks = positions(text, all.clone(), list);
        let number_alone = list == ',' && marks.len() == 1 && marks.iter().all(|mark| is_tight(text, *mark));
        if !marks.is_empty() && slashes.is_empty() && !number_alone && !is_one_grouped_number(text, &all) {
            return Err(Misread::new(all.clone(), no_brackets(number::slice(text, all), list)));
        }
    }
    if lone {
        return Ok(Shape { places: vec![all], tail, comma: Comma::Decimal });
    }
    if let Some(comma) = positions(text, all.clone(), ',').first() {
        if is_tight(text, *comma) {
            return Err(comma_decimal(text, *comma));
        }
        let problem = Problem::MixedSeparators { first: '/', second: ',' };
        return Err(Misread::new(*comma..comma + 1, problem));
    }
    let places = inside_slashes(text, all.clone(), &slashes)?;
    for pair in places.windows(2) {
        if let [left, right] = pair {
            check_fraction(text, left.clone(), right.clone())?;
        }
    }
    Ok(Shape { places, tail, comma: Comma::Separates })
}

/// `1,270,500`: digits in threes, which the number reader will call ambiguous itself.
fn is_one_grouped_number(text: &str, all: &Range<usize>) -> bool {
    let written = number::slice(text, all.clone());
    let digits = written.trim_end_matches(|c: char| !c.is_ascii_digit());
    let mut groups = digits.split(',');
    groups.next().is_some_and(|first| !first.is_empty() && first.len() <= 3)
        && groups.clone().count() > 1
        && digits.bytes().all(|byte| byte.is_ascii_digit() || byte == b',')
        && groups.all(|group| group.len() == 3)
}

fn no_brackets(written: &str, separator: char) -> Problem {
    let mut pieces = written.split(separator).map(str::trim).filter(|piece| !piece.is_empty());
    let first = pieces.next().unwrap_or("");
    let mut others: Vec<&str> = pieces.collect();
    let mut unit = String::new();
    // A unit after the last value goes behind the bracket.
    if let Some(last) = others.last_mut() {
        let number = last.trim_end_matches(|c: char| c.is_alphabetic() || matches!(c, '"' | '″' | '”' | '%'));
        let word = last.get(number.len()..).unwrap_or("");
        if !word.is_empty() && !number.trim().is_empty() {
            unit = format!(" {word}");
            *last = number.trim_end();
        }
    }
    let glue = if separator == ';' { "; " } else { ", " };
    Problem::NoBrackets { instead: format!("{first} ({}){unit}", others.join(glue)) }
}

fn inside_slashes(text: &str, all: Range<usize>, slashes: &[usize]) -> Result<Vec<Range<usize>>, Misread> {
    let mut places = Vec::new();
    let mut start = all.start;
    for end in slashes.iter().copied().chain([all.end]) {
        let place = trim(text, start..end);
        if place.is_empty() {
            let from = start.saturating_sub(1).max(all.start);
            return Err(Misread::new(from..(end + 1).min(all.end), Problem::EmptyPlace));
        }
        places.push(place);
        start = end + 1;
    }
    Ok(places)
}

/// Sizes on both sides of a slash that also make a fraction of the trade.
fn check_fraction(text: &str, left: Range<usize>, right: Range<usize>) -> Result<(), Misread> {
    let above = number::slice(text, left.clone());
    let above = above.len() - above.bytes().rev().take_while(u8::is_ascii_digit).count();
    let below = number::slice(text, right.clone()).bytes().take_while(u8::is_ascii_digit).count();
    let at = left.start + above..right.start + below;
    let above = number::slice(text, at.start..left.end);
    let below = number::slice(text, right.start..at.end);
    if number::is_trade_fraction(above, below) {
        let written = number::slice(text, at.clone()).to_owned();
        return Err(Misread::new(at, Problem::SlashFraction { written }));
    }
    Ok(())
}
