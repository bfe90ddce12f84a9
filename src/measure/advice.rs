//! What to write instead, for every problem.

use super::number::{self, Comma};
use super::problem::Problem;

impl Problem {
    /// What to write instead, as a concrete piece of advice.
    #[must_use]
    pub fn help(&self) -> String {
        match self {
            Self::Empty { example } | Self::NoNumber { example, .. } | Self::Leftover { example, .. } => {
                format!("write it like `{example}`")
            }
            Self::NoUnit { written, units } => either(written, units),
            Self::UnknownUnit { number, units, .. } => either(number, units),
            Self::UnitOnSome { unit } => format!("write `{unit}` once at the end of the run, or after every value"),
            Self::MixedUnits { first, .. } => format!(
                "write every value in `{first}`, or write the run twice with a slash between: `34 (37, 41) in / 85 (93, 102.5) cm`"
            ),
            Self::AmbiguousComma { written } => {
                let plain = written.replace(',', "");
                let point = written.replacen(',', ".", 1);
                if written.matches([',', '.']).count() == 1 {
                    format!("write `{plain}` for the whole number or `{point}` for the decimal")
                } else {
                    "write whole numbers without a separator, and decimals with a point".to_owned()
                }
            }
            // Three figures after the comma are thousands to most; a decimal point there would make it a thousandth.
            Self::CommaDecimal { written } if thousands(written) => {
                format!(
                    "write `{}` without a separator, or `{}` for two values",
                    written.replace(',', ""),
                    written.replace(',', ", ")
                )
            }
            Self::CommaDecimal { written } => format!(
                "write `{}` for one value or `{}` for two; where decimals take a comma, separate sizes with `;`",
                written.replace(',', "."),
                written.replace(',', ", ")
            ),
            Self::DotForComma { instead, .. } => format!("write `{instead}`"),
            Self::TwoNumbers { written } => {
                let digits: Vec<&str> = written.split_whitespace().collect();
                format!("write `{}` for two values or `{}` for one", digits.join(", "), digits.concat())
            }
            Self::ARange { written } => match middle_and_end(written) {
                Some((middle, end)) => format!(
                    "write one number, such as its middle, `{middle}`, or its larger end, `{end}`; a range cannot be worked with"
                ),
                None => "write one number; a range cannot be worked with".to_owned(),
            },
            Self::Negative { written } => {
                format!("write `{}`; this cannot be less than nothing", written.trim_start_matches(['-', '−', '–']))
            }
            Self::TooBig { .. } => "write a number of at most nine digits and nine decimals".to_owned(),
            Self::TooFine { decimals: 0, .. } => "write it without decimals".to_owned(),
            Self::TooFine { decimals, .. } => format!("write it with at most {decimals} decimals"),
            Self::ZeroBelow { .. } => "write a fraction such as `1/2`, or a decimal such as `0.5`".to_owned(),
            Self::Unclosed { open, close } => format!("close `{open}` with `{close}` after the last size"),
            Self::Mismatched { found, wanted: Some(wanted) } => format!("write `{wanted}` instead of `{found}`"),
            Self::Mismatched { found, wanted: None } => format!("open a bracket for `{found}`, or take it out"),
            Self::Nested { .. } => "write the groups one after another: `84 (92, 100) (108, 116)`".to_owned(),
            Self::EmptyPlace => "write the missing value, or `–` where the size does not have one".to_owned(),
            Self::NoFirst => {
                "write the smallest size before the bracket: `84 (92, 104)`, or `– (92, 104)` if it has none".to_owned()
            }
            Self::NoBrackets { instead } => format!("write `{instead}`"),
            Self::MixedSeparators { first, .. } => {
                format!("separate all values with `{first}`; write decimals with a point")
            }
            Self::SlashFraction { .. } => {
                "write the sizes in brackets: `84 (94½, 104)`, or the fraction as `½` or `.5`".to_owned()
            }
            Self::SlashBetweenRuns => {
                "write a unit after each of the two runs: `34 (37, 41) in / 85 (93, 102.5) cm`".to_owned()
            }
            Self::HouseBracket { open, sizes_in } => format!(
                "put the sizes in `{sizes_in}`, as the studio's `sizes in` says; if `{open}` holds repeats, they do not belong in a size run"
            ),
            Self::UnequalRuns { .. } => "give both runs one value for each size".to_owned(),
            Self::RepeatedLabel { .. } => "give each size a name of its own".to_owned(),
            Self::LabelSlash { first, second } => {
                format!("write `{first} ({second})` for two sizes, or `{first}–{second}` for one")
            }
            Self::NoLength => "write the length too: `225 m / 100 g`".to_owned(),
            Self::NoMass => "write the mass too: `225 m / 100 g`".to_owned(),
            Self::ZeroPutUp { .. } => "write what one skein holds: `225 m / 100 g`".to_owned(),
            Self::Disagree { .. } => "check both against the ball band, or leave one out".to_owned(),
            Self::NotAnInch { .. } => "write `2.5` or `2.54`".to_owned(),
            Self::NoNeedleSize { .. } => "write `4 mm`, `US 6` or `UK 8`".to_owned(),
            Self::NeedleUnit { written } => format!("write `{written} mm`, `US {written}` or `UK {written}`"),
            Self::NoCurrency { .. } => "write the amount and a three-letter currency code: `7.00 GBP`".to_owned(),
            Self::SharedSign { number, codes, .. } => either(number, codes),
        }
    }
}

fn thousands(written: &str) -> bool {
    written
        .split_once(',')
        .is_some_and(|(_, after)| after.len() == 3 && after.bytes().all(|byte| byte.is_ascii_digit()))
}

/// A share of one, as a writer of spreadsheets gives it, in hundredths: `0.1` is 10%. Other numbers stay as they are.
fn hundredfold(number: &str) -> String {
    let Some(decimals) = number.strip_prefix("0.").filter(|rest| rest.bytes().all(|byte| byte.is_ascii_digit())) else {
        return number.to_owned();
    };
    let padded = format!("{decimals:0<2}");
    let (whole, rest) = padded.split_at(2);
    let whole = whole.trim_start_matches('0');
    let whole = if whole.is_empty() { "0" } else { whole };
    if rest.is_empty() { whole.to_owned() } else { format!("{whole}.{rest}") }
}

/// The middle of a written range and its larger end as it is written; `None` where it does not rise.
fn middle_and_end(written: &str) -> Option<(String, &str)> {
    let first = number::scan(written, 0, Comma::Decimal).ok()??;
    // What parts the two may be a dash, a word, or a unit and either.
    let between = number::from(written, first.at.end);
    let start = first.at.end + between.find(number::begins_number)?;
    let second = number::scan(written, start, Comma::Decimal).ok()??;
    let [low, high] = [first.number.times_near(1000)?, second.number.times_near(1000)?];
    // Half of a sum of thousandths is five times that in ten-thousandths.
    let middle = number::show_scaled((i128::from(low) + i128::from(high)) * 5, 4);
    (low < high).then(|| (middle, number::slice(written, second.at)))
}

fn either(number: &str, units: &[&str]) -> String {
    let mut out = String::from("write ");
    // Three choices are enough to see the pattern.
    let shown: Vec<String> = units
        .iter()
        .take(3)
        .map(|unit| if *unit == "%" { format!("`{}%`", hundredfold(number)) } else { format!("`{number} {unit}`") })
        .collect();
    out.push_str(&shown.join(" or "));
    out
}
