//! How long a yarn is.

use super::Count;
use super::misread::Misread;
use super::number;
use super::put_up::PutUp;
use super::rounding;
use super::scale::scale;
use super::system::{Inch, System};
use super::value::{self, Unit, UnitSize, Value};

const METRE: Unit = Unit { name: "m", size: UnitSize::Fixed(1_000_000), system: Some(System::Metric), decimals: 6 };
// Six decimals of a yard are finer than half a micrometre, so an exact show reads back as itself.
const YARD: Unit = Unit { name: "yd", size: UnitSize::Fixed(914_400), system: Some(System::Imperial), decimals: 6 };

/// A length of yarn, in whole micrometres.
///
/// One yard is 914,400 µm exactly (international yard, 1959). A written decimal finer than a micrometre
/// is rounded near. Up to nine million kilometres.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct YarnLength(i64);

scale!(YarnLength);

impl YarnLength {
    /// A length of so many micrometres.
    #[must_use]
    pub const fn from_micrometres(micrometres: i64) -> Self {
        Self(micrometres)
    }

    /// A length of so many whole metres; `None` where it does not fit.
    #[must_use]
    pub const fn from_metres(metres: i64) -> Option<Self> {
        match metres.checked_mul(1_000_000) {
            Some(micrometres) => Some(Self(micrometres)),
            None => None,
        }
    }

    /// A length of so many whole yards; `None` where it does not fit.
    #[must_use]
    pub const fn from_yards(yards: i64) -> Option<Self> {
        match yards.checked_mul(914_400) {
            Some(micrometres) => Some(Self(micrometres)),
            None => None,
        }
    }

    /// How many micrometres it has.
    #[must_use]
    pub const fn micrometres(self) -> i64 {
        self.0
    }

    /// Reads `820 m`, `905 yds` and the like.
    ///
    /// # Errors
    /// No number or no unit, a unit of something else, a length below nothing, an ambiguous comma.
    pub fn parse(text: &str) -> Result<Self, Misread> {
        value::read(text, Inch::default())
    }

    /// Whole metres or yards, with a comma between thousands: `1,017 yd`.
    #[must_use]
    pub fn show(self, system: System) -> String {
        let (number, unit) = match system {
            System::Metric => (rounding::yarn_to_whole_metres(self.0), METRE),
            System::Imperial => (rounding::yarn_to_whole_yards(self.0), YARD),
        };
        format!("{} {}", number::show_thousands(number), unit.name)
    }

    /// All the decimals it takes to read the same length again: `196.850394 yd`.
    #[must_use]
    pub fn show_exact(self, system: System) -> String {
        format!("{} {}", self.exact_number(system, Inch::default()), Self::shown_in(system).name)
    }

    /// How many put-ups it is, in thousandths, rounded near; for showing beside whole skeins.
    ///
    /// `None` for a put-up without length. For how many to buy see [`YarnLength::put_ups_up`].
    #[must_use]
    pub fn per(self, put_up: PutUp) -> Option<Count> {
        let above = i128::from(self.0).checked_mul(1000)?;
        let thousandths = rounding::divide_near(above, put_up.length.0.into())?;
        i64::try_from(thousandths).ok().map(Count::from_thousandths)
    }

    /// How many whole put-ups hold it; an exact fit is not rounded up.
    ///
    /// `None` for a put-up without length.
    #[must_use]
    pub fn put_ups_up(self, put_up: PutUp) -> Option<i64> {
        self.portions_up(put_up.length)
    }
}

impl Value for YarnLength {
    const UNITS: &'static [&'static str] = &["m", "yd"];
    const EXAMPLE: &'static str = "820 m";

    fn unit(word: &str) -> Option<Unit> {
        match word {
            "m" | "metre" | "metres" | "meter" | "meters" => Some(METRE),
            "yd" | "yds" | "yard" | "yards" => Some(YARD),
            _ => None,
        }
    }

    fn shown_in(system: System) -> Unit {
        match system {
            System::Metric => METRE,
            System::Imperial => YARD,
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
            System::Metric => rounding::yarn_to_whole_metres(self.0).to_string(),
            System::Imperial => rounding::yarn_to_whole_yards(self.0).to_string(),
        }
    }
}
