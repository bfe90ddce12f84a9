//! The journal by year.

use crate::page::view::{Head, NoteItem};
use crate::page::{Item, Shown};
use schemars::JsonSchema;
use serde::Serialize;

/// What `journal.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct JournalContext {
    /// The page's head.
    pub head: Head,
    /// The years, the latest first.
    pub years: Vec<JournalYear>,
}

/// One year's notes.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct JournalYear {
    /// The year.
    pub year: i16,
    /// The notes, the latest first.
    pub notes: Vec<Item<NoteItem>>,
}

/// Returns the context of the journal; `notes` are all notes, the latest first.
pub fn journal(shown: &Shown<'_>) -> JournalContext {
    let mut years: Vec<JournalYear> = Vec::new();
    for (entry, note) in shown.latest_notes() {
        let year = note.date.map(|date| date.year()).unwrap_or_default();
        let item = shown.note_item(entry, note);
        match years.last_mut() {
            Some(last) if last.year == year => last.notes.push(item),
            _ => years.push(JournalYear { year, notes: vec![item] }),
        }
    }
    JournalContext {
        head: shown.head("Journal", "Weekly notes, by year.", "journal/", "journal", "website", None),
        years,
    }
}
