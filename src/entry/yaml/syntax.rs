//! A text that is not YAML, explained.

use crate::finding::{Code, Severity};
use std::ops::Range;

/// Front matter or a register that YAML cannot read.
pub static SYNTAX: Code = Code {
    name: "not-yaml",
    severity: Severity::Error,
    what: "The front matter, or a whole register, is not YAML.",
    why: "Nothing in it can be read, so the entry would be missing from the site.",
    bad: "title: Reeds: at last",
    good: "title: \"Reeds: at last\"",
};

/// What is wrong in a text that is not YAML.
#[derive(Clone, Debug)]
pub struct Trouble {
    /// The guilty bytes; to the end of the line where it begins.
    pub at: Range<usize>,
    /// What is wrong.
    pub message: String,
    /// What to do.
    pub help: String,
}

/// Explains why a text is not YAML.
pub fn explain(text: &str, error: &serde_yaml::Error) -> Trouble {
    let message = error.to_string();
    // What is never closed is noticed at the end of the text; the place to mend it is where it was opened.
    let opened = if message.contains("unexpected end of stream") { opened_at(&message) } else { None };
    let noticed = error.location().map(|location| (location.line(), location.column()));
    let (line, column) = opened.or(noticed).unwrap_or((1, 1));
    let mut start = offset(text, line, column);
    // Past the last line there is nothing to show; the last thing written is shown instead.
    if text.get(start..).is_none_or(|rest| rest.trim().is_empty()) {
        let written = text.trim_end();
        start = written.rfind('\n').map_or(0, |newline| newline + 1);
    }
    let here = text.get(start..).unwrap_or_default();
    let line_start = text.get(..start).and_then(|before| before.rfind('\n')).map_or(0, |newline| newline + 1);
    let whole_line = text.get(line_start..).and_then(|rest| rest.lines().next()).unwrap_or_default();
    let (message, help) = words(&message, here, whole_line);
    Trouble { at: start..line_start + whole_line.len(), message, help }
}

/// Returns the line and column, from one, at which a message of the parser says that something began.
fn opened_at(message: &str) -> Option<(usize, usize)> {
    let (_, began) = message.split_once("while ")?;
    let (_, place) = began.split_once(" at line ")?;
    let (line, column) = place.split_once(" column ")?;
    let digits: String = column.chars().take_while(char::is_ascii_digit).collect();
    Some((line.parse().ok()?, digits.parse().ok()?))
}

/// Returns the byte offset of a line and a column of characters, both from one.
fn offset(text: &str, line: usize, column: usize) -> usize {
    let line_start: usize = text.split_inclusive('\n').take(line.saturating_sub(1)).map(str::len).sum();
    let inside = text.get(line_start..).unwrap_or_default();
    line_start + inside.char_indices().nth(column.saturating_sub(1)).map_or(inside.len(), |(at, _)| at)
}

/// Returns what is wrong and what to do, for the parser's message, the text at its place and the line it stands in.
fn words(message: &str, at: &str, line: &str) -> (String, String) {
    let indent: String = line.chars().take_while(|c| c.is_whitespace()).collect();
    if at.starts_with('\t') || indent.contains('\t') {
        return (
            "a tab stands where YAML wants spaces".to_owned(),
            "indent with spaces; most editors can turn tabs into spaces".to_owned(),
        );
    }
    if message.contains("mapping values are not allowed") {
        return (
            "a second `: ` on one line, or a line indented too far".to_owned(),
            "put a text that holds `: ` in quotes, and let keys that belong together begin in the same column"
                .to_owned(),
        );
    }
    if message.contains("cannot start any token") {
        return ("a text may not begin with this character".to_owned(), "put the whole text in quotes".to_owned());
    }
    if message.contains("unexpected end of stream") {
        return ("a quote or bracket is opened and never closed".to_owned(), "close it, or take it away".to_owned());
    }
    if message.contains("did not find expected ',' or") {
        return (
            "a list or `{ … }` is not closed, or a comma is missing".to_owned(),
            "separate with commas and close with `]` or `}`; put a text with commas in quotes".to_owned(),
        );
    }
    if message.contains("did not find expected key") || message.contains("could not find expected ':'") {
        return (
            "a line here is no `key: value`".to_owned(),
            "check that a colon and a space follow the key, that quotes are closed and that keys begin in the same column".to_owned(),
        );
    }
    let plain = message.split(" at line ").next().unwrap_or(message);
    (format!("this is not YAML: {plain}"), "check colons, quotes and indentation here and in the line above".to_owned())
}
