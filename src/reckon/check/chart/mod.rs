//! Checks of charts and swatches.

pub mod alike;
pub mod colours;
pub mod counts;
pub mod float;
pub mod names;
pub mod share;
pub mod unused;
pub mod wrong_side;

use crate::catalogue::Catalogue;
use crate::entry::{Entry, Placing};
use crate::finding::Finding;
use crate::source::Place;
use std::ops::Range;

/// Runs every check over the charts and swatches of one entry's text.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let charts = entry.prose.all_charts();
    for chart in &charts {
        alike::check(catalogue, entry, chart, findings);
        colours::check(entry, chart, placing, findings);
        counts::check(entry, chart, findings);
        float::check(catalogue, entry, chart, findings);
        share::check(catalogue, entry, chart, placing, findings);
        unused::check(entry, chart, findings);
        wrong_side::check(entry, chart, findings);
    }
    names::check(entry, findings);
}

/// Returns a place in the entry's file.
fn place(entry: &Entry, span: Range<usize>) -> Place {
    Place { file: entry.origin.file.clone(), span }
}
