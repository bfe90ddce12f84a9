//! What was asked of a catalogue while something was worked out: just what that depends on.

use super::{Change, Words};
use crate::entry::{Kind, Reference};
use std::cell::RefCell;
use std::collections::BTreeSet;

/// One thing that a catalogue can be asked.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Question {
    /// Whether there is an entry, and what is in it.
    Entry(Reference),
    /// Which entries refer to an entry.
    LinkedFrom(Reference),
    /// Which entries of a kind there are, and what is in them.
    Kind(Kind),
    /// Which entries are called so that a text with these words may name them.
    Titles(Words),
    /// Which private names may stand in texts with these words.
    Secrets(Words),
}

impl Question {
    /// Returns whether the answer may be another after a change.
    pub fn is_touched(&self, change: &Change) -> bool {
        match self {
            Self::Entry(id) => change.entries.contains(id) || change.kinds_read.contains(&id.kind),
            Self::Titles(words) => change.titles.iter().any(|title| words.may_name(title)),
            Self::Secrets(words) => change.secrets.iter().any(|name| words.may_name(name)),
            Self::LinkedFrom(id) => change.linked.contains(id),
            Self::Kind(kind) => {
                change.kinds_read.contains(kind) || change.entries.iter().any(|entry| entry.kind == *kind)
            }
        }
    }
}

thread_local! {
    /// What is being recorded on this thread, if anything is.
    static ASKED: RefCell<Option<BTreeSet<Question>>> = const { RefCell::new(None) };
}

/// Does some work on this thread, and returns beside its result what was asked of any catalogue meanwhile.
///
/// Work inside work records for itself alone, so what must know of both asks once more.
pub fn recorded<T>(work: impl FnOnce() -> T) -> (T, BTreeSet<Question>) {
    let before = ASKED.replace(Some(BTreeSet::new()));
    let done = work();
    let asked = ASKED.replace(before).unwrap_or_default();
    (done, asked)
}

/// Notes a question, where anything is recorded; a make of a whole site records nothing.
pub(super) fn note(question: impl FnOnce() -> Question) {
    ASKED.with_borrow_mut(|asked| {
        if let Some(asked) = asked {
            asked.insert(question());
        }
    });
}
