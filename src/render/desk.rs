//! The desk's page. It is no part of a theme: a studio cannot put anything in its place, and no make holds it.

use super::blurb;
use super::theme::EngineError;
use crate::entry::Reference;
use crate::finding::Finding;
use crate::page::desk::{self, DeskContext, WeekText};
use crate::page::{Shown, list_in_words};
use crate::source::Texts;
use std::sync::OnceLock;

/// Its templates; parts first.
const TEMPLATES: [(&str, &str); 8] = [
    ("parts.html", include_str!("../../themes/desk/parts.html")),
    ("findings.html", include_str!("../../themes/desk/findings.html")),
    ("week.html", include_str!("../../themes/desk/week.html")),
    ("designs.html", include_str!("../../themes/desk/designs.html")),
    ("needles.html", include_str!("../../themes/desk/needles.html")),
    ("yarn.html", include_str!("../../themes/desk/yarn.html")),
    ("gifts.html", include_str!("../../themes/desk/gifts.html")),
    ("desk.html", include_str!("../../themes/desk/desk.html")),
];

/// The engine with the templates, which are the same for every studio.
static ENGINE: OnceLock<Result<tera::Tera, String>> = OnceLock::new();

/// Returns what the desk shows of a studio and its findings, the texts for this week's video included.
pub fn context(shown: &Shown<'_>, findings: &[Finding], texts: &Texts) -> DeskContext {
    let mut context = desk::context(shown, findings, texts);
    if let Some(week) = &mut context.week {
        week.texts = week_texts(shown, &week.id);
    }
    context
}

fn week_texts(shown: &Shown<'_>, id: &Reference) -> Vec<WeekText> {
    let found = shown.catalogue.entry(id).and_then(|entry| Some((entry, entry.note()?)));
    let Some((entry, note)) = found else { return Vec::new() };
    let all = blurb::blurbs(shown, entry, note, &blurb::outlets(&shown.catalogue.studio));
    let text = |(at, made): (usize, blurb::ForOutlets)| {
        let names: Vec<String> = made.outlets.iter().map(|(name, _)| name.clone()).collect();
        WeekText {
            id: format!("text-{}", at + 1),
            title: list_in_words(&names),
            sizes: made.outlets.iter().map(|(name, size)| format!("{name}: {size}")).collect(),
            lines: made.blurb.text.lines().count(),
            lacks: made.blurb.lacks(),
            text: made.blurb.text,
        }
    };
    all.into_iter().enumerate().map(text).collect()
}

/// Returns the desk's page, which stands at `/desk/` and takes its style and script from there.
///
/// # Errors
/// A template that fails, in the engine's words: a mistake of ours, since nobody else can change them.
pub fn page(context: &DeskContext) -> Result<String, String> {
    let engine = ENGINE.get_or_init(engine).as_ref().map_err(Clone::clone)?;
    let context = tera::Context::from_serialize(context).map_err(explain)?;
    engine.render("desk.html", &context).map_err(explain)
}

/// Returns the style sheet and the script, each with its file in the folder of the page.
pub fn assets() -> [(&'static str, &'static [u8]); 2] {
    [
        ("desk.css", include_bytes!("../../themes/desk/desk.css")),
        ("desk.js", include_bytes!("../../themes/desk/desk.js")),
    ]
}

fn engine() -> Result<tera::Tera, String> {
    let mut engine = tera::Tera::default();
    engine.add_raw_templates(TEMPLATES).map_err(explain)?;
    Ok(engine)
}

fn explain(error: tera::Error) -> String {
    let error = EngineError::from(error);
    let place = error.template.map(|template| format!("desk template `{template}`")).unwrap_or("desk".to_owned());
    let line = error.line.map(|line| format!(" line {line}")).unwrap_or_default();
    format!("{place}{line}: {}", error.message)
}
