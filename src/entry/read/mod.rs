//! Reads all entries of a studio.

mod entry;
mod file;
mod room;
mod text;
mod yaml;

pub use file::{Given, missing_studio, read_file, read_studio};
pub(super) use yaml::{parse_yaml, place_notes};

use super::{Entry, Key, Kind, Placing, Reference, Studio};
use crate::finding::{Code, Finding, Severity};
use crate::source::{Texts, Unreadable};
use rayon::prelude::*;
use room::{Room, is_text_of_another_kind, room, stray};
use std::collections::{BTreeMap, BTreeSet};
use text::unreadable_file;

/// Two entries of one kind with the same key.
pub static DUPLICATE_ENTRY: Code = Code {
    name: "duplicate-entry",
    severity: Severity::Error,
    what: "Two entries of a kind have the same key.",
    why: "A reference could mean either, and both want the same page.",
    bad: "heron-dk in yarns.yaml and yarns/heron-dk.md",
    good: "one of them",
};

/// A studio's entries, each well or badly read.
#[derive(Clone, Debug, Default)]
pub struct Entries {
    /// The studio's own file, if it could be read.
    pub studio: Option<Studio>,
    /// The entries that could be read, by kind and key.
    pub entries: BTreeMap<Reference, Entry>,
    /// Entries that exist and could not be read: a reference to one is no further mistake.
    pub broken: BTreeSet<Reference>,
    /// Kinds with a register that could not be read at all.
    pub broken_kinds: BTreeSet<Kind>,
}

/// Reads a studio's texts into entries.
///
/// Every mistake in every file is among the findings, in no particular order; what could be read despite them is
/// among the entries.
pub fn read(texts: &Texts, unreadable: &[Unreadable]) -> (Entries, Vec<Finding>) {
    let (studio, mut findings) = read_studio(texts);
    let settings = studio.as_ref().map(Studio::settings).unwrap_or_default();
    let files: Vec<_> = texts.texts.par_iter().map(|(path, text)| read_file(path, text, &settings)).collect();
    let placing = Placing::new(texts);
    let mut all = Entries { studio, ..Entries::default() };
    for mut file in files {
        findings.append(&mut file.findings);
        all.take(file, &placing, &mut findings);
    }
    all.take_unread(texts, unreadable, &mut findings);
    (all, findings)
}

impl Entries {
    /// Takes in what a file gave; an entry that another file gave already is a finding.
    pub fn take(&mut self, file: Given, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
        findings.extend(file.findings);
        self.broken.extend(file.broken);
        self.broken_kinds.extend(file.broken_kind);
        for entry in file.entries {
            match self.entries.get(&entry.id) {
                Some(first) => findings.push(duplicate_entry(first, &entry, placing)),
                None => {
                    self.entries.insert(entry.id.clone(), entry);
                }
            }
        }
    }

    /// Takes note of the files that hold entries and could not be read, and of those that only look as if they did.
    pub fn take_unread(&mut self, texts: &Texts, unreadable: &[Unreadable], findings: &mut Vec<Finding>) {
        findings.extend(unreadable.iter().map(unreadable_file));
        findings.extend(texts.others.iter().filter(|path| is_text_of_another_kind(path)).map(stray));
        for path in unreadable.iter().map(Unreadable::file) {
            match room(path) {
                Room::Entry(kind) => self.broken.extend(Key::new(path.stem()).map(|key| Reference { kind, key })),
                Room::Register(kind) => self.broken_kinds.extend([kind]),
                Room::Studio | Room::Stray => {}
            }
        }
    }
}

fn duplicate_entry(first: &Entry, second: &Entry, placing: &Placing<'_>) -> Finding {
    let finding =
        Finding::new(&DUPLICATE_ENTRY, second.origin.start(placing), format!("there are two entries `{}`", second.id));
    finding.help("rename or delete one of them").also(first.origin.start(placing), "the first one")
}
