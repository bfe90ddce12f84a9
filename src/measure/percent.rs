//! Shares of a hundred.

use super::misread::Misread;
use super::number;
use super::scale::scale;
use super::system::{Inch, System};
use super::value::{self, Unit, UnitSize, Value};

const PERCENT: Unit = Unit { name: "%", size: UnitSize::Fixed(100), system: None, decimals: 2 };

/// A share, in whole hundredths of a percent.
///
/// For margins, progress and ease. It may be below nothing, because ease may.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Percent(i64);

scale!(Percent);

impl Percent {
    /// A share of so many hundredths of a percent.
    #[must_use]
    pub const fn from_hundredths(hundredths: i64) -> Self {
        Self(hundredths)
    }

    /// How many hundredths of a percent it has.
    #[must_use]
    pub const fn hundredths(self) -> i64 {
        self.0
    }

    /// Reads `10%` or `12.5 %`.
    ///
    /// # Errors
    /// No number or no sign, or more than two decimals.
    pub fn parse(text: &str) -> Result<Self, Misread> {
        value::read(text, Inch::default())
    }

    /// As it is written, exactly: `12.5%`.
    #[must_use]
    pub fn show(self) -> String {
        format!("{}%", number::show_decimal(self.0, 100, 2))
    }

    /// The share as a fraction, to multiply by: 10 % is `(1000, 10000)`.
    #[must_use]
    pub const fn of_one(self) -> (i64, i64) {
        (self.0, 10_000)
    }

    /// One and the share on top as a fraction: 10 % is `(11000, 10000)`. `None` where it does not fit.
    #[must_use]
    pub const fn on_top(self) -> Option<(i64, i64)> {
        match self.0.checked_add(10_000) {
            Some(above) => Some((above, 10_000)),
            None => None,
        }
    }
}

impl Value for Percent {
    const UNITS: &'static [&'static str] = &["%"];
    const EXAMPLE: &'static str = "10%";
    const MAY_BE_NEGATIVE: bool = true;
    const DECIMALS: Option<u32> = Some(2);

    fn unit(word: &str) -> Option<Unit> {
        (word == "%" || word == "percent").then_some(PERCENT)
    }

    fn shown_in(_: System) -> Unit {
        PERCENT
    }

    fn from_small(small: i64) -> Self {
        Self(small)
    }

    fn small(&self) -> i64 {
        self.0
    }

    fn page_number(&self, system: System, inch: Inch) -> String {
        self.exact_number(system, inch)
    }
}
