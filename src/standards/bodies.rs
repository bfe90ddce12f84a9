//! Body sizes: women, men, youths, children, babies.
//!
//! Measurements of bodies, not of garments. Most rows were not seen in any copy ([`Provenance::Memory`]), so they
//! are a help to a designer and never a check that fails her pattern. Source: Craft Yarn Council's
//! www.YarnStandards.com, as reprinted (`SOURCES.md`).

use std::sync::LazyLock;

use super::band::{Band, centimetres, number};
use super::provenance::Provenance;
use super::table::{BadTable, Row, Table, each_once};
use crate::measure::{Count, FabricLength};

/// Whose body a table is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Body {
    /// Women, XS to 5X.
    Women,
    /// Men, S to 2X.
    Men,
    /// Youths, 12 to 16 years.
    Youth,
    /// Children, 2 to 10 years.
    Child,
    /// Babies, 3 to 24 months.
    Baby,
}

/// One measurement of one size.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BodyRow {
    /// The size as the table names it: `XL/1X`, `4`, `6 months`.
    pub size: String,
    /// What is measured: `bust`, `upper arm`.
    pub measurement: String,
    /// The measurement, from the centimetres.
    pub metric: Band<FabricLength>,
    /// The measurement in inches, as a number without a unit.
    pub imperial: Band<Count>,
    /// Whether the centimetres were printed; otherwise they were worked out from the inches, to the nearest half.
    pub metric_printed: bool,
    /// Whether it was read or remembered.
    pub provenance: Provenance,
    /// What to bear in mind; may be empty.
    pub note: String,
    /// The ids of the sources in `SOURCES.md`.
    pub sources: Vec<String>,
}

/// The row that comes nearest to a length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Nearest {
    /// The row.
    pub row: &'static BodyRow,
    /// How far the length lies outside the row's band: nothing within it, below nothing for a length that is shorter.
    pub outside: FabricLength,
    /// Whether the length is shorter or longer than anything in the table, so that `outside` is no fault of hers.
    pub beyond: bool,
}

static ALL: LazyLock<[Vec<BodyRow>; 5]> = LazyLock::new(|| Body::ALL.map(|body| read(body.csv()).unwrap_or_default()));

impl Body {
    /// The five tables, as the council orders them.
    pub const ALL: [Self; 5] = [Self::Women, Self::Men, Self::Youth, Self::Child, Self::Baby];

    /// The body's name, in small letters.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Women => "women",
            Self::Men => "men",
            Self::Youth => "youth",
            Self::Child => "child",
            Self::Baby => "baby",
        }
    }

    /// The embedded table.
    #[must_use]
    pub const fn csv(self) -> &'static str {
        match self {
            Self::Women => include_str!("body_women.csv"),
            Self::Men => include_str!("body_men.csv"),
            Self::Youth => include_str!("body_youth.csv"),
            Self::Child => include_str!("body_child.csv"),
            Self::Baby => include_str!("body_baby.csv"),
        }
    }
}

/// All rows of a body, measurement by measurement and within each the smallest size first.
#[must_use]
pub fn rows(body: Body) -> &'static [BodyRow] {
    let [women, men, youth, child, baby] = &*ALL;
    match body {
        Body::Women => women,
        Body::Men => men,
        Body::Youth => youth,
        Body::Child => child,
        Body::Baby => baby,
    }
}

/// What is measured on a body, in the table's order.
#[must_use]
pub fn measurements(body: Body) -> Vec<&'static str> {
    each_once(rows(body).iter().map(|row| row.measurement.as_str()))
}

/// The name of the girth that a size is chosen by: `bust` for women, `chest` for the others.
#[must_use]
pub const fn girth(body: Body) -> &'static str {
    match body {
        Body::Women => "bust",
        Body::Men | Body::Youth | Body::Child | Body::Baby => "chest",
    }
}

/// The row whose band holds a length, or else the nearest one; of equally near ones the smaller size.
///
/// `None` for a measurement that the table does not have.
#[must_use]
pub fn nearest(body: Body, measurement: &str, length: FabricLength) -> Option<Nearest> {
    let rows = || rows(body).iter().filter(|row| row.measurement == measurement);
    let outside = |row: &BodyRow| match row.metric {
        Band { min, .. } if length < min => length.checked_sub(min),
        Band { max, .. } if length > max => length.checked_sub(max),
        _ => Some(FabricLength::ZERO),
    };
    // The first of equally small keys is kept, and the smaller sizes stand first.
    let (row, outside) = rows()
        .filter_map(|row| Some((row, outside(row)?)))
        .min_by_key(|(_, outside)| outside.nanometres().unsigned_abs())?;
    let whole = rows().map(|row| row.metric).reduce(Band::with)?;
    Some(Nearest { row, outside, beyond: !whole.holds(length) })
}

/// The row of a size, by what designers call it.
///
/// Capitals do not matter. `1X` is `XL`, and `2XL` and `XXL` are `2X`, and so on; `4 years` is a child's `4`; `6m` is
/// `6 months`. A span such as `3-6 months` is no size of the table. `None` for what it does not have.
#[must_use]
pub fn row(body: Body, measurement: &str, size: &str) -> Option<&'static BodyRow> {
    let size = plain(body, size);
    rows(body)
        .iter()
        .filter(|row| row.measurement == measurement)
        .find(|row| row.size.split('/').any(|name| plain(body, name) == size))
}

/// A size for comparing: small letters, `2x` for what is larger than large, years and months as bare numbers.
fn plain(body: Body, size: &str) -> String {
    let lower = size.trim().to_lowercase();
    match body {
        Body::Women | Body::Men => extra_large(&lower).unwrap_or(lower),
        Body::Youth | Body::Child => bare(&lower, &["years", "year", "yrs", "yr", "y"]).unwrap_or(lower),
        // A bare number is left as it is: it might be years.
        Body::Baby => match bare(&lower, &["months", "month", "mths", "mth", "mos", "mo", "m"]) {
            Some(months) => format!("{months} months"),
            None => lower,
        },
    }
}

/// `1x` for `xl` and `1xl`, `2x` for `xxl` and `2xl`.
fn extra_large(size: &str) -> Option<String> {
    let stem = size.strip_suffix('l').unwrap_or(size);
    let number = stem.trim_end_matches('x');
    match (number, stem.len() - number.len()) {
        ("", crosses @ 1..) if stem.len() < size.len() => Some(format!("{crosses}x")),
        (number, 1) if digits(number) => Some(format!("{number}x")),
        _ => None,
    }
}

/// The number before a unit; `None` where there is anything else before it.
fn bare(size: &str, units: &[&str]) -> Option<String> {
    let number = units.iter().find_map(|unit| size.strip_suffix(unit))?.trim_end();
    digits(number).then(|| number.to_owned())
}

fn digits(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit())
}

/// Reads one of the tables.
///
/// # Errors
/// The first row that cannot be read. The tests insist that the embedded tables have none.
pub fn read(csv: &str) -> Result<Vec<BodyRow>, BadTable> {
    Table::read(csv)?.rows().map(one).collect()
}

fn one(row: Row<'_>) -> Result<BodyRow, BadTable> {
    Ok(BodyRow {
        size: row.filled("size")?.to_owned(),
        measurement: row.filled("measurement")?.to_owned(),
        metric: Band::needed(row, ["cm_min", "cm_max"], centimetres)?,
        imperial: Band::needed(row, ["in_min", "in_max"], number)?,
        metric_printed: match row.filled("cm_basis")? {
            "printed" => true,
            "computed from inches, nearest 0.5" => false,
            other => return Err(row.bad(format!("`{other}` is not a basis"))),
        },
        provenance: Provenance::of(row)?,
        note: row.get("note")?.to_owned(),
        sources: row.sources()?,
    })
}
