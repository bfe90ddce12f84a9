//! What a text names, it should link.

use crate::catalogue::{Catalogue, Named, Visibility};
use crate::entry::{Entry, Kind, Placing, Reference};
use crate::finding::{Code, Finding, Severity};
use crate::source::Place;
use std::collections::BTreeSet;

/// A title in a text that is no link.
pub static UNLINKED: Code = Code {
    name: "unlinked",
    severity: Severity::Warning,
    what: "A text has the title of a pattern, a yarn or a person as plain words, and the entry refers to it nowhere.",
    why: "The reader cannot follow it, and the page of the thing does not tell where it is mentioned.",
    bad: "I knitted it in Heron DK.",
    good: "I knitted it in <yarn:heron-dk>.",
};

/// The kinds of entries whose texts are looked at.
const IN: [Kind; 4] = [Kind::Note, Kind::Pattern, Kind::Project, Kind::Page];

/// The kinds of entries that a text should link.
const TO: [Kind; 3] = [Kind::Pattern, Kind::Yarn, Kind::Person];

/// How many letters a title of one word must have: a shorter one is too often a word like any other.
const LETTERS: usize = 6;

/// Finds the first place of each title that an entry's text has and the entry does not refer to.
///
/// A project of the same title as a pattern is no reason to link either: the words may mean the project.
pub fn check(catalogue: &Catalogue, entry: &Entry, _: &Placing<'_>, findings: &mut Vec<Finding>) {
    if !IN.contains(&entry.id.kind) {
        return;
    }
    let mut told: BTreeSet<&[Reference]> = BTreeSet::new();
    for named in catalogue.named(&entry.prose) {
        let refers = |id: &Reference| {
            *id == entry.id || entry.mentions.iter().any(|mention| !mention.private && mention.to == *id)
        };
        let is_meant = named.is_exact && is_telling(&named) && !named.entries.iter().any(refers);
        if is_meant && named.entries.iter().all(|id| TO.contains(&id.kind)) && told.insert(named.entries) {
            findings.push(finding(catalogue, entry, &named));
        }
    }
}

/// Returns whether words that are so long are hardly there by chance.
fn is_telling(named: &Named<'_>) -> bool {
    named.title.contains(char::is_whitespace) || named.title.chars().filter(|c| c.is_alphabetic()).count() >= LETTERS
}

fn finding(catalogue: &Catalogue, entry: &Entry, named: &Named<'_>) -> Finding {
    let place = Place { file: entry.origin.file.clone(), span: named.at.clone() };
    let references: Vec<String> = named.entries.iter().map(|id| format!("`<{id}>`")).collect();
    let is_hidden =
        |id: &Reference| catalogue.entry(id).is_some_and(|entry| catalogue.for_readers(entry) == Visibility::Hidden);
    let hidden = if named.entries.iter().all(is_hidden) {
        "; it is not public yet, so readers get its title as plain words until it is"
    } else {
        ""
    };
    Finding::new(&UNLINKED, place, format!("`{}` is named and not linked", named.title))
        .help(format!("write {} in its place{hidden}", references.join(" or ")))
}
