//! The stitches behind the rows of a pattern, as far as its page tells them.

use crate::catalogue::Catalogue;
use crate::entry::{Entry, Pattern};
use crate::notation::rows::{Doing, Followed, Label, Rows, Seen, Span, Statement, follow};
use crate::reckon::{Blocks, row_blocks};

/// The rows of a pattern, read and counted in every size.
#[derive(Clone, Debug)]
pub struct CountedRows {
    blocks: Blocks,
    followed: Followed,
}

/// How many stitches there are behind a line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LineCount {
    /// The stitches of each size.
    pub sizes: Vec<i64>,
    /// Whether the line is worked again later, so that this is what the first time leaves.
    pub at_first: bool,
}

impl CountedRows {
    /// Returns the rows of a pattern.
    pub fn new(catalogue: &Catalogue, entry: &Entry, pattern: &Pattern) -> Self {
        let blocks = row_blocks(catalogue, entry, pattern);
        let followed = follow(&blocks.written, pattern.size_count());
        Self { blocks, followed }
    }

    /// Returns what each line of a block leaves, where that is known and worth telling: where it differs from what was
    /// there before, and the line does not say it itself.
    pub fn of_lines(&self, block: usize, lines: &[Span]) -> Vec<Option<LineCount>> {
        let worked = self.worked(block);
        let again = worked_again(&worked);
        let mut before = block.checked_sub(1).and_then(|last| {
            let last = self.worked(last);
            whole(last.iter().rfind(|(statement, _)| statement.doing != Doing::Aside)?.1)
        });
        let mut told = Vec::with_capacity(lines.len());
        for line in lines {
            let mut is_said = false;
            let mut count: Option<Vec<i64>> = None;
            let mut at_first = false;
            let mut is_row = false;
            for ((statement, seen), again) in worked.iter().zip(&again) {
                if !line.contains(&statement.at.start) || is_among_others(statement) {
                    continue;
                }
                if statement.doing == Doing::Aside {
                    // A count behind an aside is that of what was worked before it.
                    is_said |= statement.stated.is_some();
                    continue;
                }
                let after = whole(seen);
                let says = statement.stated.is_some()
                    || matches!(statement.doing, Doing::CastOn(_))
                    || (*again && statement.change.is_some());
                is_said = says || (is_said && after == count);
                (count, is_row, at_first) = (after, true, at_first || *again);
            }
            let differs = count.as_ref().filter(|count| !is_said && before.as_ref() != Some(count));
            told.push(differs.map(|sizes| LineCount { sizes: sizes.clone(), at_first }));
            if is_row {
                before = count;
            }
        }
        told
    }

    /// The statements of a block, headings aside, each with what there is behind it.
    fn worked(&self, block: usize) -> Vec<(&Statement, &Seen)> {
        let statements =
            self.blocks.written.get(block).map(|written| written.statements.as_slice()).unwrap_or_default();
        let counts = self.followed.counts.get(block).map(Vec::as_slice).unwrap_or_default();
        statements
            .iter()
            .zip(counts)
            .filter(|(statement, _)| !matches!(statement.doing, Doing::Heading { .. }))
            .collect()
    }
}

/// Whether a row is worked between others, as rows 2, 4 and 6 are: what it leaves differs from time to time.
fn is_among_others(statement: &Statement) -> bool {
    let Doing::Row { label: Some(label), .. } = &statement.doing else { return false };
    let follow = label.numbers.windows(2).all(|pair| matches!(pair, [one, next] if *next == one + 1));
    label.others.is_some() || !follow
}

/// The stitches of all sizes; nothing where one is not known, or where none is left to be counted.
fn whole(seen: &Seen) -> Option<Vec<i64>> {
    let all: Option<Vec<i64>> = seen.iter().copied().collect();
    all.filter(|all| all.iter().any(|stitches| *stitches > 0))
}

/// Which statements a later one has worked again.
fn worked_again(worked: &[(&Statement, &Seen)]) -> Vec<bool> {
    let mut again = vec![false; worked.len()];
    for (at, (statement, _)) in worked.iter().enumerate() {
        let Doing::Repeat(repeated) = &statement.doing else { continue };
        let mut left = match &repeated.rows {
            Rows::Last(number) => usize::try_from(*number).unwrap_or(usize::MAX),
            Rows::Numbered(_) | Rows::Named(_) => usize::MAX,
        };
        for (place, (earlier, _)) in again.iter_mut().zip(worked).take(at).rev() {
            let label = match &earlier.doing {
                Doing::Row { label, .. } => label.as_ref(),
                Doing::CastOn(_) => break,
                _ => None,
            };
            *place |= match &repeated.rows {
                Rows::Last(_) => left > 0,
                Rows::Numbered(rows) => label.is_some_and(|label| names(label, rows)),
                Rows::Named(name) => {
                    let own = label.and_then(|label| label.name.as_ref());
                    let is_it = left > 0 && own.is_some_and(|own| own.key() == name.key());
                    // One of the same name before it is another.
                    left = if is_it { 0 } else { left };
                    is_it
                }
            };
            let rows = match &earlier.doing {
                Doing::Chart(charted) => charted.rows.len(),
                _ => label.map_or(1, |label| label.numbers.len().max(1)),
            };
            left = left.saturating_sub(rows);
            // Row 1 of an earlier part is another.
            if matches!(repeated.rows, Rows::Numbered(_)) && label.is_some_and(|label| label.numbers.contains(&1)) {
                break;
            }
        }
    }
    again
}

/// Whether a label stands for one of these rows.
fn names(label: &Label, rows: &[u32]) -> bool {
    rows.iter().any(|row| label.numbers.contains(row) || label.others.is_some_and(|others| others % 2 == row % 2))
}
