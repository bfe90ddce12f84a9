//! How far things have come.

use crate::catalogue::Catalogue;
use crate::entry::{Data, Reference};
use crate::measure::Percent;

/// Returns the progress of a project as the latest public note that tells it has it.
pub fn progress(catalogue: &Catalogue, project: &Reference) -> Option<Percent> {
    let notes = catalogue.linked_from(project).iter().filter(|link| link.is_via("worked on"));
    let told = notes.filter_map(|link| {
        let Data::Note(note) = &catalogue.entry(&link.from)?.data else { return None };
        let mut lines = note.worked_on.iter().rev().filter(|line| line.project.reference() == *project);
        Some((note.date?, lines.find_map(|line| line.progress)?))
    });
    told.max_by_key(|(date, _)| *date).map(|(_, progress)| progress)
}
