//! What a note speaks of and does not link.

use crate::catalogue::Catalogue;
use crate::entry::yaml::Step;
use crate::entry::{At, Entry, Kind, Reference};
use pulldown_cmark::{Event, Parser, Tag, TagEnd};
use std::collections::BTreeSet;

/// One thing that is not linked yet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unlinked {
    /// The front matter refers to it, and the text does not.
    OnlyInFront(Reference),
    /// The text has its title as plain words, and it is referred to nowhere.
    Named(Reference),
}

/// Returns what a text does not link: first what only the front matter refers to, then what the text names, each once.
///
/// A title of one word must be written as it is, since "brioche" is a word too; of several, large and small letters are
/// alike. Notes and plain pages are left out: their titles are everyday words. What stands in code is not looked at.
pub fn unlinked(catalogue: &Catalogue, entry: &Entry) -> Vec<Unlinked> {
    let mut linked: BTreeSet<&Reference> = entry.prose.references.iter().map(|reference| &reference.to).collect();
    // What others wrote stands on the page with its links, as her own text does.
    let in_story = |at: &At| match at {
        At::Field(steps) => matches!(steps.get(entry.origin.root.len()), Some(Step::Key(key)) if **key == *"story"),
        At::Prose(_) => false,
    };
    linked.extend(entry.mentions.iter().filter(|mention| in_story(&mention.at)).map(|mention| &mention.to));
    let mut seen: BTreeSet<&Reference> = BTreeSet::new();
    let mut all = Vec::new();
    for mention in entry.mentions.iter().filter(|mention| !mention.private && mention.to != entry.id) {
        if catalogue.entry(&mention.to).is_some() && !linked.contains(&mention.to) && seen.insert(&mention.to) {
            all.push(Unlinked::OnlyInFront(mention.to.clone()));
        }
    }
    let words = plain_words(entry.prose.source());
    let lower = words.to_lowercase();
    for kind in [Kind::Pattern, Kind::Project, Kind::Yarn, Kind::Technique, Kind::Person] {
        for other in catalogue.of_kind(kind) {
            if linked.contains(&other.id) || seen.contains(&other.id) {
                continue;
            }
            let title = other.common.title.trim();
            let named = if title.contains(' ') { holds(&lower, &title.to_lowercase()) } else { holds(&words, title) };
            if named {
                all.push(Unlinked::Named(other.id.clone()));
            }
        }
    }
    all
}

/// Returns the words of a text that are in no link, picture or code.
fn plain_words(source: &str) -> String {
    let mut words = String::with_capacity(source.len());
    let mut inside = 0_usize;
    for event in Parser::new_ext(source, crate::entry::prose::options()) {
        match event {
            Event::Start(Tag::Link { .. } | Tag::Image { .. } | Tag::CodeBlock(_)) => inside += 1,
            Event::End(TagEnd::Link | TagEnd::Image | TagEnd::CodeBlock) => {
                inside = inside.saturating_sub(1);
                words.push('\n');
            }
            Event::Text(text) if inside == 0 => words.push_str(&text),
            Event::SoftBreak | Event::HardBreak if inside == 0 => words.push(' '),
            Event::End(_) => words.push('\n'),
            _ => {}
        }
    }
    words
}

/// Returns whether a text holds some words that are no part of longer ones.
fn holds(text: &str, words: &str) -> bool {
    let is_edge = |c: Option<char>| c.is_none_or(|c| !c.is_alphanumeric());
    !words.is_empty()
        && text.match_indices(words).any(|(start, found)| {
            let (before, after) = (text.get(..start), text.get(start + found.len()..));
            is_edge(before.and_then(|text| text.chars().next_back()))
                && is_edge(after.and_then(|text| text.chars().next()))
        })
}
