//! Every problem in words: lower case, no full stop, the writer's text in backticks.

use std::fmt;

use super::problem::Problem;

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty { .. } => write!(f, "nothing is written here"),
            Self::NoNumber { written, .. } => write!(f, "`{written}` is not a number"),
            Self::NoUnit { written, .. } => write!(f, "`{written}` has no unit"),
            Self::UnknownUnit { unit, .. } => write!(f, "`{unit}` is not a unit that fits here"),
            Self::UnitOnSome { unit } => {
                write!(f, "only some of the values have the unit `{unit}`")
            }
            Self::MixedUnits { first, second } => {
                write!(f, "`{second}` does not go with `{first}`")
            }
            Self::AmbiguousComma { written } if written.matches([',', '.']).count() == 1 => {
                write!(f, "the comma in `{written}` may mean thousands or a decimal")
            }
            Self::AmbiguousComma { written } => {
                write!(f, "`{written}` may be read as more than one number")
            }
            Self::CommaDecimal { written } => {
                write!(f, "the comma in `{written}` may belong to a number or separate two values")
            }
            Self::DotForComma { written, .. } => {
                write!(f, "`{written}` has a full stop between two values")
            }
            Self::TwoNumbers { written } => {
                write!(f, "`{written}` is two numbers with nothing between them")
            }
            Self::ARange { written } => {
                write!(f, "`{written}` is a range, and one number is wanted")
            }
            Self::Negative { written } => write!(f, "`{written}` is less than nothing"),
            Self::TooBig { written } => write!(f, "`{written}` is too large or too long a number"),
            Self::TooFine { written, .. } => write!(f, "`{written}` has too many decimals"),
            Self::ZeroBelow { written } => write!(f, "`{written}` divides by nothing"),
            Self::Leftover { written, .. } => write!(f, "`{written}` belongs to nothing here"),
            Self::Unclosed { open, .. } => write!(f, "`{open}` is not closed"),
            Self::Mismatched { found, wanted: Some(_) } => write!(f, "`{found}` closes a bracket of another kind"),
            Self::Mismatched { found, wanted: None } => write!(f, "`{found}` closes a bracket that was not opened"),
            Self::Nested { open } => write!(f, "`{open}` opens inside another bracket"),
            Self::EmptyPlace => write!(f, "a place in the size run is empty"),
            Self::NoFirst => write!(f, "nothing stands before the bracket"),
            Self::NoBrackets { .. } => write!(f, "the sizes after the first are not in brackets"),
            Self::MixedSeparators { first, second } => {
                write!(f, "`{second}` stands in a run separated by `{first}`")
            }
            Self::SlashFraction { written } => {
                write!(f, "`{written}` may be a fraction or two sizes")
            }
            Self::SlashBetweenRuns => write!(f, "it is not clear what the slash between the brackets separates"),
            Self::HouseBracket { open, .. } => {
                write!(f, "`{open}` does not hold sizes in this studio: repeats?")
            }
            Self::UnequalRuns { first, second } => write!(
                f,
                "the run has {first} {} in one system and {second} in the other",
                if *first == 1 { "value" } else { "values" }
            ),
            Self::RepeatedLabel { label } => write!(f, "two sizes are called `{label}`"),
            Self::LabelSlash { first, second } => {
                write!(f, "`{first}/{second}` may be one size or two")
            }
            Self::NoLength => write!(f, "the put-up has no length"),
            Self::NoMass => write!(f, "the put-up has no mass"),
            Self::ZeroPutUp { written } => write!(f, "a put-up cannot hold `{written}`"),
            Self::Disagree { first, second } => {
                write!(f, "`{second}` is not the same as `{first}`")
            }
            Self::NotAnInch { written } => write!(f, "`{written}` is not a length of an inch that the trade uses"),
            Self::NoNeedleSize { written } => {
                write!(f, "`{written}` does not begin with a needle size")
            }
            Self::NeedleUnit { written } => {
                write!(f, "`{written}` may be millimetres, a US or a UK size")
            }
            Self::NoCurrency { written } => write!(f, "`{written}` has no currency code"),
            Self::SharedSign { sign, .. } => {
                write!(f, "`{sign}` is the sign of more than one currency")
            }
        }
    }
}
