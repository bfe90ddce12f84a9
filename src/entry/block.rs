//! Blocks of a text that are computed: which there are, and what each is about.

use super::kind::Key;
use crate::finding::{Code, Severity};

/// A block that does not say which pattern it is about.
pub static BAD_BLOCK: Code = Code {
    name: "bad-block",
    severity: Severity::Error,
    what: "A `needs` or `sizes` block holds something else than a pattern's key.",
    why: "The table would be missing, and what is written would stand on the page as it is.",
    bad: "```needs\nthe yoke, please\n```",
    good: "```needs\npattern: saltmarsh-yoke\n```",
};

/// What a block shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Block {
    /// The yarn a pattern takes.
    Needs,
    /// The measurements of a pattern's sizes.
    Sizes,
    /// A chart, drawn and in words.
    Chart,
    /// A chart as knitted fabric.
    Swatch,
    /// Written rows.
    Rows,
}

impl Block {
    /// Returns the block of an info string, the text behind the fence; none for any other code.
    pub fn of(info: &str) -> Option<Self> {
        match info.split_whitespace().next()? {
            "needs" => Some(Self::Needs),
            "sizes" => Some(Self::Sizes),
            "chart" => Some(Self::Chart),
            "swatch" => Some(Self::Swatch),
            "rows" => Some(Self::Rows),
            _ => None,
        }
    }

    /// Returns the word behind the fence.
    pub fn word(self) -> &'static str {
        match self {
            Self::Needs => "needs",
            Self::Sizes => "sizes",
            Self::Chart => "chart",
            Self::Swatch => "swatch",
            Self::Rows => "rows",
        }
    }
}

/// Which pattern a block is about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Subject {
    /// The one it stands in.
    Own,
    /// The one of this key.
    Pattern(Key),
    /// Its text does not say.
    Unclear,
}

/// Reads which pattern a block is about: `pattern: KEY`, or nothing, which is the pattern it stands in.
pub fn subject(text: &str) -> Subject {
    let text = text.trim();
    if text.is_empty() {
        return Subject::Own;
    }
    let key = text.strip_prefix("pattern:").map(str::trim).and_then(Key::new);
    key.map_or(Subject::Unclear, Subject::Pattern)
}
