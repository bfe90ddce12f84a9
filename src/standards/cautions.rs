//! Cautions: where a knitted thing can hurt someone, and what sellers must heed.
//!
//! Each is one plain sentence and the rule it comes from. They are no legal advice: a page that shows one names the
//! place it holds for and defers to local rules. Sources in `SOURCES.md`.

use std::sync::LazyLock;

use super::provenance::Provenance;
use super::table::{BadTable, Row, Table};

/// The embedded table.
pub const CSV: &str = include_str!("cautions.csv");

/// What the danger is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Hazard {
    /// Buttons and other pieces that may come off and be swallowed.
    SmallParts,
    /// Cords, ties and drawstrings, which may strangle.
    Cords,
    /// Blankets, toys and hats where a baby sleeps.
    Sleep,
    /// Fabric that burns.
    Flammability,
    /// Holes and floats that catch fingers and toes.
    Loops,
    /// Knitted toys.
    SoftToys,
    /// No danger but a duty of whoever sells: labels, marks, product safety. No page shows these yet.
    Selling,
}

/// One caution.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Caution {
    /// What it is about; with the jurisdiction it names the row.
    pub topic: String,
    /// What the danger is.
    pub hazard: Hazard,
    /// Where it holds: `US`, `EU/UK`, `trade practice`.
    pub jurisdiction: String,
    /// The rule it comes from; may be empty.
    pub reference: String,
    /// The caution, in one sentence.
    pub sentence: String,
    /// What it applies to.
    pub applies_to: String,
    /// Whether it was read or remembered.
    pub provenance: Provenance,
    /// What to bear in mind; may be empty.
    pub note: String,
    /// The ids of the sources in `SOURCES.md`.
    pub sources: Vec<String>,
}

/// Which danger each topic is about. A choking label warns of small parts, but putting it on is the seller's duty.
const TOPICS: &[(&str, Hazard)] = &[
    ("small parts", Hazard::SmallParts),
    ("choking label", Hazard::Selling),
    ("buttons on baby garments", Hazard::SmallParts),
    ("children's sleepwear, small sizes", Hazard::Flammability),
    ("children's sleepwear, large sizes", Hazard::Flammability),
    ("infant garment exception", Hazard::Flammability),
    ("general clothing flammability", Hazard::Flammability),
    ("drawstrings, hood and neck", Hazard::Cords),
    ("drawstrings, waist and hem", Hazard::Cords),
    ("cords, young children", Hazard::Cords),
    ("cords, older children", Hazard::Cords),
    ("cords, hats and scarves", Hazard::Cords),
    ("infant sleep, bedding", Hazard::Sleep),
    ("infant sleep, overheating", Hazard::Sleep),
    ("infant sleep, UK", Hazard::Sleep),
    ("infant sleep, head coverings", Hazard::Sleep),
    ("fibre content label", Hazard::Selling),
    ("care label", Hazard::Selling),
    ("animal parts label", Hazard::Selling),
    ("lead, tracking label, small batch", Hazard::Selling),
    ("soft toys", Hazard::SoftToys),
    ("general product safety", Hazard::Selling),
    ("loops and open lace", Hazard::Loops),
];

/// Topics whose rule begins at seven years.
const PAST_BABIES: &[&str] = &["children's sleepwear, large sizes", "cords, older children"];

static ALL: LazyLock<Vec<Caution>> = LazyLock::new(|| read(CSV).unwrap_or_default());

/// All rows, topic by topic.
#[must_use]
pub fn all() -> &'static [Caution] {
    &ALL
}

/// The cautions about a danger, in the table's order.
pub fn of(hazard: Hazard) -> impl Iterator<Item = &'static Caution> {
    all().iter().filter(move |caution| caution.hazard == hazard)
}

/// The cautions for a thing that a baby wears or sleeps under, in the table's order.
///
/// Not those of sellers and of toys, nor rules that begin at seven years. Rules that begin at two years are among them,
/// because the tables of baby sizes end there.
pub fn for_baby() -> impl Iterator<Item = &'static Caution> {
    all().iter().filter(|caution| {
        !matches!(caution.hazard, Hazard::Selling | Hazard::SoftToys) && !PAST_BABIES.contains(&caution.topic.as_str())
    })
}

impl Hazard {
    /// The six dangers, and selling.
    pub const ALL: [Self; 7] =
        [Self::SmallParts, Self::Cords, Self::Sleep, Self::Flammability, Self::Loops, Self::SoftToys, Self::Selling];

    /// The hazard's name, in small letters.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::SmallParts => "small parts",
            Self::Cords => "cords",
            Self::Sleep => "sleep",
            Self::Flammability => "flammability",
            Self::Loops => "loops",
            Self::SoftToys => "soft toys",
            Self::Selling => "selling",
        }
    }
}

/// Reads the table.
///
/// # Errors
/// The first row that cannot be read. The tests insist that the embedded table has none.
pub fn read(csv: &str) -> Result<Vec<Caution>, BadTable> {
    Table::read(csv)?.rows().map(row).collect()
}

fn row(row: Row<'_>) -> Result<Caution, BadTable> {
    let topic = row.filled("topic")?;
    let hazard = TOPICS.iter().find(|(known, _)| *known == topic).map(|(_, hazard)| *hazard);
    Ok(Caution {
        topic: topic.to_owned(),
        hazard: hazard.ok_or_else(|| row.bad(format!("`{topic}` has no hazard")))?,
        jurisdiction: row.filled("jurisdiction")?.to_owned(),
        reference: row.get("reference")?.to_owned(),
        sentence: row.filled("sentence")?.to_owned(),
        applies_to: row.filled("applies_to")?.to_owned(),
        provenance: Provenance::of(row)?,
        note: row.get("note")?.to_owned(),
        sources: row.sources()?,
    })
}
