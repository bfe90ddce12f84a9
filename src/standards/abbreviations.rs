//! Abbreviations of written instructions, and how many stitches each takes and leaves.
//!
//! The meanings are in our words. A count follows from the definition of the stitch; no sheet prints it. Sources in
//! `SOURCES.md`.

use std::sync::LazyLock;

use super::provenance::Provenance;
use super::table::{BadTable, Row, Table};

/// The embedded table.
pub const CSV: &str = include_str!("abbreviations.csv");

/// What sort of thing an abbreviation stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// A way to work stitches; it has a count.
    Stitch,
    /// Casting on or binding off, for each stitch; it has a count.
    Edge,
    /// A turn before the row's end; it has a count of nothing.
    ShortRow,
    /// Part of another stitch, never counted by itself.
    Modifier,
    /// A mark round or before what is repeated.
    RepeatMark,
    /// A word that works no stitch.
    Term,
}

/// How many stitches are taken from the left needle, or are on the right one afterwards.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stitches {
    /// So many.
    Fixed(u32),
    /// As many as the two numbers in its name together: `2/3 LC` crosses five.
    Crossed,
}

/// One abbreviation.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Abbreviation {
    /// The ways to write it, the usual one first: `kfb`, `k1fb`, `k1f&b`.
    pub forms: Vec<String>,
    /// What it means.
    pub meaning: String,
    /// What sort of thing it stands for.
    pub kind: Kind,
    /// How many stitches it takes; `None` where it has no count.
    pub consumed: Option<Stitches>,
    /// How many stitches it leaves; `None` where it has no count.
    pub produced: Option<Stitches>,
    /// What the count rests on; `None` where it has no count.
    pub count_basis: Option<String>,
    /// Whether it was read or remembered.
    pub provenance: Provenance,
    /// What to bear in mind, such as another meaning; may be empty.
    pub note: String,
    /// The ids of the sources in `SOURCES.md`.
    pub sources: Vec<String>,
}

static ALL: LazyLock<Vec<Abbreviation>> = LazyLock::new(|| read(CSV).unwrap_or_default());

/// All rows: the marks, then the rest roughly by letter, with relatives together.
#[must_use]
pub fn all() -> &'static [Abbreviation] {
    &ALL
}

/// The abbreviation that is written so: exactly, or else with capitals aside.
///
/// Numbers before the name of a cable stand for any: `2/3 LC` finds `n/m LC`. Numbers elsewhere are part of the name,
/// so `k3` finds nothing.
#[must_use]
pub fn find(written: &str) -> Option<&'static Abbreviation> {
    let written = written.trim();
    let written = crossed(written).unwrap_or_else(|| written.to_owned());
    let exact = all().iter().find(|row| row.forms.contains(&written));
    exact.or_else(|| {
        let lower = written.to_lowercase();
        all().iter().find(|row| row.forms.iter().any(|form| form.to_lowercase() == lower))
    })
}

/// The name of a cable with letters for its numbers; `None` where it has none.
fn crossed(written: &str) -> Option<String> {
    let (numbers, name) = written.split_once(' ')?;
    let (over, under) = numbers.split_once('/')?;
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    (digits(over) && digits(under)).then(|| format!("n/m {name}"))
}

impl Kind {
    /// The six kinds.
    pub const ALL: [Self; 6] = [Self::Stitch, Self::Edge, Self::ShortRow, Self::Modifier, Self::RepeatMark, Self::Term];

    /// The kind's name, in small letters.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Stitch => "stitch",
            Self::Edge => "edge",
            Self::ShortRow => "short row",
            Self::Modifier => "modifier",
            Self::RepeatMark => "repeat mark",
            Self::Term => "term",
        }
    }
}

/// Reads the table.
///
/// # Errors
/// The first row that cannot be read. The tests insist that the embedded table has none.
pub fn read(csv: &str) -> Result<Vec<Abbreviation>, BadTable> {
    Table::read(csv)?.rows().map(row).collect()
}

fn row(row: Row<'_>) -> Result<Abbreviation, BadTable> {
    let kind = row.filled("kind")?;
    let known = Kind::ALL.into_iter().find(|known| known.name() == kind);
    let stitches = |column: &str| match row.get(column)? {
        "n+m" => Ok(Some(Stitches::Crossed)),
        _ => Ok(row.whole(column)?.map(Stitches::Fixed)),
    };
    Ok(Abbreviation {
        forms: forms(row.filled("abbreviation")?),
        meaning: row.filled("meaning")?.to_owned(),
        kind: known.ok_or_else(|| row.bad(format!("`{kind}` is not a kind")))?,
        consumed: stitches("stitches_consumed")?,
        produced: stitches("stitches_produced")?,
        count_basis: row.some("count_basis")?,
        provenance: Provenance::of(row)?,
        note: row.get("note")?.to_owned(),
        sources: row.sources()?,
    })
}

/// The ways to write what a cell holds: `kfb (k1fb, k1f&b)` is three, `st(s)` two, and `( )` one.
fn forms(cell: &str) -> Vec<String> {
    if let Some(single) = cell.strip_suffix("(s)") {
        return vec![single.to_owned(), format!("{single}s")];
    }
    let others = cell.split_once(" (").and_then(|(usual, rest)| Some((usual, rest.strip_suffix(')')?)));
    match others {
        Some((usual, others)) => std::iter::once(usual).chain(others.split(", ")).map(str::to_owned).collect(),
        None => vec![cell.to_owned()],
    }
}
