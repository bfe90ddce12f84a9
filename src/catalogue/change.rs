//! A catalogue after a few of its entries were read again.

use super::{Catalogue, links, titles};
use crate::entry::{Entry, Given, Kind, Reference};
use std::collections::BTreeSet;
use std::sync::OnceLock;

/// What is another after some entries were read again.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Change {
    /// The entries that came, went or were read again.
    pub entries: BTreeSet<Reference>,
    /// Those that other entries refer to than before, or elsewhere.
    pub linked: BTreeSet<Reference>,
    /// The kinds with a register that could not be read before and can now, or the other way round.
    pub kinds_read: BTreeSet<Kind>,
    /// What entries that texts may name were called and are called now, where that is another title or they came or went.
    pub titles: BTreeSet<String>,
    /// The private names of projects that are for others now than before, or that came or went.
    pub secrets: BTreeSet<String>,
}

/// The entries of one file, without what is in them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Names {
    /// Those that could be read.
    pub read: Vec<Reference>,
    /// Those that could not.
    pub broken: Vec<Reference>,
    /// The kind of a register that could not be read at all.
    pub broken_kind: Option<Kind>,
}

impl Names {
    /// Returns the names of what a file gave.
    pub fn of(given: &Given) -> Self {
        Self {
            read: given.entries.iter().map(|entry| entry.id.clone()).collect(),
            broken: given.broken.clone(),
            broken_kind: given.broken_kind,
        }
    }
}

impl Catalogue {
    /// Puts what a file gives now in the place of what it gave before.
    ///
    /// No entry given may be in the catalogue by another file; whoever calls this has seen to it.
    pub fn put(&mut self, before: &Names, now: Given, change: &mut Change) {
        for id in &before.broken {
            self.broken.remove(id);
        }
        change.entries.extend(before.broken.iter().chain(&now.broken).cloned());
        self.broken.extend(now.broken);
        if before.broken_kind != now.broken_kind {
            change.kinds_read.extend(before.broken_kind.into_iter().chain(now.broken_kind));
            if let Some(kind) = before.broken_kind {
                self.broken_kinds.remove(&kind);
            }
            self.broken_kinds.extend(now.broken_kind);
        }
        let stays: BTreeSet<Reference> = now.entries.iter().map(|entry| entry.id.clone()).collect();
        for id in before.read.iter().filter(|id| !stays.contains(id)) {
            self.take(id, change);
        }
        for entry in now.entries {
            self.set(entry, change);
        }
    }

    fn take(&mut self, id: &Reference, change: &mut Change) {
        let Ok(place) = self.entries.binary_search_by(|entry| entry.id.cmp(id)) else { return };
        let gone = self.entries.remove(place);
        change.entries.insert(gone.id.clone());
        self.retitle(Some(&gone), None, change);
        self.relink(&gone, None, change);
        self.places.remove(id);
        self.number_from(place);
    }

    fn set(&mut self, entry: Entry, change: &mut Change) {
        change.entries.insert(entry.id.clone());
        match self.entries.binary_search_by(|known| known.id.cmp(&entry.id)) {
            Ok(place) => {
                let Some(known) = self.entries.get_mut(place) else { return };
                let old = std::mem::replace(known, entry.clone());
                self.retitle(Some(&old), Some(&entry), change);
                self.relink(&old, Some(&entry), change);
            }
            Err(place) => {
                self.retitle(None, Some(&entry), change);
                self.relink(&entry, Some(&entry), change);
                self.entries.insert(place, entry);
                self.number_from(place);
            }
        }
    }

    /// Forgets the titles to look for in texts if an entry is called otherwise than before, and private names likewise.
    fn retitle(&mut self, old: Option<&Entry>, new: Option<&Entry>, change: &mut Change) {
        let entries = [old, new];
        let title = |entry: &&Entry| titles::is_titled(entry);
        let [old, new] = entries.map(|entry| entry.filter(title).map(|entry| entry.common.title.trim()));
        if old != new {
            self.titles = OnceLock::new();
            change.titles.extend([old, new].into_iter().flatten().map(str::to_owned));
        }
        let [old, new] = entries.map(|entry| entry.map(titles::secrets_of).unwrap_or_default());
        if old != new {
            self.secrets = OnceLock::new();
            change.secrets.extend([old, new].into_iter().flatten().map(str::to_owned));
        }
    }

    /// Takes back the links of an entry as it was and makes those of it as it is.
    fn relink(&mut self, old: &Entry, new: Option<&Entry>, change: &mut Change) {
        let links = |entry: &Entry| links::of(entry, self.visibility(entry));
        let (old, new) = (links(old), new.map(links).unwrap_or_default());
        let targets: BTreeSet<&Reference> = old.keys().chain(new.keys()).collect();
        for target in targets {
            let here = self.back_links.entry(target.clone()).or_default();
            let from = old.get(target).or(new.get(target)).map(|link| &link.from);
            let place = from.map_or(Err(0), |from| here.binary_search_by(|link| link.from.cmp(from)));
            let same = match (place, new.get(target)) {
                (Ok(place), Some(link)) => match here.get_mut(place) {
                    Some(known) if known == link => true,
                    Some(known) => {
                        known.clone_from(link);
                        false
                    }
                    None => true,
                },
                (Ok(place), None) => {
                    here.remove(place);
                    false
                }
                (Err(place), Some(link)) => {
                    here.insert(place, link.clone());
                    false
                }
                (Err(_), None) => true,
            };
            if !same {
                change.linked.insert(target.clone());
            }
        }
    }

    /// Writes down anew where the entries from a place on are.
    fn number_from(&mut self, place: usize) {
        for (place, entry) in self.entries.iter().enumerate().skip(place) {
            match self.places.get_mut(&entry.id) {
                Some(known) => *known = place,
                None => {
                    self.places.insert(entry.id.clone(), place);
                }
            }
        }
    }
}
