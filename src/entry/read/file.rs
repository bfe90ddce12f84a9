//! What one file gives: the studio's own, an entry's, or a register of entries.

use super::entry::read_entry;
use super::room::{BAD_KEY, Room, bad_file_name, room, stray};
use super::text::text_shape;
use super::yaml::{parse_yaml, place_notes};
use crate::entry::field::{read_record, wrong_type};
use crate::entry::yaml::{Node, Notes, Step, Trail, Yaml};
use crate::entry::{Entry, Key, Kind, Origin, Prose, Reference, Settings, Studio, front, prose};
use crate::finding::{Code, Finding, Severity};
use crate::source::{FilePath, Place, Text, Texts};
use std::collections::BTreeSet;

/// A studio without the file that says whose it is.
pub static NO_STUDIO: Code = Code {
    name: "studio-missing",
    severity: Severity::Error,
    what: "The studio's own file is missing.",
    why: "Without its title and address no page can be made.",
    bad: "patterns/ and journal/ without studio.yaml",
    good: "title: Wrackline\nurl: https://wrackline.example",
};

/// What one file gave.
#[derive(Clone, Debug, Default)]
pub struct Given {
    /// The entries that could be read.
    pub entries: Vec<Entry>,
    /// Those that could not.
    pub broken: Vec<Reference>,
    /// The kind of a register that could not be read at all.
    pub broken_kind: Option<Kind>,
    /// What is wrong in the file.
    pub findings: Vec<Finding>,
}

/// Reads the studio's own file, if there is one that can be read.
pub fn read_studio(texts: &Texts) -> (Option<Studio>, Vec<Finding>) {
    let mut findings = Vec::new();
    let Some((path, text)) = texts.texts.iter().find(|(path, _)| matches!(room(path), Room::Studio)) else {
        return (None, findings);
    };
    let origin = Origin { file: path.clone(), yaml: 0..text.content.len(), root: Box::new([]) };
    let Some(yaml) = parse_yaml(&origin, &text.content, &mut findings) else { return (None, findings) };
    let settings = Settings::default();
    let mut notes = Notes::new(&settings);
    let studio = read_record(&Node { value: &yaml, trail: Trail::Root }, &mut notes);
    findings.extend(place_notes(&origin, &text.content, &yaml, notes));
    (studio, findings)
}

/// Returns the finding that a studio has lost its own file.
pub fn missing_studio() -> Finding {
    Finding::new(&NO_STUDIO, Place::whole(&FilePath::studio()), "`studio.yaml` is missing")
        .help("put it back; it needs a `title` and the site's `url`")
}

/// Reads one file that may hold entries.
pub fn read_file(path: &FilePath, text: &Text, settings: &Settings) -> Given {
    let mut given = Given::default();
    given.findings.extend(text_shape(path, text));
    match room(path) {
        Room::Studio => {}
        Room::Entry(kind) => read_entry_file(path, text, kind, settings, &mut given),
        Room::Register(kind) => read_register(path, text, kind, settings, &mut given),
        Room::Stray => given.findings.push(stray(path)),
    }
    given
}

fn read_entry_file(path: &FilePath, text: &Text, kind: Kind, settings: &Settings, given: &mut Given) {
    let Some(key) = Key::new(path.stem()) else {
        given.findings.push(bad_file_name(path));
        return;
    };
    let id = Reference { kind, key };
    let parts = match front::split(path, &text.content) {
        Ok(parts) => parts,
        Err(finding) => {
            given.findings.push(finding);
            given.broken.push(id);
            return;
        }
    };
    let origin = Origin { file: path.clone(), yaml: parts.yaml.clone(), root: Box::new([]) };
    let Some(yaml) = parse_yaml(&origin, &text.content, &mut given.findings) else {
        given.broken.push(id);
        return;
    };
    let mut notes = Notes::new(settings);
    let node = Node { value: &yaml, trail: Trail::Root };
    let text_of_body = prose::read(path, &text.content, parts.body, settings, &mut given.findings);
    match read_entry(id.clone(), &node, &origin, text_of_body, &mut notes) {
        // A list of one: one that is begun empty has room for four.
        Some(entry) => given.entries = vec![entry],
        None => given.broken.push(id),
    }
    given.findings.extend(place_notes(&origin, &text.content, &yaml, notes));
}

fn read_register(path: &FilePath, text: &Text, kind: Kind, settings: &Settings, given: &mut Given) {
    let content = &text.content;
    let origin = Origin { file: path.clone(), yaml: 0..content.len(), root: Box::new([]) };
    if content.trim().is_empty() {
        given.findings.push(
            Finding::new(&front::EMPTY_FILE, Place::whole(path), "the register is empty")
                .help("add entries as `key:` with their keys indented below, or delete the file"),
        );
        return;
    }
    let Some(yaml) = parse_yaml(&origin, content, &mut given.findings) else {
        given.broken_kind = Some(kind);
        return;
    };
    let mut notes = Notes::new(settings);
    let root = Node { value: &yaml, trail: Trail::Root };
    match &yaml {
        Yaml::Map(entries) => {
            for (name, value) in entries {
                let node = Node { value, trail: Trail::Key(&root.trail, name) };
                let Some(key) = Key::new(name) else {
                    let help = format!("a key is lower-case letters, digits and hyphens: `{}`", Key::like(name));
                    notes.key(&BAD_KEY, &node, format!("`{name}` cannot be the key of an entry"), Some(help));
                    continue;
                };
                let id = Reference { kind, key };
                let origin = Origin { root: Box::new([Step::Key(Box::from(name.as_str()))]), ..origin.clone() };
                match read_entry(id.clone(), &node, &origin, Prose::default(), &mut notes) {
                    Some(entry) => given.entries.push(entry),
                    None => given.broken.push(id),
                }
            }
        }
        _ => wrong_type(&root, "keys of entries, each with its own keys below", &mut notes),
    }
    // A key written twice is one mistake, told as such by `place_notes`; the second entry is no further one.
    let mut seen = BTreeSet::new();
    given.entries.retain(|entry| seen.insert(entry.id.clone()));
    given.findings.extend(place_notes(&origin, content, &yaml, notes));
}
