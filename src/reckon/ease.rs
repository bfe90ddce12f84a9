//! How much larger or smaller a finished thing is than the body it is for.

use crate::measure::rounding::divide_near;
use crate::measure::{FabricLength, Percent, SizeRun};

/// The least and the most ease of a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Range {
    /// The least, which may be below nothing.
    pub least: FabricLength,
    /// The most.
    pub most: FabricLength,
}

/// Returns the ease: finished − body, exact, below nothing where it is to stretch. Nothing where it does not fit.
///
/// A garment of 42 in on a chest of 34 in has 8 in (Farm and Fiber Knits).
pub fn ease(body: FabricLength, finished: FabricLength) -> Option<FabricLength> {
    finished.checked_sub(body)
}

/// Returns the ease as a share of the body: (finished − body) ÷ body, rounded near to hundredths of a percent.
///
/// A sock of 8.1 in on an ankle of 9 in has −10 % (Wabi Sabi). Nothing for a body of nothing or below, or where it does
/// not fit.
pub fn percent(body: FabricLength, finished: FabricLength) -> Option<Percent> {
    if body <= FabricLength::ZERO {
        return None;
    }
    let more = i128::from(finished.nanometres()) - i128::from(body.nanometres());
    let hundredths = divide_near(more * 10_000, body.nanometres().into())?;
    i64::try_from(hundredths).ok().map(Percent::from_hundredths)
}

/// Returns the ease of each size; a size that lacks a measurement has none.
///
/// A lone measurement serves every size of the other run. Nothing where the runs are for different numbers of sizes or
/// an ease does not fit.
pub fn by_size(to_fit: &SizeRun<FabricLength>, finished: &SizeRun<FabricLength>) -> Option<SizeRun<FabricLength>> {
    let sizes = to_fit.len().max(finished.len());
    if !to_fit.serves(sizes) || !finished.serves(sizes) {
        return None;
    }
    let eases = (0..sizes).map(|size| match (to_fit.get(size), finished.get(size)) {
        (Some(body), Some(finished)) => ease(*body, *finished).map(Some),
        _ => Some(None),
    });
    Some(SizeRun::from_values(eases.collect::<Option<Vec<_>>>()?))
}

/// Returns the least and the most ease of a run; nothing where no size has any.
pub fn range(eases: &SizeRun<FabricLength>) -> Option<Range> {
    let least = eases.present().min()?;
    let most = eases.present().max()?;
    Some(Range { least: *least, most: *most })
}

/// Returns whether some sizes are larger than the body and others smaller, which is seldom meant.
pub fn changes_sign(eases: &SizeRun<FabricLength>) -> bool {
    range(eases).is_some_and(|range| range.least < FabricLength::ZERO && range.most > FabricLength::ZERO)
}

/// Returns the size, counted from 0, whose finished measurement is nearest to body + ease; of two as near the larger,
/// of equal ones the first.
///
/// A bust of 40 in with 2 in of ease takes the size of 42 in. Nothing where no size has a measurement or the sum does
/// not fit.
pub fn which_size(body: FabricLength, wanted: FabricLength, finished: &SizeRun<FabricLength>) -> Option<usize> {
    let aim = body.checked_add(wanted)?;
    let sizes = finished.iter().enumerate().filter_map(|(size, length)| length.map(|length| (size, *length)));
    let apart = |length: FabricLength| length.nanometres().abs_diff(aim.nanometres());
    sizes.min_by_key(|(_, length)| (apart(*length), std::cmp::Reverse(*length))).map(|(size, _)| size)
}
