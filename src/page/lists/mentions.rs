//! Where an entry is mentioned.

use crate::catalogue::{BackLink, Via};
use crate::entry::{Data, Entry, Kind, Reference};
use crate::page::view::{Line, Link};
use crate::page::{Item, Shown, project, words};
use std::cmp::Reverse;

/// Returns where an entry is mentioned: notes first, the latest first, then other entries by kind and title.
pub fn mentions(shown: &Shown<'_>, id: &Reference, wanted: impl Fn(&BackLink) -> bool) -> Vec<Line> {
    let mut links: Vec<(&BackLink, &Entry)> = shown
        .catalogue
        .linked_from(id)
        .iter()
        .filter(|link| wanted(link))
        .filter_map(|link| Some((link, shown.catalogue.public_entry(&link.from)?)))
        .collect();
    let order = |kind: Kind| (kind != Kind::Note, kind);
    links.sort_by(|(_, a), (_, b)| {
        let late = |entry: &Entry| Reverse(if entry.id.kind == Kind::Note { entry.date() } else { None });
        (order(a.id.kind), late(a), &a.common.title, &a.id).cmp(&(order(b.id.kind), late(b), &b.common.title, &b.id))
    });
    links.into_iter().map(|(link, entry)| mention_line(shown, link, entry)).collect()
}

fn mention_line(shown: &Shown<'_>, link: &BackLink, entry: &Entry) -> Line {
    let own = shown.own_link(entry);
    let heading = link.via.iter().find_map(|via| match via {
        Via::Text(Some(id)) => entry.prose.headings.iter().find(|heading| heading.id == *id),
        Via::Text(None) | Via::Field(_) => None,
    });
    let mut title = None;
    let mut words = Vec::new();
    if let Data::Note(note) = &entry.data {
        title = note.number.map(|number| words::numbered(number, &own.title));
        words.extend(note.date.map(|date| date.in_words()));
    } else {
        words.push(entry.id.kind.word().to_owned());
        words.extend(entry.project().map(|of| project::credit(shown, of)).filter(|credit| !credit.is_empty()));
    }
    let url = heading.zip(own.url.as_ref()).map(|(heading, url)| format!("{url}#{}", heading.id));
    if let Some(time) = heading.and_then(|heading| heading.chapter) {
        words.push(format!("at {time}"));
    }
    let link = match (title, url) {
        (None, None) => own,
        (title, url) => {
            Item::from(Link { title: title.unwrap_or_else(|| own.title.clone()), url: url.or_else(|| own.url.clone()) })
        }
    };
    Line { link, words: words.join(", "), sponsored: false }
}
