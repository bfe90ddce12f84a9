//! One YAML text of a file: parsed, and what was noticed in it with places.

use crate::entry::origin::{Origin, place_in};
use crate::entry::yaml::{Notes, Places, SYNTAX, Yaml, explain, parse};
use crate::finding::{Code, Finding, Severity};
use crate::source::Place;
use std::collections::BTreeSet;
use std::ops::Range;

/// A key written twice in one map.
pub static DUPLICATE_KEY: Code = Code {
    name: "duplicate-key",
    severity: Severity::Error,
    what: "A key stands twice in one map.",
    why: "Only one of the values could be used, and which is chance.",
    bad: "title: Reeds\ntitle: Reeds, at last",
    good: "title: Reeds, at last",
};

pub(in crate::entry) fn parse_yaml(origin: &Origin, content: &str, findings: &mut Vec<Finding>) -> Option<Yaml> {
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
pub(in crate::entry) fn place_notes(origin: &Origin, content: &str, yaml: &Yaml, notes: Notes<'_>) -> Vec<Finding> {
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
