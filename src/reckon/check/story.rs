//! What somebody else wrote is printed with their leave and their credit, or not at all.

use super::place;
use crate::catalogue::{Catalogue, Visibility};
use crate::entry::{Data, Entry, Placing};
use crate::finding::{Code, Finding, Severity};

/// A story that nobody is known to have given leave for.
pub static STORY_LEAVE: Code = Code {
    name: "story-leave",
    severity: Severity::Error,
    what: "A note prints what somebody else wrote without the day they gave leave, or before that day.",
    why: "Praise sent in a letter is no leave to print it (common practice), and what has been read cannot be taken back.",
    bad: "story: [ { credit: Elowen, text: \"I wept.\" } ]",
    good: "story: [ { leave: 2026-11-18, credit: Elowen, text: \"I wept.\" } ]",
};

/// A story that does not say how to credit it.
pub static STORY_CREDIT: Code = Code {
    name: "story-credit",
    severity: Severity::Error,
    what: "A note prints what somebody else wrote and does not say whose words readers see it under.",
    why: "Some wish to be named and some on no account, and which cannot be guessed.",
    bad: "story: [ { leave: 2026-11-18, text: \"I wept.\" } ]",
    good: "story: [ { leave: 2026-11-18, credit: anonymous, text: \"I wept.\" } ]",
};

/// Finds stories without leave or credit in a note that readers have, or get when its day comes; the latter is no more than a
/// warning, since there is time yet. A note that is not ready may wait for an answer.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Note(note) = &entry.data else { return };
    if entry.common.ready == Some(false) {
        return;
    }
    let is_out = catalogue.for_readers(entry) == Visibility::Public;
    let mut tell = |finding: Finding| {
        let severity = if is_out { finding.severity } else { Severity::Warning };
        findings.push(Finding { severity, ..finding });
    };
    for (at, story) in note.story.iter().enumerate() {
        let whole = || entry.origin.value(&place::item("story", at, &[]), placing);
        match (story.leave.as_ref().map(|leave| *leave.for_desk()), note.date) {
            (None, _) => tell(
                Finding::new(&STORY_LEAVE, whole(), "nobody is known to have given leave to print this story").help(
                    "add `leave:` with the day they said yes, or keep the note with `ready: false` until they do",
                ),
            ),
            (Some(leave), Some(date)) if leave > date => tell(
                Finding::new(
                    &STORY_LEAVE,
                    entry.origin.value(&place::item("story", at, &["leave"]), placing),
                    format!("the leave to print the story is of {leave}, after the note's day ({date})"),
                )
                .help("look for a slip in either day, or let the note come out later"),
            ),
            (Some(_), _) => {}
        }
        // A credit that could not be read was told of where it stands.
        if story.credit.is_none() && !entry.is_spoilt("story") {
            tell(
                Finding::new(&STORY_CREDIT, whole(), "the story does not say how to credit it")
                    .help("add `credit:` with the words to print, or `credit: anonymous`"),
            );
        }
    }
}
