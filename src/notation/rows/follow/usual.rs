//! A row in whichever reading of its words fits; one that is not the usual is told of.

use super::super::count::{Hand, Outcome, Reading, binds, work};
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
    if binds(items) > 0 {
        // Houses differ in whether the stitch that is on the right needle after binding off is the first of the next ones.
        let hand = Hand { apart: !hand.apart, ..hand.clone() };
        let mut other = work(items, &hand, size, Reading::More);
        if other.faults.is_empty() {
            let at = usual.faults.first().map_or(0..0, |(_, at)| at.clone());
            other.faults.push((Fault::BoundOff { counted: !hand.apart }, at));
            return other;
        }
    }
    usual
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
