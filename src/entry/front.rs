//! Splits a Markdown file into front matter and prose.

use crate::finding::{Code, Finding, Severity};
use crate::source::{FilePath, Place};
use std::ops::Range;

/// A file with nothing in it.
pub static EMPTY_FILE: Code = Code {
    name: "empty-file",
    severity: Severity::Error,
    what: "A file in a kind's folder, or a register, is empty.",
    why: "It looks like an entry and is none; something may have been lost.",
    bad: "(nothing)",
    good: "---\ntitle: Reeds, at last\n---",
};

/// A Markdown file that does not begin with front matter.
pub static NO_FRONT_MATTER: Code = Code {
    name: "no-front-matter",
    severity: Severity::Error,
    what: "A file does not begin with a line `---` and its keys.",
    why: "Without a title the entry cannot be shown or linked.",
    bad: "# Reeds, at last",
    good: "---\ntitle: Reeds, at last\n---",
};

/// Front matter whose second `---` is missing.
pub static FRONT_MATTER_OPEN: Code = Code {
    name: "front-matter-open",
    severity: Severity::Error,
    what: "The front matter is opened by `---` and never closed.",
    why: "Where the keys end and the text begins cannot be told.",
    bad: "---\ntitle: Reeds, at last\n\nIt rained all week.",
    good: "---\ntitle: Reeds, at last\n---\n\nIt rained all week.",
};

/// The two parts of a file, as byte ranges.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Parts {
    /// The YAML between the lines of dashes.
    pub yaml: Range<usize>,
    /// The Markdown after them.
    pub body: Range<usize>,
}

/// Splits a file's text at the lines `---`; spaces after the dashes and Windows line ends are allowed.
///
/// # Errors
/// A finding, if the file is empty, has no front matter or does not close it.
pub fn split(file: &FilePath, text: &str) -> Result<Parts, Finding> {
    if text.trim().is_empty() {
        return Err(Finding::new(&EMPTY_FILE, Place::whole(file), "the file is empty")
            .help("begin it with `---`, `title: …`, `---`, or delete it"));
    }
    let mut lines = text.split_inclusive('\n');
    let first = lines.next().unwrap_or_default();
    if first.trim_end() != "---" {
        let place = Place { file: file.clone(), span: 0..first.trim_end().len().max(1).min(text.len()) };
        let help = if first.trim_start().starts_with("---") && first.trim() == "---" {
            "the line `---` must begin at the very left"
        } else {
            "begin the file with a line `---`, then `title: …` and the other keys, then `---` again"
        };
        return Err(Finding::new(&NO_FRONT_MATTER, place, "the file does not begin with front matter").help(help));
    }
    let start = first.len();
    let mut at = start;
    for line in lines {
        if line.trim_end() == "---" {
            return Ok(Parts { yaml: start..at, body: at + line.len()..text.len() });
        }
        at += line.len();
    }
    let place = Place { file: file.clone(), span: 0..3 };
    Err(Finding::new(&FRONT_MATTER_OPEN, place, "the front matter is never closed")
        .help("put a line `---` after the last key"))
}
