//! Where a hem falls: how far below the waist or the hip a garment of each length ends.
//!
//! Source: Craft Yarn Council's www.YarnStandards.com, as reprinted (`SOURCES.md`).

use std::sync::LazyLock;

use super::band::{Band, centimetres, number};
use super::provenance::Provenance;
use super::table::{BadTable, Row, Table};
use crate::measure::{Count, FabricLength};

/// The embedded table.
pub const CSV: &str = include_str!("garment_length.csv");

/// One length of garment for one group.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GarmentLengthRow {
    /// Whose garment: `child`, `woman` or `man`.
    pub group: String,
    /// What the length is called: `hip`, `tunic`, `sweater`.
    pub length: String,
    /// How far below the point it is measured from, from the centimetres.
    pub metric: Band<FabricLength>,
    /// The same in inches, as a number without a unit.
    pub imperial: Band<Count>,
    /// The point it is measured from.
    pub measured_from: String,
    /// Whether it was read or remembered.
    pub provenance: Provenance,
    /// The ids of the sources in `SOURCES.md`.
    pub sources: Vec<String>,
}

static ALL: LazyLock<Vec<GarmentLengthRow>> = LazyLock::new(|| read(CSV).unwrap_or_default());

/// All rows, group by group and within each the shortest first.
#[must_use]
pub fn all() -> &'static [GarmentLengthRow] {
    &ALL
}

/// Reads the table.
///
/// # Errors
/// The first row that cannot be read. The tests insist that the embedded table has none.
pub fn read(csv: &str) -> Result<Vec<GarmentLengthRow>, BadTable> {
    Table::read(csv)?.rows().map(row).collect()
}

fn row(row: Row<'_>) -> Result<GarmentLengthRow, BadTable> {
    Ok(GarmentLengthRow {
        group: row.filled("group")?.to_owned(),
        length: row.filled("length")?.to_owned(),
        metric: Band::needed(row, ["offset_cm_min", "offset_cm_max"], centimetres)?,
        imperial: Band::needed(row, ["offset_in_min", "offset_in_max"], number)?,
        measured_from: row.filled("measured_from")?.to_owned(),
        provenance: Provenance::of(row)?,
        sources: row.sources()?,
    })
}
