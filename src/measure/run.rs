//! Reads a size run: one parser for the shape, one for each value.

use std::ops::Range;

use super::misread::{Misread, Problem, trimmed_range};
use super::number::{self, Scanned};
use super::shape::{self, RunStyle};
use super::size_run::SizeRun;
use super::system::{Inch, System};
use super::value::{self, Unit, Value, WrittenUnit};

/// A size run as it was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Run<T> {
    /// The values; of the system that comes first, where both are written.
    pub values: SizeRun<T>,
    /// The place of every value in the text, one for each of `values`.
    pub ranges: Vec<Range<usize>>,
    /// The system the values were written in, for units that belong to one.
    pub system: Option<System>,
    /// The same run in the other system, where both are written. As many values as the first.
    pub other: Option<OtherRun<T>>,
}

/// The same run in the other system.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OtherRun<T> {
    /// The values.
    pub values: SizeRun<T>,
    /// The place of every value in the text.
    pub ranges: Vec<Range<usize>>,
    /// The system they were written in.
    pub system: System,
}

impl<T: Value> Run<T> {
    /// The sizes, counted from 0, whose values in the two systems are further apart than allowed.
    ///
    /// `slack` is in the quantity's small unit. A value in one system only counts as apart.
    #[must_use]
    pub fn apart(&self, slack: i64) -> Vec<usize> {
        let Some(other) = &self.other else {
            return Vec::new();
        };
        let pairs = self.values.iter().zip(other.values.iter()).enumerate();
        pairs
            .filter(|(_, pair)| match pair {
                (Some(one), Some(two)) => {
                    i128::from(one.small()).abs_diff(i128::from(two.small())) > u128::from(slack.unsigned_abs())
                }
                (None, None) => false,
                _ => true,
            })
            .map(|(size, _)| size)
            .collect()
    }
}

impl<T: Value> SizeRun<T> {
    /// Reads a size run and keeps only its values; see [`read_run`] for their places and a second system.
    ///
    /// # Errors
    /// As for [`read_run`].
    pub fn parse(text: &str, style: RunStyle, inch: Inch) -> Result<Self, Misread> {
        read_run(text, style, inch).map(|run| run.values)
    }
}

/// Reads a size run of any quantity.
///
/// Understands `84 (94, 104) cm`, groups, square brackets, braces, colons, semicolons with decimal commas,
/// `84/94/104`, a lone value, and the same run in both systems with a slash between. `-`, `–`, `—` or a lone
/// `0` is a size without a value. The unit stands once at the end or after every value.
///
/// # Errors
/// Whatever cannot be read with certainty, with the guilty bytes and what to write instead.
pub fn read_run<T: Value>(text: &str, style: RunStyle, inch: Inch) -> Result<Run<T>, Misread> {
    let all = trimmed_range(text);
    if all.is_empty() {
        return Err(Misread::new(all, Problem::Empty { example: T::EXAMPLE }));
    }
    let Some(slash) = between_systems::<T>(text, all.clone())? else {
        let one = read_one::<T>(text, all, style, inch)?;
        return Ok(Run { values: one.values, ranges: one.ranges, system: one.system, other: None });
    };
    let first = read_one::<T>(text, shape::trim(text, all.start..slash), style, inch)?;
    let second_at = shape::trim(text, slash + 1..all.end);
    let second = read_one::<T>(text, second_at.clone(), style, inch)?;
    if first.values.len() != second.values.len() {
        let problem = Problem::UnequalRuns { first: first.values.len(), second: second.values.len() };
        return Err(Misread::new(second_at, problem));
    }
    let other = second.system.map(|system| OtherRun { values: second.values, ranges: second.ranges, system });
    Ok(Run { values: first.values, ranges: first.ranges, system: first.system, other })
}

/// A run in one system.
struct One<T> {
    values: SizeRun<T>,
    ranges: Vec<Range<usize>>,
    system: Option<System>,
}

/// The unit at the end of a range.
fn unit_at_end<T: Value>(text: &str, at: Range<usize>) -> Option<(Unit, Range<usize>)> {
    let at = shape::trim(text, at);
    // The last value of a run may carry the unit inside its bracket.
    let closing = |c: char| c.is_whitespace() || matches!(c, ')' | ']' | '}');
    let inside = number::slice(text, at.clone()).trim_end_matches(closing);
    let inside = inside.strip_suffix('.').unwrap_or(inside);
    let last = inside.chars().next_back()?;
    let length = if last.is_alphabetic() {
        inside.chars().rev().take_while(|c| c.is_alphabetic()).map(char::len_utf8).sum()
    } else {
        last.len_utf8()
    };
    let end = at.start + inside.len();
    let word = end - length..end;
    let unit = T::unit(&number::slice(text, word.clone()).to_lowercase())?;
    Some((unit, word))
}

/// The slash between a run in one system and the same run in the other.
///
/// It stands outside brackets, after a unit of another system than the last unit of the text.
fn between_systems<T: Value>(text: &str, all: Range<usize>) -> Result<Option<usize>, Misread> {
    let mut depth = 0_usize;
    let mut slashes = Vec::new();
    let mut brackets = false;
    for (offset, c) in number::slice(text, all.clone()).char_indices() {
        match c {
            '(' | '[' | '{' => {
                depth += 1;
                brackets = true;
            }
            ')' | ']' | '}' => depth = depth.saturating_sub(1),
            '/' if depth == 0 => slashes.push(all.start + offset),
            _ => {}
        }
    }
    let last = unit_at_end::<T>(text, all.clone());
    let mut found: Option<(usize, Range<usize>)> = None;
    for slash in &slashes {
        let before = unit_at_end::<T>(text, all.start..*slash);
        let (Some((unit, at)), Some((end, end_at))) = (before, &last) else {
            continue;
        };
        let (Some(one), Some(two)) = (unit.system, end.system) else {
            continue;
        };
        if one == two {
            continue;
        }
        if let Some((_, first_at)) = found {
            let first = number::slice(text, first_at).to_owned();
            let second = number::slice(text, end_at.clone()).to_owned();
            return Err(Misread::new(end_at.clone(), Problem::MixedUnits { first, second }));
        }
        found = Some((*slash, at));
    }
    if found.is_none() && brackets {
        // With brackets a slash outside them can only be a fraction.
        for slash in slashes {
            if !number::is_fraction_slash(text, slash) {
                return Err(Misread::new(slash..slash + 1, Problem::SlashBetweenRuns));
            }
        }
    }
    Ok(found.map(|(slash, _)| slash))
}

/// One place as it was read: nothing, or a number and perhaps a unit.
struct Place {
    scanned: Option<Scanned>,
    unit: Option<WrittenUnit>,
}

fn read_place<T: Value>(text: &str, at: Range<usize>, comma: number::Comma) -> Result<Place, Misread> {
    let inside = number::slice(text, at.clone());
    let mut chars = inside.chars();
    if let Some(dash) = chars.next().filter(|c| number::is_dash(*c)) {
        let rest = number::past_spaces(text, at.start + dash.len_utf8());
        if rest >= at.end {
            return Ok(Place { scanned: None, unit: None });
        }
        if let Some((unit, word)) = unit_at_end::<T>(text, rest..at.end)
            && word.start == rest
        {
            let unit = WrittenUnit { unit, word: number::slice(text, word.clone()).to_owned(), at: word };
            return Ok(Place { scanned: None, unit: Some(unit) });
        }
    }
    if let Some((_, word)) = unit_at_end::<T>(text, at.clone())
        && word.start == at.start
    {
        // A unit between two groups, where a value might stand.
        let unit = number::slice(text, word.clone()).to_owned();
        return Err(Misread::new(word, Problem::UnitOnSome { unit }));
    }
    let scanned = value::read_number::<T>(text, at.clone(), comma)?;
    let (unit, end) = value::read_unit::<T>(text, &scanned, at.end)?;
    if end < at.end {
        return Err(value::leftover::<T>(text, &scanned, end..at.end));
    }
    // A lone 0 says that the size has none; `0.0` is a measured nothing.
    let skipped = number::slice(text, scanned.at.clone()) == "0";
    Ok(Place { scanned: if skipped { None } else { Some(scanned) }, unit })
}

fn read_tail<T: Value>(
    text: &str,
    tail: Range<usize>,
    last: Option<&Range<usize>>,
) -> Result<Option<WrittenUnit>, Misread> {
    if tail.is_empty() {
        return Ok(None);
    }
    let within = number::slice(text, 0..tail.end);
    let stray = |at: Range<usize>| {
        let written = number::slice(text, at.clone()).to_owned();
        Misread::new(at, Problem::Leftover { written, example: T::EXAMPLE })
    };
    let Some((word, after)) = number::word(within, tail.start) else {
        return Err(stray(tail));
    };
    let at = tail.start..tail.start + word.len();
    let Some(unit) = T::unit(&word.to_lowercase()) else {
        let number = last.map_or("", |at| number::slice(text, at.clone())).to_owned();
        let problem = Problem::UnknownUnit { number, unit: word.to_owned(), units: T::UNITS };
        return Err(Misread::new(at, problem));
    };
    let rest = number::past_spaces(within, after);
    if rest < tail.end {
        return Err(stray(rest..tail.end));
    }
    Ok(Some(WrittenUnit { unit, word: word.to_owned(), at }))
}

fn read_one<T: Value>(text: &str, all: Range<usize>, style: RunStyle, inch: Inch) -> Result<One<T>, Misread> {
    if all.is_empty() {
        return Err(Misread::new(all, Problem::EmptyPlace));
    }
    let shape = shape::numbers(text, all.clone(), style)?;
    let mut places = Vec::with_capacity(shape.places.len());
    for at in &shape.places {
        places.push(read_place::<T>(text, at.clone(), shape.comma)?);
    }
    let tail = read_tail::<T>(text, shape.tail.clone(), shape.places.last())?;
    let unit = one_unit::<T>(text, &all, &shape.places, &places, tail)?;
    let mut values = Vec::with_capacity(places.len());
    for place in &places {
        values.push(match (&place.scanned, unit) {
            (Some(scanned), Some(unit)) => Some(value::make::<T>(text, scanned, unit, inch)?),
            _ => None,
        });
    }
    let system = unit.and_then(|unit| unit.system);
    Ok(One { values: SizeRun::from_values(values), ranges: shape.places, system })
}

/// The one unit of a run: at its end, after its last value, or after every value.
fn one_unit<T: Value>(
    text: &str,
    all: &Range<usize>,
    ranges: &[Range<usize>],
    places: &[Place],
    tail: Option<WrittenUnit>,
) -> Result<Option<Unit>, Misread> {
    let at_end = tail.is_some() || places.last().is_some_and(|place| place.unit.is_some());
    let written: Vec<&WrittenUnit> =
        places.iter().filter_map(|place| place.unit.as_ref()).chain(tail.as_ref()).collect();
    let Some(first) = written.first() else {
        if places.iter().all(|place| place.scanned.is_none()) {
            return Ok(None);
        }
        return match T::bare_unit() {
            Some(unit) => Ok(Some(unit)),
            None => {
                let written = number::slice(text, all.clone()).to_owned();
                Err(Misread::new(all.clone(), Problem::NoUnit { written, units: T::UNITS }))
            }
        };
    };
    if let Some(odd) = written.iter().find(|unit| unit.unit.name != first.unit.name) {
        let problem = Problem::MixedUnits { first: first.word.clone(), second: odd.word.clone() };
        return Err(Misread::new(odd.at.clone(), problem));
    }
    // At the end it counts for all. Elsewhere all must have it, or a value may have lost another unit.
    let only_once = written.len() == 1;
    let bare = places.iter().position(|place| place.scanned.is_some() && place.unit.is_none());
    let allowed = tail.is_some() || (at_end && only_once);
    if let (Some(bare), false) = (bare.and_then(|bare| ranges.get(bare)), allowed) {
        return Err(Misread::new(bare.clone(), Problem::UnitOnSome { unit: first.word.clone() }));
    }
    Ok(Some(first.unit))
}
