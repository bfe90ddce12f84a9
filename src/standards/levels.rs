//! The four project levels.
//!
//! They describe the project, not the knitter. Source: Craft Yarn Council's www.YarnStandards.com, as
//! reprinted (`SOURCES.md`).

use std::fmt;
use std::sync::LazyLock;

use super::near::near;
use super::provenance::Provenance;
use super::table::{BadTable, Row, Table};

/// The embedded table.
pub const CSV: &str = include_str!("skill_levels.csv");

/// How demanding a project is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Level {
    /// Plain stitches.
    Basic,
    /// Simple stitch patterns, colour changes or shaping.
    Easy,
    /// Work that needs steady attention.
    Intermediate,
    /// Several demanding techniques worked together.
    Complex,
}

/// A word that is no level.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotALevel {
    /// The word as written.
    pub written: String,
    /// Levels a slip or two away, the nearest first.
    pub near: Vec<String>,
}

impl fmt::Display for NotALevel {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "`{}` is not a project level", self.written)
    }
}

impl std::error::Error for NotALevel {}

impl NotALevel {
    /// What to write instead.
    #[must_use]
    pub fn help(&self) -> String {
        match self.near.first() {
            Some(name) => format!("write `{name}`"),
            None => "write `basic`, `easy`, `intermediate` or `complex`".to_owned(),
        }
    }
}

/// A row of the table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LevelRow {
    /// The level.
    pub level: Level,
    /// The level's number, 1 to 4.
    pub number: u32,
    /// What it means, in one sentence.
    pub meaning: String,
    /// What older patterns call it.
    pub older: String,
    /// Whether it was read or remembered.
    pub provenance: Provenance,
    /// The ids of the sources in `SOURCES.md`.
    pub sources: Vec<String>,
}

static ALL: LazyLock<Vec<LevelRow>> = LazyLock::new(|| read(CSV).unwrap_or_default());

/// All rows, the least demanding first.
#[must_use]
pub fn all() -> &'static [LevelRow] {
    &ALL
}

impl Level {
    /// The four levels, the least demanding first.
    pub const ALL: [Self; 4] = [Self::Basic, Self::Easy, Self::Intermediate, Self::Complex];

    /// The level's name, in small letters.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Basic => "basic",
            Self::Easy => "easy",
            Self::Intermediate => "intermediate",
            Self::Complex => "complex",
        }
    }

    /// Reads a level's name, or what older patterns call it (`beginner`, `experienced`).
    ///
    /// # Errors
    /// Any other word, with near misses.
    pub fn parse(text: &str) -> Result<Self, NotALevel> {
        let word = text.trim().to_lowercase();
        let named = Self::ALL.into_iter().find(|level| level.name() == word);
        let older = || all().iter().find(|row| row.older.to_lowercase() == word).map(|row| row.level);
        named.or_else(older).ok_or_else(|| NotALevel {
            written: text.trim().to_owned(),
            near: near(&word, Self::ALL.into_iter().map(Self::name)).into_iter().map(str::to_owned).collect(),
        })
    }

    /// What the level means, in one sentence.
    #[must_use]
    pub fn meaning(self) -> &'static str {
        all().iter().find(|row| row.level == self).map_or("", |row| row.meaning.as_str())
    }
}

/// Reads the table.
///
/// # Errors
/// The first row that cannot be read. The tests insist that the embedded table has none.
pub fn read(csv: &str) -> Result<Vec<LevelRow>, BadTable> {
    Table::read(csv)?.rows().map(one).collect()
}

fn one(row: Row<'_>) -> Result<LevelRow, BadTable> {
    let name = row.filled("name")?.to_lowercase();
    let level = Level::ALL.into_iter().find(|level| level.name() == name);
    Ok(LevelRow {
        level: level.ok_or_else(|| row.bad(format!("`{name}` is not a level")))?,
        number: row.whole("level")?.ok_or_else(|| row.bad("`level` is empty".to_owned()))?,
        meaning: row.filled("meaning")?.to_owned(),
        older: row.get("replaces_older_label")?.to_owned(),
        provenance: Provenance::of(row)?,
        sources: row.sources()?,
    })
}
