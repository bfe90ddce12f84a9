//! Needles: how thick, how long, what kind.

use super::FabricLength;
use super::misread::{Misread, Problem, trimmed_range};
use super::number::{self, Comma};
use super::system::{Inch, System};
use super::value::{self, Value};

/// How thick a needle is, as the writer gave it.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum NeedleSize {
    /// Its diameter.
    Metric(FabricLength),
    /// A US number: `6`, `10.5`, `00`.
    Us(String),
    /// An old UK (and Canadian) number: `8`, `000`.
    Uk(String),
}

impl NeedleSize {
    /// Reads `4 mm`, `US 6`, `US 10½` or `UK 8`.
    ///
    /// # Errors
    /// Anything else; a bare number could be any of the three.
    pub fn parse(text: &str) -> Result<Self, Misread> {
        let all = trimmed_range(text);
        let (size, end) = read_size(text, all.start, all.end)?;
        if end < all.end {
            let written = number::slice(text, end..all.end).to_owned();
            return Err(Misread::new(end..all.end, Problem::Leftover { written, example: "4 mm" }));
        }
        Ok(size)
    }

    /// As it is written, exactly: `3.75 mm`, `US 10.5`, `UK 8`.
    #[must_use]
    pub fn show(&self) -> String {
        match self {
            Self::Metric(diameter) => diameter.show_mm(),
            Self::Us(number) => format!("US {number}"),
            Self::Uk(number) => format!("UK {number}"),
        }
    }
}

/// Shorter than any needle, in nanometres: `4 mm 5 mm` is two sizes, not a size and a length.
const SHORTEST: i64 = 50_000_000;

/// A needle: how thick, how long if that was written, and what kind in words.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Needle {
    /// How thick it is.
    pub size: NeedleSize,
    /// The length that was written: of a circular needle, from tip to tip.
    pub circular: Option<FabricLength>,
    /// Everything else, single spaces between: `circular`, `dpns`, `straights`.
    pub words: String,
}

impl Needle {
    /// Reads `4 mm circular 80 cm`, `US 6 circular 32 in`, `UK 8 straights` and the like.
    ///
    /// The size comes first. A comma or a slash may stand between the parts. A size in the other system,
    /// such as `(US 6)`, is kept among the words.
    ///
    /// # Errors
    /// No size at the beginning, two lengths or two sizes, a length that cannot be read.
    pub fn parse(text: &str, inch: Inch) -> Result<Self, Misread> {
        let all = trimmed_range(text);
        let (size, mut here) = read_size(text, all.start, all.end)?;
        let mut circular = None;
        let mut words: Vec<&str> = Vec::new();
        while here < all.end {
            let Some(c) = number::from(text, here).chars().next() else {
                break;
            };
            if c.is_whitespace() || matches!(c, ',' | ';' | '/') {
                here += c.len_utf8();
                continue;
            }
            if let Some((length, end)) = read_length(text, here, all.end, inch)? {
                if circular.is_some() || length.nanometres() < SHORTEST {
                    let written = number::slice(text, here..end).to_owned();
                    let problem = Problem::Leftover { written, example: "4 mm circular 80 cm" };
                    return Err(Misread::new(here..end, problem));
                }
                circular = Some(length);
                here = end;
                continue;
            }
            let rest = number::slice(text, here..all.end);
            let stop = |c: char| c.is_whitespace() || matches!(c, ',' | ';' | '/');
            let word = rest.split(stop).next().unwrap_or(rest);
            words.push(word);
            here += word.len();
        }
        Ok(Self { size, circular, words: words.join(" ") })
    }

    /// As pages show it: `4 mm circular 80 cm`.
    #[must_use]
    pub fn show(&self, system: System, inch: Inch) -> String {
        self.join(self.circular.map(|length| length.show(system, inch)))
    }

    /// With all the decimals it takes to read the same needle again.
    #[must_use]
    pub fn show_exact(&self, system: System, inch: Inch) -> String {
        self.join(self.circular.map(|length| length.show_exact(system, inch)))
    }

    fn join(&self, length: Option<String>) -> String {
        let mut out = self.size.show();
        if !self.words.is_empty() {
            out.push(' ');
            out.push_str(&self.words);
        }
        if let Some(length) = length {
            out.push_str(if self.words.is_empty() { ", " } else { " " });
            out.push_str(&length);
        }
        out
    }
}

fn no_size(text: &str, at: std::ops::Range<usize>) -> Misread {
    if at.is_empty() {
        return Misread::new(at, Problem::Empty { example: "4 mm" });
    }
    let written = number::slice(text, at.clone()).to_owned();
    Misread::new(at, Problem::NoNeedleSize { written })
}

/// The size at the beginning, and where it ends.
fn read_size(text: &str, start: usize, end: usize) -> Result<(NeedleSize, usize), Misread> {
    let within = number::slice(text, 0..end);
    if let Some((word, after)) = number::word(within, start) {
        let make: fn(String) -> NeedleSize = match word.to_lowercase().as_str() {
            "us" => NeedleSize::Us,
            "uk" => NeedleSize::Uk,
            _ => return Err(no_size(text, start..end)),
        };
        let at = number::past_spaces(within, after);
        let Some((number, after)) = read_us_uk(within, at)? else {
            return Err(no_size(text, start..end));
        };
        return Ok((make(number), after));
    }
    let Some(scanned) = number::scan(within, start, Comma::Decimal)? else {
        return Err(no_size(text, start..end));
    };
    let at = number::past_spaces(within, scanned.at.end);
    let written = number::slice(text, scanned.at.clone()).to_owned();
    let units: &[&str] = &["mm"];
    match number::word(within, at) {
        Some((word, after)) if matches!(word.to_lowercase().as_str(), "mm" | "millimetres" | "millimetre") => {
            let unit = FabricLength::unit("mm").ok_or_else(|| no_size(text, start..end))?;
            let diameter: FabricLength = value::make(within, &scanned, unit, Inch::default())?;
            if diameter.nanometres() <= 0 {
                return Err(no_size(text, start..after));
            }
            Ok((NeedleSize::Metric(diameter), after))
        }
        Some((word, _)) if FabricLength::unit(&word.to_lowercase()).is_some() => Err(Misread::new(
            at..at + word.len(),
            Problem::UnknownUnit { number: written, unit: word.to_owned(), units },
        )),
        _ => Err(Misread::new(scanned.at, Problem::NeedleUnit { written })),
    }
}

/// A US or UK number: zeros are kept as written, fractions become decimals.
fn read_us_uk(text: &str, at: usize) -> Result<Option<(String, usize)>, Misread> {
    let zeros = number::from(text, at).bytes().take_while(|byte| *byte == b'0').count();
    let Some(scanned) = number::scan(text, at, Comma::Separates)? else {
        return Ok(None);
    };
    let written = number::slice(text, scanned.at.clone());
    if zeros > 0 && zeros == written.len() {
        return Ok(Some((written.to_owned(), scanned.at.end)));
    }
    if scanned.number.above <= 0 {
        return Ok(None);
    }
    let thousandths = scanned.number.times_near(1000);
    Ok(thousandths.map(|thousandths| (number::show_decimal(thousandths, 1000, 3), scanned.at.end)))
}

/// A length at a byte, if a number with a unit of length stands there.
fn read_length(text: &str, at: usize, end: usize, inch: Inch) -> Result<Option<(FabricLength, usize)>, Misread> {
    let within = number::slice(text, 0..end);
    if !number::from(within, at).chars().next().is_some_and(number::begins_number) {
        return Ok(None);
    }
    let Some(scanned) = number::scan(within, at, Comma::Decimal)? else {
        return Ok(None);
    };
    let start = number::past_spaces(within, scanned.at.end);
    let Some((word, after)) = number::word(within, start) else {
        return Ok(None);
    };
    match FabricLength::unit(&word.to_lowercase()) {
        Some(unit) => Ok(Some((value::make(within, &scanned, unit, inch)?, after))),
        None => Ok(None),
    }
}
