//! One file a kind: front matter and prose to typed fields and references, with findings.
//!
//! [`read`] takes a studio's texts and returns its [`Entries`]. It knows nothing of other entries: whether a reference
//! leads anywhere is the catalogue's business. It reads no file and no clock.

pub mod block;
pub mod chart;
pub mod comment;
mod common;
mod disclosure;
mod evidence;
mod fenced;
pub mod field;
mod front;
mod gauge;
pub mod heading;
mod kind;
mod note;
mod open_fence;
mod origin;
mod outlet;
mod pattern;
mod person;
mod project;
pub mod prose;
mod read;
pub mod schema;
mod seen;
mod studio;
mod testers;
pub mod value;
pub mod yaml;
mod yarn;

pub use chart::{ChartBlock, SwatchBlock, SwatchOf, Width};
pub use common::Common;
pub use disclosure::Disclosure;
pub use evidence::{Consumed, Dimension, Piece, WeighedSwatch};
pub use fenced::Fenced;
pub use gauge::Gauge;
pub use kind::{Key, Kind, Reference, slug};
pub use note::{Mentioned, Note, Story, Video, WorkedOn};
pub use origin::{At, Origin, Placing};
pub use outlet::Outlet;
pub use pattern::{Abbreviation, After, Erratum, Held, Pattern, Reached, Ruling, Sale, Sample, TestKnit, YarnUse};
pub use person::{Page, Person, Technique};
pub use project::{LeftToDo, MadeFor, MadeFrom, OtherPattern, Project, ToDo, Used};
pub use prose::Prose;
pub use read::{Entries, Given, missing_studio, read, read_file, read_studio};
pub use studio::{Settings, Studio, VideoSettings};
pub use testers::{Shared, Tester, Testers};
pub use yarn::Yarn;

use value::Date;
use yaml::Steps;

/// One thing with a page or a record.
#[derive(Clone, Debug)]
pub struct Entry {
    /// Its name across the studio.
    pub id: Reference,
    /// The keys that every kind has.
    pub common: Common,
    /// The keys of its kind.
    pub data: Data,
    /// Its text.
    pub prose: Prose,
    /// The entries it refers to, front matter first, in the order they are written.
    pub mentions: Vec<Mention>,
    /// The addresses elsewhere that it leads to, front matter first, in the order they are written.
    pub addresses: Vec<Address>,
    /// The texts of its front matter that readers may see, if they are of two words or more, with the way to each.
    pub texts: Vec<(Steps, String)>,
    /// The file it stands in.
    pub origin: Origin,
    /// Its keys whose values could not be read as they stand: checks leave them alone, since they were told of already.
    pub spoilt: Vec<Box<str>>,
}

/// The fields of an entry's own kind.
#[derive(Clone, Debug)]
pub enum Data {
    /// A design.
    Pattern(Box<Pattern>),
    /// A thing on the needles or finished.
    Project(Box<Project>),
    /// A weekly note.
    Note(Box<Note>),
    /// A yarn.
    Yarn(Box<Yarn>),
    /// A how-to.
    Technique(Box<Technique>),
    /// A maker, shop, event or other designer.
    Person(Box<Person>),
    /// A plain page.
    Page(Box<Page>),
}

/// One entry's reference to another.
#[derive(Clone, Debug)]
pub struct Mention {
    /// The entry referred to.
    pub to: Reference,
    /// Where.
    pub at: At,
    /// Whether it stands in a private field, so that nobody may learn of it.
    pub private: bool,
    /// Whether it is only a word if there is no such entry.
    pub perhaps: bool,
}

/// An address elsewhere that an entry leads to.
#[derive(Clone, Debug)]
pub struct Address {
    /// The address as it is written.
    pub url: String,
    /// Where.
    pub at: At,
}

impl Entry {
    /// Returns the fields of a pattern, if it is one.
    pub fn pattern(&self) -> Option<&Pattern> {
        match &self.data {
            Data::Pattern(pattern) => Some(pattern),
            _ => None,
        }
    }

    /// Returns the fields of a project, if it is one.
    pub fn project(&self) -> Option<&Project> {
        match &self.data {
            Data::Project(project) => Some(project),
            _ => None,
        }
    }

    /// Returns the fields of a note, if it is one.
    pub fn note(&self) -> Option<&Note> {
        match &self.data {
            Data::Note(note) => Some(note),
            _ => None,
        }
    }

    /// Returns the fields of a yarn, if it is one.
    pub fn yarn(&self) -> Option<&Yarn> {
        match &self.data {
            Data::Yarn(yarn) => Some(yarn),
            _ => None,
        }
    }

    /// Returns whether an address elsewhere is one of theirs: of a person's own site, or of a place that sells a pattern, or
    /// below it.
    pub fn has_address(&self, url: &str) -> bool {
        let is_theirs = |known: &value::Web| {
            let rest = url.strip_prefix(known.as_str().trim_end_matches('/'));
            rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(['/', '?', '#']))
        };
        match &self.data {
            Data::Person(person) => person.url.as_ref().is_some_and(is_theirs),
            Data::Pattern(pattern) => pattern.sold_at.iter().filter_map(|sale| sale.url.as_ref()).any(is_theirs),
            _ => false,
        }
    }

    /// Returns whether a key's value could not be read as it stands.
    pub fn is_spoilt(&self, key: &str) -> bool {
        self.spoilt.iter().any(|spoilt| **spoilt == *key)
    }

    /// Returns the day from which readers may see it, if it has one: its date, or that on which a surprise is over.
    pub fn seen_from(&self) -> Option<Date> {
        self.date().max(self.project().and_then(|project| project.reveal))
    }

    /// Returns the day the entry is of: a note's date, a pattern's publication, a project's beginning.
    pub fn date(&self) -> Option<Date> {
        match &self.data {
            Data::Note(note) => note.date,
            Data::Pattern(pattern) => pattern.published,
            Data::Project(project) => project.started,
            Data::Yarn(_) | Data::Technique(_) | Data::Person(_) | Data::Page(_) => None,
        }
    }
}
