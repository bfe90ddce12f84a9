//! Whether a file's text is one that can be read: its bytes, its marks, its line ends.

use crate::finding::{Code, Finding, Severity};
use crate::source::{FilePath, Place, Text, Unreadable};

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

pub(super) fn text_shape(path: &FilePath, text: &Text) -> Vec<Finding> {
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

pub(super) fn unreadable_file(unreadable: &Unreadable) -> Finding {
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
