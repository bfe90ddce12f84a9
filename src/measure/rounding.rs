//! Every rounding, by name.
//!
//! "Near" goes to the nearest, and a half goes away from zero: 2.5 becomes 3 and -2.5 becomes -3.
//! That is what the trade does by hand. Nothing else in the crate rounds.

use super::system::Inch;

/// Divides and rounds towards plus infinity; for what must suffice.
///
/// `None` where the divisor is zero.
#[must_use]
pub const fn divide_up(number: i128, by: i128) -> Option<i128> {
    match (number.checked_div_euclid(by), number.checked_rem_euclid(by)) {
        // Euclid's remainder is never negative, so for a negative divisor the quotient is already the upper one.
        (Some(quotient), Some(remainder)) => {
            if remainder != 0 && by > 0 {
                quotient.checked_add(1)
            } else {
                Some(quotient)
            }
        }
        _ => None,
    }
}

/// Divides and rounds towards minus infinity; for what is surely there.
///
/// `None` where the divisor is zero.
#[must_use]
pub const fn divide_down(number: i128, by: i128) -> Option<i128> {
    match (number.checked_div_euclid(by), number.checked_rem_euclid(by)) {
        (Some(quotient), Some(remainder)) => {
            if remainder != 0 && by < 0 {
                quotient.checked_sub(1)
            } else {
                Some(quotient)
            }
        }
        _ => None,
    }
}

/// Divides and rounds to the nearest, halves away from zero.
///
/// `None` where the divisor is zero.
#[must_use]
pub const fn divide_near(number: i128, by: i128) -> Option<i128> {
    match (number.checked_div(by), number.checked_rem(by)) {
        (Some(quotient), Some(remainder)) => {
            let rest = remainder.unsigned_abs();
            // At least half the divisor, without doubling, which could overflow.
            if rest != 0 && rest >= by.unsigned_abs() - rest {
                if (number < 0) == (by < 0) { quotient.checked_add(1) } else { quotient.checked_sub(1) }
            } else {
                Some(quotient)
            }
        }
        _ => None,
    }
}

/// Yarn length to whole metres.
///
/// In micrometres. Halves away from zero. Ball bands and patterns print whole metres.
#[must_use]
pub fn yarn_to_whole_metres(micrometres: i64) -> i64 {
    near(micrometres, 1_000_000)
}

/// Yarn length to whole yards of 0.9144 m.
///
/// In micrometres. Halves away from zero. Ball bands and patterns print whole yards.
#[must_use]
pub fn yarn_to_whole_yards(micrometres: i64) -> i64 {
    near(micrometres, 914_400)
}

/// Mass to whole grams.
///
/// In nanograms. Halves away from zero. Kitchen scales read to one gram.
#[must_use]
pub fn mass_to_whole_grams(nanograms: i64) -> i64 {
    near(nanograms, 1_000_000_000)
}

/// Mass to hundredths of an ounce of 28.349523125 g.
///
/// In nanograms. Halves away from zero. 50 g is 1.76 oz, as ball bands print it.
#[must_use]
pub fn mass_to_hundredths_of_ounces(nanograms: i64) -> i64 {
    wide_near(i128::from(nanograms) * 100, 28_349_523_125)
}

/// Fabric length to half centimetres, as a number of halves.
///
/// In nanometres. Halves away from zero. A tape measure can be read to half a centimetre, which is why
/// patterns print centimetres in halves.
#[must_use]
pub fn fabric_to_half_centimetres(nanometres: i64) -> i64 {
    near(nanometres, 5_000_000)
}

/// Fabric length to quarter inches, as a number of quarters.
///
/// In nanometres, at the studio's inch. Halves away from zero. Patterns print inches in quarters.
#[must_use]
pub fn fabric_to_quarter_inches(nanometres: i64, inch: Inch) -> i64 {
    wide_near(i128::from(nanometres) * 4, i128::from(inch.nanometres()))
}

fn near(number: i64, by: i64) -> i64 {
    wide_near(i128::from(number), i128::from(by))
}

/// Near, for divisors that are never zero; a result that does not fit stays at the end of the range.
fn wide_near(number: i128, by: i128) -> i64 {
    let rounded = divide_near(number, by).unwrap_or(0);
    i64::try_from(rounded).unwrap_or(if rounded < 0 { i64::MIN } else { i64::MAX })
}
