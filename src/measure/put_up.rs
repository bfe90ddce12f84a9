//! How a yarn is sold.

use std::ops::Range;

use super::misread::{Misread, Problem, trimmed_range};
use super::number::{self, Comma};
use super::rounding;
use super::system::{Inch, System};
use super::value::{self, Value};
use super::{Count, Mass, YarnLength};

/// What one skein holds: its length and its mass.
///
/// Neither part is ever nothing when read from a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct PutUp {
    /// The length of yarn.
    pub length: YarnLength,
    /// The mass of yarn.
    pub mass: Mass,
}

/// How far two systems on one ball band may be apart, in hundredths.
///
/// A band prints round figures: 50 g as 1¾ oz (0.8 % less), 115 g as 4 oz (1.4 % less). Beyond three in a
/// hundred one of them is a slip.
const SLACK: i128 = 3;

impl PutUp {
    /// Reads `225 m / 100 g`, in any order, with or without the other system.
    ///
    /// Also `50 g = 112 m / 122 yd`, `115 g (4 oz), 384 m (420 yds)` and `25 g 115 m`. The first length
    /// and the first mass count; further ones must agree within 3 %, as ball bands round.
    ///
    /// # Errors
    /// A part missing or nothing, a number without a unit, two figures that do not agree.
    pub fn parse(text: &str) -> Result<Self, Misread> {
        let all = trimmed_range(text);
        let mut length: Option<(YarnLength, Range<usize>)> = None;
        let mut mass: Option<(Mass, Range<usize>)> = None;
        let mut here = all.start;
        while here < all.end {
            let Some(c) = number::from(text, here).chars().next() else {
                break;
            };
            let next = number::from(text, here + c.len_utf8()).chars().next();
            // `50 g – 112 m`: a dash with a space behind it is no minus sign.
            if is_between(c) || (number::is_dash(c) && next.is_some_and(char::is_whitespace)) {
                here += c.len_utf8();
                continue;
            }
            if number::begins_number(c) || number::is_dash(c) || c == '.' {
                here = one(text, here, all.end, &mut length, &mut mass)?;
                continue;
            }
            here = connecting_word(text, here, all.end)?;
        }
        match (length, mass) {
            (Some((length, _)), Some((mass, _))) => Ok(Self { length, mass }),
            (None, Some(_)) => Err(Misread::new(all, Problem::NoLength)),
            (Some(_), None) => Err(Misread::new(all, Problem::NoMass)),
            (None, None) if all.is_empty() => Err(Misread::new(all, Problem::Empty { example: "225 m / 100 g" })),
            (None, None) => Err(Misread::new(all.clone(), no_number(number::slice(text, all)))),
        }
    }

    /// As pages show it: `225 m / 100 g`, `246 yd / 3.53 oz`.
    #[must_use]
    pub fn show(self, system: System) -> String {
        // What is printed on a ball band is not rounded: a figure of at most one decimal is taken for the written one.
        let written = |exact: String, rounded: String| if decimals(&exact) <= 1 { exact } else { rounded };
        let length = written(self.length.show_exact(system), self.length.show(system));
        let mass = written(self.mass.show_exact(system), self.mass.show(system));
        format!("{length} / {mass}")
    }

    /// With all the decimals it takes to read the same put-up again.
    #[must_use]
    pub fn show_exact(self, system: System) -> String {
        format!("{} / {}", self.length.show_exact(system), self.mass.show_exact(system))
    }

    /// The length of so much of this yarn, rounded near; `None` where it does not fit.
    #[must_use]
    pub fn length_of(self, mass: Mass) -> Option<YarnLength> {
        self.length.times_near(mass.nanograms(), self.mass.nanograms())
    }

    /// The mass of so long a piece of this yarn, rounded near; `None` where it does not fit.
    #[must_use]
    pub fn mass_of(self, length: YarnLength) -> Option<Mass> {
        self.mass.times_near(length.micrometres(), self.length.micrometres())
    }

    /// The length of so many skeins, rounded near; `None` where it does not fit.
    #[must_use]
    pub fn length_of_skeins(self, skeins: Count) -> Option<YarnLength> {
        self.length.times_near(skeins.thousandths(), 1000)
    }

    /// The mass of so many skeins, rounded near; `None` where it does not fit.
    #[must_use]
    pub fn mass_of_skeins(self, skeins: Count) -> Option<Mass> {
        self.mass.times_near(skeins.thousandths(), 1000)
    }

    /// The length in 100 g, rounded near: how yarns of one fibre are compared.
    #[must_use]
    pub fn length_in_100_g(self) -> Option<YarnLength> {
        self.length_of(Mass::from_grams(100)?)
    }
}

/// Signs that may stand between the parts of a put-up.
fn is_between(c: char) -> bool {
    c.is_whitespace() || matches!(c, '/' | '=' | ',' | ';' | ':' | '(' | ')' | '[' | ']' | '≈' | '~' | '·' | '|')
}

fn no_number(written: &str) -> Problem {
    Problem::NoNumber { written: written.to_owned(), example: "225 m / 100 g" }
}

/// Passes over a word that may stand between the parts, such as "per".
fn connecting_word(text: &str, at: usize, end: usize) -> Result<usize, Misread> {
    let (word, after) = match number::word(text, at) {
        Some((word, after)) => (word, after.min(end)),
        None => {
            let width = number::from(text, at).chars().next().map_or(1, char::len_utf8);
            (number::slice(text, at..at + width), at + width)
        }
    };
    match word.to_lowercase().as_str() {
        "per" | "to" | "in" | "a" | "an" | "and" | "or" | "approx" | "about" | "circa" | "ca" | "x" => Ok(after),
        name if super::amount::is_put_up_name(name) => Ok(after),
        _ => Err(Misread::new(
            at..at + word.len(),
            Problem::Leftover { written: word.to_owned(), example: "225 m / 100 g" },
        )),
    }
}

/// Reads one number with its unit and keeps it, or checks it against what is kept.
fn one(
    text: &str,
    at: usize,
    end: usize,
    length: &mut Option<(YarnLength, Range<usize>)>,
    mass: &mut Option<(Mass, Range<usize>)>,
) -> Result<usize, Misread> {
    // A number never runs over a slash here: `25 g/115 m` has units between.
    let Some(scanned) = number::scan(number::slice(text, 0..end), at, Comma::Decimal)? else {
        let width = number::from(text, at).chars().next().map_or(1, char::len_utf8);
        let written = number::slice(text, at..at + width).to_owned();
        return Err(Misread::new(at..at + width, Problem::Leftover { written, example: "225 m / 100 g" }));
    };
    let number_text = || number::slice(text, scanned.at.clone()).to_owned();
    let start = number::past_spaces(text, scanned.at.end);
    let Some((word, after)) = number::word(number::slice(text, 0..end), start) else {
        let problem = Problem::NoUnit { written: number_text(), units: &["m", "yd", "g"] };
        return Err(Misread::new(scanned.at.clone(), problem));
    };
    let place = scanned.at.start..start + word.len();
    let lower = word.to_lowercase();
    if let Some(unit) = YarnLength::unit(&lower) {
        let found: YarnLength = value::make(text, &scanned, unit, Inch::default())?;
        keep(text, length, found, place)?;
    } else if let Some(unit) = Mass::unit(&lower) {
        let found: Mass = value::make(text, &scanned, unit, Inch::default())?;
        keep(text, mass, found, place)?;
    } else {
        let problem = Problem::UnknownUnit { number: number_text(), unit: word.to_owned(), units: &["m", "yd", "g"] };
        return Err(Misread::new(start..start + word.len(), problem));
    }
    Ok(after)
}

fn keep<T: Value>(text: &str, kept: &mut Option<(T, Range<usize>)>, found: T, at: Range<usize>) -> Result<(), Misread> {
    let written = number::slice(text, at.clone()).to_owned();
    if found.small() == 0 {
        return Err(Misread::new(at, Problem::ZeroPutUp { written }));
    }
    match kept {
        None => *kept = Some((found, at)),
        Some((first, first_at)) => {
            let apart = (i128::from(first.small()) - i128::from(found.small())).abs();
            let slack = rounding::divide_down(i128::from(first.small()) * SLACK, 100).unwrap_or(0);
            if apart > slack {
                let first = number::slice(text, first_at.clone()).to_owned();
                return Err(Misread::new(at, Problem::Disagree { first, second: written }));
            }
        }
    }
    Ok(())
}

/// How many decimals the first number of a text has.
fn decimals(text: &str) -> usize {
    let number = text.split(' ').next().unwrap_or_default();
    number.split_once('.').map_or(0, |(_, decimals)| decimals.len())
}
