//! An amount of yarn, however it was measured.

use super::misread::{Misread, Problem, trimmed_range};
use super::number::{self, Comma};
use super::put_up::PutUp;
use super::system::{Inch, System};
use super::value::{self, Value};
use super::{Count, Mass, YarnLength};

/// An amount of yarn: in skeins, by mass or by length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Amount {
    /// So many put-ups, whatever the writer called them.
    Skeins(Count),
    /// So heavy.
    Mass(Mass),
    /// So long.
    Length(YarnLength),
}

/// Whether a word, in lower case, is a name for what a yarn is sold as.
pub(super) fn is_put_up_name(word: &str) -> bool {
    matches!(word, "skein" | "skeins" | "ball" | "balls" | "hank" | "hanks" | "cake" | "cakes" | "cone" | "cones")
}

const UNITS: &[&str] = &["skeins", "g", "m"];
const EXAMPLE: &str = "4.5 skeins";

impl Amount {
    /// Reads `4.5 skeins`, `1 ball`, `452 g` or `500 yds`.
    ///
    /// The put-up may be called skein, ball, hank, cake or cone.
    ///
    /// # Errors
    /// No number or no unit, a unit of something else, an amount below nothing, an ambiguous comma.
    pub fn parse(text: &str) -> Result<Self, Misread> {
        let all = trimmed_range(text);
        if all.is_empty() {
            return Err(Misread::new(all, Problem::Empty { example: EXAMPLE }));
        }
        let Some(scanned) = number::scan(number::slice(text, 0..all.end), all.start, Comma::Decimal)? else {
            let written = number::slice(text, all.clone()).to_owned();
            return Err(Misread::new(all, Problem::NoNumber { written, example: EXAMPLE }));
        };
        let start = number::past_spaces(text, scanned.at.end);
        let lower = number::word(text, start).map(|(word, _)| word.to_lowercase());
        let Some(lower) = lower else {
            if start < all.end {
                return Err(value::leftover::<Count>(text, &scanned, start..all.end));
            }
            let written = number::slice(text, scanned.at.clone()).to_owned();
            return Err(Misread::new(scanned.at, Problem::NoUnit { written, units: UNITS }));
        };
        if is_put_up_name(&lower) {
            value::read(text, Inch::default()).map(Self::Skeins)
        } else if Mass::unit(&lower).is_some() {
            Mass::parse(text).map(Self::Mass)
        } else if YarnLength::unit(&lower).is_some() {
            YarnLength::parse(text).map(Self::Length)
        } else {
            let unit = number::word(text, start).map_or("", |(word, _)| word);
            let number = number::slice(text, scanned.at).to_owned();
            let problem = Problem::UnknownUnit { number, unit: unit.to_owned(), units: UNITS };
            Err(Misread::new(start..start + unit.len(), problem))
        }
    }

    /// As pages show it: `4.5 skeins`, `452 g`, `1,010 m`.
    #[must_use]
    pub fn show(self, system: System) -> String {
        match self {
            Self::Skeins(count) => show_skeins(count),
            Self::Mass(mass) => mass.show(system),
            Self::Length(length) => length.show(system),
        }
    }

    /// With all the decimals it takes to read the same amount again.
    #[must_use]
    pub fn show_exact(self, system: System) -> String {
        match self {
            Self::Skeins(count) => show_skeins(count),
            Self::Mass(mass) => mass.show_exact(system),
            Self::Length(length) => length.show_exact(system),
        }
    }

    /// How long it is, rounded near.
    ///
    /// `None` where that takes a put-up and there is none, or where the result does not fit.
    #[must_use]
    pub fn length(self, put_up: Option<PutUp>) -> Option<YarnLength> {
        match self {
            Self::Length(length) => Some(length),
            Self::Mass(mass) => put_up?.length_of(mass),
            Self::Skeins(count) => put_up?.length_of_skeins(count),
        }
    }

    /// How heavy it is, rounded near.
    ///
    /// `None` where that takes a put-up and there is none, or where the result does not fit.
    #[must_use]
    pub fn mass(self, put_up: Option<PutUp>) -> Option<Mass> {
        match self {
            Self::Mass(mass) => Some(mass),
            Self::Length(length) => put_up?.mass_of(length),
            Self::Skeins(count) => put_up?.mass_of_skeins(count),
        }
    }
}

fn show_skeins(count: Count) -> String {
    // One skein or less is singular: "0.5 skein".
    let name = if (1..=1000).contains(&count.thousandths()) { "skein" } else { "skeins" };
    format!("{} {name}", count.show())
}
