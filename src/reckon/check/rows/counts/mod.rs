//! Stitches that do not come out: each fault as a finding, with the figures of the sizes that have it.

mod codes;
mod words;

pub use codes::{
    CHANGE_UNLIKE, COUNT_MISSED, COUNT_UNKNOWN, COUNT_UNLIKE, HELD_UNLIKE, MARKER_MISSING, MARKER_UNLIKE, PARTS_UNLIKE,
    REPEAT_LEFT_OVER, ROW_LEFT_OVER, ROW_SHORT, ROWS_AGAIN, STITCH_BOUND_OFF, TAIL_UNLIKE, TIMES_UNCLEAR,
};

use super::named::nameless;
use super::{Blocks, place};
use crate::entry::{Entry, Pattern};
use crate::finding::{Code, Finding};
use crate::notation::rows::{Fault, Followed, Told};
use crate::reckon::check::place::in_sizes;
use crate::reckon::check::rows::{ROW_SIDES, ROW_UNKNOWN};
use crate::source::Place;
use words::{bound_off, count_so, help, words};

/// Words what does not come out.
pub fn check(entry: &Entry, pattern: &Pattern, blocks: &Blocks, followed: &Followed, findings: &mut Vec<Finding>) {
    findings.extend(followed.told.iter().filter_map(|told| match told.sizes.first()? {
        (_, Fault::NoName) => Some(nameless(entry, pattern, blocks, place(entry, told.block, &told.at), told)),
        _ => finding(entry, pattern, told),
    }));
}

fn finding(entry: &Entry, pattern: &Pattern, told: &Told) -> Option<Finding> {
    let (_, first) = told.sizes.first()?;
    // Sizes with the same figures are told of together.
    let mut groups: Vec<(String, Vec<usize>)> = Vec::new();
    for (size, fault) in &told.sizes {
        let words = words(entry, *fault);
        match groups.iter_mut().find(|(said, _)| *said == words) {
            Some((_, sizes)) => sizes.push(*size),
            None => groups.push((words, vec![*size])),
        }
    }
    let one = groups.len() == 1;
    let all = one && told.sizes.len() == pattern.size_count();
    let said: Vec<String> = groups
        .iter()
        .map(|(words, sizes)| if all { words.clone() } else { format!("{words}{}", in_sizes(pattern, sizes)) })
        .collect();
    let at = place(entry, told.block, &told.at);
    let of_chart = *first == Fault::Unknown && entry.prose.stretch(&at.span).to_lowercase().contains("chart");
    let help = if of_chart { UNKNOWN_CHART.to_owned() } else { help(*first) };
    Some(Finding::new(code(*first), at, said.join("; ")).help(help))
}

/// What to do where a chart is worked that nobody can count.
const UNKNOWN_CHART: &str = "name a chart of this text and its rows, `rows 1–8 of chart lamps`, or give the count in square brackets: `[84 sts]`";

fn code(fault: Fault) -> &'static Code {
    match fault {
        Fault::LeftOver { .. } => &ROW_LEFT_OVER,
        Fault::Short { .. } => &ROW_SHORT,
        Fault::RepeatLeft { .. } | Fault::RepeatEmpty => &REPEAT_LEFT_OVER,
        Fault::InChart { what, .. } => code(what.alone()),
        Fault::Tail { .. } => &TAIL_UNLIKE,
        Fault::Stated { .. } => &COUNT_UNLIKE,
        Fault::Section { .. } => &PARTS_UNLIKE,
        Fault::Change { .. } => &CHANGE_UNLIKE,
        Fault::InAll { .. } => &TIMES_UNCLEAR,
        Fault::BoundOff { .. } => &STITCH_BOUND_OFF,
        Fault::Again { .. } => &ROWS_AGAIN,
        Fault::Missed { .. } => &COUNT_MISSED,
        Fault::NoRow { .. }
        | Fault::NoChartRow { .. }
        | Fault::NoName
        | Fault::Circle { .. }
        | Fault::NamedCircle
        | Fault::FewRows { .. } => &ROW_UNKNOWN,
        Fault::Held { .. } => &HELD_UNLIKE,
        Fault::MarkerAhead { .. } | Fault::MarkerPassed { .. } | Fault::MarkerNear { .. } => &MARKER_UNLIKE,
        Fault::NoMarker => &MARKER_MISSING,
        Fault::Side { .. } | Fault::Ends { .. } => &ROW_SIDES,
        Fault::Unknown => &COUNT_UNKNOWN,
    }
}

/// Words that a row is right only where the stitch left from binding off is counted so.
pub(super) fn left_from_binding_off(at: Place, counted: bool, fits: &str) -> Finding {
    Finding::new(&STITCH_BOUND_OFF, at, bound_off(fits, counted)).help(count_so(counted))
}
