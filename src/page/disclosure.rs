//! What readers are told of how she came by a thing, wherever a note mentions it.

use super::Shown;
use crate::catalogue::Catalogue;
use crate::entry::value::How;
use crate::entry::{Note, Reference, Studio};
use crate::reckon::last_said;

/// What is told beside a thing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Disclosed {
    /// The words; may be empty.
    pub words: String,
    /// Whether she earns by the link or was paid for it, which search engines are to be told.
    pub sponsored: bool,
}

/// Returns the words for a way she came by things: the studio's own, or else plain ones; empty where readers need none.
pub fn words(studio: &Studio, how: How) -> &str {
    studio.disclosure.as_ref().and_then(|own| own.words(how)).unwrap_or(match how {
        How::Own => "",
        How::Bought => "bought by me",
        How::Gifted => "given to me",
        How::Loaned => "lent to me",
        How::Affiliate => "I earn if you buy through this link",
        How::Paid => "I was paid to mention this",
        How::Friend => "from friends of mine",
    })
}

/// Returns what a note tells of a thing.
pub fn of(studio: &Studio, note: &Note, id: &Reference) -> Disclosed {
    let mut told: Vec<&str> = Vec::new();
    let mut sponsored = false;
    for how in note.links.iter().filter(|known| known.to.0 == *id).filter_map(|known| known.how) {
        let words = words(studio, how);
        if !words.is_empty() && !told.contains(&words) {
            told.push(words);
        }
        sponsored |= matches!(how, How::Affiliate | How::Paid);
    }
    Disclosed { words: told.join("; "), sponsored }
}

/// Returns what a note tells of the person, the pattern or the place of sale that an address elsewhere belongs to.
pub fn of_address(shown: &Shown<'_>, note: &Note, url: &str) -> Disclosed {
    let belongs = |id: &&Reference| shown.catalogue.entry(id).is_some_and(|entry| entry.has_address(url));
    let declared = note.links.iter().map(|known| &known.to.0).find(belongs);
    declared.map(|id| of(&shown.catalogue.studio, note, id)).unwrap_or_default()
}

/// Returns what is told beside the link to a person's own site: what the latest public note that says how she came by what is
/// theirs tells, if she earns by that link or was paid for it.
pub fn of_site(catalogue: &Catalogue, person: &Reference) -> Disclosed {
    let said = last_said(catalogue, person, None);
    let note = said.and_then(|said| said.entry.note());
    let told = note.map(|note| of(&catalogue.studio, note, person)).unwrap_or_default();
    if told.sponsored { told } else { Disclosed::default() }
}
