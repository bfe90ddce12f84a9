//! A dash in a run of sizes means that a size skips what stands there.

use super::super::count::{Needle, Outcome};
use super::super::fault::Fault;
use super::super::tree::{How, Item, Number};

/// What a row comes to in a size that has dashes in it and would leave stitches over: nothing where it is all dashes, else
/// nobody knows. Nothing is returned where the row is as any other.
pub(super) fn skipped(items: &[Item], outcome: &Outcome, needle: Needle, size: usize) -> Option<Outcome> {
    let left = outcome.faults.iter().any(|(fault, _)| matches!(fault, Fault::LeftOver { .. }));
    if !left || !items.iter().any(|item| has_dash(item, size)) {
        return None;
    }
    let all = items.iter().all(|item| is_skipped(item, size));
    Some(if all { Outcome { after: needle, change: Some(0), ..Outcome::default() } } else { Outcome::default() })
}

fn is_dash(number: &Number, size: usize) -> bool {
    !number.values.is_one() && size < number.values.len() && number.values.get(size).is_none()
}

/// Whether a dash stands anywhere in it.
fn has_dash(item: &Item, size: usize) -> bool {
    match item {
        Item::Repeat { items, how, .. } => {
            times(how).is_some_and(|number| is_dash(number, size)) || items.iter().any(|item| has_dash(item, size))
        }
        Item::Work { times, .. } => is_dash(times, size),
        _ => false,
    }
}

/// Whether nothing of it is worked.
fn is_skipped(item: &Item, size: usize) -> bool {
    match item {
        Item::Repeat { how, .. } => times(how).is_some_and(|number| is_dash(number, size)),
        Item::Work { times, .. } => is_dash(times, size),
        _ => false,
    }
}

fn times(how: &How) -> Option<&Number> {
    match how {
        How::Times(number) | How::More(number) | How::Again(number) => Some(number),
        How::Until(_) => None,
    }
}
