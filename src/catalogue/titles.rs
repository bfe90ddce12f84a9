//! Titles of entries and private names as they stand in texts, found in one pass over a text.

use super::Catalogue;
use super::asked::{self, Question};
use super::words::{Words, runs};
use crate::entry::{Entry, Kind, Prose, Reference};
use std::collections::HashMap;
use std::ops::Range;
use xxhash_rust::xxh3::Xxh3DefaultBuilder;

/// The kinds whose titles are looked for. Titles of notes and plain pages are everyday words.
const KINDS: [Kind; 5] = [Kind::Pattern, Kind::Project, Kind::Yarn, Kind::Technique, Kind::Person];

/// A title or a private name that stands in a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named<'a> {
    /// The entries that are called so, or are for somebody of that name, by kind and key: mostly one.
    pub entries: &'a [Reference],
    /// The title or name as the entry has it.
    pub title: &'a str,
    /// Whether the text has large and small letters where the title has them.
    pub is_exact: bool,
    /// Where, in bytes of the text's file; of a private name in bytes of the text.
    pub at: Range<usize>,
}

/// The titles of a studio by their first words. Only asked, never walked through, so its order cannot show anywhere.
#[derive(Clone, Debug)]
pub(super) struct Titles {
    titles: Vec<Title>,
    /// The titles that begin with a word, in small letters.
    by_word: HashMap<Box<str>, Vec<usize>, Xxh3DefaultBuilder>,
    /// A bit for each beginning that some title has: most words of a text are told apart by it alone.
    beginnings: Box<[u64]>,
    gaps: Gaps,
}

/// What may stand between two words of a title.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Gaps {
    /// Spaces alone.
    Spaces,
    /// A hyphen is as good as a space: a household is mostly written like a key.
    SpacesAndHyphens,
}

impl Gaps {
    fn holds(self, c: char) -> bool {
        c.is_whitespace() || (self == Self::SpacesAndHyphens && c == '-')
    }
}

#[derive(Clone, Debug)]
struct Title {
    text: Box<str>,
    /// The bytes before its first letter or digit.
    before: usize,
    /// Whether it is of one word, which must be written as it is: "brioche" is a word too.
    is_one_word: bool,
    entries: Vec<Reference>,
}

/// The number of bits for beginnings, a power of two.
const BITS: usize = 1 << 16;

/// Returns whether an entry's title is looked for.
pub(super) fn is_titled(entry: &Entry) -> bool {
    KINDS.contains(&entry.id.kind)
}

/// Returns the names that an entry keeps from readers.
pub(super) fn secrets_of(entry: &Entry) -> Vec<&str> {
    entry.project().map(|project| project.secret_names().collect()).unwrap_or_default()
}

impl Titles {
    fn of<'a>(called: impl Iterator<Item = (&'a str, &'a Reference)>, gaps: Gaps) -> Self {
        let beginnings = vec![0; BITS / 64].into_boxed_slice();
        let mut all = Self { titles: Vec::new(), by_word: HashMap::default(), beginnings, gaps };
        for (title, id) in called {
            all.add(title, id);
        }
        all
    }

    fn add(&mut self, title: &str, id: &Reference) {
        let Some(first) = runs(title).next() else { return };
        let word = title.get(first.clone()).unwrap_or_default();
        let bit = beginning(word);
        if let Some(bits) = self.beginnings.get_mut(bit / 64) {
            *bits |= 1 << (bit % 64);
        }
        let same_word = self.by_word.entry(word.to_lowercase().into_boxed_str()).or_default();
        let titles = &mut self.titles;
        let known = same_word.iter().find(|at| titles.get(**at).is_some_and(|known| *known.text == *title)).copied();
        match known.and_then(|at| titles.get_mut(at)) {
            Some(known) => known.entries.push(id.clone()),
            None => {
                same_word.push(titles.len());
                titles.push(Title {
                    text: Box::from(title),
                    before: first.start,
                    is_one_word: !title.contains(|c| self.gaps.holds(c)),
                    entries: vec![id.clone()],
                });
            }
        }
    }

    /// Finds the titles in a text that begins at some byte of its file; of several at one place the longest.
    fn find<'a>(&'a self, plain: &str, begins: usize, found: &mut Vec<Named<'a>>) {
        let mut folded = String::new();
        let mut past = 0;
        for word in runs(plain) {
            let of = plain.get(word.clone()).unwrap_or_default();
            let bit = beginning(of);
            let is_known = self.beginnings.get(bit / 64).is_some_and(|bits| bits & (1 << (bit % 64)) != 0);
            if !is_known || word.start < past {
                continue;
            }
            folded.clear();
            folded.extend(of.chars().flat_map(char::to_lowercase));
            let Some(begin_so) = self.by_word.get(folded.as_str()) else { continue };
            let candidates = begin_so.iter().filter_map(|at| {
                let title = self.titles.get(*at)?;
                let start = word.start.checked_sub(title.before)?;
                let (length, is_exact) = stands(&title.text, plain.get(start..)?, self.gaps)?;
                (is_exact || !title.is_one_word).then_some((title, start..start + length, is_exact))
            });
            if let Some((title, at, is_exact)) = candidates.max_by_key(|(_, at, is_exact)| (at.len(), *is_exact)) {
                past = at.end;
                let at = at.start + begins..at.end + begins;
                found.push(Named { entries: &title.entries, title: &title.text, is_exact, at });
            }
        }
    }
}

impl Catalogue {
    /// Returns the titles of entries that stand in a text as plain words, outside of links, headings, pictures and code, in
    /// the order of the text. A title of one word must be written as it is; of several, large and small letters are alike.
    pub fn named(&self, prose: &Prose) -> Vec<Named<'_>> {
        let mut found = Vec::new();
        if prose.plain.is_empty() {
            return found;
        }
        let stretch = |at: &Range<usize>| prose.file().get(at.clone()).unwrap_or_default();
        asked::note(|| Question::Titles(Words::of(prose.plain.iter().map(stretch))));
        let titles = self.titles.get_or_init(|| {
            let titled = self.entries.iter().filter(|entry| is_titled(entry));
            Titles::of(titled.map(|entry| (entry.common.title.trim(), &entry.id)), Gaps::Spaces)
        });
        for at in &prose.plain {
            titles.find(stretch(at), at.start, &mut found);
        }
        found
    }

    /// Returns the private names of all projects that stand in some texts, each with the number of its text, from 0.
    ///
    /// Only checks may ask, since their findings are for the designer's eyes.
    pub fn secrets_in(&self, texts: &[&str]) -> Vec<(usize, Named<'_>)> {
        asked::note(|| Question::Secrets(Words::of(texts.iter().copied())));
        let secrets = self.secrets.get_or_init(|| {
            let each =
                self.entries.iter().flat_map(|entry| secrets_of(entry).into_iter().map(|name| (name, &entry.id)));
            Titles::of(each, Gaps::SpacesAndHyphens)
        });
        let mut all = Vec::new();
        if secrets.titles.is_empty() {
            return all;
        }
        for (number, text) in texts.iter().enumerate() {
            let mut found = Vec::new();
            secrets.find(text, 0, &mut found);
            all.extend(found.into_iter().map(|named| (number, named)));
        }
        all
    }
}

/// Returns how many bytes of a text a title takes at its beginning, and whether letter by letter; a space of the title is any
/// space of the text. Nothing where the text has something else, or goes on with a letter.
fn stands(title: &str, text: &str, gaps: Gaps) -> Option<(usize, bool)> {
    let mut is_exact = true;
    let mut rest = text.char_indices().peekable();
    let mut is_space = false;
    for c in title.chars() {
        if gaps.holds(c) {
            is_space = true;
            continue;
        }
        if std::mem::take(&mut is_space) {
            rest.next_if(|(_, other)| gaps.holds(*other))?;
            while rest.next_if(|(_, other)| gaps.holds(*other)).is_some() {}
        }
        let (_, other) = rest.next()?;
        if other != c {
            is_exact = false;
            if !other.to_lowercase().eq(c.to_lowercase()) {
                return None;
            }
        }
    }
    match rest.peek() {
        Some((_, next)) if next.is_alphanumeric() => None,
        Some((end, _)) => Some((*end, is_exact)),
        None => Some((text.len(), is_exact)),
    }
}

/// Returns the bit of a word's beginning: its first bytes, large and small letters alike, and its length.
fn beginning(word: &str) -> usize {
    let bytes = word.as_bytes().iter().take(3).filter(|byte| byte.is_ascii());
    let folded = bytes.fold(0_usize, |all, byte| all * 37 + usize::from(byte.to_ascii_lowercase()));
    (folded * 61 + word.chars().count()) % BITS
}
