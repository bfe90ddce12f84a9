//! Yarn to buy: whole skeins from needs and put-up.

use crate::entry::{Pattern, Yarn, YarnUse};
use crate::measure::rounding::{divide_near, divide_up};
use crate::measure::{Count, Mass, Percent, PutUp, YarnLength};

/// How many skeins to buy.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Skeins {
    /// Whole skeins.
    pub whole: i64,
    /// The same unrounded, in thousandths rounded near, halves away from zero.
    pub exact: Count,
}

/// Returns the skeins to buy: ⌈needs × (1 + margin) ÷ length of one⌉, worked in whole micrometres, so that an exact fit
/// is not rounded up. Nothing if one skein has no length or the numbers are beyond all measure.
///
/// Whole skeins are bought, so it rounds up always; common practice, though one shop was seen to round up only from
/// three tenths.
pub fn skeins(needs: YarnLength, margin: Percent, put_up: PutUp) -> Option<Skeins> {
    let (numerator, denominator) = margin.on_top()?;
    let wanted = i128::from(needs.micrometres()).checked_mul(i128::from(numerator))?;
    let one = i128::from(put_up.length.micrometres()).checked_mul(i128::from(denominator))?;
    if one <= 0 || wanted < 0 {
        return None;
    }
    let whole = i64::try_from(divide_up(wanted, one)?).ok()?;
    let exact = i64::try_from(divide_near(wanted.checked_mul(1000)?, one)?).ok()?;
    Some(Skeins { whole, exact: Count::from_thousandths(exact) })
}

/// What one yarn of a pattern takes in one size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Requirement {
    /// The length, without margin.
    pub length: YarnLength,
    /// The same as mass, where the put-up is known.
    pub mass: Option<Mass>,
    /// The skeins to buy, margin included, where the put-up is known.
    pub skeins: Option<Skeins>,
}

/// Returns what one yarn of a pattern takes, for each size; nothing for a size that does not use it or is not known.
pub fn requirements(
    pattern: &Pattern,
    use_of: &YarnUse,
    yarn: Option<&Yarn>,
    margin: Percent,
) -> Vec<Option<Requirement>> {
    let put_up = yarn.and_then(|yarn| yarn.put_up);
    (0..pattern.size_count())
        .map(|size| {
            let length = *use_of.needs.as_ref()?.values.get(size)?;
            let mass = put_up.and_then(|put_up| put_up.mass_of(length));
            let skeins = put_up.and_then(|put_up| skeins(length, margin, put_up));
            Some(Requirement { length, mass, skeins })
        })
        .collect()
}

/// Returns the length of all yarns together for each size of a pattern; nothing where any part of it is not known.
pub fn total(pattern: &Pattern) -> Vec<Option<YarnLength>> {
    let known = !pattern.yarn.is_empty() && pattern.yarn.iter().all(|use_of| use_of.needs.is_some());
    let of_size = |size: usize| {
        let lengths = pattern.yarn.iter().filter_map(|use_of| use_of.needs.as_ref()?.values.get(size));
        // A size that uses none of the yarns has no total either.
        let sum = lengths
            .copied()
            .try_fold(None, |sum: Option<i64>, length| sum.unwrap_or(0).checked_add(length.micrometres()).map(Some));
        sum.flatten().map(YarnLength::from_micrometres)
    };
    (0..pattern.size_count()).map(|size| if known { of_size(size) } else { None }).collect()
}
