//! Whether a row was read or only remembered.

use super::table::{BadTable, Row};

/// What a row of a table rests on.
///
/// Rows from memory may help a designer but never fail her pattern, and a page that shows one says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Provenance {
    /// Seen in a copy of the document that the row names.
    Read,
    /// Recalled, and confirmed in no copy.
    Memory,
}

impl Provenance {
    /// The word in the tables: `read` or `memory`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Read => "read",
            Self::Memory => "memory",
        }
    }

    /// The provenance of a row.
    pub(super) fn of(row: Row<'_>) -> Result<Self, BadTable> {
        let word = row.filled("provenance")?;
        let known = [Self::Read, Self::Memory].into_iter().find(|provenance| provenance.name() == word);
        known.ok_or_else(|| row.bad(format!("`{word}` is not a provenance")))
    }
}
