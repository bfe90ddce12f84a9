//! A fenced block's text, and where in the file each of its bytes stands.

use std::ops::Range;

/// The text between the fences, without what a quotation or a list puts before its lines.
#[derive(Clone, Debug)]
pub struct Fenced {
    /// Which of the computed blocks of its text it is, from 1.
    pub number: usize,
    /// The text.
    pub text: String,
    /// The whole block with its fences, in bytes of the file.
    pub at: Range<usize>,
    /// Where each piece of the text begins, in it and in the file.
    pieces: Vec<(usize, usize)>,
}

impl Fenced {
    /// Returns the beginning of a block.
    pub fn new(number: usize, at: Range<usize>) -> Self {
        Self { number, text: String::new(), at, pieces: Vec::new() }
    }

    /// Adds the next piece of the text, which begins at a byte of the file.
    pub fn push(&mut self, piece: &str, at: usize) {
        self.pieces.push((self.text.len(), at));
        self.text.push_str(piece);
    }

    /// Returns where a stretch of the text stands in the file.
    pub fn place(&self, within: &Range<usize>) -> Range<usize> {
        let byte = |offset: usize| {
            let after = self.pieces.partition_point(|(start, _)| *start <= offset);
            let piece = after.checked_sub(1).and_then(|last| self.pieces.get(last));
            piece.map_or(self.at.start, |(start, file)| file.saturating_add(offset.saturating_sub(*start)))
        };
        // The end is that of the last byte inside, since a later piece may begin far off.
        let start = byte(within.start).min(self.at.end);
        let end = if within.is_empty() { start } else { byte(within.end.saturating_sub(1)).saturating_add(1) };
        start..end.clamp(start, self.at.end.max(start))
    }

    /// Returns where the line with the opening fence stands in the file.
    pub fn opening(&self) -> Range<usize> {
        let first = self.pieces.first().map_or(self.at.end, |(_, file)| *file);
        self.at.start..first.saturating_sub(1).max(self.at.start)
    }
}
