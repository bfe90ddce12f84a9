//! What notes say of how she came by a thing.

use crate::catalogue::{BackLink, Catalogue};
use crate::entry::value::{Date, How};
use crate::entry::{Entry, Kind, Note, Reference};

/// What a note says of how she came by a thing.
#[derive(Clone, Copy, Debug)]
pub struct Said<'a> {
    /// The note's entry.
    pub entry: &'a Entry,
    /// The note.
    pub note: &'a Note,
    /// Which of its `links` says so, from 0.
    pub at: usize,
    /// How she came by it.
    pub how: How,
}

/// Returns what the latest note that says how she came by a thing says: of all public notes, or of those before one, which is
/// given by its day and its entry. Those of one day follow each other by key.
pub fn last_said<'a>(
    catalogue: &'a Catalogue,
    id: &Reference,
    before: Option<(Option<Date>, &Reference)>,
) -> Option<Said<'a>> {
    let is_note = |link: &&BackLink| link.from.kind == Kind::Note && link.is_via("links");
    let said = catalogue.linked_from(id).iter().filter(is_note).filter_map(|link| {
        let entry = catalogue.entry(&link.from)?;
        let note = entry.note()?;
        let mut known = note.links.iter().enumerate().filter(|(_, known)| known.to.0 == *id);
        let (at, how) = known.find_map(|(at, known)| Some((at, known.how?)))?;
        Some(Said { entry, note, at, how })
    });
    let earlier = |said: &Said<'_>| before.is_none_or(|before| (said.note.date, &said.entry.id) < before);
    said.filter(earlier).max_by(|a, b| (a.note.date, &a.entry.id).cmp(&(b.note.date, &b.entry.id)))
}
