//! Written rows: whether they can be read, and whether their stitches come out in every size.

mod abbreviations;
mod charted;
mod colours;
mod counts;
mod idle;
mod named;
mod needles;
mod order;
mod reading;
mod sizes;
mod worked;

pub use abbreviations::{ABBREVIATION_UNCOUNTED, ABBREVIATION_UNUSED};
pub use charted::{WORDS_CHARTLESS, WORDS_UNLIKE};
pub use colours::COLOUR_UNKNOWN;
pub use counts::{
    CHANGE_UNLIKE, COUNT_MISSED, COUNT_UNKNOWN, COUNT_UNLIKE, HELD_UNLIKE, MARKER_MISSING, MARKER_UNLIKE, PARTS_UNLIKE,
    REPEAT_LEFT_OVER, ROW_LEFT_OVER, ROW_SHORT, ROWS_AGAIN, STITCH_BOUND_OFF, TAIL_UNLIKE, TIMES_UNCLEAR,
};
pub use idle::{CABLE_NEEDLE, NEEDLE_IDLE};
pub use named::ROW_UNKNOWN;
pub use needles::NEEDLE_UNLISTED;
pub use order::{ROW_NUMBERS, ROW_SIDES};
pub use reading::{ABBREVIATION_UNKNOWN, BRACKETS_UNCLEAR, ROW_RUN_LENGTH, ROW_UNREAD};
pub use sizes::SIZE_IDLE;
pub use worked::{Blocks, blocks};

use crate::catalogue::Catalogue;
use crate::entry::{Data, Entry, Placing};
use crate::finding::Finding;
use crate::notation::rows::{Span, follow};
use crate::source::Place;

/// Finds what is wrong in the rows of a pattern.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    if entry.prose.rows.is_empty() && pattern.abbreviations.0.is_empty() {
        return;
    }
    let blocks = blocks(catalogue, entry, pattern);
    abbreviations::check(entry, pattern, &blocks, placing, findings);
    reading::check(entry, pattern, &blocks, findings);
    sizes::check(entry, pattern, &blocks, placing, findings);
    order::check(entry, pattern, &blocks, findings);
    named::check(entry, &blocks, findings);
    needles::check(entry, pattern, &blocks, findings);
    idle::check(entry, pattern, &blocks, placing, findings);
    colours::check(entry, pattern, &blocks, placing, findings);
    charted::check(entry, pattern, &blocks, findings);
    counts::check(entry, pattern, &blocks, &follow(&blocks.written, pattern.size_count()), findings);
}

/// Returns the place of a stretch of a block.
fn place(entry: &Entry, block: usize, at: &Span) -> Place {
    let span = entry.prose.rows.get(block).map_or_else(|| at.clone(), |block| block.place(at));
    Place { file: entry.origin.file.clone(), span }
}
