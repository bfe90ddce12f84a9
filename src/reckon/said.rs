//! What notes say of how she came by a thing.

use crate::catalogue::{Catalogue, Told};
use crate::entry::value::Date;
use crate::entry::{Entry, Reference};

/// What a note says of how she came by a thing.
#[derive(Clone, Copy, Debug)]
pub struct Said<'a> {
    /// The note's entry.
    pub entry: &'a Entry,
    /// What it says.
    pub told: Told,
}

/// Returns what the latest note that says how she came by a thing says: of all public notes, or of those before one, which is
/// given by its day and its entry. Those of one day follow each other by key.
pub fn last_said<'a>(
    catalogue: &'a Catalogue,
    id: &Reference,
    before: Option<(Option<Date>, &Reference)>,
) -> Option<Said<'a>> {
    let said = catalogue.linked_from(id).iter().filter_map(|link| Some(((link.told?.date, &link.from), link.told?)));
    let earlier = said.filter(|(when, _)| before.is_none_or(|before| *when < before));
    let ((_, from), told) = earlier.max_by(|(a, _), (b, _)| a.cmp(b))?;
    Some(Said { entry: catalogue.entry(from)?, told })
}
