//! What the system's events mean here.

use notify::event::{MetadataKind, ModifyKind, RenameMode};
use notify::{Event, EventKind};

/// What happened to a path.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Change {
    /// It was made; nothing stood there before.
    Made,
    /// It is there now, and may have been before.
    Here,
    /// Its bytes or rights changed.
    Changed,
    /// It is no longer there.
    Gone,
    /// Something happened; whether it is there must be asked.
    Ask,
}

/// Returns what an event means, or nothing for one that tells of reading or repeats others.
pub(super) fn change(event: &Event) -> Option<Change> {
    match event.kind {
        // Reading must not count, or a make that reads the studio would cause the next one.
        EventKind::Access(_) | EventKind::Modify(ModifyKind::Metadata(MetadataKind::AccessTime)) => None,
        // Both halves were told before.
        EventKind::Modify(ModifyKind::Name(RenameMode::Both)) => None,
        EventKind::Modify(ModifyKind::Name(RenameMode::From)) | EventKind::Remove(_) => Some(Change::Gone),
        EventKind::Modify(ModifyKind::Name(RenameMode::To)) => Some(Change::Here),
        EventKind::Modify(ModifyKind::Name(_)) | EventKind::Any | EventKind::Other => Some(Change::Ask),
        EventKind::Modify(_) => Some(Change::Changed),
        EventKind::Create(_) => Some(Change::Made),
    }
}
