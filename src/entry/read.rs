//! Reads all entries of a studio.

use super::common::Common;
use super::field::{Keys, Record, read_record};
use super::kind::{Key, Kind, Reference};
use super::origin::{At, Origin, Placing, place_in};
use super::studio::{Settings, Studio};
use super::value::Date;
use super::yaml::{Node, Notes, Places, SYNTAX, Step, Trail, Yaml, explain, parse};
use super::{
    Address, Data, Entry, Mention, Note, Page, Pattern, Person, Project, Prose, Technique, Yarn, front, prose,
};
use crate::finding::{Code, Finding, Severity, nearest};
use crate::source::{FilePath, Place, Text, Texts, Unreadable};
use rayon::prelude::*;
use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;

/// A file that is not UTF-8.
pub static NOT_UTF8: Code = Code {
    name: "not-utf-8",
    severity: Severity::Error,
    what: "A text file holds bytes that are not UTF-8.",
    why: "Accents and signs in it would come out wrong, so none of it is used.",
    bad: "a file saved as Windows-1252 or UTF-16",
    good: "the same file saved as UTF-8",
};

/// A file that the system would not give.
pub static UNREADABLE: Code = Code {
    name: "unreadable-file",
    severity: Severity::Error,
    what: "A file cannot be read.",
    why: "What stands in it would be missing from the site.",
    bad: "a file of another user",
    good: "a file the designer may read",
};

/// A byte-order mark at the start of a file.
pub static BYTE_ORDER_MARK: Code = Code {
    name: "byte-order-mark",
    severity: Severity::Warning,
    what: "A file begins with an invisible byte-order mark.",
    why: "It is read past here, but other programs stumble over it.",
    bad: "a file saved as \"UTF-8 with BOM\"",
    good: "the same file saved as plain UTF-8",
};

/// A file whose lines end in two ways.
pub static MIXED_LINE_ENDS: Code = Code {
    name: "mixed-line-ends",
    severity: Severity::Warning,
    what: "Some lines of a file end as Windows ends them and some do not.",
    why: "All are read alike, but editors and comparisons show changes that are none.",
    bad: "a file pasted together from two systems",
    good: "a file with one kind of line end",
};

/// An invisible control character.
pub static CONTROL_CHARACTER: Code = Code {
    name: "control-character",
    severity: Severity::Error,
    what: "A text holds an invisible control character, mostly pasted in.",
    why: "Feeds with it cannot be read by anybody (XML 1.0 forbids them).",
    bad: "a text pasted from a terminal or an old word processor",
    good: "the same text without it",
};

/// A studio without the file that says whose it is.
pub static NO_STUDIO: Code = Code {
    name: "studio-missing",
    severity: Severity::Error,
    what: "The studio's own file is missing.",
    why: "Without its title and address no page can be made.",
    bad: "patterns/ and journal/ without studio.yaml",
    good: "title: Wrackline\nurl: https://wrackline.example",
};

/// A text file that belongs to no kind.
pub static STRAY_FILE: Code = Code {
    name: "stray-file",
    severity: Severity::Warning,
    what: "A Markdown or YAML file stands in no kind's folder and is no register.",
    why: "Nothing of it is on the site, which is easily overlooked.",
    bad: "pattern/saltmarsh-yoke.md",
    good: "patterns/saltmarsh-yoke.md",
};

/// A file name or a register's key that cannot be an entry's key.
pub static BAD_KEY: Code = Code {
    name: "bad-key",
    severity: Severity::Error,
    what: "A file name or a key of a register is not lower-case letters, digits and hyphens.",
    why: "It is the entry's address on the web and its name in references.",
    bad: "patterns/Saltmarsh Yoke.md",
    good: "patterns/saltmarsh-yoke.md",
};

/// A key written twice in one map.
pub static DUPLICATE_KEY: Code = Code {
    name: "duplicate-key",
    severity: Severity::Error,
    what: "A key stands twice in one map.",
    why: "Only one of the values could be used, and which is chance.",
    bad: "title: Reeds\ntitle: Reeds, at last",
    good: "title: Reeds, at last",
};

/// Two entries of one kind with the same key.
pub static DUPLICATE_ENTRY: Code = Code {
    name: "duplicate-entry",
    severity: Severity::Error,
    what: "Two entries of a kind have the same key.",
    why: "A reference could mean either, and both want the same page.",
    bad: "heron-dk in yarns.yaml and yarns/heron-dk.md",
    good: "one of them",
};

/// A note that says its day nowhere, or says two.
pub static NOTE_DAY: Code = Code {
    name: "note-day",
    severity: Severity::Error,
    what: "A note has no date, or another than its file's name.",
    why: "Notes are ordered, numbered and published by their day.",
    bad: "journal/reeds.md without `date`",
    good: "journal/2026-11-20-reeds.md",
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

/// Which room of the studio a file is in.
enum Room {
    Studio,
    Entry(Kind),
    Register(Kind),
    Stray,
}

fn room(path: &FilePath) -> Room {
    let yaml = matches!(path.extension().as_str(), "yaml" | "yml");
    let deep = path.as_str().matches('/').count() > 1;
    match (path.folder().and_then(Kind::of_folder), path.folder()) {
        (Some(kind), _) if !yaml && !deep => Room::Entry(kind),
        (None, None) if path.as_str() == "studio.yaml" => Room::Studio,
        (None, None) if yaml => Kind::of_folder(path.stem()).map_or(Room::Stray, Room::Register),
        _ => Room::Stray,
    }
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
        Some(entry) => given.entries.push(entry),
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
        _ => super::field::wrong_type(&root, "keys of entries, each with its own keys below", &mut notes),
    }
    // A key written twice is one mistake, told as such by `place_notes`; the second entry is no further one.
    let mut seen = BTreeSet::new();
    given.entries.retain(|entry| seen.insert(entry.id.clone()));
    given.findings.extend(place_notes(&origin, content, &yaml, notes));
}

fn read_entry(id: Reference, node: &Node<'_>, origin: &Origin, prose: Prose, notes: &mut Notes<'_>) -> Option<Entry> {
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

pub(super) fn parse_yaml(origin: &Origin, content: &str, findings: &mut Vec<Finding>) -> Option<Yaml> {
    let text = content.get(origin.yaml.clone()).unwrap_or_default();
    let error = match parse(text) {
        Ok(yaml) => return Some(yaml),
        Err(error) => error,
    };
    let trouble = explain(text, &error);
    let span = origin.yaml.start + trouble.at.start..origin.yaml.start + trouble.at.end;
    let finding = Finding::new(&SYNTAX, Place { file: origin.file.clone(), span }, trouble.message);
    findings.push(finding.help(trouble.help));
    None
}

/// Turns what was noticed in one YAML text into findings with places, and adds its keys that stand twice.
pub(super) fn place_notes(origin: &Origin, content: &str, yaml: &Yaml, notes: Notes<'_>) -> Vec<Finding> {
    let twice = has_duplicate(yaml);
    if notes.notes.is_empty() && !twice {
        return Vec::new();
    }
    let text = content.get(origin.yaml.clone()).unwrap_or_default();
    let places = Places::of(text);
    let shift = |range: &Range<usize>| range.start + origin.yaml.start..range.end + origin.yaml.start;
    let mut findings: Vec<Finding> = notes
        .notes
        .into_iter()
        .map(|note| {
            let place = place_in(&places, text, origin, &note.steps, note.on, note.within.as_ref());
            Finding::new(note.code, place, note.message).maybe_help(note.help)
        })
        .collect();
    for (second, first, key) in &places.twice {
        let place = |range| Place { file: origin.file.clone(), span: shift(range) };
        let finding = Finding::new(&DUPLICATE_KEY, place(second), format!("`{key}` stands twice"));
        findings.push(finding.help("keep one of them").also(place(first), "first here"));
    }
    findings
}

fn has_duplicate(yaml: &Yaml) -> bool {
    match yaml {
        Yaml::List(items) => items.iter().any(has_duplicate),
        Yaml::Map(entries) => {
            let twice = if entries.len() > 24 {
                let mut seen = BTreeSet::new();
                !entries.iter().all(|(key, _)| seen.insert(key.as_str()))
            } else {
                entries.iter().enumerate().any(|(at, (key, _))| entries.iter().take(at).any(|(other, _)| other == key))
            };
            twice || entries.iter().any(|(_, value)| has_duplicate(value))
        }
        Yaml::Null | Yaml::Bool(_) | Yaml::Number(_) | Yaml::Fraction(_) | Yaml::Text(_) => false,
    }
}

fn text_shape(path: &FilePath, text: &Text) -> Vec<Finding> {
    let mut findings = Vec::new();
    if text.had_mark {
        let finding = Finding::new(&BYTE_ORDER_MARK, Place::whole(path), "the file begins with a byte-order mark");
        findings.push(finding.help("save it as UTF-8 without a byte-order mark"));
    }
    let content = &text.content;
    let control = |byte: &u8| byte.is_ascii_control() && !matches!(byte, b'\n' | b'\r' | b'\t');
    if let Some((at, byte)) = content.bytes().enumerate().find(|(_, byte)| control(byte)) {
        let place = Place { file: path.clone(), span: at..at + 1 };
        let message = format!("the text holds the invisible character U+{byte:04X}");
        findings.push(Finding::new(&CONTROL_CHARACTER, place, message).help("take it out"));
    }
    if content.contains("\r\n") {
        let ends = content.matches('\n').count();
        let windows = content.matches("\r\n").count();
        if windows < ends {
            let finding = Finding::new(
                &MIXED_LINE_ENDS,
                Place::whole(path),
                format!("{windows} of {ends} lines end as Windows ends them"),
            );
            findings.push(finding.help("let your editor save the file with one kind of line end"));
        }
    }
    findings
}

fn unreadable_file(unreadable: &Unreadable) -> Finding {
    match unreadable {
        Unreadable::NotUtf8 { file, offset } => {
            let finding = Finding::new(
                &NOT_UTF8,
                Place { file: file.clone(), span: *offset..*offset + 1 },
                "the file is not UTF-8 from here on",
            );
            finding.help("save it as UTF-8; most editors offer it under \"Save as\" or \"Encoding\"")
        }
        Unreadable::System { file, error } => {
            Finding::new(&UNREADABLE, Place::whole(file), format!("the file cannot be read: {error}"))
                .help("check that it is still there and that you may read it")
        }
    }
}

fn bad_file_name(path: &FilePath) -> Finding {
    let like = Key::like(path.stem());
    let help = if like.is_empty() {
        "name it with lower-case letters, digits and hyphens".to_owned()
    } else {
        format!("name it `{like}.md`")
    };
    Finding::new(&BAD_KEY, Place::whole(path), format!("`{}` cannot be the key of an entry", path.stem())).help(help)
}

/// Returns whether a file in a kind's folder was meant as an entry and saved as something else.
fn is_text_of_another_kind(path: &FilePath) -> bool {
    let kind = path.folder().is_some_and(|folder| Kind::of_folder(folder).is_some());
    kind && matches!(path.extension().as_str(), "txt" | "text" | "mdown" | "mkd" | "doc" | "docx" | "odt" | "rtf")
}

fn stray(path: &FilePath) -> Finding {
    if is_text_of_another_kind(path) {
        let finding = Finding::new(&STRAY_FILE, Place::whole(path), "the file is not Markdown and is not on the site");
        return finding.help(format!("save it as plain text with the name `{}.md`", Key::like(path.stem())));
    }
    let yaml = matches!(path.extension().as_str(), "yaml" | "yml");
    let name = if yaml { path.stem() } else { path.folder().unwrap_or_default() };
    let near = nearest(name, Kind::ALL.map(Kind::folder));
    let help = match near {
        Some(near) if near == name => format!("entries stand in `{near}` itself, not in folders below it"),
        Some(near) if yaml => format!("did you mean `{near}.yaml` beside `studio.yaml`?"),
        Some(near) => format!("did you mean the folder `{near}`?"),
        None => format!(
            "move it into one of {}, or out of the studio",
            Kind::ALL.map(|kind| format!("`{}`", kind.folder())).join(", ")
        ),
    };
    Finding::new(&STRAY_FILE, Place::whole(path), "the file is in no kind's folder and is not on the site").help(help)
}

fn duplicate_entry(first: &Entry, second: &Entry, placing: &Placing<'_>) -> Finding {
    let finding =
        Finding::new(&DUPLICATE_ENTRY, second.origin.start(placing), format!("there are two entries `{}`", second.id));
    finding.help("rename or delete one of them").also(first.origin.start(placing), "the first one")
}
