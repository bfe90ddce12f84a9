//! Rows that are named in the text or in the rows are there.

use super::Blocks;
use crate::entry::{Entry, Pattern};
use crate::finding::{Code, Finding, Severity, nearest};
use crate::notation::rows::{Doing, RowName, Told};
use crate::reckon::check::place::in_sizes;
use crate::source::Place;
use std::collections::BTreeSet;

/// A row that is named and is not there.
pub static ROW_UNKNOWN: Code = Code {
    name: "row-unknown",
    severity: Severity::Warning,
    what: "A repeat or the text names a row, by its number or its name, that is not among the rows.",
    why: "A knitter looks for it in vain, mostly because rows were numbered anew.",
    bad: "Row 1: Knit.\nRow 2: Purl.\nRepeat rows 1-3 4 times more.",
    good: "Row 1: Knit.\nRow 2: Purl.\nRepeat rows 1-2 4 times more.",
};

/// Finds row numbers in the text around the blocks that no row has. Those of a chart are left alone.
pub fn check(entry: &Entry, blocks: &Blocks, findings: &mut Vec<Finding>) {
    let mut numbers = BTreeSet::new();
    let mut others = false;
    for statement in blocks.written.iter().flat_map(|written| &written.statements) {
        if let Doing::Row { label: Some(label), .. } = &statement.doing {
            numbers.extend(label.numbers.iter().copied());
            others |= label.others.is_some();
        }
    }
    if numbers.is_empty() {
        return;
    }
    let source = entry.prose.source();
    let start = entry.prose.start();
    let inside = |at: usize| entry.prose.rows.iter().any(|rows| rows.at.contains(&(at + start)));
    for (at, word) in words(source) {
        if !matches!(word.to_lowercase().as_str(), "row" | "rows" | "rnd" | "rnds" | "round" | "rounds") || inside(at) {
            continue;
        }
        let after = at + word.len();
        let (named, end) = numbers_at(source, after);
        let line_start = source.get(..at).and_then(|before| before.rfind('\n')).map_or(0, |line| line + 1);
        let line = source.get(line_start..).and_then(|rest| rest.lines().next()).unwrap_or_default();
        if line.to_lowercase().contains("chart") {
            continue;
        }
        let largest = numbers.iter().next_back().copied().unwrap_or(0);
        let is_there = |row: &u32| numbers.contains(row) || (others && *row <= largest + 1);
        let missing = named.iter().find(|row| !is_there(row));
        if let Some(row) = missing {
            let span = at + start..end + start;
            let message = format!("there is no row {row}");
            let help = format!("the last row has the number {largest}");
            findings
                .push(Finding::new(&ROW_UNKNOWN, Place { file: entry.origin.file.clone(), span }, message).help(help));
        }
    }
}

/// Tells of a name in a place that no row of the size has, with the nearest one.
pub fn nameless(entry: &Entry, pattern: &Pattern, blocks: &Blocks, at: Place, told: &Told) -> Finding {
    let rows = blocks.written.iter().flat_map(|written| &written.statements);
    let names: Vec<&RowName> = rows
        .filter_map(|statement| match &statement.doing {
            Doing::Row { label: Some(label), .. } => label.name.as_ref(),
            _ => None,
        })
        .collect();
    let written = entry.prose.stretch(&at.span).trim().to_owned();
    let sizes: Vec<usize> = told.sizes.iter().map(|(size, _)| *size).collect();
    let some = if sizes.len() == pattern.size_count() { String::new() } else { in_sizes(pattern, &sizes) };
    let key = RowName::of(&written).map_or_else(|| written.to_lowercase(), |name| name.key().to_owned());
    let near = nearest(&key, names.iter().map(|name| name.key()));
    let near = names.iter().find(|name| near == Some(name.key()));
    let is_elsewhere = near.is_some_and(|near| near.key() == key);
    let before = if is_elsewhere { " before this" } else { "" };
    let help = match near {
        // It comes later, or is for other sizes.
        Some(_) if is_elsewhere => "write it out before this, for every size that works it".to_owned(),
        Some(near) => format!("did you mean `{}`?", near.written),
        None => format!("give the row its name before its colon: `{written}: …`"),
    };
    Finding::new(&ROW_UNKNOWN, at, format!("there is no row called `{written}`{before}{some}")).help(help)
}

/// The words of a text with their places.
fn words(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let mut at = 0;
    text.split(|c: char| !c.is_alphanumeric()).map(move |word| {
        let here = at;
        // The sign that parts two words may be of several bytes.
        let after = here + word.len();
        at = after + text.get(after..).and_then(|rest| rest.chars().next()).map_or(0, char::len_utf8);
        (here, word)
    })
}

/// The row numbers at a place, `3` or `3–6`, and where they end.
fn numbers_at(text: &str, at: usize) -> (Vec<u32>, usize) {
    let number = |at: usize| -> Option<(u32, usize)> {
        let rest = text.get(at..)?;
        let spaces = rest.len() - rest.trim_start_matches(' ').len();
        let digits = rest.get(spaces..)?.bytes().take_while(u8::is_ascii_digit).count();
        let value = rest.get(spaces..spaces + digits)?.parse().ok()?;
        Some((value, at + spaces + digits))
    };
    let Some((first, end)) = number(at) else { return (Vec::new(), at) };
    let rest = text.get(end..).unwrap_or_default();
    let dash = rest.chars().next().filter(|c| matches!(c, '-' | '–'));
    match dash.and_then(|dash| number(end + dash.len_utf8())) {
        Some((last, end)) => (vec![first, last], end),
        None => (vec![first], end),
    }
}
