//! Rows are numbered one after another, and their sides alternate.

use super::{Blocks, place};
use crate::entry::{Entry, Pattern};
use crate::finding::{Code, Finding, Severity};
use crate::notation::rows::{Doing, Label, Side};
use crate::reckon::check::place::in_sizes;
use std::collections::BTreeMap;

/// A row number that is missing or there twice.
pub static ROW_NUMBERS: Code = Code {
    name: "row-numbers",
    severity: Severity::Warning,
    what: "A row number is left out or is there twice.",
    why: "A knitter who ticks off rows loses one or works one twice.",
    bad: "Row 1: Knit.\nRow 3: Purl.",
    good: "Row 1: Knit.\nRow 2: Purl.",
};

/// Sides that do not alternate.
pub static ROW_SIDES: Code = Code {
    name: "row-sides",
    severity: Severity::Warning,
    what: "Rows that follow each other are said to be on the same side, a row is worked again from the other side than it says, or a round has a side.",
    why: "The knitter looks at the wrong side of the work from there on.",
    bad: "Row 1 (RS): Knit.\nRow 2 (RS): Purl.",
    good: "Row 1 (RS): Knit.\nRow 2 (WS): Purl.",
};

/// Rows that are numbered together.
#[derive(Default)]
struct Section<'a> {
    /// Each number with its label.
    rows: BTreeMap<u32, &'a Label>,
    others: Option<u32>,
    /// The first row of each parity whose side is said.
    sides: [Option<(u32, Side)>; 2],
}

/// Finds numbers and sides that do not follow each other, in each size where some rows are not for all.
pub fn check(entry: &Entry, pattern: &Pattern, blocks: &Blocks, findings: &mut Vec<Finding>) {
    let mut statements = blocks.written.iter().flat_map(|written| &written.statements);
    if statements.all(|statement| statement.only.is_none()) {
        check_size(entry, blocks, 0, findings);
        return;
    }
    // What is found in several sizes is told once.
    let mut told: Vec<(Finding, Vec<usize>)> = Vec::new();
    for size in 0..pattern.size_count() {
        let mut found = Vec::new();
        check_size(entry, blocks, size, &mut found);
        for finding in found {
            let same = |(known, _): &&mut (Finding, Vec<usize>)| {
                known.at.span == finding.at.span && known.message == finding.message
            };
            match told.iter_mut().find(same) {
                Some((_, sizes)) => sizes.push(size),
                None => told.push((finding, vec![size])),
            }
        }
    }
    findings.extend(told.into_iter().map(|(mut finding, sizes)| {
        if sizes.len() < pattern.size_count() {
            finding.message.push_str(&in_sizes(pattern, &sizes));
        }
        finding
    }));
}

fn check_size(entry: &Entry, blocks: &Blocks, size: usize, findings: &mut Vec<Finding>) {
    for (block, written) in blocks.written.iter().enumerate() {
        let mut section = Section::default();
        for statement in written.statements.iter().filter(|statement| statement.is_for(size)) {
            match &statement.doing {
                Doing::Row { label: Some(label), .. } if !label.numbers.is_empty() || label.others.is_some() => {
                    if label.numbers.first() == Some(&1)
                        && section.rows.keys().next_back().is_some_and(|last| *last > 1)
                    {
                        section.close(entry, block, findings);
                        section = Section::default();
                    }
                    section.add(entry, block, label, findings);
                }
                Doing::CastOn(_) | Doing::PickUp(_) | Doing::Heading { .. } => {
                    section.close(entry, block, findings);
                    section = Section::default();
                }
                _ => {}
            }
        }
        section.close(entry, block, findings);
    }
}

impl<'a> Section<'a> {
    fn add(&mut self, entry: &Entry, block: usize, label: &'a Label, findings: &mut Vec<Finding>) {
        let here = || place(entry, block, &label.at);
        self.others = label.others.or(self.others);
        for number in &label.numbers {
            if let Some(first) = self.rows.get(number).filter(|first| first.at != label.at) {
                let also = place(entry, block, &first.at);
                let finding = Finding::new(&ROW_NUMBERS, here(), format!("row {number} is there twice"));
                findings.push(finding.help("number the rows one after another").also(also, "the first"));
            }
            self.rows.entry(*number).or_insert(label);
        }
        let (Some(side), Some(number)) = (label.side, label.numbers.first().copied()) else { return };
        if label.round {
            let finding = Finding::new(&ROW_SIDES, here(), "a round has no right or wrong side to turn to");
            findings.push(finding.help("leave the side out, or call it a row"));
            return;
        }
        // "Rows 1 and 2 (RS)" cannot be; of "Rows 1 and 3 (RS)" all are odd.
        let alike = label.numbers.iter().all(|other| other % 2 == number % 2);
        let odd = usize::from(number % 2 == 1);
        let wrong = if alike {
            let same = self.sides.get(odd).copied().flatten().filter(|(_, said)| *said != side);
            same.or_else(|| self.sides.get(1 - odd).copied().flatten().filter(|(_, said)| *said == side))
        } else {
            Some((number, side))
        };
        match wrong {
            Some((row, _)) => {
                let word = if side == Side::Right { "RS" } else { "WS" };
                let message = format!("row {number} is said to be {word}, which does not go with row {row}");
                findings.push(
                    Finding::new(&ROW_SIDES, here(), message).help("worked flat, right and wrong sides alternate"),
                );
            }
            None => {
                if let Some(place) = self.sides.get_mut(odd) {
                    *place = place.or(Some((number, side)));
                }
            }
        }
    }

    /// Finds the numbers that are left out.
    fn close(&self, entry: &Entry, block: usize, findings: &mut Vec<Finding>) {
        let numbers: Vec<u32> = self.rows.keys().copied().collect();
        for pair in numbers.windows(2) {
            let [before, after] = pair else { continue };
            let covered = |row: &u32| self.others.is_some_and(|others| others % 2 == row % 2);
            let missing: Vec<u32> = (before + 1..*after).filter(|row| !covered(row)).collect();
            let (Some(first), Some(label)) = (missing.first(), self.rows.get(after)) else { continue };
            let what = match missing.last() {
                Some(last) if last != first => format!("rows {first} to {last} are"),
                _ => format!("row {first} is"),
            };
            let message = format!("{what} missing between {before} and {after}");
            let help = "number the rows one after another, or say of one `Row 2 and all WS rows`";
            findings.push(Finding::new(&ROW_NUMBERS, place(entry, block, &label.at), message).help(help));
        }
    }
}
