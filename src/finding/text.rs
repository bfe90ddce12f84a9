//! Findings for people: the guilty text underlined, with what to do below it.

use super::{Finding, Severity};
use crate::source::{Place, Texts};
use annotate_snippets::{AnnotationKind, Group, Level, Origin, Renderer, Snippet};

/// Whether findings are printed in colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Style {
    /// For a terminal.
    Colour,
    /// For a file or a pipe.
    Plain,
}

/// Returns the findings as text, each with its file, line, the underlined words and the advice.
pub fn to_text(findings: &[Finding], texts: &Texts, style: Style) -> String {
    let renderer = match style {
        Style::Colour => Renderer::styled(),
        Style::Plain => Renderer::plain(),
    };
    let mut out = String::new();
    for finding in findings {
        out.push_str(&renderer.render(&report(finding, texts)));
        out.push_str("\n\n");
    }
    out
}

fn report<'a>(finding: &'a Finding, texts: &'a Texts) -> Vec<Group<'a>> {
    let level = match finding.severity {
        Severity::Error => Level::ERROR,
        Severity::Warning => Level::WARNING,
    };
    let title = level.primary_title(finding.message.as_str()).id(finding.code.name);
    let mut group = Group::with_title(title);
    group = if shows_text(&finding.at, texts) {
        group.element(snippet(&finding.at, texts, AnnotationKind::Primary, ""))
    } else {
        group.element(Origin::path(finding.at.file.as_str()))
    };
    if let Some((place, what)) = &finding.also {
        group = if shows_text(place, texts) {
            group.element(snippet(place, texts, AnnotationKind::Context, what))
        } else {
            group.element(Level::NOTE.message(format!("{what}: {}", place.file)))
        };
    }
    if let Some(help) = &finding.help {
        group = group.element(Level::HELP.message(help.as_str()));
    }
    vec![group]
}

fn shows_text(place: &Place, texts: &Texts) -> bool {
    place.span != (0..0) && !texts.of(&place.file).is_empty()
}

fn snippet<'a>(
    place: &'a Place,
    texts: &'a Texts,
    kind: AnnotationKind,
    label: &'a str,
) -> Snippet<'a, annotate_snippets::Annotation<'a>> {
    let text = texts.of(&place.file);
    // A place that cuts a letter in two, as that of a wrong byte does, is widened to the whole letter.
    let end = text.ceil_char_boundary(place.span.end);
    let start = text.floor_char_boundary(place.span.start.min(end));
    let annotation = kind.span(start..end);
    let annotation = if label.is_empty() { annotation } else { annotation.label(label) };
    Snippet::source(text).path(place.file.as_str()).annotation(annotation)
}
