//! How far things have come.

use crate::catalogue::Catalogue;
use crate::entry::Reference;
use crate::entry::value::Date;
use crate::measure::Percent;
use std::collections::BTreeMap;

/// Returns the progress of each project as the latest public note that tells it has it.
pub fn latest_progress(catalogue: &Catalogue) -> BTreeMap<Reference, Percent> {
    let mut latest: BTreeMap<Reference, (Date, Percent)> = BTreeMap::new();
    for (_, note) in catalogue.notes() {
        let Some(date) = note.date else { continue };
        for worked_on in &note.worked_on {
            let Some(progress) = worked_on.progress else { continue };
            let known = latest.entry(worked_on.project.reference()).or_insert((date, progress));
            if known.0 <= date {
                *known = (date, progress);
            }
        }
    }
    latest.into_iter().map(|(project, (_, progress))| (project, progress)).collect()
}
