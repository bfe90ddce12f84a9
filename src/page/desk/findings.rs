//! Findings, by file, each with its text, reason and cure.

use super::super::view::Link;
use super::super::{Item, Shown, words};
use crate::entry::Entry;
use crate::finding::{Finding, Severity};
use crate::source::{Place, Position, Texts};
use serde::Serialize;
use std::collections::BTreeMap;

/// As many findings as one can mend in a sitting; more would only make the page slow.
const MOST: usize = 200;

/// All that is wrong.
#[derive(Clone, Debug, Serialize)]
pub struct FindingsView {
    /// How many there are.
    pub total: usize,
    /// The same in words: `one error, two warnings`.
    pub count: String,
    /// How many are not shown, since there are too many for one page.
    pub left_out: usize,
    /// The files, by path.
    pub files: Vec<FileFindings>,
}

/// What is wrong in one file.
#[derive(Clone, Debug, Serialize)]
pub struct FileFindings {
    /// The file's path in the studio.
    pub file: String,
    /// The page of the entry in it, where it holds just one.
    pub page: Option<Item<Link>>,
    /// What is wrong in it, from its top down.
    pub findings: Vec<FindingView>,
}

/// One finding.
#[derive(Clone, Debug, Serialize)]
pub struct FindingView {
    /// `error` or `warning`.
    pub severity: &'static str,
    /// The code's name: `unknown-key`.
    pub code: &'static str,
    /// What is wrong here.
    pub message: String,
    /// What to do, if anything is advised.
    pub help: Option<String>,
    /// What is reported, in a sentence.
    pub what: &'static str,
    /// Why it matters.
    pub why: &'static str,
    /// The guilty text; absent where the file as a whole is meant.
    pub quote: Option<Quote>,
    /// The other place, where two disagree.
    pub other: Option<OtherPlace>,
}

/// A line of a file with its guilty part.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Quote {
    /// The line, from one.
    pub line: usize,
    /// The character in it, from one.
    pub column: usize,
    /// What stands before the guilty part.
    pub before: String,
    /// The guilty part, up to the line's end; may be empty where a point is meant.
    pub guilty: String,
    /// What stands behind it.
    pub after: String,
}

/// The other place of two that disagree.
#[derive(Clone, Debug, Serialize)]
pub struct OtherPlace {
    /// What it is.
    pub what: String,
    /// Its file's path.
    pub file: String,
    /// Its text; absent where the file as a whole is meant.
    pub quote: Option<Quote>,
}

/// Returns findings by file.
pub fn findings(shown: &Shown<'_>, all: &[Finding], texts: &Texts) -> FindingsView {
    let errors = all.iter().filter(|finding| finding.severity == Severity::Error).count();
    let mut files: BTreeMap<&str, Vec<&Finding>> = BTreeMap::new();
    for finding in all.iter().take(MOST) {
        files.entry(finding.at.file.as_str()).or_default().push(finding);
    }
    let pages = pages(shown, &files);
    let files = files.into_iter().map(|(file, findings)| FileFindings {
        file: file.to_owned(),
        page: pages.get(file).copied().flatten().map(|entry| shown.own_link(entry)),
        findings: findings.into_iter().map(|finding| view(finding, texts)).collect(),
    });
    FindingsView {
        total: all.len(),
        count: count(errors, all.len() - errors),
        left_out: all.len().saturating_sub(MOST),
        files: files.collect(),
    }
}

/// Returns how many errors and warnings there are, in words.
fn count(errors: usize, warnings: usize) -> String {
    let errors = (errors > 0).then(|| words::counted(errors, "error", "errors"));
    let warnings = (warnings > 0).then(|| words::counted(warnings, "warning", "warnings"));
    match (errors, warnings) {
        (None, None) => "none".to_owned(),
        (Some(one), None) | (None, Some(one)) => one,
        (Some(errors), Some(warnings)) => format!("{errors}, {warnings}"),
    }
}

/// Returns the entry of each of some files that holds one alone.
fn pages<'a>(shown: &Shown<'a>, files: &BTreeMap<&str, Vec<&Finding>>) -> BTreeMap<&'a str, Option<&'a Entry>> {
    let mut pages: BTreeMap<&str, Option<&Entry>> = BTreeMap::new();
    let entries = shown.catalogue.entries.iter();
    for entry in entries.filter(|entry| !files.is_empty() && files.contains_key(entry.origin.file.as_str())) {
        pages.entry(entry.origin.file.as_str()).and_modify(|page| *page = None).or_insert(Some(entry));
    }
    pages
}

fn view(finding: &Finding, texts: &Texts) -> FindingView {
    FindingView {
        severity: finding.severity.word(),
        code: finding.code.name,
        message: words::sentence(&finding.message),
        help: finding.help.as_deref().map(words::sentence),
        what: finding.code.what,
        why: finding.code.why,
        quote: quote(&finding.at, texts),
        other: finding.also.as_ref().map(|(place, what)| OtherPlace {
            what: words::sentence(what),
            file: place.file.as_str().to_owned(),
            quote: quote(place, texts),
        }),
    }
}

/// Returns the line a place begins on. A place that cuts a letter in two is widened to the whole letter.
fn quote(place: &Place, texts: &Texts) -> Option<Quote> {
    let text = texts.of(&place.file);
    if place.span == (0..0) || text.is_empty() {
        return None;
    }
    let end = text.ceil_char_boundary(place.span.end);
    let start = text.floor_char_boundary(place.span.start.min(end));
    let position = Position::of(text, start);
    let line_start = text.get(..start)?.rfind('\n').map_or(0, |at| at + 1);
    let line_end = text.get(start..)?.find('\n').map_or(text.len(), |at| start + at);
    let end = end.min(line_end);
    Some(Quote {
        line: position.line,
        column: position.column,
        before: text.get(line_start..start)?.to_owned(),
        guilty: text.get(start..end)?.trim_end_matches('\r').to_owned(),
        after: text.get(end..line_end)?.trim_end().to_owned(),
    })
}
