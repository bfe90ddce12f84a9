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
    // What a list or a quotation puts before its lines is no part of the block; a fence set in further than three closes none.
    let column = at.start - text.get(..at.start)?.rfind('\n').map_or(0, |end| end + 1);
    let bare = |line: &str| {
        let bare = line.trim_start_matches([' ', '\t', '>']).to_owned();
        if line.len() - bare.len() <= column + 3 { bare } else { String::new() }
    };
    if fence.is_empty() || lines.next_back().is_some_and(|last| closes(&bare(last))) {
        return None;
    }
    let place = Place { file: file.clone(), span: at.start..at.start.saturating_add(first.len()) };
    let is_rest = text.get(at.end..).is_none_or(|behind| behind.trim().is_empty());
    let what =
        if is_rest { "the rest of the text belongs to it" } else { "it goes on to the end of the list or quotation" };
    let finding = Finding::new(&FENCE_OPEN, place, format!("the block is not closed, so {what}"));
    let signs = if fence.starts_with('~') { "tildes" } else { "backticks" };
    Some(finding.help(format!("write the {} {signs} of its first line alone on the line behind it", fence.len())))
}

/// Returns the backticks or tildes that a line begins with.
fn fence(line: &str) -> &str {
    let sign = line.chars().next().filter(|c| matches!(c, '`' | '~'));
    let length = line.chars().take_while(|c| Some(*c) == sign).count();
    // Both signs are of one byte.
    line.get(..length).unwrap_or_default()
}
