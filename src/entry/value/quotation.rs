//! What somebody else wrote, quoted in front matter as Markdown.

use super::BAD_REFERENCE;
use crate::entry::field::{Field, WRONG_TYPE};
use crate::entry::kind::{Key, Reference};
use crate::entry::prose::{missed, options};
use crate::entry::schema::{Definitions, Schema};
use crate::entry::yaml::{Node, Notes};
use pulldown_cmark::{Event, Parser, Tag};
use std::ops::Range;

/// Paragraphs of Markdown, with lists, emphasis and links; references in it are references of the entry.
///
/// Nothing that needs an address of its own on the page is taken, such as a heading or a footnote, and no HTML.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Quotation(String);

impl Quotation {
    /// Returns the Markdown.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// Returns what a quotation cannot hold, where an event begins such a thing.
fn refused(event: &Event<'_>) -> Option<&'static str> {
    match event {
        Event::Start(Tag::Heading { .. }) => Some("a heading"),
        Event::Start(Tag::Image { .. }) => Some("a picture"),
        Event::Start(Tag::Table(_)) => Some("a table"),
        Event::Start(Tag::CodeBlock(_)) => Some("a block of code"),
        Event::Start(Tag::FootnoteDefinition(_)) | Event::FootnoteReference(_) => Some("a footnote"),
        Event::Start(Tag::HtmlBlock) | Event::InlineHtml(_) => Some("HTML"),
        _ => None,
    }
}

impl Field for Quotation {
    const WHAT: &'static str = "a text in Markdown, several lines after `|`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let text = String::read(node, notes)?;
        let (mut good, mut told) = (true, Vec::new());
        // Runs of plain text, where a link that is none would stand.
        let mut plain: Vec<Range<usize>> = Vec::new();
        for (event, at) in Parser::new_ext(&text, options()).into_offset_iter() {
            match (&event, plain.last_mut()) {
                (Event::Text(_), Some(last)) if last.end == at.start => last.end = at.end,
                (Event::Text(_), _) => plain.push(at.clone()),
                _ => {}
            }
            if let Some(what) = refused(&event).filter(|what| !told.contains(what)) {
                told.push(what);
                let help = "write paragraphs, lists and links; all else has its place in the note's own text";
                let message = format!("the story holds {what}");
                notes.part(&WRONG_TYPE, node, at.clone(), message, Some(help.to_owned()));
            }
            let Event::Start(Tag::Link { dest_url, .. }) = event else { continue };
            let Some((kind, rest)) = Reference::split(&dest_url) else { continue };
            match Key::new(rest.split('#').next().unwrap_or(rest)) {
                Some(key) => notes.refer(&Reference { kind, key }, node),
                None => {
                    let help = format!("write `{}:{}`", kind.word(), Key::like(rest));
                    notes.part(&BAD_REFERENCE, node, at, format!("`{dest_url}` is not a reference"), Some(help));
                    good = false;
                }
            }
        }
        let missed = |at: Range<usize>| Some((at.start, missed(text.get(at)?)?));
        for (start, missed) in plain.into_iter().filter_map(missed) {
            let at = start + missed.at.start..start + missed.at.end;
            notes.part(&BAD_REFERENCE, node, at, missed.message, Some(missed.help));
            good = false;
        }
        (good && told.is_empty()).then_some(Self(text))
    }

    fn schema(definitions: &mut Definitions) -> Schema {
        String::schema(definitions)
    }
}
