//! Titles of entries as they stand in texts, found in one pass over a text.

use super::Catalogue;
use super::asked::{self, Question};
use super::words::{Words, runs};
use crate::entry::{Entry, Kind, Prose, Reference};
use std::collections::HashMap;
use std::ops::Range;
use xxhash_rust::xxh3::Xxh3DefaultBuilder;

/// The kinds whose titles are looked for. Titles of notes and plain pages are everyday words.
const KINDS: [Kind; 5] = [Kind::Pattern, Kind::Project, Kind::Yarn, Kind::Technique, Kind::Person];

/// A title that stands in a text as plain words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named<'a> {
    /// The entries that are called so, by kind and key: mostly one.
    pub entries: &'a [Reference],
    /// The title as the entry has it.
    pub title: &'a str,
    /// Whether the text has large and small letters where the title has them.
    pub is_exact: bool,
    /// Where, in bytes of the text's file.
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

impl Titles {
    fn of(entries: &[Entry]) -> Self {
        let mut all =
            Self { titles: Vec::new(), by_word: HashMap::default(), beginnings: vec![0; BITS / 64].into_boxed_slice() };
        for entry in entries.iter().filter(|entry| is_titled(entry)) {
            all.add(entry.common.title.trim(), &entry.id);
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
                    is_one_word: !title.contains(char::is_whitespace),
                    entries: vec![id.clone()],
                });
            }
        }
    }

    /// Finds the titles in a stretch of a file's text; of several at one place the longest.
    fn find<'a>(&'a self, text: &str, stretch: &Range<usize>, found: &mut Vec<Named<'a>>) {
        let plain = text.get(stretch.clone()).unwrap_or_default();
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
                let (length, is_exact) = stands(&title.text, plain.get(start..)?)?;
                (is_exact || !title.is_one_word).then_some((title, start..start + length, is_exact))
            });
            if let Some((title, at, is_exact)) = candidates.max_by_key(|(_, at, is_exact)| (at.len(), *is_exact)) {
                past = at.end;
                let at = at.start + stretch.start..at.end + stretch.start;
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
        asked::note(|| Question::Titles(Words::of(prose.file(), &prose.plain)));
        let titles = self.titles.get_or_init(|| Titles::of(&self.entries));
        for stretch in &prose.plain {
            titles.find(prose.file(), stretch, &mut found);
        }
        found
    }
}

/// Returns how many bytes of a text a title takes at its beginning, and whether letter by letter; a space of the title is any
/// space of the text. Nothing where the text has something else, or goes on with a letter.
fn stands(title: &str, text: &str) -> Option<(usize, bool)> {
    let mut is_exact = true;
    let mut rest = text.char_indices().peekable();
    let mut is_space = false;
    for c in title.chars() {
        if c.is_whitespace() {
            is_space = true;
            continue;
        }
        if std::mem::take(&mut is_space) {
            rest.next_if(|(_, other)| other.is_whitespace())?;
            while rest.next_if(|(_, other)| other.is_whitespace()).is_some() {}
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
