//! The sums of stitches and rows, for the terminal and as JSON.

mod fitting;
mod json;
mod shape;
mod spread;

pub use fitting::{Fitting, FittingSize};
pub use shape::{Shaped, ShapedSize};
pub use spread::{Spread, SpreadSize};

use crate::measure::{Inch, SizeNames, System};

/// What is counted: across the fabric or up it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Across {
    /// Stitches, whose length is a width.
    Stitches,
    /// Rows or rounds.
    Rows,
}

impl Across {
    /// Returns the word for many.
    pub const fn many(self) -> &'static str {
        match self {
            Self::Stitches => "stitches",
            Self::Rows => "rows",
        }
    }
}

/// For which sizes a sum is made, and how measurements are shown.
#[derive(Clone, Debug, Default)]
pub struct Frame {
    /// The names of the sizes; none where they have no names.
    pub names: Option<SizeNames>,
    /// The system that comes first.
    pub system: System,
    /// The inch of fabric.
    pub inch: Inch,
}

impl Frame {
    /// Returns the name of a size, or its number from 1.
    pub fn size(&self, size: usize) -> String {
        let name = self.names.as_ref().and_then(|names| names.get(size));
        name.map_or_else(|| (size + 1).to_string(), str::to_owned)
    }

    /// Returns what a size is called in JSON: nothing where a sum is for no size in particular.
    fn named(&self, size: usize, sizes: usize) -> Option<String> {
        (sizes > 1).then(|| self.size(size))
    }

    /// Returns lines of words for people, each under the name of its size where there are several.
    fn lines(&self, head: &str, sizes: impl ExactSizeIterator<Item = Option<String>>) -> String {
        let several = sizes.len() > 1;
        let width = (0..sizes.len()).map(|size| self.size(size).chars().count()).max().unwrap_or(0);
        let mut out = format!("{head}\n");
        for (size, words) in sizes.enumerate() {
            let words = words.unwrap_or_else(|| "not in this size".to_owned());
            let line = if several { format!("  {:<width$}  {words}", self.size(size)) } else { format!("  {words}") };
            out.push_str(&line);
            out.push('\n');
        }
        out
    }
}
