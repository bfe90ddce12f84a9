//! Findings for scripts: one JSON object a line.

use super::Finding;
use crate::source::{Position, Texts};
use serde::Serialize;

#[derive(Serialize)]
struct Line<'a> {
    code: &'a str,
    severity: &'a str,
    file: &'a str,
    line: usize,
    column: usize,
    message: &'a str,
    help: Option<&'a str>,
}

/// Returns the findings as JSON, one object a line with `code`, `severity`, `file`, `line`, `column`, `message`, `help`.
///
/// Lines and columns count from one, columns in characters; `help` is null where there is no advice.
pub fn to_json(findings: &[Finding], texts: &Texts) -> String {
    let mut out = String::new();
    for finding in findings {
        let position = Position::of(texts.of(&finding.at.file), finding.at.span.start);
        let line = Line {
            code: finding.code.name,
            severity: finding.severity.word(),
            file: finding.at.file.as_str(),
            line: position.line,
            column: position.column,
            message: &finding.message,
            help: finding.help.as_deref(),
        };
        // A struct of texts and numbers always serialises; the empty line would show in the output's own test.
        out.push_str(&serde_json::to_string(&line).unwrap_or_default());
        out.push('\n');
    }
    out
}
