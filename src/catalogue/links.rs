//! Which entries refer to which.

use super::Index;
use super::visible::{Visibility, visibility};
use crate::entry::value::Date;
use crate::entry::yaml::Step;
use crate::entry::{At, Entry, Mention, Reference};

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
}

impl BackLink {
    /// Returns whether the reference stands in this key of the front matter.
    pub fn is_via(&self, key: &str) -> bool {
        self.via.iter().any(|via| matches!(via, Via::Field(name) if &**name == key))
    }
}

/// Returns, for every entry, the public entries that refer to it; what stands in a private field does not count.
pub fn back_links(entries: &[Entry], today: Date) -> Index<Vec<BackLink>> {
    let mut all: Index<Vec<BackLink>> = Index::default();
    for entry in entries {
        if visibility(entry, today) != Visibility::Public {
            continue;
        }
        for mention in entry.mentions.iter().filter(|mention| !mention.private && mention.to != entry.id) {
            let links = all.entry(mention.to.clone()).or_default();
            let via = via(entry, mention);
            match links.last_mut() {
                Some(last) if last.from == entry.id => {
                    if !last.via.contains(&via) {
                        last.via.push(via);
                    }
                }
                _ => links.push(BackLink { from: entry.id.clone(), via: vec![via] }),
            }
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
