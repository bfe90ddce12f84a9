//! Needle sizes: millimetres, US and old UK (and Canadian) numbers.
//!
//! Public charts disagree at 2.5 mm, 3 mm and from 12 mm on. Every reading is kept, with a note where they
//! differ. Sources in `SOURCES.md`.

use std::sync::LazyLock;

use super::provenance::Provenance;
use super::table::{BadTable, Row, Table};
use super::yarn_weights::millimetres;
use crate::measure::{FabricLength, NeedleSize};

/// The embedded table.
pub const CSV: &str = include_str!("needle_sizes.csv");

/// One thickness with its numbers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NeedleRow {
    /// The diameter.
    pub metric: FabricLength,
    /// The US number; `None` where there is none.
    pub us: Option<String>,
    /// The old UK and Canadian number; `None` where there is none.
    pub uk: Option<String>,
    /// Where charts differ, in words; `None` where they agree.
    pub disagreement: Option<String>,
    /// Whether it was read or remembered.
    pub provenance: Provenance,
    /// The ids of the sources in `SOURCES.md`.
    pub sources: Vec<String>,
}

static ALL: LazyLock<Vec<NeedleRow>> = LazyLock::new(|| read(CSV).unwrap_or_default());

/// All rows, the thinnest first.
#[must_use]
pub fn all() -> &'static [NeedleRow] {
    &ALL
}

/// The row of an exact diameter; `None` for one that is not in the table.
#[must_use]
pub fn row(metric: FabricLength) -> Option<&'static NeedleRow> {
    all().iter().find(|row| row.metric == metric)
}

/// The US number of an exact diameter; `None` where there is none.
#[must_use]
pub fn us(metric: FabricLength) -> Option<&'static str> {
    row(metric)?.us.as_deref()
}

/// The old UK number of an exact diameter; `None` where there is none.
#[must_use]
pub fn uk(metric: FabricLength) -> Option<&'static str> {
    row(metric)?.uk.as_deref()
}

/// Every row that a size may mean, the thinnest first; empty where the table has none.
///
/// More than one where charts disagree: US 17 is 12, 12.5 or 12.75 mm. The first is the one that most
/// charts print.
#[must_use]
pub fn rows(size: &NeedleSize) -> Vec<&'static NeedleRow> {
    all()
        .iter()
        .filter(|row| match size {
            NeedleSize::Metric(metric) => row.metric == *metric,
            NeedleSize::Us(number) => row.us.as_ref() == Some(number),
            NeedleSize::Uk(number) => row.uk.as_ref() == Some(number),
        })
        .collect()
}

/// The diameter of a size: its own, or that of the first row it may mean.
#[must_use]
pub fn metric(size: &NeedleSize) -> Option<FabricLength> {
    match size {
        NeedleSize::Metric(metric) => Some(*metric),
        _ => rows(size).first().map(|row| row.metric),
    }
}

/// Reads the table.
///
/// # Errors
/// The first row that cannot be read. The tests insist that the embedded table has none.
pub fn read(csv: &str) -> Result<Vec<NeedleRow>, BadTable> {
    Table::read(csv)?.rows().map(one).collect()
}

fn one(row: Row<'_>) -> Result<NeedleRow, BadTable> {
    Ok(NeedleRow {
        metric: millimetres(row, "metric_mm")?.ok_or_else(|| row.bad("`metric_mm` is empty".to_owned()))?,
        us: row.some("us_size")?,
        uk: row.some("uk_canadian_old")?,
        disagreement: row.some("disagreement")?,
        provenance: Provenance::of(row)?,
        sources: row.sources()?,
    })
}
