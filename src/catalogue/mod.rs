//! All entries joined: references, back-links, what is public and what is not.
//!
//! Nothing here reads a file or knows a page; the date is given, never asked for.

mod asked;
mod call;
mod change;
mod check;
mod links;
mod pictures;
mod titles;
mod visible;
mod words;

pub use asked::{Question, recorded};
pub use call::{Call, CallState};
pub use change::{Change, Names};
pub use check::{RESERVED_PAGE, UNKNOWN_REFERENCE, check, check_one};
pub use links::{BackLink, Told, Via};
pub use pictures::{PICTURE_MISSING, PictureFile};
pub use titles::Named;
pub use visible::{Eyes, Visibility};
pub use words::Words;

use crate::entry::value::Date;
use crate::entry::{
    Data, Entries, Entry, Kind, Note, Page, Pattern, Person, Project, Reference, Studio, Technique, Yarn,
};
use std::collections::{BTreeSet, HashMap};
use std::sync::OnceLock;
use titles::Titles;
use xxhash_rust::xxh3::Xxh3DefaultBuilder;

/// The day a catalogue is of, and whose eyes it is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct View {
    /// The day the site is made for.
    pub today: Date,
    /// Who looks at it.
    pub eyes: Eyes,
}

impl View {
    /// Returns what readers see on a day.
    pub fn of_readers(today: Date) -> Self {
        Self { today, eyes: Eyes::Readers }
    }
}

/// A studio's entries, joined, as seen on one day.
#[derive(Clone, Debug)]
pub struct Catalogue {
    /// The studio.
    pub studio: Studio,
    /// The day, and who looks.
    pub view: View,
    /// Every entry that could be read, public or not, by kind and key.
    pub entries: Vec<Entry>,
    /// Entries that exist and could not be read: a reference to one is no further mistake.
    broken: BTreeSet<Reference>,
    /// Kinds with a register that could not be read at all.
    broken_kinds: BTreeSet<Kind>,
    /// Where each entry is among them.
    places: Index<usize>,
    /// Which public entries refer to an entry, in the order of the referring entries.
    back_links: Index<Vec<BackLink>>,
    /// The titles to look for in texts, once they were asked for.
    titles: OnceLock<Titles>,
    /// The private names to look for likewise.
    secrets: OnceLock<Titles>,
}

/// Something for each of many entries. It is only asked, never walked through, so its order cannot show anywhere.
type Index<T> = HashMap<Reference, T, Xxh3DefaultBuilder>;

macro_rules! of_kind {
    ($($(#[doc = $doc:literal])+ $name:ident: $type:ty = $kind:ident;)*) => { $(
        $(#[doc = $doc])+
        pub fn $name(&self) -> impl Iterator<Item = (&Entry, &$type)> {
            self.public(Kind::$kind).filter_map(|entry| match &entry.data {
                Data::$kind(data) => Some((entry, &**data)),
                _ => None,
            })
        }
    )* };
}

impl Catalogue {
    /// Joins a studio's entries; where `studio.yaml` could not be read, under a stand-in for it.
    pub fn of(entries: Entries, view: View) -> Self {
        let studio = entries.studio.unwrap_or_else(Studio::stand_in);
        let (broken, broken_kinds) = (entries.broken, entries.broken_kinds);
        let entries: Vec<Entry> = entries.entries.into_values().collect();
        let (places, back_links) = rayon::join(
            || entries.iter().enumerate().map(|(place, entry)| (entry.id.clone(), place)).collect(),
            || links::back_links(&entries, |entry| visible::seen(entry, view)),
        );
        let (titles, secrets) = (OnceLock::new(), OnceLock::new());
        Self { studio, view, entries, broken, broken_kinds, places, back_links, titles, secrets }
    }

    /// Returns an entry.
    pub fn entry(&self, id: &Reference) -> Option<&Entry> {
        asked::note(|| Question::Entry(id.clone()));
        self.place(id).and_then(|place| self.entries.get(place))
    }

    /// Returns where an entry stands among all.
    pub fn place(&self, id: &Reference) -> Option<usize> {
        self.places.get(id).copied()
    }

    /// Returns how much of an entry whoever looks may see.
    pub fn visibility(&self, entry: &Entry) -> Visibility {
        visible::seen(entry, self.view)
    }

    /// Returns how much of an entry readers may see, whoever looks.
    pub fn for_readers(&self, entry: &Entry) -> Visibility {
        visible::visibility(entry, self.view.today)
    }

    /// Returns how much of an entry readers may see on another day.
    pub fn for_readers_on(&self, entry: &Entry, day: Date) -> Visibility {
        visible::visibility(entry, day)
    }

    /// Returns an entry if it has a public page.
    pub fn public_entry(&self, id: &Reference) -> Option<&Entry> {
        self.entry(id).filter(|entry| self.visibility(entry) == Visibility::Public)
    }

    /// Returns the public entries of a kind, by key.
    pub fn public(&self, kind: Kind) -> impl Iterator<Item = &Entry> {
        self.of_kind(kind).iter().filter(|entry| self.visibility(entry) == Visibility::Public)
    }

    /// Returns every entry of a kind, by key, public or not.
    pub fn of_kind(&self, kind: Kind) -> &[Entry] {
        asked::note(|| Question::Kind(kind));
        let start = self.entries.partition_point(|entry| entry.id.kind < kind);
        let rest = self.entries.get(start..).unwrap_or_default();
        rest.get(..rest.partition_point(|entry| entry.id.kind == kind)).unwrap_or_default()
    }

    of_kind! {
        /// Returns the designs that can be had or could be, by key.
        patterns: Pattern = Pattern;
        /// Returns the public projects, by key.
        projects: Project = Project;
        /// Returns the public notes, by key.
        notes: Note = Note;
        /// Returns the yarns, by key.
        yarns: Yarn = Yarn;
        /// Returns the techniques, by key.
        techniques: Technique = Technique;
        /// Returns the people, by key.
        people: Person = Person;
        /// Returns the plain pages, by key.
        pages: Page = Page;
    }

    /// Returns the designs that readers may know of and cannot have yet, by key.
    pub fn on_the_way(&self) -> impl Iterator<Item = (&Entry, &Pattern)> {
        self.of_kind(Kind::Pattern).iter().filter_map(|entry| match &entry.data {
            Data::Pattern(pattern) if self.for_readers(entry) == Visibility::OnTheWay => Some((entry, &**pattern)),
            _ => None,
        })
    }

    /// Returns the public entries that refer to one.
    pub fn linked_from(&self, id: &Reference) -> &[BackLink] {
        asked::note(|| Question::LinkedFrom(id.clone()));
        self.back_links.get(id).map_or(&[], Vec::as_slice)
    }

    /// Returns whether there is an entry, well read or not.
    fn exists(&self, id: &Reference) -> bool {
        self.entry(id).is_some() || self.broken.contains(id) || self.broken_kinds.contains(&id.kind)
    }

    /// Returns the keys of a kind, also of entries that could not be read.
    fn keys(&self, kind: Kind) -> impl Iterator<Item = &str> {
        let broken = self.broken.iter().filter(move |id| id.kind == kind);
        self.of_kind(kind).iter().map(|entry| &entry.id).chain(broken).map(|id| id.key.as_str())
    }

    /// Returns a pattern, public or not.
    pub fn pattern(&self, id: &Reference) -> Option<&Pattern> {
        self.entry(id)?.pattern()
    }

    /// Returns a yarn that readers may know of: nothing is worked out on the site from any other.
    pub fn public_yarn(&self, id: &Reference) -> Option<&Yarn> {
        self.public_entry(id)?.yarn()
    }

    /// Returns a yarn, public or not.
    pub fn yarn(&self, id: &Reference) -> Option<&Yarn> {
        self.entry(id)?.yarn()
    }
}
