//! What a stitch is called, whichever of its spellings is written.

use crate::standards::{abbreviations, chart_symbols};

/// A stitch by its name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Name {
    /// One name for all spellings.
    name: String,
    /// What is shown of it.
    shown: String,
    /// Whether only a pattern's own key says what it is.
    own: bool,
    takes: i64,
    leaves: i64,
}

/// Other words for the stitches of charts (common practice).
const SAME: [(&str, &str); 11] = [
    ("knit", "k"),
    ("purl", "p"),
    ("yfwd", "yo"),
    ("yf", "yo"),
    ("yon", "yo"),
    ("yrn", "yo"),
    ("yfrn", "yo"),
    ("cdd", "s2kp2"),
    ("s2kp", "s2kp2"),
    ("sssk", "sk2p"),
    ("kyok", "work 3 into 1"),
];

impl Name {
    /// Returns the name of a word, with the stitches it takes and leaves.
    pub(super) fn of(word: &str, takes: i64, leaves: i64) -> Self {
        let lower = word.trim().to_lowercase();
        let plain = SAME.iter().find(|(other, _)| *other == lower).map_or(lower.as_str(), |(_, word)| *word);
        let known = chart_symbols::find(plain);
        let (name, shown) = match &known {
            Some(stitch) => (stitch.name.to_lowercase(), stitch.short.clone()),
            None => {
                let first = abbreviations::find(plain).and_then(|row| row.forms.first());
                (first.map_or_else(|| plain.to_owned(), |form| form.to_lowercase()), word.trim().to_owned())
            }
        };
        Self { name, shown, own: false, takes, leaves }
    }

    /// Returns the name of a word of the pattern's own.
    pub(super) fn own(word: &str, takes: i64, leaves: i64) -> Self {
        let own = chart_symbols::find(word).is_none();
        Self { own, ..Self::of(word, takes, leaves) }
    }

    /// Returns the name of several stitches worked into one or more.
    pub(super) fn into(takes: i64, leaves: i64) -> Self {
        Self::of(&format!("work {leaves} into {takes}"), takes, leaves)
    }

    /// Returns a name for a stitch that may be worked anyhow, with what is shown of it.
    pub(super) fn some(word: &str) -> Self {
        Self { name: word.to_owned(), shown: word.to_owned(), own: true, takes: 1, leaves: 1 }
    }

    /// Returns a word for it.
    pub(super) fn show(&self) -> &str {
        &self.shown
    }

    /// Returns whether a chart's stitch is that of the words.
    pub(super) fn is(&self, words: &Self) -> bool {
        if self.own || words.own {
            return (self.takes, self.leaves) == (words.takes, words.leaves);
        }
        if self.name == words.name {
            return true;
        }
        // Without a side m1 leans left, and a slip has its yarn on the wrong side (common practice).
        let either = |one: &str, other: &str| {
            (self.name == one && words.name == other) || (self.name == other && words.name == one)
        };
        either("m1 knitwise", "m1 left")
            || (words.name == "sl1" && self.name.starts_with("slip purlwise"))
            || (self.name == "sl1" && words.name.starts_with("slip purlwise"))
    }
}
