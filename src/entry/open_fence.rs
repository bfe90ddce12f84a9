//! A block of code whose end is missing.

use crate::finding::{Code, Finding, Severity};
use crate::source::{FilePath, Place};
use std::ops::Range;

/// A block that is not closed, so that the text behind it belongs to it.
pub static FENCE_OPEN: Code = Code {
    name: "fence-open",
    severity: Severity::Warning,
    what: "A block that begins with three backticks or tildes has no line that closes it.",
    why: "All that stands behind it, headings and links as well, is shown as code.",
    bad: "```rows\nRow 1: Knit.\n\n## Fit",
    good: "```rows\nRow 1: Knit.\n```\n\n## Fit",
};

/// Finds that a fenced block is not closed; `at` is the whole block in a file's text.
pub fn open_fence(file: &FilePath, text: &str, at: &Range<usize>) -> Option<Finding> {
    let block = text.get(at.clone())?;
    let mut lines = block.lines();
    let first = lines.next()?;
    let fence = fence(first);
    // A closing fence is at least as long, and nothing stands behind it.
    let closes = |line: &str| line.starts_with(fence) && line.trim_end().chars().all(|c| fence.starts_with(c));
    // What a quotation puts before its lines is no part of the block.
    let bare = |line: &str| line.trim_start_matches([' ', '\t', '>']).to_owned();
    if fence.is_empty() || lines.next_back().is_some_and(|last| closes(&bare(last))) {
        return None;
    }
    let place = Place { file: file.clone(), span: at.start..at.start.saturating_add(first.len()) };
    let finding = Finding::new(&FENCE_OPEN, place, "the block is not closed, so the rest of the text belongs to it");
    Some(finding.help(format!("write `{fence}` alone on the line behind the block")))
}

/// Returns the backticks or tildes that a line begins with.
fn fence(line: &str) -> &str {
    let sign = line.chars().next().filter(|c| matches!(c, '`' | '~'));
    let length = line.chars().take_while(|c| Some(*c) == sign).count();
    // Both signs are of one byte.
    line.get(..length).unwrap_or_default()
}
