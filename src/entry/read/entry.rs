//! One entry of its map of keys and its text.

use crate::entry::common::Common;
use crate::entry::field::{Keys, Record};
use crate::entry::value::Date;
use crate::entry::yaml::{Node, Notes, Step, Trail};
use crate::entry::{
    Address, At, Data, Entry, Key, Kind, Mention, Note, Origin, Page, Pattern, Person, Project, Prose, Reference,
    Technique, Yarn,
};
use crate::finding::{Code, Severity};

/// A note that says its day nowhere, or says two.
pub static NOTE_DAY: Code = Code {
    name: "note-day",
    severity: Severity::Error,
    what: "A note has no date, or another than its file's name.",
    why: "Notes are ordered, numbered and published by their day.",
    bad: "journal/reeds.md without `date`",
    good: "journal/2026-11-20-reeds.md",
};

pub(super) fn read_entry(
    id: Reference,
    node: &Node<'_>,
    origin: &Origin,
    prose: Prose,
    notes: &mut Notes<'_>,
) -> Option<Entry> {
    let (before, told, asked) = (notes.references.len(), notes.notes.len(), notes.addresses.len());
    let said = notes.texts.len();
    let read = match id.kind {
        Kind::Pattern => record::<Pattern>(node, notes).map(|(common, data)| (common, Data::Pattern(Box::new(data)))),
        Kind::Project => record::<Project>(node, notes).map(|(common, data)| (common, Data::Project(Box::new(data)))),
        Kind::Note => record::<Note>(node, notes).map(|(common, data)| (common, Data::Note(Box::new(data)))),
        Kind::Yarn => record::<Yarn>(node, notes).map(|(common, data)| (common, Data::Yarn(Box::new(data)))),
        Kind::Technique => {
            record::<Technique>(node, notes).map(|(common, data)| (common, Data::Technique(Box::new(data))))
        }
        Kind::Person => record::<Person>(node, notes).map(|(common, data)| (common, Data::Person(Box::new(data)))),
        Kind::Page => record::<Page>(node, notes).map(|(common, data)| (common, Data::Page(Box::new(data)))),
    };
    let fields = notes.references.drain(before..).map(|met| Mention {
        to: met.to,
        at: At::Field(met.steps),
        private: met.private,
        perhaps: met.perhaps,
    });
    let in_prose = prose.references.iter().map(|reference| Mention {
        to: reference.to.clone(),
        at: At::Prose(reference.at.clone()),
        private: false,
        perhaps: false,
    });
    let mentions = fields.chain(in_prose).collect();
    let fields = notes.addresses.drain(asked..).map(|(url, steps)| Address { url, at: At::Field(steps) });
    let in_prose = prose.outside.iter().map(|link| Address { url: link.url.clone(), at: At::Prose(link.at.clone()) });
    let addresses = fields.chain(in_prose).collect();
    let texts = notes.texts.drain(said..).collect();
    let (common, mut data) = read?;
    if let Data::Note(note) = &mut data {
        settle_day(note, &id.key, node, told, notes);
    }
    let spoilt = notes.notes.iter().skip(told).filter_map(|note| match note.steps.get(origin.root.len()) {
        Some(Step::Key(key)) => Some(key.clone()),
        _ => None,
    });
    let (origin, spoilt) = (origin.clone(), spoilt.collect());
    Some(Entry { id, common, data, prose, mentions, addresses, texts, origin, spoilt })
}

/// Reads the keys of one kind and those that all kinds share from the same map.
fn record<T: Record>(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<(Common, T)> {
    let keys = Keys::of(node, T::NAME, T::FIELDS, notes)?;
    keys.check_known(T::NAME, &[Common::FIELDS, T::FIELDS], notes);
    let common = Common::read_known(&keys, notes);
    let own = T::read_known(&keys, notes);
    Some((common?, own?))
}

/// Gives a note the day of its key where it has no date of its own, and notes one that disagrees; `told` counts what was
/// noted before this entry.
fn settle_day(note: &mut Note, key: &Key, node: &Node<'_>, told: usize, notes: &mut Notes<'_>) {
    let date = Node { value: node.value, trail: Trail::Key(&node.trail, "date") };
    match (note.date, Date::leading(key.as_str())) {
        (None, None) => {
            let steps = date.trail.steps();
            let misread = notes.notes.iter().skip(told).any(|note| note.steps == steps);
            if !misread {
                let help = "add `date: 2026-11-20`, or begin the file's name with it".to_owned();
                notes.key(&NOTE_DAY, node, format!("the note `{key}` has no date"), Some(help));
            }
        }
        (None, named) => note.date = named,
        (Some(day), Some(named)) if day != named => {
            let message = format!("the note's date is {day}, its name says {named}");
            notes.value(&NOTE_DAY, &date, message, Some("give both the same day".to_owned()));
        }
        (Some(_), _) => {}
    }
}
