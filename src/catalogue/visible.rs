//! How much of an entry readers may see.

use super::View;
use crate::entry::value::{Date, Stage};
use crate::entry::{Data, Entry};

/// How much of an entry readers may see on a given day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Visibility {
    /// It has a page.
    Public,
    /// A design before publication: its title, summary, garment, stage and planned day are on the page of designs on the
    /// way. While it is test knitted its call has a page, with the figures that a tester needs. Nothing else of it is anywhere.
    OnTheWay,
    /// Nothing of it is on the site.
    Hidden,
}

/// Whose eyes a catalogue is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Eyes {
    /// Readers': what is public on the day.
    #[default]
    Readers,
    /// The designer's own, at her own machine: every entry, whether ready or not.
    Designer,
}

/// Returns how much of an entry is seen.
pub fn seen(entry: &Entry, view: View) -> Visibility {
    match view.eyes {
        Eyes::Readers => visibility(entry, view.today),
        Eyes::Designer => Visibility::Public,
    }
}

/// Returns how much of an entry readers may see on a day: nothing before its date, or that of its reveal, or while it is not
/// ready.
pub fn visibility(entry: &Entry, today: Date) -> Visibility {
    if entry.common.ready == Some(false) {
        return Visibility::Hidden;
    }
    let begun = entry.seen_from().is_none_or(|date| date <= today);
    match &entry.data {
        Data::Pattern(pattern) => match pattern.stage() {
            Stage::Published | Stage::Retired if begun => Visibility::Public,
            Stage::Published | Stage::Retired => Visibility::Hidden,
            // The date is then the day planned, which keeps nothing back.
            Stage::Sketch | Stage::Swatch | Stage::Sample | Stage::TechEdit | Stage::TestKnit => Visibility::OnTheWay,
        },
        // A note whose day is not known is a mistake that is reported; it must not slip out before it is mended.
        Data::Note(note) if note.date.is_none() => Visibility::Hidden,
        _ if begun => Visibility::Public,
        _ => Visibility::Hidden,
    }
}
