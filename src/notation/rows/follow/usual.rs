//! A row in whichever reading of its words fits; one that is not the usual is told of.

use super::super::count::{Hand, Needle, Outcome, Reading, once, work};
use super::super::fault::Fault;
use super::super::tree::{How, Item, Number, Span};

/// Works a row in whichever reading fits; one that is not the usual is told of.
pub(super) fn outcome(items: &[Item], hand: &Hand, size: usize) -> Outcome {
    let usual = work(items, hand, size, Reading::More);
    if usual.faults.is_empty() {
        return usual;
    }
    if let Some((times, at)) = again(items) {
        let mut other = work(items, hand, size, Reading::InAll);
        if other.faults.is_empty() {
            other.faults.push((Fault::InAll { times: times.of(size) }, at));
            return other;
        }
    }
    if let (Some(&(Fault::LeftOver { left, .. }, _)), true) = (usual.faults.first(), usual.bound > 0)
        && left == usual.bound
    {
        // In some houses the stitch that is left from binding off is the first of the next ones.
        let at = usual.faults.first().map_or(0..0, |(_, at)| at.clone());
        let total = hand.needle.total.zip(once_change(items, size)).map(|(total, change)| total.saturating_add(change));
        let after = total.map_or(Needle::UNKNOWN, Needle::of);
        let faults = vec![(Fault::BoundOff { stitches: left }, at)];
        return Outcome { after, change: once_change(items, size), faults, ..usual };
    }
    usual
}

fn once_change(items: &[Item], size: usize) -> Option<i64> {
    once(items, size, Reading::More).map(|counts| counts.leaves.saturating_sub(counts.takes))
}

/// The first repeat whose times may be meant in two ways.
fn again(items: &[Item]) -> Option<(&Number, Span)> {
    items.iter().find_map(|item| match item {
        Item::Repeat { how: How::Again(number), .. } => Some((number, number.at.clone())),
        Item::Repeat { items, .. } => again(items),
        _ => None,
    })
}

/// Whether a fault keeps a row from being worked as it stands.
pub(super) fn unfit(fault: Fault) -> bool {
    !matches!(fault, Fault::InAll { .. } | Fault::BoundOff { .. })
}
