//! Why a text is not the quantity asked for.

use std::fmt;
use std::ops::Range;

pub use super::problem::Problem;

/// Why a text is not the quantity asked for, and where.
///
/// `at` is a byte range in the text that was read, always on character boundaries and never past its
/// end. The words come from `Display` (lower case, no full stop), the advice from [`Misread::help`].
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Misread {
    /// The guilty bytes of the text.
    pub at: Range<usize>,
    /// What is wrong, as data.
    pub problem: Problem,
}

impl Misread {
    /// A problem at a byte range.
    #[must_use]
    pub const fn new(at: Range<usize>, problem: Problem) -> Self {
        Self { at, problem }
    }

    /// A problem with the whole text, spaces at its ends left out.
    #[must_use]
    pub fn whole(text: &str, problem: Problem) -> Self {
        Self { at: trimmed_range(text), problem }
    }

    /// What to write instead, as a concrete piece of advice.
    #[must_use]
    pub fn help(&self) -> String {
        self.problem.help()
    }
}

impl fmt::Display for Misread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.problem.fmt(f)
    }
}

impl std::error::Error for Misread {}

/// The byte range of a text without the spaces at its ends.
pub(super) fn trimmed_range(text: &str) -> Range<usize> {
    let start = text.len() - text.trim_start().len();
    start..start + text.trim().len()
}
