//! Wraps per inch: how often a yarn goes round a ruler, by weight.
//!
//! No two charts agree, and most of them overlap within themselves, so a category must never be decided from wraps
//! alone. Every scheme is kept. Sources in `SOURCES.md`.

use std::sync::LazyLock;

use super::provenance::Provenance;
use super::table::{BadTable, Row, Table};

/// The embedded table.
pub const CSV: &str = include_str!("wpi.csv");

/// One name of a yarn in one scheme.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WrapsRow {
    /// Whose chart it is: `CYC chart as reprinted`.
    pub scheme: String,
    /// The category's number, 0 to 7.
    pub category: u8,
    /// What the scheme calls it; two names of a category are two rows.
    pub name: String,
    /// The fewest wraps; `None` where the band is open.
    pub min: Option<u32>,
    /// The most wraps; `None` where the band is open.
    pub max: Option<u32>,
    /// Whether it was read or remembered.
    pub provenance: Provenance,
    /// What to bear in mind; may be empty.
    pub note: String,
    /// The ids of the sources in `SOURCES.md`.
    pub sources: Vec<String>,
}

static ALL: LazyLock<Vec<WrapsRow>> = LazyLock::new(|| read(CSV).unwrap_or_default());

/// All rows, scheme by scheme and within each the lightest first.
#[must_use]
pub fn all() -> &'static [WrapsRow] {
    &ALL
}

/// The widest band of a category over all schemes: fewest and most wraps.
///
/// `None` on a side where a scheme leaves the band open. For an unknown category both sides are `None`.
#[must_use]
pub fn widest(category: u8) -> (Option<u32>, Option<u32>) {
    let rows = || all().iter().filter(move |row| row.category == category);
    let min = rows().map(|row| row.min).min().flatten();
    let open = rows().any(|row| row.max.is_none());
    let max = if open { None } else { rows().filter_map(|row| row.max).max() };
    (min, max)
}

/// Reads the table.
///
/// # Errors
/// The first row that cannot be read. The tests insist that the embedded table has none.
pub fn read(csv: &str) -> Result<Vec<WrapsRow>, BadTable> {
    Table::read(csv)?.rows().map(row).collect()
}

fn row(row: Row<'_>) -> Result<WrapsRow, BadTable> {
    let category = row.filled("category_number")?;
    Ok(WrapsRow {
        scheme: row.filled("scheme")?.to_owned(),
        category: category.parse().map_err(|_| row.bad(format!("`{category}` is not a category")))?,
        name: row.filled("category_name")?.to_owned(),
        min: row.whole("wpi_min")?,
        max: row.whole("wpi_max")?,
        provenance: Provenance::of(row)?,
        note: row.get("note")?.to_owned(),
        sources: row.sources()?,
    })
}
