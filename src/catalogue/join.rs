//! Joins entries into a catalogue, and finds what leads nowhere.

use super::{Catalogue, links, pictures};
use crate::entry::Placing;
use crate::entry::value::Date;
use crate::entry::{Entries, Entry, Kind, Mention, Reference, Studio};
use crate::finding::{Code, Finding, Severity, nearest};
use crate::source::Place;
use rayon::prelude::*;

/// A reference that leads nowhere.
pub static UNKNOWN_REFERENCE: Code = Code {
    name: "unknown-reference",
    severity: Severity::Error,
    what: "A reference names an entry that does not exist.",
    why: "The reader would follow it into nothing.",
    bad: "<pattern:saltmarsh-yolk>",
    good: "<pattern:saltmarsh-yoke>",
};

/// A plain page whose address the site needs for something else.
pub static RESERVED_PAGE: Code = Code {
    name: "reserved-page",
    severity: Severity::Error,
    what: "A plain page has the address of a page that the site always has.",
    why: "Only one of the two could be there.",
    bad: "pages/patterns.md",
    good: "pages/about-patterns.md",
};

/// The first parts of addresses that plain pages cannot have.
pub const RESERVED: [&str; 9] =
    ["patterns", "projects", "journal", "yarns", "techniques", "people", "on-the-needles", "finished", "photos"];

/// What joining needs beside the entries.
#[derive(Clone, Copy, Debug)]
pub struct Join<'a> {
    /// The texts, to place findings in.
    pub placing: &'a Placing<'a>,
    /// The day the site is made for.
    pub today: Date,
}

/// Joins a studio's entries; references that lead nowhere and pictures that are missing are findings.
pub fn join(entries: Entries, studio: Studio, with: Join<'_>) -> (Catalogue, Vec<Finding>) {
    let known = Known::of(&entries);
    let mut findings: Vec<Finding> = entries
        .entries
        .par_iter()
        .flat_map_iter(|(_, entry)| {
            let mut findings = Vec::new();
            for mention in entry.mentions.iter().filter(|mention| !known.has(&mention.to) && !known.is_word(mention)) {
                findings.push(unknown(entry, mention, &known, with.placing));
            }
            findings.extend(headings(&entries, entry));
            pictures::check(entry, with.placing, &mut findings);
            findings.extend(reserved(entry, with.placing));
            findings
        })
        .collect();
    crate::finding::sort(&mut findings);
    let entries: Vec<Entry> = entries.entries.into_values().collect();
    let (places, back_links) = rayon::join(
        || entries.iter().enumerate().map(|(place, entry)| (entry.id.clone(), place)).collect(),
        || links::back_links(&entries, with.today),
    );
    (Catalogue { studio, today: with.today, entries, places, back_links }, findings)
}

/// The entries that can be referred to.
struct Known<'a> {
    entries: &'a Entries,
}

impl<'a> Known<'a> {
    fn of(entries: &'a Entries) -> Self {
        Self { entries }
    }

    fn has(&self, id: &Reference) -> bool {
        self.entries.entries.contains_key(id)
            || self.entries.broken.contains(id)
            || self.entries.broken_kinds.contains(&id.kind)
    }

    /// Returns whether a reference that may be a word is one: nothing has a name like it.
    fn is_word(&self, mention: &Mention) -> bool {
        mention.perhaps && nearest(mention.to.key.as_str(), self.keys(mention.to.kind)).is_none()
    }

    fn was_read(&self, id: &Reference) -> bool {
        self.entries.entries.contains_key(id)
    }

    fn keys(&self, kind: Kind) -> impl Iterator<Item = &'a str> {
        let read = self.entries.entries.keys().chain(&self.entries.broken);
        read.filter(move |id| id.kind == kind).map(|id| id.key.as_str())
    }
}

fn unknown(entry: &Entry, mention: &Mention, known: &Known<'_>, placing: &Placing<'_>) -> Finding {
    let wanted = &mention.to;
    let place = entry.origin.place(&mention.at, placing);
    let elsewhere =
        Kind::ALL.into_iter().find(|kind| known.was_read(&Reference { kind: *kind, key: wanted.key.clone() }));
    let near = nearest(wanted.key.as_str(), known.keys(wanted.kind));
    let help = match (near, elsewhere) {
        (Some(near), _) => format!("did you mean `{}:{near}`?", wanted.kind.word()),
        (None, Some(kind)) => format!("did you mean `{}:{}`?", kind.word(), wanted.key),
        (None, None) => format!("add `{0}/{1}.md`, or `{1}:` to `{0}.yaml`", wanted.kind.folder(), wanted.key),
    };
    Finding::new(&UNKNOWN_REFERENCE, place, format!("there is no `{wanted}`")).help(help)
}

/// Finds references to headings that their entry does not have.
fn headings(entries: &Entries, entry: &Entry) -> Vec<Finding> {
    let wanted = entry.prose.references.iter().filter_map(|reference| Some((reference, reference.heading.as_ref()?)));
    let missing = wanted.filter_map(|(reference, heading)| {
        let target = &entries.entries.get(&reference.to)?.prose.headings;
        // The theme's own parts of a page begin with its name.
        if target.iter().any(|one| one.id == *heading) || heading.starts_with("leaflet-") {
            return None;
        }
        let near = nearest(heading, target.iter().map(|one| one.id.as_str()));
        let with_prefix = target.iter().map(|one| one.id.as_str()).find(|id| id.strip_prefix("on-") == Some(heading));
        let help = match (with_prefix.or(near), target.as_slice()) {
            (Some(near), _) => format!("did you mean `#{near}`?"),
            (None, []) => "it has no headings; link to the entry itself".to_owned(),
            (None, _) => {
                format!("it has {}", target.iter().map(|one| format!("`#{}`", one.id)).collect::<Vec<_>>().join(", "))
            }
        };
        let place = Place { file: entry.origin.file.clone(), span: reference.at.clone() };
        Some(
            Finding::new(&UNKNOWN_REFERENCE, place, format!("`{}` has no heading `{heading}`", reference.to))
                .help(help),
        )
    });
    missing.collect()
}

fn reserved(entry: &Entry, placing: &Placing<'_>) -> Option<Finding> {
    let key = entry.id.key.as_str();
    let address = match entry.id.kind {
        Kind::Page if RESERVED.contains(&key) => Some(format!("/{key}/")),
        Kind::Pattern if key == "on-the-way" => Some("/patterns/on-the-way/".to_owned()),
        _ => None,
    };
    address.map(|address| {
        let message = format!("the site itself has a page `{address}`");
        Finding::new(&RESERVED_PAGE, entry.origin.start(placing), message).help("give it another name")
    })
}
