//! The arithmetic that all quantities share.

/// Gives a whole-number quantity its checked arithmetic.
///
/// Every operation answers `None` where the result does not fit or the divisor is zero; the products
/// are worked out in 128 bits, so only the result can be too large.
macro_rules! scale {
    ($quantity:ident) => {
        impl $quantity {
            /// Nothing.
            pub const ZERO: Self = Self(0);

            /// Whether it is nothing.
            #[must_use]
            pub const fn is_zero(self) -> bool {
                self.0 == 0
            }

            /// The sum; `None` where it does not fit.
            #[must_use]
            pub const fn checked_add(self, other: Self) -> Option<Self> {
                match self.0.checked_add(other.0) {
                    Some(sum) => Some(Self(sum)),
                    None => None,
                }
            }

            /// The difference, which may be below nothing; `None` where it does not fit.
            #[must_use]
            pub const fn checked_sub(self, other: Self) -> Option<Self> {
                match self.0.checked_sub(other.0) {
                    Some(difference) => Some(Self(difference)),
                    None => None,
                }
            }

            /// The sum of any number of values; `None` where it does not fit.
            #[must_use]
            pub fn sum(values: impl IntoIterator<Item = Self>) -> Option<Self> {
                values.into_iter().try_fold(Self::ZERO, Self::checked_add)
            }

            /// Times `above / below`, rounded up: for what must suffice.
            #[must_use]
            pub fn times_up(self, above: i64, below: i64) -> Option<Self> {
                self.times(above, below, super::rounding::divide_up)
            }

            /// Times `above / below`, rounded near, halves away from zero.
            #[must_use]
            pub fn times_near(self, above: i64, below: i64) -> Option<Self> {
                self.times(above, below, super::rounding::divide_near)
            }

            /// Times `above / below`, rounded down: for what is surely there.
            #[must_use]
            pub fn times_down(self, above: i64, below: i64) -> Option<Self> {
                self.times(above, below, super::rounding::divide_down)
            }

            fn times(self, above: i64, below: i64, divide: fn(i128, i128) -> Option<i128>) -> Option<Self> {
                // Two 64-bit numbers always fit in 128 bits.
                let product = i128::from(self.0) * i128::from(above);
                i64::try_from(divide(product, i128::from(below))?).ok().map(Self)
            }

            /// How many times a portion is used up, the last one perhaps in part.
            ///
            /// An exact fit is not rounded up. `None` for a portion of nothing.
            #[must_use]
            pub fn portions_up(self, portion: Self) -> Option<i64> {
                i64::try_from(super::rounding::divide_up(self.0.into(), portion.0.into())?).ok()
            }
        }
    };
}

pub(super) use scale;
