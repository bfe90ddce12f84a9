//! Whole numbers of small units as JSON numbers of large ones.

use crate::measure::FabricLength;
use serde::Serialize;

/// A whole number of small units as a JSON number of large ones. JSON has no other numbers than decimals, and the nearest
/// double prints with all the digits these have.
#[derive(Serialize)]
#[serde(untagged)]
pub enum Decimal {
    /// Nothing behind the point.
    Whole(i64),
    /// Any other.
    Fraction(f64),
}

impl Decimal {
    /// Returns small units as large ones.
    pub fn of(small: i64, per_large: i64) -> Self {
        if small % per_large == 0 {
            return Self::Whole(small / per_large);
        }
        #[expect(clippy::cast_precision_loss, reason = "quantities are far below 2^53 small units")]
        Self::Fraction(small as f64 / per_large as f64)
    }

    /// Returns a length of fabric in centimetres.
    pub fn centimetres(length: FabricLength) -> Self {
        Self::of(length.nanometres(), 10_000_000)
    }
}
