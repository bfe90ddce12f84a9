//! Places in files: byte ranges, and the lines and columns people read.

use super::FilePath;
use std::ops::Range;

/// A stretch of one file, as a byte range of its text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Place {
    /// The file.
    pub file: FilePath,
    /// The bytes meant; an empty range means a point, `0..0` the file as a whole.
    pub span: Range<usize>,
}

impl Place {
    /// Returns the place that stands for a whole file.
    pub fn whole(file: &FilePath) -> Self {
        Self { file: file.clone(), span: 0..0 }
    }
}

/// A line and a column, both counted from one; the column counts characters, not bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Position {
    /// The line, from one.
    pub line: usize,
    /// The character within the line, from one.
    pub column: usize,
}

impl Position {
    /// Returns the position of a byte offset; one past the end counts as the end.
    pub fn of(text: &str, offset: usize) -> Self {
        let before = text.get(..offset).unwrap_or(text);
        let line_start = before.rfind('\n').map_or(0, |at| at + 1);
        Self {
            line: before.bytes().filter(|byte| *byte == b'\n').count() + 1,
            column: before.get(line_start..).unwrap_or_default().chars().count() + 1,
        }
    }
}
