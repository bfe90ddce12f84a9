//! The standard yarn weights, 0 Lace to 7 Jumbo.
//!
//! Source: Craft Yarn Council's www.YarnStandards.com, as reprinted (`SOURCES.md`).

mod names;

use std::fmt;
use std::sync::LazyLock;

use super::near::near;
use super::provenance::Provenance;
use super::table::{BadTable, Row, Table};
use crate::measure::FabricLength;

/// The embedded table.
pub const CSV: &str = include_str!("../yarn_weights.csv");

/// A standard yarn weight category.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct YarnWeight {
    /// The category's number, 0 to 7.
    pub number: u8,
    /// The category's name: `Light`.
    pub name: String,
    /// What it is called in the US, as the sources print it.
    pub names_us: Vec<String>,
    /// What it is called in the UK and Australia, as the sources print it.
    pub names_uk_au: Vec<String>,
    /// The fewest stitches over 10 cm (4 in) of stockinette.
    pub stitches_min: u32,
    /// The most stitches over 10 cm (4 in) of stockinette.
    pub stitches_max: u32,
    /// The thinnest needle that is usual.
    pub needle_min: FabricLength,
    /// The thickest needle that is usual; `None` in the open-ended last category.
    pub needle_max: Option<FabricLength>,
    /// Whether it was read or remembered.
    pub provenance: Provenance,
    /// What to bear in mind; may be empty.
    pub note: String,
    /// The ids of the sources in `SOURCES.md`.
    pub sources: Vec<String>,
}

/// Why a name does not say which weight is meant.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotAWeight {
    /// No category has this name.
    Unknown {
        /// The name as written.
        written: String,
        /// Names a slip or two away, the nearest first.
        near: Vec<String>,
    },
    /// More than one category claims this name.
    Ambiguous {
        /// The name as written.
        written: String,
        /// The categories, lightest first.
        weights: Vec<&'static YarnWeight>,
    },
}

impl fmt::Display for NotAWeight {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unknown { written, .. } => write!(f, "`{written}` is not a standard yarn weight"),
            Self::Ambiguous { written, .. } => {
                write!(f, "`{written}` is the name of more than one yarn weight")
            }
        }
    }
}

impl std::error::Error for NotAWeight {}

impl NotAWeight {
    /// What to write instead.
    #[must_use]
    pub fn help(&self) -> String {
        match self {
            Self::Unknown { near, .. } if !near.is_empty() => {
                let near: Vec<String> = near.iter().take(3).map(|name| format!("`{name}`")).collect();
                format!("write {}", near.join(" or "))
            }
            Self::Unknown { .. } => "write a category's number or name, such as `3`, `Light` or `DK`".to_owned(),
            Self::Ambiguous { weights, .. } => {
                let names: Vec<String> =
                    weights.iter().map(|weight| format!("`{}` ({})", weight.number, weight.name)).collect();
                format!("write {}", names.join(" or "))
            }
        }
    }
}

static ALL: LazyLock<Vec<YarnWeight>> = LazyLock::new(|| read(CSV).unwrap_or_default());

/// All categories, lightest first.
#[must_use]
pub fn all() -> &'static [YarnWeight] {
    &ALL
}

/// The category of a number, 0 to 7.
#[must_use]
pub fn by_number(number: u8) -> Option<&'static YarnWeight> {
    all().iter().find(|weight| weight.number == number)
}

/// The category of a name or number: `DK`, `3`, `light`, `4 ply`, `UK aran`.
///
/// Capitals, hyphens and a leading `UK`, `US`, `AU`, `#` or `category` do not matter.
///
/// # Errors
/// An unknown name, with near misses; a name that several categories claim, with all of them.
pub fn by_name(name: &str) -> Result<&'static YarnWeight, NotAWeight> {
    let plain = plain(name);
    let mut numbers: Vec<u8> =
        names::NAMES.iter().filter(|(known, _)| *known == plain).map(|(_, number)| *number).collect();
    numbers.extend(plain.parse::<u8>());
    let weights: Vec<&'static YarnWeight> = numbers.into_iter().filter_map(by_number).collect();
    match weights.as_slice() {
        [weight] => Ok(weight),
        [] => {
            let near =
                near(&plain, names::NAMES.iter().map(|(known, _)| *known)).into_iter().map(str::to_owned).collect();
            Err(NotAWeight::Unknown { written: name.trim().to_owned(), near })
        }
        _ => Err(NotAWeight::Ambiguous { written: name.trim().to_owned(), weights }),
    }
}

/// A name for comparing: small letters, single spaces, `4 ply` for `4-ply` and `4ply`, no country before it.
fn plain(name: &str) -> String {
    let lower = name.to_lowercase().replace(['-', '–', '_', '#'], " ");
    let mut words: Vec<String> = Vec::new();
    for word in lower.split_whitespace() {
        match word.strip_suffix("ply") {
            Some(number) if !number.is_empty() && number.bytes().all(|byte| byte.is_ascii_digit()) => {
                words.push(number.to_owned());
                words.push("ply".to_owned());
            }
            _ => words.push(word.to_owned()),
        }
    }
    let lead = |word: &String| matches!(word.as_str(), "uk" | "us" | "au" | "category" | "weight");
    let skip = words.iter().take_while(|word| lead(word)).count();
    let mut words = words.split_off(skip);
    if words.len() > 1 && words.last().is_some_and(|word| word == "weight" || word == "yarn") {
        words.pop();
    }
    words.join(" ")
}

/// Reads the table.
///
/// # Errors
/// The first row that cannot be read. The tests insist that the embedded table has none.
pub fn read(csv: &str) -> Result<Vec<YarnWeight>, BadTable> {
    Table::read(csv)?.rows().map(row).collect()
}

fn row(row: Row<'_>) -> Result<YarnWeight, BadTable> {
    let number = row.filled("number")?;
    let needed = |column: &str| row.whole(column)?.ok_or_else(|| row.bad(format!("`{column}` is empty")));
    Ok(YarnWeight {
        number: number.parse().map_err(|_| row.bad(format!("`{number}` is not a category")))?,
        name: row.filled("name")?.to_owned(),
        names_us: list(row.get("other_names_us")?),
        names_uk_au: list(row.get("other_names_uk_au")?),
        stitches_min: needed("knit_gauge_sts_min")?,
        stitches_max: needed("knit_gauge_sts_max")?,
        needle_min: millimetres(row, "needle_mm_min")?.ok_or_else(|| row.bad("`needle_mm_min` is empty".to_owned()))?,
        needle_max: millimetres(row, "needle_mm_max")?,
        provenance: Provenance::of(row)?,
        note: row.get("note")?.to_owned(),
        sources: row.sources()?,
    })
}

fn list(cell: &str) -> Vec<String> {
    cell.split(';').map(str::trim).filter(|name| !name.is_empty()).map(str::to_owned).collect()
}

/// A cell of millimetres; `None` where it is empty.
pub(super) fn millimetres(row: Row<'_>, column: &str) -> Result<Option<FabricLength>, BadTable> {
    let cell = row.get(column)?;
    if cell.is_empty() {
        return Ok(None);
    }
    let length = FabricLength::parse(&format!("{cell} mm"), crate::measure::Inch::default());
    length.map(Some).map_err(|misread| row.bad(format!("`{column}`: {misread}")))
}
