//! Which entry is of which kind, and how entries are called, so that a link can be written before its entry is.

use super::random::Random;

const FIRST: [&str; 10] =
    ["Reed", "Tide", "Lantern", "Heron", "Marram", "Sluice", "Gull", "Creek", "Shingle", "Beacon"];
const GARMENT: [&str; 8] = ["Pullover", "Cardigan", "Hat", "Vest", "Mitts", "Socks", "Cowl", "Jacket"];

/// The kinds of entry that are generated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A pattern: a quarter of all.
    Pattern,
    /// A project: three of ten.
    Project,
    /// A note: seven of twenty.
    Note,
    /// A yarn: one of twenty.
    Yarn,
    /// A person: one of sixty, and so are the two that follow.
    Person,
    /// A technique.
    Technique,
    /// A plain page.
    Page,
}

/// Twenty entries in a row: the kinds in their proportions. `None` is a person or a technique, and a page for the first few.
const ROW: [Option<Kind>; 20] = {
    use Kind::{Note, Pattern, Project, Yarn};
    [
        Some(Yarn),
        None,
        Some(Pattern),
        Some(Project),
        Some(Note),
        Some(Pattern),
        Some(Project),
        Some(Note),
        Some(Note),
        Some(Project),
        Some(Pattern),
        Some(Note),
        Some(Project),
        Some(Note),
        Some(Pattern),
        Some(Project),
        Some(Note),
        Some(Pattern),
        Some(Project),
        Some(Note),
    ]
};

/// How many entries there are of each kind.
#[derive(Clone, Debug, Default)]
pub struct Kinds {
    counts: [usize; 7],
}

impl Kinds {
    /// Returns each entry's kind and its number within the kind, and how many there are of each.
    pub fn of(count: usize) -> (Vec<(Kind, usize)>, Self) {
        let mut kinds = Self::default();
        let entries = (0..count)
            .map(|entry| {
                let kind = ROW[entry % ROW.len()].unwrap_or(match entry / ROW.len() % 3 {
                    0 => Kind::Person,
                    // Every page of the site names all plain pages, and nobody has more than a handful.
                    1 if kinds.counts[Kind::Page as usize] < 6 => Kind::Page,
                    _ => Kind::Technique,
                });
                let number = kinds.counts[kind as usize];
                kinds.counts[kind as usize] += 1;
                (kind, number)
            })
            .collect();
        (entries, kinds)
    }

    /// Returns the number of an entry of a kind, or none if there is no such entry.
    pub fn any(&self, random: &mut Random, kind: Kind) -> Option<usize> {
        let count = self.counts[kind as usize];
        (count > 0).then(|| random.below(count))
    }

    /// Returns how many entries of a kind there are.
    pub fn count(&self, kind: Kind) -> usize {
        self.counts[kind as usize]
    }

    /// Returns some entry of a kind as a link, or none if there is no such entry.
    pub fn link(&self, random: &mut Random, kind: Kind) -> Option<String> {
        let number = self.any(random, kind)?;
        // Half of the links show the title and half show words of their own.
        Some(match random.below(2) {
            0 => format!("<{}>", reference(kind, number)),
            _ => format!(
                "[{}]({})",
                random.one(&["this one", "an older one", "the page", "the notes"]),
                reference(kind, number)
            ),
        })
    }
}

/// Returns what an entry is called.
pub fn title(kind: Kind, number: usize) -> String {
    let first = FIRST[number % FIRST.len()];
    let round = number / FIRST.len();
    match kind {
        Kind::Pattern => format!("{first} {} {number}", garment(number)),
        Kind::Project => format!("{first} for the Shelf {number}"),
        Kind::Note => format!("{first} Weather {number}"),
        Kind::Yarn => format!("{first} DK {round}"),
        Kind::Person => format!("{first} Mill {round}"),
        Kind::Technique => format!("{first} Stitch {round}"),
        Kind::Page => format!("{first} Page {round}"),
    }
}

/// Returns the word for what a pattern is of.
pub fn garment(number: usize) -> &'static str {
    GARMENT[number / FIRST.len() % GARMENT.len()]
}

/// Returns an entry's key. A note's begins with its day: one note a day back from the newest.
pub fn key(kind: Kind, number: usize) -> String {
    let name = title(kind, number).to_lowercase().replace(' ', "-");
    if kind == Kind::Note { format!("{}-{name}", day(number)) } else { name }
}

/// Returns the day a number of days before 20 November 2026.
pub fn day(before: usize) -> jiff::civil::Date {
    let newest = jiff::civil::date(2026, 11, 20);
    newest.saturating_sub(jiff::Span::new().days(i64::try_from(before).unwrap_or(i64::MAX).min(900_000)))
}

/// Returns an entry's reference.
pub fn reference(kind: Kind, number: usize) -> String {
    let kind_word = match kind {
        Kind::Pattern => "pattern",
        Kind::Project => "project",
        Kind::Note => "note",
        Kind::Yarn => "yarn",
        Kind::Person => "person",
        Kind::Technique => "technique",
        Kind::Page => "page",
    };
    format!("{kind_word}:{}", key(kind, number))
}

/// Returns an entry's file in the studio.
pub fn file(kind: Kind, number: usize) -> String {
    let folder = match kind {
        Kind::Pattern => "patterns",
        Kind::Project => "projects",
        Kind::Note => "journal",
        Kind::Yarn => "yarns",
        Kind::Person => "people",
        Kind::Technique => "techniques",
        Kind::Page => "pages",
    };
    format!("{folder}/{}.md", key(kind, number))
}
