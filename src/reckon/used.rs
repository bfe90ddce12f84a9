//! What went into a project, as length and as mass, whichever way it was written.

use crate::catalogue::Catalogue;
use crate::entry::Project;
use crate::measure::{Mass, YarnLength};

/// How much of a yarn was used.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Usage {
    /// As length, where it was written so or the put-up is known.
    pub length: Option<YarnLength>,
    /// As mass, likewise.
    pub mass: Option<Mass>,
}

/// Returns what was used of each yarn of a project, in the order they are written.
///
/// Skeins and mass become length, and length mass, through the yarn's put-up; what cannot be told is nothing.
pub fn used(catalogue: &Catalogue, project: &Project) -> Vec<Usage> {
    project
        .yarn
        .iter()
        .map(|yarn| {
            let Some(amount) = yarn.used else { return Usage::default() };
            let put_up = yarn
                .yarn
                .as_ref()
                .and_then(|yarn| catalogue.public_yarn(&yarn.reference()))
                .and_then(|yarn| yarn.put_up);
            Usage { length: amount.length(put_up), mass: amount.mass(put_up) }
        })
        .collect()
}
