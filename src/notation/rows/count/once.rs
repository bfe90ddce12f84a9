//! What a stretch of a row takes and leaves whatever the needle holds.

use super::super::lexicon::Counts;
use super::super::tree::{How, Item, Reach};
use super::work::Work;
use super::{Hand, Needle, Reading};

/// Returns what a stretch of a row takes and leaves whatever the needle holds; nothing where that cannot be said.
pub fn once(items: &[Item], size: usize, reading: Reading) -> Option<Counts> {
    let mut sum = Counts::default();
    for item in items {
        let counts = match item {
            Item::Work { takes, leaves, times, .. } => times_over(Counts::new(*takes, *leaves), times.of(size)),
            Item::Repeat { items, how, .. } => {
                let times = match how {
                    How::Times(number) => number.of(size),
                    How::More(number) => number.of(size) + 1,
                    How::Again(number) => number.of(size) + i64::from(reading == Reading::More),
                    How::Until(_) => return None,
                };
                times_over(once(items, size, reading)?, times)
            }
            Item::Mark { .. } | Item::Colour { .. } => Counts::default(),
            Item::Hold { number: None, .. } => return None,
            Item::Hold { number: Some(number), .. } => times_over(Counts::new(1, 0), number.of(size)),
            Item::FromHold { number, .. } => times_over(Counts::new(0, 1), number.of(size)),
            Item::Piece { number, .. } => times_over(Counts::new(1, 1), number.as_ref()?.of(size)),
            Item::Into { items, of, .. } => Counts::new(of.of(size), once(items, size, reading)?.leaves),
            Item::Chart { chart, rows, reach, .. } => super::chart::fixed(chart, rows, reach, size)?,
            Item::Even { .. }
            | Item::Turn { .. }
            | Item::SameAs { .. }
            | Item::SameNamed { .. }
            | Item::Unsaid { .. } => return None,
        };
        sum = plus(sum, counts);
    }
    Some(sum)
}

/// Returns what a stretch with turns takes and leaves, as a bobble does that is worked back and forth; nothing where it ends
/// on the other side or cannot be counted.
pub fn net(items: &[Item]) -> Option<Counts> {
    const MANY: i64 = 1_000_000;
    let mut work = Work::begin(&Hand { needle: Needle::of(MANY), ..Hand::default() }, 0, Reading::More);
    work.items(items);
    let known =
        !work.broken && work.lost.is_none() && !work.absorbs && work.floats == 0 && work.turns.is_multiple_of(2);
    let (total, here) = (work.total?, work.here?);
    let remain = here.saturating_sub(work.taken);
    let all = total.saturating_add(work.left).saturating_sub(work.taken);
    known.then(|| Counts::new(MANY.saturating_sub(remain), all.saturating_sub(remain)))
}

pub(super) fn times_over(counts: Counts, times: i64) -> Counts {
    Counts::new(counts.takes.saturating_mul(times), counts.leaves.saturating_mul(times))
}

fn plus(one: Counts, two: Counts) -> Counts {
    Counts::new(one.takes.saturating_add(two.takes), one.leaves.saturating_add(two.leaves))
}

/// How many parts a stretch has, those inside of others with them.
pub(super) fn parts(items: &[Item]) -> u32 {
    let each = items.iter().map(|item| match item {
        Item::Repeat { items, .. } | Item::Into { items, .. } => parts(items).saturating_add(1),
        _ => 1,
    });
    each.fold(0, u32::saturating_add)
}

/// In how many places a stretch binds off so many stitches.
pub(in crate::notation) fn binds(items: &[Item]) -> i64 {
    let each = items.iter().map(|item| match item {
        Item::Work { binds: true, .. } => 1,
        Item::Repeat { items, .. } => binds(items),
        _ => 0,
    });
    each.sum()
}

/// Whether a stretch that goes by markers leaves as many as it takes.
pub(super) fn is_neutral(items: &[Item], size: usize, reading: Reading) -> bool {
    let mut sum = 0_i64;
    for item in items {
        match item {
            Item::Even { binds: false, .. } => {}
            Item::Chart { chart, rows, reach: Reach::Until(_), .. } if super::chart::is_neutral(chart, rows) => {}
            other => match once(std::slice::from_ref(other), size, reading) {
                Some(counts) => sum = sum.saturating_add(counts.leaves.saturating_sub(counts.takes)),
                None => return false,
            },
        }
    }
    sum == 0
}
