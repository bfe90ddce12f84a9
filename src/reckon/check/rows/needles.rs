//! Every needle that the rows ask for is listed.

use super::{Blocks, place};
use crate::entry::{Entry, Pattern};
use crate::finding::{Code, Finding, Severity};
use crate::measure::{FabricLength, NeedleSize};
use crate::standards::needles::metric;

/// A needle that the rows ask for and the pattern does not list.
pub static NEEDLE_UNLISTED: Code = Code {
    name: "needle-unlisted",
    severity: Severity::Warning,
    what: "The rows ask for a needle that is not among the pattern's `needles`.",
    why: "A knitter sits down with the needles of the list and has not that one.",
    bad: "needles: 4 mm circular\nChange to 3.5 mm needles.",
    good: "needles: [4 mm circular, 3.5 mm circular]\nChange to 3.5 mm needles.",
};

/// Finds needles in the rows that are not listed.
pub fn check(entry: &Entry, pattern: &Pattern, blocks: &Blocks, findings: &mut Vec<Finding>) {
    let listed: Vec<FabricLength> = pattern.needles.iter().filter_map(|needle| metric(&needle.size)).collect();
    for (block, written) in blocks.written.iter().enumerate() {
        for statement in &written.statements {
            let whole = place(entry, block, &statement.at);
            let text = entry.prose.stretch(&whole.span);
            if !text.to_lowercase().contains("needle") {
                continue;
            }
            for (at, written) in sizes(text) {
                let Some(size) = NeedleSize::parse(written).ok() else { continue };
                let Some(diameter) = metric(&size) else { continue };
                if listed.contains(&diameter) {
                    continue;
                }
                let span = at + statement.at.start..at + statement.at.start + written.len();
                let message = format!("a needle of {} is not among the pattern's needles", size.show());
                let help = format!("add it: `needles: [ …, {} ]`", size.show());
                findings.push(Finding::new(&NEEDLE_UNLISTED, place(entry, block, &span), message).help(help));
            }
        }
    }
}

/// The needle sizes in a sentence, `3.5 mm` or `US 6`, with their places.
pub(super) fn sizes(text: &str) -> Vec<(usize, &str)> {
    let mut found = Vec::new();
    for (at, _) in text.match_indices("mm") {
        let before = text.get(..at).unwrap_or_default().trim_end();
        let start = before
            .rfind(|c: char| !c.is_ascii_digit() && c != '.')
            .map_or(0, |last| last + before.get(last..).and_then(|rest| rest.chars().next()).map_or(1, char::len_utf8));
        if start < before.len() {
            found.extend(text.get(start..at + 2).map(|written| (start, written)));
        }
    }
    for (at, _) in text.match_indices("US ") {
        let digits = text
            .get(at + 3..)
            .map_or(0, |rest| rest.bytes().take_while(|byte| byte.is_ascii_digit() || *byte == b'.').count());
        let written = text.get(at..at + 3 + digits).unwrap_or_default().trim_end_matches('.');
        if digits > 0 {
            found.push((at, written));
        }
    }
    found
}
