//! What a pattern's sizes are called.

use std::ops::Range;

use super::misread::{Misread, Problem, trimmed_range};
use super::number;
use super::shape::{self, Part, RunStyle};
use super::size_run::in_brackets;

const EXAMPLE: &str = "XS (S, M, L)";

/// The names of a pattern's sizes, the smallest first.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct SizeNames {
    labels: Vec<String>,
    ranges: Vec<Range<usize>>,
    unit: Option<String>,
}

impl SizeNames {
    /// Reads `XS (S, M, L)`, `0–3 m (3–6 m, 6–12 m)`, `S/M/L` or `One size`.
    ///
    /// With brackets a name may hold spaces, digits, dashes and slashes. A word after the last bracket is a
    /// unit if all names are numbers (`36 (38, 40) cm`), and otherwise the last name.
    ///
    /// # Errors
    /// Brackets that do not match, an empty place, two sizes with one name, a lone `S/M`, a list without
    /// brackets.
    pub fn parse(text: &str, style: RunStyle) -> Result<Self, Misread> {
        let all = trimmed_range(text);
        if all.is_empty() {
            return Err(Misread::new(all, Problem::Empty { example: EXAMPLE }));
        }
        let parts = shape::parts(text, all.clone(), style)?;
        let (mut ranges, bracketed) = match parts.as_slice() {
            [Part::Outside(_)] => (without_brackets(text, all)?, false),
            _ => (with_brackets(text, &parts)?, true),
        };
        let unit = if bracketed { split_unit(text, &mut ranges) } else { None };
        let labels: Vec<String> = ranges.iter().map(|at| tidy(number::slice(text, at.clone()))).collect();
        for (index, label) in labels.iter().enumerate() {
            let before = labels.iter().take(index);
            if before.into_iter().any(|other| same(other, label))
                && let Some(at) = ranges.get(index)
            {
                let label = label.clone();
                return Err(Misread::new(at.clone(), Problem::RepeatedLabel { label }));
            }
        }
        Ok(Self { labels, ranges, unit })
    }

    /// How many sizes there are; at least one.
    #[must_use]
    pub const fn len(&self) -> usize {
        self.labels.len()
    }

    /// Whether there is no size, which never happens.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.labels.is_empty()
    }

    /// The names in order.
    #[must_use]
    pub fn labels(&self) -> &[String] {
        &self.labels
    }

    /// The place of every name in the text that was read.
    #[must_use]
    pub fn ranges(&self) -> &[Range<usize>] {
        &self.ranges
    }

    /// The unit after the last bracket, where all names are numbers.
    #[must_use]
    pub fn unit(&self) -> Option<&str> {
        self.unit.as_deref()
    }

    /// The name of a size, counted from 0.
    #[must_use]
    pub fn get(&self, size: usize) -> Option<&str> {
        self.labels.get(size).map(String::as_str)
    }

    /// Which size a name means, counted from 0.
    ///
    /// Capitals, spaces and the kind of dash do not matter, `XXL` is `2XL`, and the unit may stand behind it.
    #[must_use]
    pub fn find(&self, name: &str) -> Option<usize> {
        let bare = self.unit.as_ref().and_then(|unit| name.trim().strip_suffix(unit.as_str())).unwrap_or(name);
        self.labels.iter().position(|label| same(label, bare))
    }

    /// The names in the trade's brackets: `XS (S, M, L)`.
    #[must_use]
    pub fn show(&self) -> String {
        let run = in_brackets(&self.labels);
        match &self.unit {
            Some(unit) => format!("{run} {unit}"),
            None => run,
        }
    }
}

fn tidy(label: &str) -> String {
    label.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Whether two names mean one size.
fn same(one: &str, two: &str) -> bool {
    plain(one) == plain(two)
}

/// A name for comparing: small letters, no spaces, one kind of dash, `XXL` as `2XL`.
fn plain(name: &str) -> String {
    let name: String = name
        .chars()
        .filter(|c| !c.is_whitespace())
        .map(|c| if number::is_dash(c) { '-' } else { c })
        .flat_map(char::to_lowercase)
        .collect();
    let letters = name.chars().take_while(|c| *c == 'x').count();
    match name.get(letters..) {
        Some(rest @ ("l" | "s")) if letters > 1 => format!("{letters}x{rest}"),
        _ => name,
    }
}

fn with_brackets(text: &str, parts: &[Part]) -> Result<Vec<Range<usize>>, Misread> {
    let separator = shape::separator(text, parts);
    check_slashes(text, parts)?;
    let mut places = Vec::new();
    for (index, part) in parts.iter().enumerate() {
        match part {
            Part::Inside { at } => places.extend(shape::inside(text, at.clone(), separator)?),
            Part::Outside(at) => {
                let place = shape::trim(text, at.clone());
                if !place.is_empty() {
                    if let Some(mark) = number::slice(text, place.clone()).find([',', ';']) {
                        let at = place.start + mark..place.start + mark + 1;
                        let written = number::slice(text, at.clone()).to_owned();
                        return Err(Misread::new(at, Problem::Leftover { written, example: EXAMPLE }));
                    }
                    places.push(place);
                } else if index == 0 {
                    return Err(Misread::new(at.end..at.end + 1, Problem::NoFirst));
                }
            }
        }
    }
    Ok(places)
}

/// `S (M/L)`: with nothing else to part the names and no slash in the first, the slash may do so.
fn check_slashes(text: &str, parts: &[Part]) -> Result<(), Misread> {
    let [Part::Outside(first), Part::Inside { at }, ..] = parts else {
        return Ok(());
    };
    let inside = number::slice(text, at.clone());
    if inside.contains([',', ';', ':']) || number::slice(text, first.clone()).contains('/') {
        return Ok(());
    }
    match inside.split_once('/') {
        Some((one, two)) => Err(label_slash(shape::trim(text, at.clone()), one, two)),
        None => Ok(()),
    }
}

fn label_slash(at: Range<usize>, one: &str, two: &str) -> Misread {
    let problem = Problem::LabelSlash { first: one.trim().to_owned(), second: two.trim().to_owned() };
    Misread::new(at, problem)
}

/// One name, or three and more between slashes.
fn without_brackets(text: &str, all: Range<usize>) -> Result<Vec<Range<usize>>, Misread> {
    let written = number::slice(text, all.clone());
    if let Some(separator) = [';', ','].into_iter().find(|c| written.contains(*c)) {
        let labels: Vec<String> = written.split(separator).map(tidy).filter(|label| !label.is_empty()).collect();
        return Err(Misread::new(all, Problem::NoBrackets { instead: in_brackets(&labels) }));
    }
    let slashes = shape::positions(text, all.clone(), '/');
    match slashes.as_slice() {
        [] => Ok(vec![all]),
        [_] => {
            let (one, two) = written.split_once('/').unwrap_or((written, ""));
            if one.trim().is_empty() || two.trim().is_empty() {
                return Err(Misread::new(all, Problem::EmptyPlace));
            }
            Err(label_slash(all, one, two))
        }
        _ => {
            let mut places = Vec::new();
            let mut start = all.start;
            for end in slashes.iter().copied().chain([all.end]) {
                let place = shape::trim(text, start..end);
                if place.is_empty() {
                    let from = start.saturating_sub(1).max(all.start);
                    return Err(Misread::new(from..(end + 1).min(all.end), Problem::EmptyPlace));
                }
                places.push(place);
                start = end + 1;
            }
            Ok(places)
        }
    }
}

/// Takes a unit off the end where every other name is a number.
fn split_unit(text: &str, ranges: &mut Vec<Range<usize>>) -> Option<String> {
    let (last, others) = ranges.split_last()?;
    let last = number::slice(text, last.clone());
    let is_number = |at: &Range<usize>| {
        let label = number::slice(text, at.clone());
        label.chars().any(number::begins_number) && !label.chars().any(char::is_alphabetic)
    };
    let is_unit = !last.chars().any(|c| c.is_ascii_digit()) && last.chars().any(|c| c.is_alphabetic() || c == '"');
    if others.len() < 2 || !is_unit || !others.iter().all(is_number) {
        return None;
    }
    let unit = tidy(last);
    ranges.pop();
    Some(unit)
}
