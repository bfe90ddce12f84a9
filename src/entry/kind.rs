//! The kinds of entries, and references to them.

use std::borrow::Cow;
use std::fmt;
use std::sync::Arc;

/// What an entry is; the folder or register it stands in says it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// A design, from sketch to published.
    Pattern,
    /// A thing on the needles or finished.
    Project,
    /// A weekly note.
    Note,
    /// A yarn.
    Yarn,
    /// A how-to.
    Technique,
    /// A maker, mill, shop, event or other designer.
    Person,
    /// A plain page.
    Page,
}

impl Kind {
    /// Every kind, in the order lists show them.
    pub const ALL: [Self; 7] =
        [Self::Pattern, Self::Project, Self::Note, Self::Yarn, Self::Technique, Self::Person, Self::Page];

    /// Returns the word that names the kind in a reference.
    pub fn word(self) -> &'static str {
        match self {
            Self::Pattern => "pattern",
            Self::Project => "project",
            Self::Note => "note",
            Self::Yarn => "yarn",
            Self::Technique => "technique",
            Self::Person => "person",
            Self::Page => "page",
        }
    }

    /// Returns the name of the kind's folder; its register is the same with `.yaml`.
    pub fn folder(self) -> &'static str {
        match self {
            Self::Pattern => "patterns",
            Self::Project => "projects",
            Self::Note => "journal",
            Self::Yarn => "yarns",
            Self::Technique => "techniques",
            Self::Person => "people",
            Self::Page => "pages",
        }
    }

    /// Returns the kind with this word, as in a reference.
    pub fn of_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.word() == word)
    }

    /// Returns the kind with this folder.
    pub fn of_folder(folder: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.folder() == folder)
    }
}

/// An entry's name within its kind: lower-case ASCII letters, digits and hyphens. Cheap to clone.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Key(Arc<str>);

impl Key {
    /// Returns the key, or nothing if the text holds anything but `a`–`z`, `0`–`9` and `-`, or is empty.
    pub fn new(text: &str) -> Option<Self> {
        let good = !text.is_empty() && text.bytes().all(|byte| matches!(byte, b'a'..=b'z' | b'0'..=b'9' | b'-'));
        good.then(|| Self(Arc::from(text)))
    }

    /// Returns the key nearest to any text: accents dropped, other characters made hyphens.
    pub fn like(text: &str) -> String {
        slug(text)
    }

    /// Returns the key as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// Returns a text as lower-case ASCII words joined by hyphens, empty if it has no letter or digit.
pub fn slug(text: &str) -> String {
    let plain = if text.is_ascii() { Cow::Borrowed(text) } else { Cow::Owned(deunicode::deunicode(text)) };
    let mut out = String::with_capacity(plain.len());
    for c in plain.chars() {
        if c.is_ascii_alphanumeric() {
            out.push(c.to_ascii_lowercase());
        } else if c != '\'' && !out.ends_with('-') && !out.is_empty() {
            out.push('-');
        }
    }
    out.trim_end_matches('-').to_owned()
}

impl fmt::Display for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl fmt::Debug for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Debug::fmt(&*self.0, f)
    }
}

/// One entry, named across the studio: `pattern:saltmarsh-yoke`.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Reference {
    /// The kind.
    pub kind: Kind,
    /// The name within the kind.
    pub key: Key,
}

impl Reference {
    /// Splits a reference, or returns nothing if the text does not begin with a kind and a colon.
    ///
    /// The second part is returned as it stands, since a wrong key is a mistake to report and no other kind of text.
    pub fn split(text: &str) -> Option<(Kind, &str)> {
        let (word, key) = text.split_once(':')?;
        Some((Kind::of_word(word)?, key))
    }
}

impl fmt::Display for Reference {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}", self.kind.word(), self.key)
    }
}
