//! How much fabric there is.

use super::FabricLength;
use super::rounding;
use super::scale::scale;

/// How many square nanometres one square micrometre has.
const SQUARE_NANOMETRES: i128 = 1_000_000;

/// An area of fabric, in whole square micrometres.
///
/// 0.01 cm² is a million of them and 1,000 m² are 10¹⁵, so both fit, up to nine square kilometres; square nanometres,
/// which would match [`FabricLength`], would end at nine square metres. A square inch is a whole number of them at
/// either [`Inch`](super::Inch). It is never below nothing when made of lengths.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Area(i64);

scale!(Area);

impl Area {
    /// An area of so many square micrometres.
    #[must_use]
    pub const fn from_square_micrometres(square_micrometres: i64) -> Self {
        Self(square_micrometres)
    }

    /// How many square micrometres it has.
    #[must_use]
    pub const fn square_micrometres(self) -> i64 {
        self.0
    }

    /// Width × height, rounded near.
    ///
    /// `None` where a side is below nothing or the area does not fit.
    #[must_use]
    pub fn of(width: FabricLength, height: FabricLength) -> Option<Self> {
        Self::share_of(width, height, 1, 1)
    }

    /// Width × height × `above / below`, rounded near, once: for shapes that are a share of a rectangle.
    ///
    /// `None` where a side is below nothing, the divisor is zero or the area does not fit.
    #[must_use]
    pub fn share_of(width: FabricLength, height: FabricLength, above: i64, below: i64) -> Option<Self> {
        if width < FabricLength::ZERO || height < FabricLength::ZERO {
            return None;
        }
        // Two 64-bit numbers always fit in 128 bits; a third need not.
        let whole = i128::from(width.nanometres()) * i128::from(height.nanometres());
        let share = whole.checked_mul(i128::from(above))?;
        let by = i128::from(below) * SQUARE_NANOMETRES;
        i64::try_from(rounding::divide_near(share, by)?).ok().map(Self)
    }
}
