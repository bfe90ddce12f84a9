//! The stitch counts that a stitch pattern allows.

use crate::measure::Count;

/// Whether a number of stitches can be halved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Parity {
    /// It can.
    Even,
    /// One is left over.
    Odd,
}

impl Parity {
    /// Returns the parity of a whole number.
    pub fn of(whole: i64) -> Self {
        if whole % 2 == 0 { Self::Even } else { Self::Odd }
    }
}

/// A multiple of so many stitches plus so many, as stitch patterns are given; for rows alike.
///
/// Every count that fits has the repeat at least once: a multiple of 6 plus 2 is 8, 14, 20 and so on (Read Knitting
/// Patterns).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Multiple {
    /// The stitches of one repeat.
    pub of: i64,
    /// The stitches beside the repeats, edge stitches and seams included; below nothing for "minus 1".
    pub plus: i64,
    /// Which parity is wanted besides, where it matters: for shaping in pairs, cuff and sleeve have the same.
    pub parity: Option<Parity>,
}

/// The counts that fit on either side of what is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Neighbours {
    /// The largest that is not above; nothing where even one repeat is too many.
    pub below: Option<i64>,
    /// The smallest that is not below; the same as below where what is wanted fits.
    pub above: i64,
    /// The nearer of the two; the larger where both are as near.
    pub nearest: i64,
}

impl Multiple {
    /// Every whole number from 1.
    pub const ANY: Self = Self { of: 1, plus: 0, parity: None };

    /// Returns the stitches of so many repeats: of × repeats + plus, whatever the parity. Nothing where it does not fit.
    ///
    /// A multiple of 6 plus 1 with 3 edge stitches at each side is of 6 plus 7: 5 repeats are 37, 7 are 49 (Mary
    /// Gildersleeve).
    pub fn stitches(self, repeats: i64) -> Option<i64> {
        self.of.checked_mul(repeats)?.checked_add(self.plus)
    }

    /// Returns whether a whole number of stitches fits.
    pub fn fits(self, stitches: i64) -> bool {
        self.least_and_step().is_some_and(|(least, step)| {
            let beyond = i128::from(stitches) - least;
            beyond >= 0 && beyond % step == 0
        })
    }

    /// Returns the counts that fit below and above; nothing where none fits at all or one is beyond all measure.
    pub fn around(self, wanted: Count) -> Option<Neighbours> {
        self.around_fraction(wanted.thousandths().into(), 1000)
    }

    /// Returns the same for `above / below` stitches, not rounded beforehand.
    pub(super) fn around_fraction(self, above: i128, below: i128) -> Option<Neighbours> {
        let (least, step) = self.least_and_step()?;
        let whole = above.checked_div_euclid(below)?;
        if below < 0 {
            return None;
        }
        let fits = |count: i128| i64::try_from(count).ok();
        if whole < least {
            return Some(Neighbours { below: None, above: fits(least)?, nearest: fits(least)? });
        }
        let lower = least + (whole - least) / step * step;
        let wanted = above.checked_mul(2)?;
        let upper = if lower.checked_mul(below)? == above { lower } else { lower.checked_add(step)? };
        let half_way = lower.checked_add(upper)?.checked_mul(below)?;
        let nearest = if wanted >= half_way { upper } else { lower };
        Some(Neighbours { below: Some(fits(lower)?), above: fits(upper)?, nearest: fits(nearest)? })
    }

    /// Returns the smallest count that fits and how far the next is from it; nothing where none has the parity.
    fn least_and_step(self) -> Option<(i128, i128)> {
        let (of, plus) = (i128::from(self.of), i128::from(self.plus));
        if of < 1 {
            return None;
        }
        let once = of + plus;
        // A multiple minus something may need several repeats before there is a stitch at all.
        let least = if once >= 1 { once } else { once + (of - once) / of * of };
        match self.parity {
            None => Some((least, of)),
            // An even repeat never changes the parity; an odd one changes it each time.
            Some(parity) if of % 2 == 0 => (parity_of(least) == parity).then_some((least, of)),
            Some(parity) => Some((if parity_of(least) == parity { least } else { least + of }, 2 * of)),
        }
    }
}

fn parity_of(whole: i128) -> Parity {
    if whole % 2 == 0 { Parity::Even } else { Parity::Odd }
}
