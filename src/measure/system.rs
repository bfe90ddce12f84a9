//! The two systems, and how long a garment's inch is.

use super::misread::{Misread, Problem};
use super::number;

/// Which system a quantity was written in, or is to be shown in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum System {
    /// Metres, grams, centimetres, millimetres.
    #[default]
    Metric,
    /// Yards, ounces, inches.
    Imperial,
}

impl System {
    /// The other system.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::Metric => Self::Imperial,
            Self::Imperial => Self::Metric,
        }
    }

    /// The system of the first unit that follows a number in the text.
    ///
    /// For "hers first": a put-up of `210 yd / 100 g` was written in yards. `None` where no number is
    /// followed by a unit that belongs to a system.
    #[must_use]
    pub fn of(text: &str) -> Option<Self> {
        number::units_after_numbers(text).find_map(|word| match word.to_lowercase().as_str() {
            "m" | "metre" | "metres" | "meter" | "meters" | "g" | "gram" | "grams" | "gramme" | "grammes" | "kg"
            | "mm" | "cm" | "millimetre" | "millimetres" | "centimetre" | "centimetres" => Some(Self::Metric),
            "yd" | "yds" | "yard" | "yards" | "oz" | "ounce" | "ounces" | "lb" | "lbs" | "pound" | "pounds" | "in"
            | "inch" | "inches" | "ins" | "\"" | "″" | "”" => Some(Self::Imperial),
            _ => None,
        })
    }
}

/// How long a garment's inch is, in nanometres: the trade's 2.5 cm, or 2.54 cm.
///
/// Gauge is printed as "4 in = 10 cm", so garments are measured at 2.5 cm to the inch (60 in is
/// 150 cm). A studio may choose the exact 2.54 instead; one studio uses one factor throughout.
/// Yarn length and mass never use this: they convert exactly.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Inch(i64);

impl Inch {
    /// 2.5 cm, as gauge is printed.
    pub const TRADE: Self = Self(25_000_000);
    /// 2.54 cm, the international inch of 1959.
    pub const EXACT: Self = Self(25_400_000);

    /// How many nanometres the inch has.
    #[must_use]
    pub const fn nanometres(self) -> i64 {
        self.0
    }

    /// Reads `2.5` or `2.54`, in centimetres; `cm` may follow.
    ///
    /// # Errors
    /// Any other text: a third factor would agree with no printed pattern.
    pub fn parse(text: &str) -> Result<Self, Misread> {
        let trimmed = text.trim();
        match trimmed.strip_suffix("cm").unwrap_or(trimmed).trim_end() {
            "2.5" | "2,5" | "2.50" => Ok(Self::TRADE),
            "2.54" | "2,54" => Ok(Self::EXACT),
            _ => Err(Misread::whole(text, Problem::NotAnInch { written: trimmed.to_owned() })),
        }
    }

    /// The factor as it is written: `2.5` or `2.54`.
    #[must_use]
    pub fn show(self) -> String {
        if self == Self::EXACT { "2.54".to_owned() } else { "2.5".to_owned() }
    }
}

impl Default for Inch {
    fn default() -> Self {
        Self::TRADE
    }
}
