//! Heads and hats: girth round, and height.
//!
//! Charts mix the head and the finished hat, and measure height in different ways. Every scheme is kept as it is
//! printed, and its name says what it measures: schemes must never be mixed. Sources in `SOURCES.md`.

use std::sync::LazyLock;

use super::band::{self, Band, centimetres, number};
use super::provenance::Provenance;
use super::table::{BadTable, Row, Table, each_once};
use crate::measure::{Count, FabricLength};

/// The embedded table.
pub const CSV: &str = include_str!("head.csv");

/// One size of one scheme.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HeadRow {
    /// Whose chart it is and whether it measures the head or the hat: `CYC head circumference`.
    pub scheme: String,
    /// The size as the scheme names it: `Toddler`.
    pub size: String,
    /// The girth, from the centimetres.
    pub metric: Band<FabricLength>,
    /// The girth in inches, as a number without a unit.
    pub imperial: Band<Count>,
    /// The height in inches, as a number without a unit; `None` where the scheme has none.
    pub height: Option<Band<Count>>,
    /// From where to where the height goes; `None` where there is none.
    pub height_measured: Option<String>,
    /// Whether it was read or remembered.
    pub provenance: Provenance,
    /// What to bear in mind; may be empty.
    pub note: String,
    /// The ids of the sources in `SOURCES.md`.
    pub sources: Vec<String>,
}

static ALL: LazyLock<Vec<HeadRow>> = LazyLock::new(|| read(CSV).unwrap_or_default());

/// All rows, scheme by scheme and within each the smallest size first.
#[must_use]
pub fn all() -> &'static [HeadRow] {
    &ALL
}

/// The names of the schemes, in the table's order.
#[must_use]
pub fn schemes() -> Vec<&'static str> {
    each_once(all().iter().map(|row| row.scheme.as_str()))
}

/// The rows of a scheme, the smallest size first; none for a scheme that is not in the table.
pub fn of(scheme: &str) -> impl Iterator<Item = &'static HeadRow> {
    all().iter().filter(move |row| row.scheme == scheme)
}

/// The scheme that sizes of heads are told by: it measures the head and not a hat, was read and not remembered, and leaves
/// no gap from the smallest to the largest.
pub const BODY: &str = "maker who follows CYC: head range";

/// The row of [`BODY`] that a head is nearest to; `None` for one that is smaller or larger than any.
#[must_use]
pub fn nearest(head: FabricLength) -> Option<&'static HeadRow> {
    band::nearest(of(BODY).map(|row| (row, row.metric)), head, FabricLength::ZERO)
}

/// Reads the table.
///
/// # Errors
/// The first row that cannot be read. The tests insist that the embedded table has none.
pub fn read(csv: &str) -> Result<Vec<HeadRow>, BadTable> {
    Table::read(csv)?.rows().map(one).collect()
}

fn one(row: Row<'_>) -> Result<HeadRow, BadTable> {
    Ok(HeadRow {
        scheme: row.filled("scheme")?.to_owned(),
        size: row.filled("size")?.to_owned(),
        metric: Band::needed(row, ["head_cm_min", "head_cm_max"], centimetres)?,
        imperial: Band::needed(row, ["head_in_min", "head_in_max"], number)?,
        height: Band::read(row, ["hat_height_in_min", "hat_height_in_max"], number)?,
        height_measured: row.some("height_measured")?,
        provenance: Provenance::of(row)?,
        note: row.get("note")?.to_owned(),
        sources: row.sources()?,
    })
}
