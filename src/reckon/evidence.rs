//! From what a sample or a swatch took to what another size takes.
//!
//! Evidence is a mass on a scale. What follows from it is rounded up to the small unit, a nanogram or a micrometre, so
//! that it is never less than the evidence says; a margin is a matter of its own.

use crate::measure::rounding::{divide_near, divide_up};
use crate::measure::{Area, Count, Mass, Value};

/// The rows a long-tail cast-on is worth: it takes as much yarn as two (Tossing the Stash).
pub const LONG_TAIL_CAST_ON: Count = Count::from_thousandths(2000);

/// Returns what was used: start − left, exact. Nothing where more is left than there was, or less than nothing.
///
/// Weigh before casting on and after weaving in, on one scale.
pub fn used(start: Mass, left: Mass) -> Option<Mass> {
    if left < Mass::ZERO {
        return None;
    }
    start.checked_sub(left).filter(|used| *used >= Mass::ZERO)
}

/// Returns what another area of the same fabric takes: amount × to ÷ from, rounded up. An amount is a mass or a length
/// of yarn.
///
/// 250 yd for 728 sq in are 343.4 yd for 1,000 sq in (Colourful Designs). Nothing where an area or the amount is below
/// nothing, the first area is nothing, or the result does not fit.
pub fn scaled<T: Value>(amount: T, from: Area, to: Area) -> Option<T> {
    in_proportion(&amount, from.square_micrometres(), to.square_micrometres())
}

/// Returns what another number of the same stitches takes: amount × to ÷ from, rounded up. An amount is a mass or a
/// length of yarn.
///
/// 70 g for 10,000 stitches are 915.6 g for 130,800 (Get Knitting); at 45 stitches a yard 25,200 are 560 yd (Knit n
/// More). Nothing where a number or the amount is below nothing, the first number is nothing, or it does not fit.
pub fn by_stitches<T: Value>(amount: T, from: Count, to: Count) -> Option<T> {
    in_proportion(&amount, from.thousandths(), to.thousandths())
}

fn in_proportion<T: Value>(amount: &T, from: i64, to: i64) -> Option<T> {
    if amount.small() < 0 || from <= 0 || to < 0 {
        return None;
    }
    let product = i128::from(amount.small()) * i128::from(to);
    i64::try_from(divide_up(product, from.into())?).ok().map(T::from_small)
}

/// A swatch, measured and weighed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Swatch {
    /// What it weighs.
    pub mass: Mass,
    /// How large it is.
    pub area: Area,
}

impl Swatch {
    /// Returns what an area of its fabric takes: mass × area ÷ the swatch's, rounded up; nothing as for [`scaled`].
    ///
    /// 8 × 8 in that weigh 10 g make 80 sq in 12.5 g (Kephren Knitting Studio).
    pub fn mass_of(self, area: Area) -> Option<Mass> {
        scaled(self.mass, self.area, area)
    }

    /// Returns the fabric that so much yarn makes, rounded down, as what is surely there; nothing where a part is below
    /// nothing, the swatch weighs nothing or the area does not fit.
    pub fn area_of(self, mass: Mass) -> Option<Area> {
        if mass < Mass::ZERO || self.mass <= Mass::ZERO || self.area < Area::ZERO {
            return None;
        }
        self.area.times_down(mass.nanograms(), self.mass.nanograms())
    }
}

/// The stitches of a swatch, its edges counted as rows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SwatchStitches {
    /// The stitches of a row.
    pub stitches: Count,
    /// The rows between the edges.
    pub rows: Count,
    /// The rows the cast-on is worth; [`LONG_TAIL_CAST_ON`], or nothing for stitches that were held.
    pub cast_on: Count,
    /// The rows the cast-off is worth: one if counted by its stitches, about three if by its yarn (Maddie Harvey
    /// Designs).
    pub cast_off: Count,
}

impl SwatchStitches {
    /// Returns the stitches worked: stitches × (rows + cast-on + cast-off), rounded near to thousandths.
    ///
    /// 20 × 20 with a long-tail cast-on and a cast-off of one row are 400 + 40 + 20 = 460 (Tossing the Stash). Nothing
    /// where a number is below nothing or the result does not fit.
    pub fn worked(self) -> Option<Count> {
        let all = [self.stitches, self.rows, self.cast_on, self.cast_off];
        if all.iter().any(|count| *count < Count::ZERO) {
            return None;
        }
        let rows = Count::sum([self.rows, self.cast_on, self.cast_off])?;
        let product = i128::from(self.stitches.thousandths()) * i128::from(rows.thousandths());
        i64::try_from(divide_near(product, 1000)?).ok().map(Count::from_thousandths)
    }
}

/// Returns a total in parts by the stitches of each, such as the yarn of one colour by size or of one piece by motif;
/// the parts sum exactly to the total.
///
/// Each part is total × stitches ÷ Σ stitches, rounded down to the small unit; the units that are left go one each to
/// the parts that lost most, the earlier first. Nothing where the total or a share is below nothing, or all shares are
/// nothing.
pub fn split<T: Value>(total: T, shares: &[Count]) -> Option<Vec<T>> {
    let whole: i128 = shares.iter().map(|share| i128::from(share.thousandths())).sum();
    if total.small() < 0 || whole <= 0 || shares.iter().any(|share| *share < Count::ZERO) {
        return None;
    }
    let mut parts = Vec::with_capacity(shares.len());
    for (place, share) in shares.iter().enumerate() {
        let product = i128::from(total.small()) * i128::from(share.thousandths());
        parts.push((place, i64::try_from(product / whole).ok()?, product % whole));
    }
    let given: i128 = parts.iter().map(|(_, part, _)| i128::from(*part)).sum();
    let left = usize::try_from(i128::from(total.small()) - given).ok()?;
    // A stable order, so that of parts which lost the same the earlier comes first.
    parts.sort_by_key(|(_, _, lost)| std::cmp::Reverse(*lost));
    for (_, part, _) in parts.iter_mut().take(left) {
        *part = part.checked_add(1)?;
    }
    parts.sort_by_key(|(place, _, _)| *place);
    Some(parts.into_iter().map(|(_, part, _)| T::from_small(part)).collect())
}
