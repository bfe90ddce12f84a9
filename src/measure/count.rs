//! How many there are.

use super::misread::Misread;
use super::number;
use super::scale::scale;
use super::system::{Inch, System};
use super::value::{self, Unit, UnitSize, Value};

const fn counted(name: &'static str) -> Unit {
    Unit { name, size: UnitSize::Fixed(1000), system: None, decimals: 3 }
}

/// A number of stitches, rows, skeins or the like, in whole thousandths.
///
/// A written fraction finer than a thousandth, such as ⅓, is rounded near; a decimal finer is refused.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Count(i64);

scale!(Count);

impl Count {
    /// A count of so many thousandths.
    #[must_use]
    pub const fn from_thousandths(thousandths: i64) -> Self {
        Self(thousandths)
    }

    /// A count of whole things; `None` where it does not fit.
    #[must_use]
    pub const fn from_whole(whole: i64) -> Option<Self> {
        match whole.checked_mul(1000) {
            Some(thousandths) => Some(Self(thousandths)),
            None => None,
        }
    }

    /// How many thousandths it has.
    #[must_use]
    pub const fn thousandths(self) -> i64 {
        self.0
    }

    /// The whole number it is; `None` where a part is left.
    #[must_use]
    pub const fn whole(self) -> Option<i64> {
        if self.0 % 1000 == 0 { Some(self.0 / 1000) } else { None }
    }

    /// Reads `22`, `4.5` or `84 sts`; what is counted may follow and is not kept.
    ///
    /// # Errors
    /// No number, a count below nothing, more than three decimals, an ambiguous comma.
    pub fn parse(text: &str) -> Result<Self, Misread> {
        value::read(text, Inch::default())
    }

    /// As it is written, exactly: `4.5`.
    #[must_use]
    pub fn show(self) -> String {
        number::show_decimal(self.0, 1000, 3)
    }

    /// To two decimals, trimmed, rounded up: more than one skein never shows as one.
    #[must_use]
    pub fn show_hundredths_up(self) -> String {
        let up = super::rounding::divide_up(self.0.into(), 10).and_then(|up| i64::try_from(up).ok());
        up.map_or_else(|| self.show(), |up| number::show_decimal(up, 100, 2))
    }
}

impl Value for Count {
    const UNITS: &'static [&'static str] = &["sts", "rows"];
    const EXAMPLE: &'static str = "84";
    const DECIMALS: Option<u32> = Some(3);

    fn bare_unit() -> Option<Unit> {
        Some(counted(""))
    }

    fn unit(word: &str) -> Option<Unit> {
        match word {
            "st" | "sts" | "stitch" | "stitches" => Some(counted("sts")),
            "row" | "rows" => Some(counted("rows")),
            "rnd" | "rnds" | "round" | "rounds" => Some(counted("rounds")),
            "time" | "times" => Some(counted("times")),
            "rep" | "reps" | "repeat" | "repeats" => Some(counted("repeats")),
            "marker" | "markers" => Some(counted("markers")),
            word if super::amount::is_put_up_name(word) => Some(counted("skeins")),
            _ => None,
        }
    }

    fn shown_in(_: System) -> Unit {
        counted("")
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
