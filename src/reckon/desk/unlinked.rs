//! What a note speaks of and does not link.

use crate::catalogue::Catalogue;
use crate::entry::yaml::Step;
use crate::entry::{At, Entry, Reference};
use std::collections::BTreeSet;

/// One thing that is not linked yet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unlinked {
    /// The front matter refers to it, and the text does not.
    OnlyInFront(Reference),
    /// The text has its title as plain words, and it is referred to nowhere.
    Named(Reference),
}

/// Returns what a text does not link: first what only the front matter refers to, then what the text names, each once, by
/// kind and key.
///
/// What counts as named is [`Catalogue::named`]'s to say.
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
    let named: BTreeSet<&Reference> =
        catalogue.named(&entry.prose).into_iter().flat_map(|named| named.entries).collect();
    let is_new = |id: &&&Reference| !linked.contains(**id) && !seen.contains(**id) && ***id != entry.id;
    all.extend(named.iter().filter(is_new).map(|id| Unlinked::Named((*id).clone())));
    all
}
