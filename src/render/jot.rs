//! The text of a note that is begun.

use crate::entry::Entry;
use crate::entry::value::Choice;
use crate::reckon::jot::{Jotted, OnNeedles, Section};

/// Returns the path of a day's note in the studio: `journal/2026-11-27.md`.
pub fn path(jotted: &Jotted<'_>) -> String {
    format!("journal/{}.md", jotted.day)
}

/// Returns a note's text, to be gone on with: front matter that is not ready, what was finished or published since the last
/// note as references, and its headings.
pub fn text(jotted: &Jotted<'_>) -> String {
    let title = match jotted.number {
        Some(number) => format!("Note {number}"),
        None => format!("Note of {}", jotted.day.in_words()),
    };
    let mut out = format!("---\ntitle: {title}\ndate: {}\n", jotted.day);
    if let Some(number) = jotted.number {
        out.push_str(&format!("number: {number}\n"));
    }
    out.push_str("ready: false\n");
    if jotted.video {
        out.push_str("# video: { url: , length: }\n");
    }
    if !jotted.needles.is_empty() {
        out.push_str("worked on:\n");
        for line in &jotted.needles {
            worked_on(&mut out, line);
        }
    }
    out.push_str("---\n");
    list(&mut out, "Finished since the last note:", &plainly(&jotted.finished));
    list(&mut out, "Published since the last note:", &plainly(&jotted.published));
    let moved: Vec<(&Entry, &str)> = jotted.moved.iter().map(|(entry, stage)| (*entry, stage.word())).collect();
    list(&mut out, "At another stage since the last note:", &moved);
    for section in &jotted.sections {
        heading(&mut out, section);
    }
    out
}

fn worked_on(out: &mut String, line: &OnNeedles<'_>) {
    let progress = line.progress.map(|progress| format!(", progress: {}", progress.show())).unwrap_or_default();
    out.push_str(&format!("  - {{ project: {}{progress} }}\n", in_yaml(line.project.key.as_str())));
    if !line.left.is_empty() {
        // A comment ends with its line, so whatever breaks a line in her words becomes a space.
        let left: Vec<String> =
            line.left.iter().map(|one| one.split_whitespace().collect::<Vec<_>>().join(" ")).collect();
        out.push_str(&format!("    # left to do: {}\n", left.join("; ")));
    }
}

/// Returns a key as YAML reads it: in quotes where it would be a number or a word of YAML's own.
fn in_yaml(key: &str) -> String {
    let is_plain =
        key.starts_with(|first: char| first.is_ascii_lowercase()) && !matches!(key, "null" | "true" | "false");
    if is_plain { key.to_owned() } else { format!("\"{key}\"") }
}

fn plainly<'a>(entries: &[&'a Entry]) -> Vec<(&'a Entry, &'static str)> {
    entries.iter().map(|entry| (*entry, "")).collect()
}

/// Adds entries as references, each with a word behind it if there is one.
fn list(out: &mut String, words: &str, entries: &[(&Entry, &str)]) {
    if !entries.is_empty() {
        out.push_str(&format!("\n{words}\n\n"));
        for (entry, word) in entries {
            let word = if word.is_empty() { String::new() } else { format!(", {word}") };
            out.push_str(&format!("- <{}>{word}\n", entry.id));
        }
    }
}

fn heading(out: &mut String, section: &Section<'_>) {
    let marks = "#".repeat(usize::from(section.level.clamp(1, 6)));
    let time = section.time.map(|time| format!("{time} ")).unwrap_or_default();
    out.push_str(format!("\n{marks} {time}{}", as_words(section.words)).trim_end());
    out.push('\n');
}

/// Returns words as Markdown that is read as those words and nothing else.
fn as_words(words: &str) -> String {
    let mut out = String::with_capacity(words.len());
    for c in words.split_whitespace().collect::<Vec<_>>().join(" ").chars() {
        // CommonMark 0.31.2, section 2.4: a backslash before any of these makes a plain character of it.
        if matches!(c, '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '&' | '{' | '}' | '#' | '|' | '~' | '!') {
            out.push('\\');
        }
        out.push(c);
    }
    out
}
