//! Finds what leads nowhere: references, headings, pictures, and addresses that the site needs itself.

use super::{Catalogue, pictures};
use crate::entry::{Entry, Kind, Mention, Placing, Reference};
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
const RESERVED: [&str; 10] = [
    "patterns",
    "projects",
    "journal",
    "yarns",
    "techniques",
    "people",
    "on-the-needles",
    "finished",
    "photos",
    "desk",
];

/// Finds references that lead nowhere, pictures that are missing, and addresses that the site needs itself.
pub fn check(catalogue: &Catalogue, placing: &Placing<'_>) -> Vec<Finding> {
    catalogue.entries.par_iter().flat_map_iter(|entry| check_one(catalogue, entry, placing)).collect()
}

/// Does [`check`] for one entry.
pub fn check_one(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>) -> Vec<Finding> {
    let mut findings = Vec::new();
    for mention in &entry.mentions {
        if !catalogue.exists(&mention.to) && !is_word(catalogue, mention) {
            findings.push(unknown(catalogue, entry, mention, placing));
        }
    }
    findings.extend(headings(catalogue, entry));
    pictures::check(entry, placing, &mut findings);
    findings.extend(reserved(entry, placing));
    findings
}

/// Returns whether a reference that may be a word is one: nothing has a name like it.
fn is_word(catalogue: &Catalogue, mention: &Mention) -> bool {
    mention.perhaps && nearest(mention.to.key.as_str(), catalogue.keys(mention.to.kind)).is_none()
}

fn unknown(catalogue: &Catalogue, entry: &Entry, mention: &Mention, placing: &Placing<'_>) -> Finding {
    let wanted = &mention.to;
    let place = entry.origin.place(&mention.at, placing);
    let is_there = |kind: Kind| catalogue.entry(&Reference { kind, key: wanted.key.clone() }).is_some();
    let elsewhere = Kind::ALL.into_iter().find(|kind| is_there(*kind));
    let near = nearest(wanted.key.as_str(), catalogue.keys(wanted.kind));
    let help = match (near, elsewhere) {
        (Some(near), _) => format!("did you mean `{}:{near}`?", wanted.kind.word()),
        (None, Some(kind)) => format!("did you mean `{}:{}`?", kind.word(), wanted.key),
        (None, None) => format!("add `{0}/{1}.md`, or `{1}:` to `{0}.yaml`", wanted.kind.folder(), wanted.key),
    };
    Finding::new(&UNKNOWN_REFERENCE, place, format!("there is no `{wanted}`")).help(help)
}

/// Finds references to headings that their entry does not have.
fn headings(catalogue: &Catalogue, entry: &Entry) -> Vec<Finding> {
    let wanted = entry.prose.references.iter().filter_map(|reference| Some((reference, reference.heading.as_ref()?)));
    let missing = wanted.filter_map(|(reference, heading)| {
        let target = &catalogue.entry(&reference.to)?.prose.headings;
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
