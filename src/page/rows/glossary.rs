//! The abbreviations of a text, each with its meaning.

use super::meaning::{self, Meaning};
use crate::entry::Pattern;
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::ops::Range;

/// An abbreviation that is used, with its meaning.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct AbbreviationView {
    /// An id for the note that explains it, unique on the page.
    pub id: String,
    /// How it is written: `k2tog`.
    pub short: String,
    /// How it is said, for those who hear the page: `K 2 tog`.
    pub said: String,
    /// What it means: `knit two together`.
    pub meaning: String,
}

/// An abbreviation of a text: the bytes it stands in, and which of the glossary's it is.
pub type Use = (Range<usize>, usize);

/// Gathers the abbreviations of texts: the pattern's own first, then the trade's.
#[derive(Clone, Debug)]
pub struct Glossary<'a> {
    /// What ids begin with.
    prefix: String,
    own: Vec<(&'a str, &'a str)>,
    /// The abbreviations met so far, in the order of their first use.
    pub met: Vec<AbbreviationView>,
    /// What is known of words: which of `met`, and how many of their bytes.
    known: BTreeMap<String, Option<(usize, usize)>>,
}

/// Whether a character belongs to a word of rows.
fn of_word(c: char) -> bool {
    c.is_alphanumeric() || matches!(c, '&' | '\'' | '’')
}

impl<'a> Glossary<'a> {
    /// Returns an empty glossary; `prefix` keeps its ids apart from those of others on the page.
    pub fn new(prefix: &str, pattern: Option<&'a Pattern>) -> Self {
        let own = pattern.map(|pattern| pattern.abbreviations.0.as_slice()).unwrap_or_default();
        let mut own: Vec<(&str, &str)> = own.iter().map(|(name, one)| (name.as_str(), one.what.as_str())).collect();
        // The longest that fits is meant.
        own.sort_by_key(|(name, _)| std::cmp::Reverse(name.len()));
        Self { prefix: prefix.to_owned(), own, met: Vec::new(), known: BTreeMap::new() }
    }

    /// Returns the abbreviations of a text in its order.
    pub fn uses(&mut self, text: &str) -> Vec<Use> {
        let mut uses = Vec::new();
        let mut at = 0;
        while let Some(rest) = text.get(at..).filter(|rest| !rest.is_empty()) {
            let Some(start) = rest.find(of_word) else { break };
            at += start;
            let rest = text.get(at..).unwrap_or_default();
            let long = rest.find(|c| !of_word(c) && c != '-').unwrap_or(rest.len());
            match self.at(rest, long) {
                Some((which, length)) => {
                    uses.push((at..at + length, which));
                    at += length;
                    // The number behind the letters of `k12` is no word.
                    at += text.get(at..).unwrap_or_default().bytes().take_while(u8::is_ascii_digit).count();
                }
                None => at += rest.find(|c| !of_word(c)).unwrap_or(rest.len()),
            }
        }
        uses
    }

    /// Returns all that were met, by their letters.
    pub fn sorted(&self) -> Vec<AbbreviationView> {
        let mut all = self.met.clone();
        all.sort_by_cached_key(|one| (one.short.to_lowercase(), one.short.clone()));
        all
    }

    /// What stands at the beginning of a text, and how long it is; `long` is how far its first word goes, hyphens included.
    fn at(&mut self, text: &str, long: usize) -> Option<(usize, usize)> {
        if let Some((name, what)) = self.own.iter().copied().find(|(name, _)| begins(text, name)) {
            return Some((self.meet((name.to_owned(), what.to_owned())), name.len()));
        }
        if text.starts_with(|c: char| c.is_ascii_digit()) {
            let (length, meaning) = meaning::crossed(text)?;
            return Some((self.meet(meaning), length));
        }
        let short = text.find(|c| !of_word(c)).unwrap_or(text.len());
        // Two words before one, and `rev St st` is three.
        let after = |from: usize| {
            let rest = text.get(from..)?.strip_prefix(' ')?;
            Some(from + 1 + rest.find(|c| !of_word(c)).unwrap_or(rest.len())).filter(|end| *end > from + 1)
        };
        let two = after(short);
        let three = two.and_then(after);
        [three, two, Some(long), Some(short)].into_iter().flatten().find_map(|end| self.word(text.get(..end)?))
    }

    fn word(&mut self, word: &str) -> Option<(usize, usize)> {
        if let Some(known) = self.known.get(word) {
            return *known;
        }
        let found = meaning::of_word(word).map(|meaning| (word.len(), meaning)).or_else(|| meaning::counted(word));
        let found = found.map(|(length, meaning)| (self.meet(meaning), length));
        self.known.insert(word.to_owned(), found);
        found
    }

    fn meet(&mut self, (short, meaning): Meaning) -> usize {
        // Large and small letters aside, as they are in rows.
        if let Some(known) = self.met.iter().position(|one| one.short.eq_ignore_ascii_case(&short)) {
            return known;
        }
        let mut id = self.prefix.clone();
        // The same however it is written here; any other sign is written as its number.
        for c in short.to_lowercase().chars() {
            let _ = if c.is_ascii_alphanumeric() { write!(id, "{c}") } else { write!(id, "-{:x}", u32::from(c)) };
        }
        self.met.push(AbbreviationView { id, said: meaning::said(&short), short, meaning });
        self.met.len() - 1
    }
}

/// Whether a text begins with a word of her own, capitals aside.
fn begins(text: &str, word: &str) -> bool {
    let same = text.get(..word.len()).is_some_and(|begin| begin.eq_ignore_ascii_case(word));
    same && !word.is_empty() && !text.get(word.len()..).is_some_and(|rest| rest.starts_with(of_word))
}
