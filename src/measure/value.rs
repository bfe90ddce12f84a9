//! What every quantity has in common: units, and how one value is read.

use std::ops::Range;

use super::misread::{Misread, Problem, trimmed_range};
use super::number::{self, Comma, Scanned};
use super::system::{Inch, System};

/// How large a unit is, in the quantity's small unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum UnitSize {
    /// Always this many.
    Fixed(i64),
    /// A garment's inch, as the studio counts it.
    Inch,
}

/// A unit in which a quantity may be written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Unit {
    /// The name as it is shown: `m`, `yd`, `cm`. Empty where none is shown.
    pub name: &'static str,
    /// How large it is.
    pub size: UnitSize,
    /// The system it belongs to, if it does.
    pub system: Option<System>,
    /// How many decimals show a value exactly.
    pub decimals: u32,
}

impl Unit {
    /// How many small units it has.
    #[must_use]
    pub const fn small(self, inch: Inch) -> i64 {
        match self.size {
            UnitSize::Fixed(small) => small,
            UnitSize::Inch => inch.nanometres(),
        }
    }
}

/// A quantity that is one number and a unit, so that it can stand in a size run.
pub trait Value: Clone {
    /// The units to offer in advice, the usual ones first.
    const UNITS: &'static [&'static str];
    /// What a right value looks like.
    const EXAMPLE: &'static str;
    /// Whether a value may be below nothing, as ease may.
    const MAY_BE_NEGATIVE: bool = false;
    /// The most decimals that may be written; a finer one is refused. `None`: rounded near.
    const DECIMALS: Option<u32> = None;

    /// The unit of a number without one; `None` where a unit must be written.
    #[must_use]
    fn bare_unit() -> Option<Unit> {
        None
    }
    /// The unit of a word, in lower case.
    #[must_use]
    fn unit(word: &str) -> Option<Unit>;
    /// The unit to show in a system.
    #[must_use]
    fn shown_in(system: System) -> Unit;
    /// A value from a number of small units.
    #[must_use]
    fn from_small(small: i64) -> Self;
    /// How many small units the value has.
    #[must_use]
    fn small(&self) -> i64;
    /// The number alone, rounded as pages show it, without a separator between thousands.
    #[must_use]
    fn page_number(&self, system: System, inch: Inch) -> String;

    /// The number alone, with all the decimals it needs.
    #[must_use]
    fn exact_number(&self, system: System, inch: Inch) -> String {
        let unit = Self::shown_in(system);
        number::show_decimal(self.small(), unit.small(inch), unit.decimals)
    }
}

/// A unit with the word that was written and its place.
#[derive(Clone, Debug)]
pub(super) struct WrittenUnit {
    pub unit: Unit,
    pub word: String,
    pub at: Range<usize>,
}

/// Reads a text that is one value and nothing else.
pub(super) fn read<T: Value>(text: &str, inch: Inch) -> Result<T, Misread> {
    let all = trimmed_range(text);
    if all.is_empty() {
        return Err(Misread::new(all, Problem::Empty { example: T::EXAMPLE }));
    }
    let scanned = read_number::<T>(text, all.clone(), Comma::Decimal)?;
    let (unit, end) = read_unit::<T>(text, &scanned, all.end)?;
    if end < all.end {
        return Err(leftover::<T>(text, &scanned, end..all.end));
    }
    let unit = match unit {
        Some(written) => written.unit,
        None => match T::bare_unit() {
            Some(unit) => unit,
            None => {
                let written = number::slice(text, scanned.at.clone()).to_owned();
                return Err(Misread::new(scanned.at, Problem::NoUnit { written, units: T::UNITS }));
            }
        },
    };
    make(text, &scanned, unit, inch)
}

/// The number at the beginning of a range that is not blank.
pub(super) fn read_number<T: Value>(text: &str, at: Range<usize>, comma: Comma) -> Result<Scanned, Misread> {
    match number::scan(number::slice(text, 0..at.end), at.start, comma)? {
        Some(scanned) => Ok(scanned),
        None => {
            let written = number::slice(text, at.clone()).to_owned();
            Err(Misread::new(at, Problem::NoNumber { written, example: T::EXAMPLE }))
        }
    }
}

/// The unit after a number, if a word follows; and where reading goes on.
pub(super) fn read_unit<T: Value>(
    text: &str,
    scanned: &Scanned,
    end: usize,
) -> Result<(Option<WrittenUnit>, usize), Misread> {
    let within = number::slice(text, 0..end);
    let start = number::past_spaces(within, scanned.at.end);
    let Some((word, after)) = number::word(within, start) else {
        return Ok((None, start));
    };
    let at = start..start + word.len();
    match T::unit(&word.to_lowercase()) {
        Some(unit) => {
            let written = WrittenUnit { unit, word: word.to_owned(), at };
            Ok((Some(written), number::past_spaces(within, after)))
        }
        None => {
            // `76 to 81` is a range in words.
            if word.eq_ignore_ascii_case("to")
                && let Ok(Some(other)) = number::scan(within, number::past_spaces(within, after), Comma::Decimal)
            {
                let whole = scanned.at.start..other.at.end;
                let written = number::slice(text, whole.clone()).to_owned();
                return Err(Misread::new(whole, Problem::ARange { written }));
            }
            let number = number::slice(text, scanned.at.clone()).to_owned();
            Err(Misread::new(at, Problem::UnknownUnit { number, unit: word.to_owned(), units: T::UNITS }))
        }
    }
}

/// The value of a number in a unit.
pub(super) fn make<T: Value>(text: &str, scanned: &Scanned, unit: Unit, inch: Inch) -> Result<T, Misread> {
    let written = || number::slice(text, scanned.at.clone()).to_owned();
    if scanned.number.above < 0 && !T::MAY_BE_NEGATIVE {
        return Err(Misread::new(scanned.at.clone(), Problem::Negative { written: written() }));
    }
    if let Some(decimals) = T::DECIMALS
        && scanned.decimals > decimals as usize
    {
        return Err(Misread::new(scanned.at.clone(), Problem::TooFine { written: written(), decimals }));
    }
    match scanned.number.times_near(unit.small(inch)) {
        Some(small) => Ok(T::from_small(small)),
        None => Err(Misread::new(scanned.at.clone(), Problem::TooBig { written: written() })),
    }
}

/// What is wrong with text that is left over after a number and its unit.
pub(super) fn leftover<T: Value>(text: &str, scanned: &Scanned, rest: Range<usize>) -> Misread {
    let left = number::slice(text, rest.clone());
    // What looks like a part of a number, without the unit behind it.
    let numeric =
        |c: char| c.is_whitespace() || number::begins_number(c) || number::is_dash(c) || matches!(c, '.' | ',');
    let part = left.len() - left.trim_start_matches(numeric).len();
    let part = left.get(..part).unwrap_or("").trim_end();
    let whole = scanned.at.start..rest.start + part.len();
    let written = number::slice(text, whole.clone()).to_owned();
    let mut chars = left.chars();
    let first = chars.next();
    let after = part.get(first.map_or(0, char::len_utf8)..).unwrap_or("").trim_start();
    let number_follows = after.chars().next().is_some_and(number::begins_number);
    let unit_between = number::past_spaces(text, scanned.at.end) < rest.start;
    let problem = match first {
        Some('.') if number_follows && !unit_between => {
            let before = number::slice(text, scanned.at.clone());
            Problem::DotForComma { instead: format!("{before}, {after}"), written }
        }
        Some(c) if number::is_dash(c) && number_follows => Problem::ARange { written },
        Some(c) if number::begins_number(c) && !unit_between => Problem::TwoNumbers { written },
        _ => {
            return Misread::new(rest, Problem::Leftover { written: left.to_owned(), example: T::EXAMPLE });
        }
    };
    Misread::new(whole, problem)
}
