//! The shape of a size run: brackets, separators and the places between them.

use std::ops::Range;

use super::misread::{Misread, Problem};
use super::number::{self, Comma};
use super::{commas, no_brackets};

/// A kind of bracket.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Bracket {
    /// `( )`
    Round,
    /// `[ ]`
    Square,
}

impl Bracket {
    const fn open(self) -> char {
        match self {
            Self::Round => '(',
            Self::Square => '[',
        }
    }
}

/// What a house means by its brackets.
///
/// Houses disagree on which bracket holds sizes and which holds repeats.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct RunStyle {
    /// The bracket that holds sizes; the other of the two is then reported. `None`: any bracket does.
    pub sizes_in: Option<Bracket>,
}

/// The places of a run and what stands after the last bracket.
#[derive(Clone, Debug)]
pub(super) struct Shape {
    /// Every place, spaces left out; none is empty.
    pub places: Vec<Range<usize>>,
    /// What follows the last bracket and is not a place: the unit. May be empty.
    pub tail: Range<usize>,
    /// What a comma means within a place.
    pub comma: Comma,
}

/// A stretch between brackets, or the inside of one.
#[derive(Clone, Debug)]
pub(super) enum Part {
    Outside(Range<usize>),
    Inside { at: Range<usize> },
}

/// A range without the spaces at its ends.
pub(super) fn trim(text: &str, at: Range<usize>) -> Range<usize> {
    let inside = number::slice(text, at.clone());
    let start = at.start + (inside.len() - inside.trim_start().len());
    start..start + inside.trim().len()
}

const fn closing(open: char) -> Option<char> {
    match open {
        '(' => Some(')'),
        '[' => Some(']'),
        '{' => Some('}'),
        _ => None,
    }
}

/// Takes a range apart at its brackets.
///
/// There is always an outside part first and last, perhaps empty.
pub(super) fn parts(text: &str, at: Range<usize>, style: RunStyle) -> Result<Vec<Part>, Misread> {
    let mut parts = Vec::new();
    let mut start = at.start;
    let mut open: Option<(char, char, usize)> = None;
    for (offset, c) in number::slice(text, at.clone()).char_indices() {
        let here = at.start + offset;
        let this = here..here + c.len_utf8();
        if let Some(close) = closing(c) {
            if open.is_some() {
                return Err(Misread::new(this, Problem::Nested { open: c }));
            }
            check_house(c, this.clone(), style)?;
            parts.push(Part::Outside(start..here));
            open = Some((c, close, here));
            start = this.end;
        } else if matches!(c, ')' | ']' | '}') {
            match open.take() {
                Some((_, close, _)) if close == c => {
                    parts.push(Part::Inside { at: start..here });
                    start = this.end;
                }
                other => {
                    let wanted = other.map(|(_, close, _)| close);
                    return Err(Misread::new(this, Problem::Mismatched { found: c, wanted }));
                }
            }
        }
    }
    if let Some((open, close, here)) = open {
        return Err(Misread::new(here..here + open.len_utf8(), Problem::Unclosed { open, close }));
    }
    parts.push(Part::Outside(start..at.end));
    Ok(parts)
}

/// A round or square bracket that is not the house's own may hold repeats. Braces never do.
fn check_house(open: char, at: Range<usize>, style: RunStyle) -> Result<(), Misread> {
    match style.sizes_in {
        Some(house) if open != '{' && open != house.open() => {
            Err(Misread::new(at, Problem::HouseBracket { open, sizes_in: house.open() }))
        }
        _ => Ok(()),
    }
}

/// Where a character stands in a range.
pub(super) fn positions(text: &str, at: Range<usize>, wanted: char) -> Vec<usize> {
    number::slice(text, at.clone()).match_indices(wanted).map(|(offset, _)| at.start + offset).collect()
}

/// The separator of the places in brackets: semicolon before colon before comma.
pub(super) fn separator(text: &str, parts: &[Part]) -> char {
    let holds = |c: char| {
        parts.iter().any(|part| match part {
            Part::Inside { at } => number::slice(text, at.clone()).contains(c),
            Part::Outside(_) => false,
        })
    };
    if holds(';') {
        ';'
    } else if holds(':') {
        ':'
    } else {
        ','
    }
}

/// The places inside one bracket; an empty one is a problem.
pub(super) fn inside(text: &str, at: Range<usize>, separator: char) -> Result<Vec<Range<usize>>, Misread> {
    let mut places = Vec::new();
    let mut start = at.start;
    let mut ends = positions(text, at.clone(), separator);
    ends.push(at.end);
    for end in ends {
        let place = trim(text, start..end);
        if place.is_empty() {
            // The separators or brackets on both sides are part of the fault, so that there is something to see.
            let from = start.saturating_sub(1);
            return Err(Misread::new(from..end + 1, Problem::EmptyPlace));
        }
        places.push(place);
        start = end + 1;
    }
    Ok(places)
}

/// Takes a run of numbers apart.
pub(super) fn numbers(text: &str, at: Range<usize>, style: RunStyle) -> Result<Shape, Misread> {
    let parts = parts(text, at.clone(), style)?;
    if let [Part::Outside(all)] = parts.as_slice() {
        return no_brackets::without_brackets(text, trim(text, all.clone()));
    }
    let separator = separator(text, &parts);
    let comma = if separator == ';' { Comma::Decimal } else { Comma::Separates };
    check_separators(text, &parts, separator)?;
    let mut places = Vec::new();
    let mut tail = at.end..at.end;
    let last = parts.len() - 1;
    for (index, part) in parts.iter().enumerate() {
        match part {
            Part::Inside { at } => places.extend(inside(text, at.clone(), separator)?),
            Part::Outside(at) => {
                let place = trim(text, at.clone());
                if place.is_empty() {
                    if index == 0 {
                        let bracket = at.end..at.end + 1;
                        return Err(Misread::new(bracket, Problem::NoFirst));
                    }
                } else if index == last && !is_place(number::slice(text, place.clone())) {
                    tail = place;
                } else {
                    places.push(place);
                }
            }
        }
    }
    if separator == ',' {
        commas::check(text, &parts)?;
    }
    Ok(Shape { places, tail, comma })
}

/// Whether a text after the last bracket is a value rather than a unit.
fn is_place(text: &str) -> bool {
    text.starts_with(|c: char| number::begins_number(c) || number::is_dash(c) || c == '.')
}

/// Another separator beside the run's own is a problem.
fn check_separators(text: &str, parts: &[Part], separator: char) -> Result<(), Misread> {
    for part in parts {
        let Part::Inside { at } = part else { continue };
        for (offset, c) in number::slice(text, at.clone()).char_indices() {
            let here = at.start + offset;
            let stray = match c {
                ':' => separator != ':',
                '/' => !number::is_fraction_slash(text, here),
                // Between semicolons a comma with digits on both sides is a decimal comma.
                ',' => separator == ':' || (separator == ';' && !commas::is_tight(text, here)),
                _ => false,
            };
            if stray {
                let problem = Problem::MixedSeparators { first: separator, second: c };
                return Err(Misread::new(here..here + 1, problem));
            }
        }
    }
    Ok(())
}
