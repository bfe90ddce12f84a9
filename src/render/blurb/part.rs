//! The parts of the text: in which order they stand, and which is given up first.

use crate::entry::Reference;

/// A part of the text; the order here is that of the text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PartKind {
    /// What the note is about.
    Summary,
    /// How she came by things, what she earns by first.
    Disclosures,
    /// The chapters of the video.
    Chapters,
    /// Her own patterns.
    Own,
    /// Other people's patterns.
    Others,
    /// Projects.
    Projects,
    /// Yarn.
    Yarn,
    /// Makers, shops and people.
    People,
    /// Techniques.
    Techniques,
    /// Other notes and pages, and links to elsewhere.
    Elsewhere,
    /// Whose stories the note prints.
    Credits,
    /// The note's own address.
    Address,
}

impl PartKind {
    /// Every part, the most important first.
    pub const BY_IMPORTANCE: [Self; 12] = [
        Self::Disclosures,
        Self::Summary,
        Self::Chapters,
        Self::Own,
        Self::Address,
        Self::Others,
        Self::Yarn,
        Self::People,
        Self::Projects,
        Self::Techniques,
        Self::Elsewhere,
        Self::Credits,
    ];

    /// Returns what stands above the part; nothing where its lines speak for themselves.
    pub fn heading(self) -> Option<&'static str> {
        match self {
            Self::Summary | Self::Disclosures | Self::Chapters | Self::Credits | Self::Address => None,
            _ => Some(self.name()),
        }
    }

    /// Returns what the part is called.
    pub fn name(self) -> &'static str {
        match self {
            Self::Summary => "Summary",
            Self::Disclosures => "How I came by things",
            Self::Chapters => "Chapters",
            Self::Own => "My patterns",
            Self::Others => "Patterns by others",
            Self::Projects => "Projects",
            Self::Yarn => "Yarn",
            Self::People => "Makers, shops and people",
            Self::Techniques => "Techniques",
            Self::Elsewhere => "Elsewhere",
            Self::Credits => "Credits",
            Self::Address => "The note's own address",
        }
    }

    /// Returns whether the part is given up as a whole: half a list of chapters would name the wrong end of the last one.
    pub fn is_whole(self) -> bool {
        self == Self::Chapters
    }
}

/// A part with its lines.
#[derive(Clone, Debug)]
pub struct Part {
    /// Which it is.
    pub kind: PartKind,
    /// Its lines, without its heading; there may be none.
    pub lines: Vec<Line>,
}

/// A line of a part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// The whole line.
    pub text: String,
    /// The entries it is the line of; none where it is of no entry.
    pub of: Vec<Reference>,
}

impl From<String> for Line {
    fn from(text: String) -> Self {
        Self { text, of: Vec::new() }
    }
}

/// One way she came by things, with the things: `Given to me: Heron DK, The Mill`.
#[derive(Clone, Debug)]
pub struct Disclosure {
    /// The words.
    pub words: String,
    /// The things, each with its title.
    pub things: Vec<(Reference, String)>,
}

impl Disclosure {
    /// Returns the line, with those things alone that have a line of their own among the parts; nothing if none has. What it
    /// says of `this link` would point at nothing otherwise.
    pub fn line(&self, parts: &[Part]) -> Option<Line> {
        let has_line = |id: &Reference| parts.iter().flat_map(|part| &part.lines).any(|line| line.of.contains(id));
        let mut titles: Vec<&str> = Vec::new();
        for (_, title) in self.things.iter().filter(|(id, _)| has_line(id)) {
            if !titles.contains(&title.as_str()) {
                titles.push(title);
            }
        }
        (!titles.is_empty()).then(|| Line::from(format!("{}: {}", self.words, titles.join(", "))))
    }
}
