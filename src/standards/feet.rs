//! Feet and socks: girth, height and length by shoe size.
//!
//! The council's rows were not seen in any copy ([`Provenance::Memory`]). Sources in `SOURCES.md`.

use std::sync::LazyLock;

use super::band::{self, Band, centimetres, number};
use super::provenance::Provenance;
use super::table::{BadTable, Row, Table, each_once};
use crate::measure::{Count, FabricLength};

/// The embedded table.
pub const CSV: &str = include_str!("foot_sock.csv");

/// One size of one scheme.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FootRow {
    /// Whose table it is: `CYC sock sizing`.
    pub scheme: String,
    /// Whose foot: `Child`, `Woman` or `Man`.
    pub group: String,
    /// The US shoe size as printed; `None` where there is none.
    ///
    /// A text, because children's sizes begin anew after 13: `10-2` runs on from 10 to the second 2.
    pub us_shoe: Option<String>,
    /// The girth of the foot, in both systems; `None` where the scheme has none.
    pub girth: Option<FootSpan>,
    /// The height of the sock, in both systems; `None` where the scheme has none.
    pub sock_height: Option<FootSpan>,
    /// The length of the foot, in both systems; `None` where the scheme has none.
    pub foot_length: Option<FootSpan>,
    /// Whether it was read or remembered.
    pub provenance: Provenance,
    /// What to bear in mind; may be empty.
    pub note: String,
    /// The ids of the sources in `SOURCES.md`.
    pub sources: Vec<String>,
}

/// One measurement of a foot or sock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FootSpan {
    /// The measurement, from the centimetres.
    pub metric: Band<FabricLength>,
    /// The measurement in inches, as a number without a unit.
    pub imperial: Band<Count>,
}

static ALL: LazyLock<Vec<FootRow>> = LazyLock::new(|| read(CSV).unwrap_or_default());

/// All rows, scheme by scheme; within each children, women, men, and the smallest size first.
#[must_use]
pub fn all() -> &'static [FootRow] {
    &ALL
}

/// The names of the schemes, in the table's order.
#[must_use]
pub fn schemes() -> Vec<&'static str> {
    each_once(all().iter().map(|row| row.scheme.as_str()))
}

/// The rows of a scheme; none for a scheme that is not in the table.
pub fn of(scheme: &str) -> impl Iterator<Item = &'static FootRow> {
    all().iter().filter(move |row| row.scheme == scheme)
}

/// The scheme that shoe sizes are told by: the only one with all sizes.
pub const BODY: &str = "CYC sock sizing";

/// How far a foot may be from the outermost sizes and still be theirs: half a step, since the scheme has one figure a size
/// and steps of an inch (our rule).
const BEYOND: FabricLength = FabricLength::from_nanometres(12_500_000);

/// What is measured on a foot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Foot {
    /// Round it.
    Girth,
    /// From heel to toe.
    Length,
}

/// The row of [`BODY`] that a foot of a group is nearest to; `None` for one that is smaller or larger than any.
#[must_use]
pub fn nearest(group: &str, what: Foot, foot: FabricLength) -> Option<&'static FootRow> {
    let band = |row: &FootRow| match what {
        Foot::Girth => row.girth.map(|girth| girth.metric),
        Foot::Length => row.foot_length.map(|length| length.metric),
    };
    let rows = of(BODY).filter(|row| row.group == group).filter_map(|row| Some((row, band(row)?)));
    band::nearest(rows, foot, BEYOND)
}

/// Reads the table.
///
/// # Errors
/// The first row that cannot be read. The tests insist that the embedded table has none.
pub fn read(csv: &str) -> Result<Vec<FootRow>, BadTable> {
    Table::read(csv)?.rows().map(one).collect()
}

fn one(row: Row<'_>) -> Result<FootRow, BadTable> {
    Ok(FootRow {
        scheme: row.filled("scheme")?.to_owned(),
        group: row.filled("group")?.to_owned(),
        us_shoe: row.some("us_shoe_size")?,
        girth: span(row, "foot_circumference_cm", "foot_circumference_in")?,
        sock_height: span(row, "sock_height_cm", "sock_height_in")?,
        foot_length: span(row, "foot_length_cm", "foot_length_in")?,
        provenance: Provenance::of(row)?,
        note: row.get("check")?.to_owned(),
        sources: row.sources()?,
    })
}

fn span(row: Row<'_>, metric: &str, imperial: &str) -> Result<Option<FootSpan>, BadTable> {
    match (Band::in_one(row, metric, centimetres)?, Band::in_one(row, imperial, number)?) {
        (None, None) => Ok(None),
        (Some(metric), Some(imperial)) => Ok(Some(FootSpan { metric, imperial })),
        _ => Err(row.bad(format!("only one of `{metric}` and `{imperial}` is filled"))),
    }
}
