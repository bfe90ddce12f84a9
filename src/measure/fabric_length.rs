//! How long a piece of fabric is.

use super::misread::Misread;
use super::number;
use super::rounding;
use super::scale::scale;
use super::system::{Inch, System};
use super::value::{self, Unit, UnitSize, Value};

const MILLIMETRE: Unit =
    Unit { name: "mm", size: UnitSize::Fixed(1_000_000), system: Some(System::Metric), decimals: 6 };
const CENTIMETRE: Unit =
    Unit { name: "cm", size: UnitSize::Fixed(10_000_000), system: Some(System::Metric), decimals: 7 };
const METRE: Unit = Unit { name: "m", size: UnitSize::Fixed(1_000_000_000), system: Some(System::Metric), decimals: 9 };
// Eight decimals of an inch are finer than half a nanometre, so an exact show reads back as itself.
const INCH: Unit = Unit { name: "in", size: UnitSize::Inch, system: Some(System::Imperial), decimals: 8 };

/// A length measured on fabric or needles, in whole nanometres.
///
/// For garments, gauge and needles. Inches come in and go out through the studio's [`Inch`]. A value may
/// be below nothing, because ease may. A written decimal finer than a nanometre is rounded near.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FabricLength(i64);

scale!(FabricLength);

impl FabricLength {
    /// What the trade measures gauge over.
    pub const TEN_CENTIMETRES: Self = Self(100_000_000);

    /// A length of so many nanometres.
    #[must_use]
    pub const fn from_nanometres(nanometres: i64) -> Self {
        Self(nanometres)
    }

    /// A length of so many hundredths of a millimetre, as needles are sized; `None` where it does not fit.
    #[must_use]
    pub const fn from_hundredths_of_mm(hundredths: i64) -> Option<Self> {
        match hundredths.checked_mul(10_000) {
            Some(nanometres) => Some(Self(nanometres)),
            None => None,
        }
    }

    /// How many nanometres it has.
    #[must_use]
    pub const fn nanometres(self) -> i64 {
        self.0
    }

    /// Reads `102.5 cm`, `37¼ in`, `45 mm` and the like.
    ///
    /// # Errors
    /// No number or no unit, a unit of something else, an ambiguous comma.
    pub fn parse(text: &str, inch: Inch) -> Result<Self, Misread> {
        value::read(text, inch)
    }

    /// Centimetres to the half, or inches to the quarter: `102.5 cm`, `37¼ in`.
    #[must_use]
    pub fn show(self, system: System, inch: Inch) -> String {
        format!("{} {}", self.page_number(system, inch), Self::shown_in(system).name)
    }

    /// All the decimals it takes to read the same length again, in centimetres or inches.
    #[must_use]
    pub fn show_exact(self, system: System, inch: Inch) -> String {
        format!("{} {}", self.exact_number(system, inch), Self::shown_in(system).name)
    }

    /// To the tenth of a centimetre or an inch, rounded near: `2.3 cm`, for what is too short for the tape's halves.
    #[must_use]
    pub fn show_tenths(self, system: System, inch: Inch) -> String {
        let unit = match system {
            System::Metric => 10_000_000,
            System::Imperial => inch.nanometres(),
        };
        format!("{} {}", number::show_decimal(self.0, unit, 1), Self::shown_in(system).name)
    }

    /// Exact millimetres, as needles are sized: `3.75 mm`.
    #[must_use]
    pub fn show_mm(self) -> String {
        format!("{} mm", number::show_decimal(self.0, 1_000_000, MILLIMETRE.decimals))
    }
}

impl Value for FabricLength {
    const UNITS: &'static [&'static str] = &["cm", "in"];
    const EXAMPLE: &'static str = "84 cm";
    const MAY_BE_NEGATIVE: bool = true;

    fn unit(word: &str) -> Option<Unit> {
        match word {
            "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Some(MILLIMETRE),
            "cm" | "cms" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Some(CENTIMETRE),
            "m" | "metre" | "metres" | "meter" | "meters" => Some(METRE),
            "in" | "ins" | "inch" | "inches" | "\"" | "″" | "”" => Some(INCH),
            _ => None,
        }
    }

    fn shown_in(system: System) -> Unit {
        match system {
            System::Metric => CENTIMETRE,
            System::Imperial => INCH,
        }
    }

    fn from_small(small: i64) -> Self {
        Self(small)
    }

    fn small(&self) -> i64 {
        self.0
    }

    fn page_number(&self, system: System, inch: Inch) -> String {
        match system {
            System::Metric => number::show_scaled(i128::from(rounding::fabric_to_half_centimetres(self.0)) * 5, 1),
            System::Imperial => show_quarters(rounding::fabric_to_quarter_inches(self.0, inch)),
        }
    }
}

fn show_quarters(quarters: i64) -> String {
    let sign = if quarters < 0 { "-" } else { "" };
    let whole = quarters.unsigned_abs() / 4;
    let glyph = match quarters.unsigned_abs() % 4 {
        1 => "¼",
        2 => "½",
        3 => "¾",
        _ => "",
    };
    if whole == 0 && !glyph.is_empty() { format!("{sign}{glyph}") } else { format!("{sign}{whole}{glyph}") }
}
