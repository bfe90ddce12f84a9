//! What an earlier note told readers of a thing, a later one must not keep from them.

use super::place;
use crate::catalogue::{BackLink, Catalogue};
use crate::entry::value::{Choice, How};
use crate::entry::yaml::Step;
use crate::entry::{At, Data, Entry, Kind, Note, Placing, Reference};
use crate::finding::{Code, Finding, Severity};

/// A mention of something that was a gift or the like in an earlier note.
pub static UNDISCLOSED: Code = Code {
    name: "undisclosed",
    severity: Severity::Warning,
    what: "A note mentions something that an earlier note says was given, lent, paid for, or comes from friends, and does not say how she came by it.",
    why: "Readers meet the note by itself, and a gift is told at each mention.",
    bad: "links: [ { to: tidewater-mill, how: gifted } ] in note 2, and <person:tidewater-mill> in note 3",
    good: "the same, and links: [ { to: tidewater-mill, how: gifted } ] in note 3 too",
};

/// Finds what a note mentions without saying how she came by it, where the last note before it that says so tells of a tie.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Note(note) = &entry.data else { return };
    let mut seen: Vec<&Reference> = note.links.iter().map(|known| &known.to.0).collect();
    // What stands in the text is where she would see it first.
    let (text, front): (Vec<_>, Vec<_>) = entry.mentions.iter().partition(|mention| matches!(mention.at, At::Prose(_)));
    for mention in text.into_iter().chain(front).filter(|mention| !mention.private && mention.to != entry.id) {
        if seen.contains(&&mention.to) {
            continue;
        }
        seen.push(&mention.to);
        let Some(said) = last_said(catalogue, entry, note, &mention.to) else { continue };
        let thing = &mention.to;
        let before = match said.note.number {
            Some(number) => format!("note {number}"),
            None => format!("the note `{}`", said.entry.id.key),
        };
        let message = match said.how {
            How::Gifted => format!("`{thing}` was given to you in {before}"),
            How::Loaned => format!("`{thing}` was lent to you in {before}"),
            How::Affiliate => format!("you earn by `{thing}`, as {before} says"),
            How::Paid => format!("you were paid to mention `{thing}` in {before}"),
            How::Friend => format!("`{thing}` is of friends of yours, as {before} says"),
            How::Own | How::Bought => continue,
        };
        let help = format!(
            "say here too how you came by it, `links: [ {{ to: \"{thing}\", how: {} }} ]`, or `how: bought` or `how: own` if that is so now",
            said.how.word()
        );
        findings.push(
            Finding::new(&UNDISCLOSED, entry.origin.place(&mention.at, placing), message)
                .help(help)
                .also(said.entry.origin.value(&said.way, placing), "said here"),
        );
    }
}

/// What a note says of how she came by a thing.
struct Said<'a> {
    entry: &'a Entry,
    note: &'a Note,
    how: How,
    way: Vec<Step>,
}

/// Returns what the last note before this one that says how she came by a thing says.
fn last_said<'a>(catalogue: &'a Catalogue, entry: &Entry, note: &Note, id: &Reference) -> Option<Said<'a>> {
    let is_note = |link: &&BackLink| link.from.kind == Kind::Note && link.from != entry.id;
    let links = catalogue.linked_from(id).iter().filter(is_note).filter(|link| link.is_via("links"));
    let said = links.filter_map(|link| {
        let entry = catalogue.entry(&link.from)?;
        let note = entry.note()?;
        let of = |known: &crate::entry::Mentioned| if known.to.0 == *id { known.how } else { None };
        let (at, how) = note.links.iter().enumerate().find_map(|(at, known)| Some((at, of(known)?)))?;
        Some(Said { entry, note, how, way: place::item("links", at, &["how"]) })
    });
    let own = (note.date, &entry.id);
    said.filter(|said| (said.note.date, &said.entry.id) < own)
        .max_by(|a, b| (a.note.date, &a.entry.id).cmp(&(b.note.date, &b.entry.id)))
}
