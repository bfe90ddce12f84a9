//! Rows for some of the sizes name sizes that are there, and leave none with nothing to work.

use super::{Blocks, place};
use crate::entry::{Entry, Pattern, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::notation::rows::{Doing, Statement};
use crate::reckon::check::place::{key, sizes};
use crate::reckon::check::size::{UNKNOWN_SIZE, advice};

/// A size that no row is for.
pub static SIZE_IDLE: Code = Code {
    name: "size-idle",
    severity: Severity::Warning,
    what: "All rows are for some of the sizes, and for one size there is none.",
    why: "A knitter of that size finds nothing to work.",
    bad: "sizes: S (M, L)\nSize S only: Cast on 40 sts.\nSize M only: Cast on 44 sts.",
    good: "sizes: S (M, L)\nSize S only: Cast on 40 sts.\nSizes M and L only: Cast on 44 sts.",
};

/// Finds sizes that the pattern has not, and sizes for which there are no rows.
pub fn check(entry: &Entry, pattern: &Pattern, blocks: &Blocks, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    for (block, written) in blocks.written.iter().enumerate() {
        for at in &written.unknown_sizes {
            let at = place(entry, block, at);
            let name = entry.prose.stretch(&at.span);
            let help = match &pattern.sizes {
                // A number is meant as that of a size, and no name is near it.
                Some(names) if name.trim().parse::<u32>().is_ok() => match names.len() {
                    1 => "the pattern has one size".to_owned(),
                    many => format!("it has {many} sizes; write the name of one, or its number from 1 to {many}"),
                },
                Some(names) => advice(names, name),
                None => "give the pattern its `sizes`".to_owned(),
            };
            let message = format!("the pattern has no size `{name}`");
            findings.push(Finding::new(&UNKNOWN_SIZE, at, message).help(help));
        }
    }
    let works = |statement: &&Statement| !matches!(statement.doing, Doing::Heading { .. } | Doing::Aside);
    let worked: Vec<&Statement> = blocks.written.iter().flat_map(|written| &written.statements).filter(works).collect();
    let count = pattern.size_count();
    if blocks.written.iter().any(|written| !written.unknown_sizes.is_empty()) {
        return;
    }
    let idle: Vec<usize> = (0..count).filter(|size| !worked.iter().any(|statement| statement.is_for(*size))).collect();
    if !worked.is_empty() && !idle.is_empty() && idle.len() < count {
        let message = format!("no row is for {}", sizes(pattern, &idle));
        let help = "name these sizes too where rows are for some only, or write `All other sizes:`";
        findings.push(Finding::new(&SIZE_IDLE, key(entry, "sizes", placing), message).help(help));
    }
}
