//! Which entries refer to which.

use super::Index;
use super::visible::Visibility;
use crate::entry::value::{Date, How};
use crate::entry::yaml::Step;
use crate::entry::{At, Entry, Mention, Reference};
use rayon::prelude::*;
use std::collections::BTreeMap;

/// Where in an entry another is referred to.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Via {
    /// By a key of the front matter, named as it is written: `yarn`, `made for`.
    Field(Box<str>),
    /// In the text; the id of the heading it stands under, if it stands under one.
    Text(Option<String>),
}

/// One entry that refers to another.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BackLink {
    /// The entry that refers.
    pub from: Reference,
    /// Where it does, each place once.
    pub via: Vec<Via>,
    /// What it says of how she came by the other, if it is a note that says so.
    pub told: Option<Told>,
}

/// What a note says of how she came by a thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Told {
    /// The note's day.
    pub date: Option<Date>,
    /// Which of its `links` says so, from 0.
    pub at: usize,
    /// How she came by it.
    pub how: How,
}

impl BackLink {
    /// Returns whether the reference stands in this key of the front matter.
    pub fn is_via(&self, key: &str) -> bool {
        self.via.iter().any(|via| matches!(via, Via::Field(name) if &**name == key))
    }
}

/// Returns, for every entry, the public entries that refer to it.
pub fn back_links(entries: &[Entry], visibility: impl Fn(&Entry) -> Visibility + Sync) -> Index<Vec<BackLink>> {
    let links: Vec<_> = entries.par_iter().map(|entry| of(entry, visibility(entry))).collect();
    let mut all: Index<Vec<BackLink>> = Index::default();
    for (to, link) in links.into_iter().flatten() {
        all.entry(to).or_default().push(link);
    }
    all
}

/// Returns what an entry links to, if readers may see it; what stands in a private field does not count.
pub fn of(entry: &Entry, visibility: Visibility) -> BTreeMap<Reference, BackLink> {
    let mut all: BTreeMap<Reference, BackLink> = BTreeMap::new();
    if visibility != Visibility::Public {
        return all;
    }
    for mention in entry.mentions.iter().filter(|mention| !mention.private && mention.to != entry.id) {
        let via = via(entry, mention);
        match all.get_mut(&mention.to) {
            Some(link) if link.via.contains(&via) => {}
            Some(link) => link.via.push(via),
            None => {
                let link = BackLink { from: entry.id.clone(), via: vec![via], told: None };
                all.insert(mention.to.clone(), link);
            }
        }
    }
    let Some(note) = entry.note() else { return all };
    for (at, known) in note.links.iter().enumerate() {
        if let (Some(how), Some(link)) = (known.how, all.get_mut(&known.to.0)) {
            link.told.get_or_insert(Told { date: note.date, at, how });
        }
    }
    all
}

fn via(entry: &Entry, mention: &Mention) -> Via {
    match &mention.at {
        At::Prose(span) => {
            let headings = &entry.prose.headings;
            let above = headings.partition_point(|heading| heading.at.start <= span.start).checked_sub(1);
            let above = above.and_then(|above| headings.get(above));
            Via::Text(above.map(|heading| heading.id.clone()))
        }
        At::Field(steps) => {
            let key = steps.get(entry.origin.root.len()).map_or("", |step| match step {
                Step::Key(key) => key,
                Step::Item(_) => "",
            });
            Via::Field(Box::from(key))
        }
    }
}
