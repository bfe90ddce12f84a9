//! How long a yarn of each weight is for its mass.
//!
//! The bands of different sheets overlap, so a category must never be decided from them alone; they only
//! say whether a put-up is plausible. Sources in `SOURCES.md`.

use std::sync::LazyLock;

use super::provenance::Provenance;
use super::table::{BadTable, Row, Table};
use super::yarn_weights::{self, YarnWeight};
use crate::measure::{Mass, YarnLength};

/// The embedded table.
pub const CSV: &str = include_str!("grist_by_weight.csv");

/// One sheet's band for one category.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GristRow {
    /// The category's number, 0 to 7.
    pub category: u8,
    /// The shortest length in 100 g, rounded near to a micrometre; `None` where the band is open.
    pub min: Option<YarnLength>,
    /// The longest length in 100 g, rounded near to a micrometre; `None` where the band is open.
    pub max: Option<YarnLength>,
    /// The unit the sheet prints: `yd/lb`, `m/100 g` or `yd/50 g`.
    pub unit: String,
    /// Whether it was read or remembered.
    pub provenance: Provenance,
    /// What to bear in mind; may be empty.
    pub note: String,
    /// The ids of the sources in `SOURCES.md`.
    pub sources: Vec<String>,
}

static ALL: LazyLock<Vec<GristRow>> = LazyLock::new(|| read(CSV).unwrap_or_default());

/// All rows, sheet by sheet.
#[must_use]
pub fn all() -> &'static [GristRow] {
    &ALL
}

/// The widest band of a category over all sheets: shortest and longest length in 100 g.
///
/// `None` on a side where a sheet leaves the band open. For an unknown category both sides are `None`.
#[must_use]
pub fn widest(category: u8) -> (Option<YarnLength>, Option<YarnLength>) {
    let rows = || all().iter().filter(move |row| row.category == category);
    let min = rows().map(|row| row.min).min().flatten();
    let open = rows().any(|row| row.max.is_none());
    let max = if open { None } else { rows().filter_map(|row| row.max).max() };
    (min, max)
}

/// The categories that a length in 100 g may be of, by the widest bands: often several, since bands overlap.
#[must_use]
pub fn weights(length: YarnLength) -> Vec<&'static YarnWeight> {
    let holds = |weight: &&YarnWeight| match widest(weight.number) {
        (None, None) => false,
        (min, max) => min.is_none_or(|min| min <= length) && max.is_none_or(|max| length <= max),
    };
    yarn_weights::all().iter().filter(holds).collect()
}

/// Reads the table.
///
/// # Errors
/// The first row that cannot be read. The tests insist that the embedded table has none.
pub fn read(csv: &str) -> Result<Vec<GristRow>, BadTable> {
    Table::read(csv)?.rows().map(row).collect()
}

fn row(row: Row<'_>) -> Result<GristRow, BadTable> {
    let category = row.filled("category_number")?;
    let unit = row.filled("unit")?;
    let side = |column: &str| match row.whole(column)? {
        None => Ok(None),
        Some(number) => in_100_g(number, unit)
            .map(Some)
            .ok_or_else(|| row.bad(format!("`{unit}` is not a unit of length for mass"))),
    };
    Ok(GristRow {
        category: category.parse().map_err(|_| row.bad(format!("`{category}` is not a category")))?,
        min: side("min")?,
        max: side("max")?,
        unit: unit.to_owned(),
        provenance: Provenance::of(row)?,
        note: row.get("note")?.to_owned(),
        sources: row.sources()?,
    })
}

fn in_100_g(number: u32, unit: &str) -> Option<YarnLength> {
    let number = i64::from(number);
    match unit {
        "m/100 g" => YarnLength::from_metres(number),
        "yd/50 g" => YarnLength::from_yards(number.checked_mul(2)?),
        // A pound is 453.59237 g exactly.
        "yd/lb" => YarnLength::from_yards(number)?.times_near(Mass::from_grams(100)?.nanograms(), 453_592_370_000),
        _ => None,
    }
}
