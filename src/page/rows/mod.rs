//! Written rows of a text: what their words mean, their sizes, and the stitches behind each line.

mod counts;
mod glossary;
mod meaning;

pub use counts::{CountedRows, LineCount};
pub use glossary::{AbbreviationView, Glossary, Use};

use super::Shown;
use crate::entry::{Entry, Pattern};
use crate::measure::{RunInText, RunStyle, runs_in};
use crate::notation::chart::written::{between, written};
use crate::notation::rows::{Doing, Lexicon, Span, lines, read};
use schemars::JsonSchema;
use serde::Serialize;

/// What ids of a pattern's abbreviations begin with.
pub(super) const PREFIX: &str = "leaflet-short-";

/// What `rows.html` sees: a block of written rows.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct RowsContext {
    /// Its parts in order; a line that is only a name and a colon begins another.
    pub parts: Vec<RowsPart>,
    /// The abbreviations in it with their meanings; empty in a pattern, whose page has one list of all.
    pub abbreviations: Vec<AbbreviationView>,
}

/// Rows under a name.
#[derive(Clone, Debug, Default, Serialize, JsonSchema)]
pub struct RowsPart {
    /// Its name as HTML, with its colon; may be empty.
    pub title: String,
    /// Its lines.
    pub rows: Vec<RowView>,
}

/// One line of rows, with those that go on with it.
#[derive(Clone, Debug, Default, Serialize, JsonSchema)]
pub struct RowView {
    /// The line as HTML. Its text is that of the file.
    pub html: String,
    /// The stitches after it as HTML, in every size: `63 (71, 77) sts`. Empty where they are not known, are as many as before
    /// or stand in the line.
    pub count: String,
    /// Whether the line above it is empty.
    pub apart: bool,
}

/// One line of rows and what is known of it, for whoever makes HTML of it. Places are bytes of its text.
#[derive(Clone, Debug)]
pub struct RowLine {
    /// The line as it is written, with the indented ones below it.
    pub text: String,
    /// Whether it is only a name with a colon.
    pub is_title: bool,
    /// Whether the line above it is empty.
    pub apart: bool,
    /// The abbreviations in it; which of the glossary's each is.
    pub uses: Vec<Use>,
    /// Its size runs.
    pub runs: Vec<RunInText>,
    /// The stitches behind it.
    pub count: Option<LineCount>,
}

/// A block of rows as it is shown.
#[derive(Clone, Debug)]
pub struct RowsView {
    /// Its lines.
    pub lines: Vec<RowLine>,
    /// The abbreviations in it, as the lines count them.
    pub abbreviations: Vec<AbbreviationView>,
    /// Whether the page has a list of all abbreviations, so that the block needs none.
    pub is_listed: bool,
}

/// Returns a block of rows; `counted` are the rows of the pattern it stands in and which of its blocks it is, `number` is that
/// among all computed blocks of the text.
pub fn rows_view(
    shown: &Shown<'_>,
    pattern: Option<&Pattern>,
    text: &str,
    counted: Option<(&CountedRows, usize)>,
    number: usize,
) -> RowsView {
    let mut glossary = match pattern {
        Some(_) => Glossary::new(PREFIX, pattern),
        None => Glossary::new(&format!("leaflet-block-{number}-"), None),
    };
    let sizes = pattern.map_or(1, Pattern::size_count);
    let style = shown.catalogue.studio.settings().runs;
    let at = lines(text);
    let spans: Vec<Span> = at.iter().map(|(span, _)| span.clone()).collect();
    let counts = counted.map(|(counted, block)| counted.of_lines(block, &spans)).unwrap_or_default();
    let titles = titles(text, style);
    let line = |(place, (span, apart)): (usize, (Span, bool))| {
        let is_title = titles.iter().any(|title| span.contains(title));
        let text = text.get(span).unwrap_or_default().to_owned();
        RowLine {
            is_title,
            apart,
            uses: glossary.uses(&text),
            runs: runs_in(&text, sizes, style),
            count: counts.get(place).cloned().flatten(),
            text,
        }
    };
    let lines = at.into_iter().enumerate().map(line).collect();
    RowsView { lines, abbreviations: glossary.met, is_listed: pattern.is_some() }
}

/// Where lines begin that are only a name with a colon, from which rows are numbered anew.
fn titles(text: &str, style: RunStyle) -> Vec<usize> {
    let headings = read(text, &Lexicon::default(), style).statements.into_iter();
    headings.filter(|statement| matches!(statement.doing, Doing::Heading { .. })).map(|title| title.at.start).collect()
}

/// Returns the abbreviations of a pattern's rows and of its charts in words, by their letters.
pub fn abbreviations(entry: &Entry, pattern: &Pattern) -> Vec<AbbreviationView> {
    let mut glossary = Glossary::new(PREFIX, Some(pattern));
    for block in &entry.prose.rows {
        glossary.uses(&block.text);
    }
    for block in &entry.prose.charts {
        for row in written(&block.chart).iter().chain(&between(&block.chart)) {
            glossary.uses(&row.words);
        }
    }
    glossary.sorted()
}
