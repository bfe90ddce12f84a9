//! Finds size runs in the midst of words.

use super::brackets::numbers_in_brackets;
use super::count::Count;
use super::number::{begins_number, is_dash};
use super::ordinal::{ordinal_ending, without_ordinals};
use super::run::read_run;
use super::shape::RunStyle;
use super::system::Inch;
use std::ops::Range;

/// A size run in the midst of words, by its bytes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RunInText {
    /// The whole of it, from its first number to its last bracket.
    pub at: Range<usize>,
    /// The place of every size's value, the smallest size first.
    pub values: Vec<Range<usize>>,
}

/// Returns the size runs of a text that have a value for each of so many sizes.
///
/// Such a run is a number or a dash with one or more brackets of numbers behind it, `20 (22, 24)` or `20 (22, 24)[26, 28]`; the
/// numbers may be ordinal, `8th (7th, 6th)`.
/// Runs without brackets are left out, since `1/2/3` may as well be a day; so are those in the bracket that the house keeps for
/// repeats. There is none for a single size.
#[must_use]
pub fn runs_in(text: &str, sizes: usize, style: RunStyle) -> Vec<RunInText> {
    let mut found: Vec<RunInText> = Vec::new();
    let mut past = 0;
    if sizes < 2 {
        return found;
    }
    let written = text;
    let text = &*without_ordinals(text);
    for (open, _) in text.match_indices(['(', '[', '{']) {
        if open < past {
            continue;
        }
        let Some(start) = first_value(text, past, open) else { continue };
        // A bracket behind the run may hold numbers of its own.
        if let Some((end, places)) = ends(text, open, sizes - 1).into_iter().rev().find_map(|end| {
            let run = read_run::<Count>(text.get(start..end)?, style, Inch::default()).ok()?;
            (run.ranges.len() == sizes && run.other.is_none()).then_some((end, run.ranges))
        }) {
            let whole = |at: Range<usize>| at.start + start..at.end + start + ordinal_ending(written, at.end + start);
            let values = places.into_iter().map(whole).collect();
            found.push(RunInText { at: start..end, values });
            past = end;
        }
    }
    found
}

/// Returns the size runs of a text for readers, in which not every number with another in brackets is one: not a year, a page,
/// a needle with its US size, nor two numbers of which one is more than four times the other.
#[must_use]
pub fn runs_in_prose(text: &str, sizes: usize, style: RunStyle) -> Vec<RunInText> {
    const NAMES: [&str; 9] = ["us", "uk", "page", "pages", "row", "rows", "rnd", "note", "number"];
    let mut runs = runs_in(text, sizes, style);
    runs.retain(|run| {
        let before = text.get(..run.at.start).unwrap_or_default().trim_end();
        let word = before.rsplit(|c: char| !c.is_alphanumeric()).next().unwrap_or_default();
        let is_named = NAMES.iter().any(|name| word.eq_ignore_ascii_case(name));
        let written = run.values.iter().filter_map(|at| text.get(at.clone()));
        let figures = |value: &str| value.trim_end_matches(char::is_alphabetic).replace(',', ".");
        let numbers: Vec<f64> = written.filter_map(|value| figures(value).parse().ok()).collect();
        let first_is_year = run.values.first().is_some_and(|at| at.len() == 4)
            && numbers.first().is_some_and(|first| (1900.0..2100.0).contains(first))
            && !text.get(run.at.end..).is_some_and(|behind| behind.trim_start().starts_with(['s', 'm', 'y', 'r']));
        let least = numbers.iter().copied().filter(|number| *number > 0.0).fold(f64::INFINITY, f64::min);
        let most = numbers.iter().copied().fold(0.0, f64::max);
        !is_named && !first_is_year && (least.is_infinite() || most <= 4.0 * least)
    });
    runs
}

/// Where the number begins that stands before a bracket.
fn first_value(text: &str, past: usize, open: usize) -> Option<usize> {
    let before = text.get(past..open)?.trim_end();
    let of_value = |c: char| begins_number(c) || is_dash(c) || matches!(c, '.' | ',' | '/');
    let value = before.trim_end_matches(of_value).len();
    let value = before.get(value..)?;
    let begin = value.find(|c| begins_number(c) || (is_dash(c) && value.chars().count() == 1))?;
    Some(past + before.len() - value.len() + begin)
}

/// Where each of the brackets ends that hold numbers and nothing else, from the first on; at most so many.
fn ends(text: &str, open: usize, most: usize) -> Vec<usize> {
    let mut ends = Vec::new();
    let mut at = open;
    while ends.len() < most {
        let Some(length) = text.get(at..).and_then(numbers_in_brackets) else { break };
        at += length;
        ends.push(at);
    }
    ends
}
