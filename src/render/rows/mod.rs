//! Written rows as HTML: their parts marked, each abbreviation with its meaning, each value of a size run with its size.

pub mod highlight;
mod weave;

use crate::measure::{RunInText, RunStyle, SizeRun, runs_in_prose};
use crate::page::{AbbreviationView, LineCount, RowView, RowsContext, RowsPart, RowsView, Use};
use highlight::Part;
use pulldown_cmark_escape::escape_html;
use std::ops::Range;
use weave::{Element, weave};

/// Returns what the template of rows sees.
pub fn context(view: &RowsView) -> RowsContext {
    let mut parts: Vec<RowsPart> = Vec::new();
    // Each abbreviation is reached by the keyboard once.
    let mut met = vec![false; view.abbreviations.len()];
    for line in &view.lines {
        let parts_of_line = highlight::parts(&line.text);
        // What stands in a name is no part of a row.
        let shown: &[Part] = if line.is_title { &[] } else { &parts_of_line };
        let html = marked(&line.text, shown, &line.runs, &line.uses, &view.abbreviations, &mut met);
        if line.is_title {
            parts.push(RowsPart { title: html, rows: Vec::new() });
            continue;
        }
        if parts.is_empty() {
            parts.push(RowsPart::default());
        }
        let count = line.count.as_ref().map(count).unwrap_or_default();
        if let Some(part) = parts.last_mut() {
            part.rows.push(RowView { html, count, apart: line.apart });
        }
    }
    let abbreviations = if view.is_listed { Vec::new() } else { view.abbreviations.clone() };
    RowsContext { parts, abbreviations }
}

/// Returns words of a text as HTML, each value of their size runs marked; nothing where they hold none.
pub fn with_runs(words: &str, sizes: usize, style: RunStyle) -> Option<String> {
    let runs = runs_in_prose(words, sizes, style);
    (!runs.is_empty()).then(|| weave(words, runs.iter().flat_map(run_elements).collect()))
}

/// Returns a row with its parts, size runs and abbreviations marked; `met` tells which of those stood above.
///
/// The rows of a chart in words are many, and plain: no parts are asked for of those.
pub fn marked(
    text: &str,
    parts: &[Part],
    runs: &[RunInText],
    uses: &[Use],
    abbreviations: &[AbbreviationView],
    met: &mut [bool],
) -> String {
    let class_of = |at: &Range<usize>| parts.iter().find(|part| part.at == *at).map(|part| part.class);
    let mut elements: Vec<Element> = Vec::new();
    for part in parts {
        let is_use = uses.iter().any(|(at, _)| *at == part.at);
        let is_run = part.class == "number" && runs.iter().any(|run| run.at.start == part.at.start);
        if !is_use && !is_run {
            elements.push(Element::span(part.at.clone(), part.class));
        }
    }
    elements.extend(runs.iter().flat_map(run_elements));
    for (at, which) in uses {
        let Some(short) = abbreviations.get(*which) else { continue };
        let is_first = met.get_mut(*which).is_some_and(|met| !std::mem::replace(met, true));
        elements.push(abbreviation(at.clone(), short, class_of(at), is_first));
    }
    weave(text, elements)
}

/// An abbreviation: its meaning is its title, and an empty button that lies over it shows the note that explains it. The text
/// is outside of the button, so that it is read, marked and copied like any other.
fn abbreviation(at: Range<usize>, short: &AbbreviationView, class: Option<&str>, is_first: bool) -> Element {
    let mut classes: Vec<&str> = class.into_iter().collect();
    if is_first {
        classes.push("first");
    }
    let class = if classes.is_empty() { String::new() } else { format!(" class=\"{}\"", classes.join(" ")) };
    let (meaning, written) = (escaped(&short.meaning), escaped(&short.said));
    let button = if is_first {
        format!("aria-label=\"{written}: {meaning}\"")
    } else {
        "tabindex=\"-1\" aria-hidden=\"true\"".to_owned()
    };
    Element {
        at,
        open: format!("<abbr{class} title=\"{meaning}\">"),
        close: format!("<button popovertarget=\"{}\" {button}></button></abbr>", short.id),
    }
}

/// A run and each of its values, in the class of its size as in a table.
fn run_elements(run: &RunInText) -> Vec<Element> {
    let all = std::iter::once(Element::span(run.at.clone(), "run"));
    let each = run.values.iter().enumerate().map(|(size, at)| Element::span(at.clone(), &format!("c{}", size + 1)));
    all.chain(each).collect()
}

/// The stitches after a line.
fn count(count: &LineCount) -> String {
    let all_alike = count.sizes.windows(2).all(|pair| pair.first() == pair.last());
    let first = count.sizes.first().copied().unwrap_or(0);
    let mut words = if all_alike {
        format!("{first} {}", if first == 1 { "st" } else { "sts" })
    } else {
        let shown = SizeRun::from_values(count.sizes.iter().copied().map(Some).collect()).show_with(i64::to_string);
        let marked = with_runs(&shown, count.sizes.len(), RunStyle::default()).unwrap_or(shown);
        format!("{marked} sts")
    };
    if count.at_first {
        words.push_str(" the first time");
    }
    words
}

fn escaped(text: &str) -> String {
    let mut out = String::new();
    // Writing to a text cannot fail.
    let _ = escape_html(&mut out, text);
    out
}
