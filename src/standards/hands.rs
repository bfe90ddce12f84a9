//! Hands and mittens: girth and length.
//!
//! The council's own chart was not found; these are other published guides, each as it is printed. A length is that
//! of the hand or of the mitten, as the row says. Sources in `SOURCES.md`.

use std::sync::LazyLock;

use super::band::{self, Band, centimetres, number};
use super::provenance::Provenance;
use super::table::{BadTable, Row, Table, each_once};
use crate::measure::{Count, FabricLength};

/// The embedded table.
pub const CSV: &str = include_str!("hand.csv");

/// One size of one scheme.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HandRow {
    /// Whose guide it is: `survey of 50 mitt patterns by a blogger`.
    pub scheme: String,
    /// The size as the scheme names it: `Woman small`.
    pub size: String,
    /// The girth, from the centimetres; `None` where the scheme has none.
    pub metric: Option<Band<FabricLength>>,
    /// The girth in inches, as a number without a unit; `None` where the scheme has none.
    pub imperial: Option<Band<Count>>,
    /// The length in inches, as a number without a unit; `None` where the scheme has none.
    pub length: Option<Band<Count>>,
    /// From where to where the length goes; `None` where there is none.
    pub length_measured: Option<String>,
    /// Whether it was read or remembered.
    pub provenance: Provenance,
    /// What to bear in mind; may be empty.
    pub note: String,
    /// The ids of the sources in `SOURCES.md`.
    pub sources: Vec<String>,
}

static ALL: LazyLock<Vec<HandRow>> = LazyLock::new(|| read(CSV).unwrap_or_default());

/// All rows, scheme by scheme and within each the smallest size first.
#[must_use]
pub fn all() -> &'static [HandRow] {
    &ALL
}

/// The names of the schemes, in the table's order.
#[must_use]
pub fn schemes() -> Vec<&'static str> {
    each_once(all().iter().map(|row| row.scheme.as_str()))
}

/// The rows of a scheme, the smallest size first; none for a scheme that is not in the table.
pub fn of(scheme: &str) -> impl Iterator<Item = &'static HandRow> {
    all().iter().filter(move |row| row.scheme == scheme)
}

/// The scheme that sizes of hands are told by: it measures the hand and not a mitten, and leaves no gap from the smallest
/// to the largest.
pub const BODY: &str = "maker who follows CYC: hand, no thumb";

/// The row of [`BODY`] whose girth a hand is nearest to; `None` for one that is smaller or larger than any.
#[must_use]
pub fn nearest(hand: FabricLength) -> Option<&'static HandRow> {
    band::nearest(of(BODY).filter_map(|row| Some((row, row.metric?))), hand, FabricLength::ZERO)
}

/// Reads the table.
///
/// # Errors
/// The first row that cannot be read. The tests insist that the embedded table has none.
pub fn read(csv: &str) -> Result<Vec<HandRow>, BadTable> {
    Table::read(csv)?.rows().map(one).collect()
}

fn one(row: Row<'_>) -> Result<HandRow, BadTable> {
    Ok(HandRow {
        scheme: row.filled("scheme")?.to_owned(),
        size: row.filled("size")?.to_owned(),
        metric: Band::read(row, ["hand_circumference_cm_min", "hand_circumference_cm_max"], centimetres)?,
        imperial: Band::read(row, ["hand_circumference_in_min", "hand_circumference_in_max"], number)?,
        length: Band::read(row, ["hand_length_in_min", "hand_length_in_max"], number)?,
        length_measured: row.some("length_measured")?,
        provenance: Provenance::of(row)?,
        note: row.get("note")?.to_owned(),
        sources: row.sources()?,
    })
}
