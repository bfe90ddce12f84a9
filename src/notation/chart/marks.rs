//! What is repeated in each row: the columns that are given for all, and the `|` in a row that move them.

use super::build::{Problem, Trouble};
use std::collections::BTreeMap;
use std::ops::Range;

/// A row as it was written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct MarkedRow {
    /// Its cells, from left to right.
    pub cells: Vec<char>,
    /// Before which cells a `|` stands.
    pub marks: Vec<usize>,
}

impl MarkedRow {
    /// Reads a row; where `|` is no mark, it is a cell like any other.
    pub fn read(written: &str, has_marks: bool) -> Self {
        let mut row = Self { cells: Vec::new(), marks: Vec::new() };
        for character in written.chars().filter(|c| !c.is_whitespace()) {
            match character {
                '|' if has_marks => row.marks.push(row.cells.len()),
                cell => row.cells.push(cell),
            }
        }
        row
    }
}

/// Returns what is repeated in most rows, and in those where it is moved; both in cells counted from 0 from the left.
///
/// `columns` are counted from 1 from the right. Without them the box is that of the first row.
pub(super) fn repeats(
    columns: Option<(u32, u32)>,
    rows: &[MarkedRow],
    width: usize,
    wrong: &mut Vec<(Trouble, Problem)>,
) -> (Option<Range<usize>>, BTreeMap<usize, Range<usize>>) {
    let given = columns.and_then(|(from, to)| {
        let (from, to) = (usize::try_from(from).ok()?, usize::try_from(to).ok()?);
        let fits = from >= 1 && from <= to && to <= width;
        if !fits {
            wrong.push((Trouble::Repeat, Problem::Repeat { columns: width }));
        }
        fits.then(|| width.saturating_sub(to)..width.saturating_sub(from.saturating_sub(1)))
    });
    let mut marked: BTreeMap<usize, Range<usize>> = BTreeMap::new();
    for (at, row) in rows.iter().enumerate() {
        match row.marks.as_slice() {
            [] => {}
            [start, end] if start < end => {
                marked.insert(at, *start..*end);
            }
            marks => {
                let problem = Problem::Marks { row: at.saturating_add(1), marks: marks.len() };
                wrong.push((Trouble::Row(at, 0..row.cells.len()), problem));
            }
        }
    }
    if columns.is_none()
        && let Some(first) = marked.keys().next().copied()
        && let Some((at, row)) = rows.iter().enumerate().find(|(_, row)| row.marks.is_empty())
    {
        let problem = Problem::Unmarked { row: at.saturating_add(1), marked: first.saturating_add(1) };
        wrong.push((Trouble::Row(at, 0..row.cells.len()), problem));
    }
    let usual = given.or_else(|| marked.values().next().cloned());
    let Some(others) = usual.as_ref().map(Range::len) else { return (None, BTreeMap::new()) };
    for (at, cells) in marked.iter().filter(|(_, cells)| cells.len() != others) {
        let problem = Problem::RepeatWidth { row: at.saturating_add(1), cells: cells.len(), others };
        wrong.push((Trouble::Row(*at, cells.clone()), problem));
    }
    marked.retain(|_, cells| Some(&*cells) != usual.as_ref());
    (usual, marked)
}
