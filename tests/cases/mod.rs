//! Small studios as text, with the finding expected beside each mistake.
//!
//! A case file holds several cases. `## name` begins a case, and what follows it up to the first file says why.
//! `=== path` begins a file of the case; its lines follow. A line that begins with `#^` is not part of the file: it
//! names the codes of the findings expected on the line above. `#^! code` is expected of the file as a whole.
//! Every other finding fails the case. A heading in a text is written with three signs, since two begin a case.

use crate::support::{STUDIO, TODAY, readers};
use ballband::source::Position;
use ballband::source::memory::Memory;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// A finding's file, line and code; line 0 stands for the whole file.
pub type Seen = (String, usize, String);

/// A small studio and what is expected to be found in it.
pub struct Case {
    /// What it is called.
    pub name: String,
    /// Its files.
    pub files: BTreeMap<String, String>,
    /// The findings.
    pub expected: Vec<Seen>,
}

/// Returns the cases of a file.
pub fn cases(text: &str) -> Vec<Case> {
    let mut all: Vec<Case> = Vec::new();
    let mut file: Option<String> = None;
    for line in text.lines() {
        if let Some(name) = line.strip_prefix("## ") {
            all.push(Case { name: name.to_owned(), files: BTreeMap::new(), expected: Vec::new() });
            file = None;
        } else if let Some(path) = line.strip_prefix("=== ") {
            let case = all.last_mut().expect("a case begins with `## name`");
            case.files.insert(path.to_owned(), String::new());
            file = Some(path.to_owned());
        } else if let (Some(path), Some(case)) = (&file, all.last_mut()) {
            let text = case.files.get_mut(path).expect("the file was begun");
            if let Some(codes) = line.strip_prefix("#^!") {
                case.expected.extend(codes.split_whitespace().map(|code| (path.clone(), 0, code.to_owned())));
            } else if let Some(codes) = line.strip_prefix("#^") {
                let above = text.lines().count();
                case.expected.extend(codes.split_whitespace().map(|code| (path.clone(), above, code.to_owned())));
            } else {
                text.push_str(line);
                text.push('\n');
            }
        }
    }
    all
}

/// Turns the escapes a case needs for what cannot stand in its file into what they stand for.
pub fn bytes(text: &str) -> Vec<u8> {
    let text = text.replace("<TAB>", "\t").replace("<CR>", "\r").replace("<BOM>", "\u{feff}").replace("<EMPTY>\n", "");
    match text.split_once("<FF>") {
        Some((before, after)) => [before.as_bytes(), &[0xff], after.as_bytes()].concat(),
        None => text.into_bytes(),
    }
}

fn seen(case: &Case) -> (Vec<Seen>, String) {
    let mut memory = Memory::default();
    if !case.files.contains_key("studio.yaml") {
        memory = memory.with("studio.yaml", STUDIO);
    }
    for (path, text) in &case.files {
        memory = memory.with(path, bytes(text));
    }
    let studied = ballband::study(&memory, readers(TODAY)).expect("files in memory can be listed");
    let mut findings = studied.findings.clone();
    if !ballband::finding::any_error(&findings) {
        findings.extend(ballband::make(&studied).1);
    }
    let printed = ballband::finding::to_text(&findings, &studied.texts, ballband::finding::Style::Plain);
    let one = |finding: &ballband::finding::Finding| {
        let line = if finding.at.span == (0..0) {
            0
        } else {
            Position::of(studied.texts.of(&finding.at.file), finding.at.span.start).line
        };
        (finding.at.file.to_string(), line, finding.code.name.to_owned())
    };
    (findings.iter().map(one).collect(), printed)
}

#[test]
fn each_mistake_is_found_at_its_line_and_nothing_else() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases");
    let mut files: Vec<_> = fs::read_dir(&folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|end| end == "txt"))
        .collect();
    files.sort();
    let mut failures = Vec::new();
    let mut count = 0;
    for file in files {
        for case in cases(&fs::read_to_string(&file).unwrap()) {
            count += 1;
            // A heading of a text written as `## ` would begin a case of its own, and what it expects would be lost.
            assert!(!case.files.is_empty(), "{} / {} has no file", file.display(), case.name);
            let mut expected = case.expected.clone();
            let (mut seen, printed) = seen(&case);
            expected.sort();
            seen.sort();
            if seen != expected {
                let missing: Vec<_> = expected.iter().filter(|one| !seen.contains(one)).collect();
                let extra: Vec<_> = seen.iter().filter(|one| !expected.contains(one)).collect();
                failures.push(format!(
                    "{} / {}\nnot found: {missing:#?}\nnot expected: {extra:#?}\n{printed}",
                    file.display(),
                    case.name
                ));
            }
        }
    }
    assert!(count > 20, "only {count} cases were read");
    assert!(failures.is_empty(), "{}", failures.join("\n\n"));
}

#[test]
fn the_planted_studio_has_at_least_forty_mistakes() {
    let text = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases/planted.txt")).unwrap();
    let planted: usize = cases(&text).iter().map(|case| case.expected.len()).sum();
    assert!(planted >= 40, "{planted}");
}

/// Every code is explained, and at least one case shows it being found.
#[test]
fn no_input_panics_however_it_is_cut() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases");
    let text = |name: &str| fs::read_to_string(folder.join(name)).unwrap();
    for case in cases(&text("planted.txt")).into_iter().chain(cases(&text("charts.txt"))) {
        for (path, content) in &case.files {
            let whole = bytes(content);
            for cut in (0..whole.len()).step_by(7) {
                let memory = Memory::default().with("studio.yaml", STUDIO).with(path, &whole[..cut]);
                let studied = ballband::study(&memory, readers(TODAY)).expect("files in memory can be listed");
                // Printing places them all, which is where an offset that is off would show.
                let _ = ballband::finding::to_text(&studied.findings, &studied.texts, ballband::finding::Style::Plain);
                let _ = ballband::finding::to_json(&studied.findings, &studied.texts);
            }
        }
    }
}
