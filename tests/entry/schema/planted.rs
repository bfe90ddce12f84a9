//! The mistakes of the case files: which of them a schema sees, and which it cannot.

use super::{Document, SCHEMAS, VALIDATORS, document};
use crate::cases::{bytes, cases};
use ballband::entry::yaml::{On, Places, Step, parse};
use ballband::source::Position;
use jsonschema::ValidationError;
use jsonschema::error::ValidationErrorKind as Error;
use serde_json::Value;
use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

/// The codes of mistakes in a single value or key. All others are of YAML itself, of what two entries say of each other, of
/// sums, or of the prose, and are not a schema's to see.
const ITS_OWN: [&str; 9] = [
    "bad-key",
    "bad-quantity",
    "bad-reference",
    "missing-field",
    "note-day",
    "run-taken-apart",
    "unknown-key",
    "weight-unknown",
    "wrong-type",
];

/// Mistakes of these codes that no schema sees: a piece of the guilty line, and why.
const UNSEEN: &[(&str, &str)] = &[
    ("patterns/saltmarsh-yoke.md:5: wrong-type", "levels are read in any capitals and by their older names"),
    ("yarns.yaml:3: weight-unknown", "weights are read in any capitals and by names of several systems"),
    ("sizes: XS (S, M, L", "brackets that do not match are for a parser to find"),
    ("length: 56 (57,, 60) cm", "an empty place is for a parser to find"),
    ("date: 2026-02-30", "how long a month is takes a calendar"),
    ("used: 4.5 miles", "an amount may be in so many units that only reading knows them all"),
    ("A\\u0007bout", "an invisible character in a text is left to reading"),
    ("note-day", "a note's day is settled between its name and its keys"),
    ("margin: -5%", "a figure in a text is not compared"),
    ("margin: 250%", "a figure in a text is not compared"),
];

/// Returns the lines of a file at which its schema finds something wrong.
fn lines_seen(file: &str, document: &Document<'_>) -> BTreeSet<usize> {
    let Ok(yaml) = parse(document.yaml) else { return BTreeSet::new() };
    let value = yaml.to_json();
    let places = Places::of(document.yaml);
    let mut lines = BTreeSet::new();
    for error in VALIDATORS[&document.schema].iter_errors(&value) {
        for (way, on) in ways(&value, &error) {
            // What is missing from the whole is told at its first line.
            let at = if way.is_empty() { 0 } else { document.start + places.find(&way, on).start };
            lines.insert(Position::of(file, at).line);
        }
    }
    lines
}

/// Returns the ways to the keys or values that an error is about.
fn ways(whole: &Value, error: &ValidationError<'_>) -> Vec<(Vec<Step>, On)> {
    let mut way = Vec::new();
    let mut here = whole;
    for part in error.instance_path().as_str().split('/').skip(1) {
        let part = part.replace("~1", "/").replace("~0", "~");
        let step = if here.is_array() { Step::Item(part.parse().unwrap()) } else { Step::Key(part.as_str().into()) };
        here = if here.is_array() { &here[part.parse::<usize>().unwrap()] } else { &here[&part] };
        way.push(step);
    }
    let below = |key: &str| [way.clone(), vec![Step::Key(key.into())]].concat();
    match error.kind() {
        Error::AdditionalProperties { unexpected } => unexpected.iter().map(|key| (below(key), On::Key)).collect(),
        Error::PropertyNames { error } => vec![(below(error.instance().as_str().unwrap()), On::Key)],
        Error::Required { .. } => vec![(way, On::Key)],
        _ => vec![(way, On::Value)],
    }
}

/// Returns the mistakes that schemas see and those that they do not, each with its case, line, code and text.
fn mistakes() -> (Vec<String>, Vec<String>) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases");
    let (mut seen, mut unseen) = (Vec::new(), Vec::new());
    for name in ["planted.txt", "reading.txt", "figures.txt", "agree.txt"] {
        for case in cases(&fs::read_to_string(folder.join(name)).unwrap()) {
            for (path, text) in &case.files {
                let Ok(text) = String::from_utf8(bytes(text)) else { continue };
                let Some(document) = document(path, &text) else { continue };
                let lines = lines_seen(&text, &document);
                let prose = Position::of(&text, document.start + document.yaml.len()).line;
                for (_, number, code) in case.expected.iter().filter(|(file, ..)| file == path) {
                    if !ITS_OWN.contains(&code.as_str()) || (document.start > 0 && *number > prose) || *number == 0 {
                        continue;
                    }
                    let guilty = text.lines().nth(number - 1).unwrap_or_default();
                    let line = format!("{name}, {}, {path}:{number}: {code}: {guilty}", case.name);
                    if lines.contains(number) { seen.push(line) } else { unseen.push(line) }
                }
            }
        }
    }
    (seen, unseen)
}

#[test]
fn schemas_see_every_planted_mistake_but_those_they_cannot() {
    let (seen, unseen) = mistakes();
    assert!(seen.len() >= 40, "only {} mistakes are seen", seen.len());
    let listed = |line: &str| UNSEEN.iter().any(|(text, _)| line.contains(text));
    let missed: Vec<&String> = unseen.iter().filter(|line| !listed(line)).collect();
    assert!(missed.is_empty(), "{missed:#?}");
    for (text, why) in UNSEEN {
        assert!(!why.is_empty());
        assert!(unseen.iter().any(|line| line.contains(text)), "`{text}` is seen now, or is no case any more");
    }
}

/// A studio without mistakes in its keys and values has none for a schema either, whatever else is wrong with it.
#[test]
fn schemas_see_nothing_that_is_not_there() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases");
    let mut held = 0;
    for name in ["planted.txt", "reading.txt", "figures.txt", "agree.txt"] {
        for case in cases(&fs::read_to_string(folder.join(name)).unwrap()) {
            for (path, text) in &case.files {
                let Ok(text) = String::from_utf8(bytes(text)) else { continue };
                let Some(document) = document(path, &text) else { continue };
                let told: BTreeSet<usize> =
                    case.expected.iter().filter(|(file, ..)| file == path).map(|(_, line, _)| *line).collect();
                for line in lines_seen(&text, &document) {
                    // Line 0 stands for the whole file.
                    assert!(
                        told.contains(&line) || told.contains(&0),
                        "{name}, {}, {path}: nothing is told of line {line}",
                        case.name
                    );
                }
                held += 1;
            }
        }
    }
    assert!(held > 100 && SCHEMAS.len() == 15, "only {held} files were held against their schemas");
}
