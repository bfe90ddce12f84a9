//! How much a yarn weighs.

use super::misread::Misread;
use super::number;
use super::rounding;
use super::scale::scale;
use super::system::{Inch, System};
use super::value::{self, Unit, UnitSize, Value};

const GRAM: Unit = Unit { name: "g", size: UnitSize::Fixed(1_000_000_000), system: Some(System::Metric), decimals: 9 };
const KILOGRAM: Unit =
    Unit { name: "kg", size: UnitSize::Fixed(1_000_000_000_000), system: Some(System::Metric), decimals: 12 };
// Eleven decimals of an ounce are finer than half a nanogram, so an exact show reads back as itself.
const OUNCE: Unit =
    Unit { name: "oz", size: UnitSize::Fixed(28_349_523_125), system: Some(System::Imperial), decimals: 11 };
// Sixteen ounces.
const POUND: Unit =
    Unit { name: "lb", size: UnitSize::Fixed(453_592_370_000), system: Some(System::Imperial), decimals: 12 };

/// A mass, in whole nanograms.
///
/// One ounce is 28,349,523,125 ng exactly (international pound, 1959). A written decimal finer than a
/// nanogram is rounded near. Up to nine thousand tonnes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Mass(i64);

scale!(Mass);

impl Mass {
    /// A mass of so many nanograms.
    #[must_use]
    pub const fn from_nanograms(nanograms: i64) -> Self {
        Self(nanograms)
    }

    /// A mass of so many whole grams; `None` where it does not fit.
    #[must_use]
    pub const fn from_grams(grams: i64) -> Option<Self> {
        match grams.checked_mul(1_000_000_000) {
            Some(nanograms) => Some(Self(nanograms)),
            None => None,
        }
    }

    /// How many nanograms it has.
    #[must_use]
    pub const fn nanograms(self) -> i64 {
        self.0
    }

    /// Reads `452 g`, `1¾ oz` and the like; kilograms and pounds too.
    ///
    /// # Errors
    /// No number or no unit, a unit of something else, a mass below nothing, an ambiguous comma.
    pub fn parse(text: &str) -> Result<Self, Misread> {
        value::read(text, Inch::default())
    }

    /// Whole grams, or ounces to one hundredth without trailing zeros: `1.76 oz`.
    #[must_use]
    pub fn show(self, system: System) -> String {
        match system {
            System::Metric => format!("{} g", number::show_thousands(rounding::mass_to_whole_grams(self.0))),
            System::Imperial => format!("{} oz", self.page_number(system, Inch::default())),
        }
    }

    /// All the decimals it takes to read the same mass again: `1.7636980975 oz`.
    #[must_use]
    pub fn show_exact(self, system: System) -> String {
        format!("{} {}", self.exact_number(system, Inch::default()), Self::shown_in(system).name)
    }
}

impl Value for Mass {
    const UNITS: &'static [&'static str] = &["g", "oz"];
    const EXAMPLE: &'static str = "100 g";

    fn unit(word: &str) -> Option<Unit> {
        match word {
            "g" | "gram" | "grams" | "gramme" | "grammes" => Some(GRAM),
            "kg" | "kilo" | "kilos" | "kilogram" | "kilograms" => Some(KILOGRAM),
            "oz" | "ounce" | "ounces" => Some(OUNCE),
            "lb" | "lbs" | "pound" | "pounds" => Some(POUND),
            _ => None,
        }
    }

    fn shown_in(system: System) -> Unit {
        match system {
            System::Metric => GRAM,
            System::Imperial => OUNCE,
        }
    }

    fn from_small(small: i64) -> Self {
        Self(small)
    }

    fn small(&self) -> i64 {
        self.0
    }

    fn page_number(&self, system: System, _: Inch) -> String {
        match system {
            System::Metric => rounding::mass_to_whole_grams(self.0).to_string(),
            System::Imperial => number::show_scaled(rounding::mass_to_hundredths_of_ounces(self.0).into(), 2),
        }
    }
}
