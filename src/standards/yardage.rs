//! How much yarn a hat, a scarf or an adult's sweater usually takes.
//!
//! Approximate figures of one handbook, by gauge. They only say whether a length is plausible. The handbook prints
//! yards; the table's metres are worked out from them and not read. Source in `SOURCES.md`.

use std::sync::LazyLock;

use super::band::{Band, number, yards};
use super::provenance::Provenance;
use super::table::{BadTable, Row, Table};
use crate::measure::{Count, YarnLength};

/// The embedded table.
pub const CSV: &str = include_str!("typical_yardage.csv");

/// What is made of the yarn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Item {
    /// A hat.
    Hat,
    /// A scarf.
    Scarf,
    /// A sweater for an adult, whatever the size.
    AdultSweater,
}

/// One item in one weight of yarn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct YardageRow {
    /// The yarn's category, 1 to 6.
    pub category: u8,
    /// The category's name as the handbook prints it: `Superfine`.
    pub name: String,
    /// How many stitches go into an inch.
    pub stitches_per_inch: Band<Count>,
    /// What is made of it.
    pub item: Item,
    /// How much yarn it takes, from the yards.
    pub length: Band<YarnLength>,
    /// Whether it was read or remembered.
    pub provenance: Provenance,
    /// What to bear in mind; may be empty.
    pub note: String,
    /// The ids of the sources in `SOURCES.md`.
    pub sources: Vec<String>,
}

static ALL: LazyLock<Vec<YardageRow>> = LazyLock::new(|| read(CSV).unwrap_or_default());

/// All rows, the lightest yarn first.
#[must_use]
pub fn all() -> &'static [YardageRow] {
    &ALL
}

/// The length of yarn that an item usually takes at a gauge, as wide as every row allows that the gauge may belong to.
///
/// The gauge is stitches over 10 cm, taken as 4 in, as gauge is printed. The bands of gauge touch, so one of 5 stitches to the
/// inch belongs to two rows. `None` for a gauge finer or coarser than the handbook's, 6 to 32 stitches.
#[must_use]
pub fn plausible(item: Item, stitches_per_10_cm: Count) -> Option<Band<YarnLength>> {
    let over_4_in = |band: Band<Count>| Some(Band { min: band.min.times_near(4, 1)?, max: band.max.times_near(4, 1)? });
    all()
        .iter()
        .filter(|row| row.item == item)
        .filter(|row| over_4_in(row.stitches_per_inch).is_some_and(|band| band.holds(stitches_per_10_cm)))
        .map(|row| row.length)
        .reduce(Band::with)
}

impl Item {
    /// The three items.
    pub const ALL: [Self; 3] = [Self::Hat, Self::Scarf, Self::AdultSweater];

    /// The item's name, in small letters.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Hat => "hat",
            Self::Scarf => "scarf",
            Self::AdultSweater => "adult sweater",
        }
    }
}

/// Reads the table.
///
/// # Errors
/// The first row that cannot be read. The tests insist that the embedded table has none.
pub fn read(csv: &str) -> Result<Vec<YardageRow>, BadTable> {
    Table::read(csv)?.rows().map(row).collect()
}

fn row(row: Row<'_>) -> Result<YardageRow, BadTable> {
    let weight = row.filled("yarn_weight_category")?;
    let category = weight.split_once(' ').and_then(|(number, name)| Some((number.parse().ok()?, name)));
    let (category, name) = category.ok_or_else(|| row.bad(format!("`{weight}` is not a category")))?;
    let item = row.filled("item")?;
    let known = Item::ALL.into_iter().find(|known| known.name() == item);
    Ok(YardageRow {
        category,
        name: name.to_owned(),
        stitches_per_inch: Band::needed(row, ["stitches_per_inch_min", "stitches_per_inch_max"], number)?,
        item: known.ok_or_else(|| row.bad(format!("`{item}` is not an item")))?,
        length: Band::needed(row, ["yards_min", "yards_max"], yards)?,
        provenance: Provenance::of(row)?,
        note: row.get("note")?.to_owned(),
        sources: row.sources()?,
    })
}
