//! Ease: how much a garment is wider than the body, and what that fit is called.
//!
//! Two editions are in circulation, and they disagree on the close fits; both are kept. Source: Craft Yarn Council's
//! www.YarnStandards.com, as reprinted (`SOURCES.md`).

use std::sync::LazyLock;

use super::band::{centimetres, number, one};
use super::provenance::Provenance;
use super::table::{BadTable, Row, Table};
use crate::measure::{Count, FabricLength};

/// The embedded table.
pub const CSV: &str = include_str!("fit_ease.csv");

/// Which wording of the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Edition {
    /// The one in force.
    Current,
    /// The one before, which is still quoted.
    Older,
}

/// A named fit, the tightest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Fit {
    /// Smaller than the body: the fabric must stretch. In the older edition as wide as the body.
    VeryClose,
    /// As wide as the body. In the older edition a little wider.
    Close,
    /// Comfortable room; the older edition calls it standard.
    Classic,
    /// Roomy.
    Loose,
    /// Very roomy.
    Oversized,
}

/// One fit of one edition.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct EaseRow {
    /// The edition.
    pub edition: Edition,
    /// The fit.
    pub fit: Fit,
    /// The least ease, from the centimetres; below nothing where the garment is smaller.
    pub metric_min: FabricLength,
    /// The greatest ease; `None` where there is no upper bound.
    pub metric_max: Option<FabricLength>,
    /// The least ease in inches, as a number without a unit.
    pub imperial_min: Count,
    /// The greatest ease in inches; `None` where there is no upper bound.
    pub imperial_max: Option<Count>,
    /// What the fit is like.
    pub meaning: String,
    /// Whether it was read or remembered.
    pub provenance: Provenance,
    /// What to bear in mind; may be empty.
    pub note: String,
    /// The ids of the sources in `SOURCES.md`.
    pub sources: Vec<String>,
}

static ALL: LazyLock<Vec<EaseRow>> = LazyLock::new(|| read(CSV).unwrap_or_default());

/// All rows, the current edition before the older and within each the tightest fit first.
#[must_use]
pub fn all() -> &'static [EaseRow] {
    &ALL
}

/// Whether the named fits apply to a measurement: they are the torso's.
#[must_use]
pub fn applies_to(measurement: &str) -> bool {
    matches!(measurement, "chest" | "bust")
}

/// The fit that an ease at the torso is called in the current edition; `None` only for an empty table.
///
/// The council prints bands that leave gaps and touch; what happens there is our rule. An ease between two bands
/// belongs to the nearer, halfway to the roomier; where two bands touch, the value belongs to the tighter; the ends are
/// open. So it is very close below -2.5 cm, close from there to below 2.5, classic from there up to and with 10, loose
/// up to and with 15, and oversized above.
#[must_use]
pub fn named(ease: FabricLength) -> Option<&'static EaseRow> {
    let mut rows = all().iter().filter(|row| row.edition == Edition::Current);
    let mut row = rows.next()?;
    for roomier in rows {
        let Some(max) = row.metric_max else { break };
        let min = roomier.metric_min;
        // Doubled in 128 bits: halfway between two bands need not be whole, and nothing can overflow.
        let [twice, edge] = [[ease, ease], [max, min]].map(|pair| pair.map(|length| i128::from(length.nanometres())));
        let [twice, edge] = [twice, edge].map(|[one, other]| one + other);
        if twice < edge || (twice == edge && max == min) {
            break;
        }
        row = roomier;
    }
    Some(row)
}

impl Fit {
    /// The five fits, the tightest first.
    pub const ALL: [Self; 5] = [Self::VeryClose, Self::Close, Self::Classic, Self::Loose, Self::Oversized];

    /// The fit's name in the current edition.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::VeryClose => "very close",
            Self::Close => "close",
            Self::Classic => "classic",
            Self::Loose => "loose",
            Self::Oversized => "oversized",
        }
    }
}

/// Reads the table.
///
/// # Errors
/// The first row that cannot be read. The tests insist that the embedded table has none.
pub fn read(csv: &str) -> Result<Vec<EaseRow>, BadTable> {
    Table::read(csv)?.rows().map(row).collect()
}

fn row(row: Row<'_>) -> Result<EaseRow, BadTable> {
    let empty = |column: &str| row.bad(format!("`{column}` is empty"));
    let fit = row.filled("fit")?;
    // The older edition's name for the same room.
    let known = |name: &str| Fit::ALL.into_iter().find(|fit| fit.name() == name);
    let fit = if fit == "standard" { Some(Fit::Classic) } else { known(fit) };
    Ok(EaseRow {
        edition: match row.filled("edition")? {
            "current CYC" => Edition::Current,
            "older CYC wording as reprinted by a yarn company" => Edition::Older,
            other => return Err(row.bad(format!("`{other}` is not an edition"))),
        },
        fit: fit.ok_or_else(|| row.bad("`fit` is not a fit".to_owned()))?,
        metric_min: one(row, "ease_cm_min", centimetres)?.ok_or_else(|| empty("ease_cm_min"))?,
        metric_max: one(row, "ease_cm_max", centimetres)?,
        imperial_min: one(row, "ease_in_min", number)?.ok_or_else(|| empty("ease_in_min"))?,
        imperial_max: one(row, "ease_in_max", number)?,
        meaning: row.filled("meaning")?.to_owned(),
        provenance: Provenance::of(row)?,
        note: row.get("note")?.to_owned(),
        sources: row.sources()?,
    })
}
