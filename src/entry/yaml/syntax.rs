//! A text that is not YAML, explained.

use crate::finding::{Code, Severity};

/// Front matter or a register that YAML cannot read.
pub static SYNTAX: Code = Code {
    name: "not-yaml",
    severity: Severity::Error,
    what: "The front matter, or a whole register, is not YAML.",
    why: "Nothing in it can be read, so the entry would be missing from the site.",
    bad: "title: Reeds: at last",
    good: "title: \"Reeds: at last\"",
};

/// Returns what is wrong and what to do, for serde_yaml's message and the text at its place.
pub fn explain(message: &str, at: &str, line: &str) -> (String, String) {
    let indent: String = line.chars().take_while(|c| c.is_whitespace()).collect();
    if at.starts_with('\t') || indent.contains('\t') {
        return ("a tab stands where YAML wants spaces".to_owned(), "indent with spaces; most editors can turn tabs into spaces".to_owned());
    }
    if message.contains("mapping values are not allowed") {
        return (
            "a second `: ` on one line, or a line indented too far".to_owned(),
            "put a text that holds `: ` in quotes, and let keys that belong together begin in the same column".to_owned(),
        );
    }
    if message.contains("cannot start any token") {
        return ("a text may not begin with this character".to_owned(), "put the whole text in quotes".to_owned());
    }
    if message.contains("unexpected end of stream") {
        return ("a quote or bracket is opened and never closed".to_owned(), "close it, or take it away".to_owned());
    }
    if message.contains("did not find expected ',' or") {
        return ("a list or `{ … }` is not closed, or a comma is missing".to_owned(), "separate with commas and close with `]` or `}`; put a text with commas in quotes".to_owned());
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
