//! What can be wrong with a text that should be a quantity, as data.

/// What is wrong with a text that should be a quantity.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Problem {
    /// Nothing is written.
    Empty {
        /// What would be right.
        example: &'static str,
    },
    /// There is no number where one is wanted.
    NoNumber {
        /// The text that is no number.
        written: String,
        /// What would be right.
        example: &'static str,
    },
    /// A number without its unit.
    NoUnit {
        /// The number as written.
        written: String,
        /// The units that may follow, the usual ones first.
        units: &'static [&'static str],
    },
    /// A word that is no unit of this quantity.
    UnknownUnit {
        /// The number before the word, as written.
        number: String,
        /// The word.
        unit: String,
        /// The units that may follow, the usual ones first.
        units: &'static [&'static str],
    },
    /// Some values of a run carry a unit and some do not.
    UnitOnSome {
        /// The unit that is written.
        unit: String,
    },
    /// Two different units in one run.
    MixedUnits {
        /// The unit met first.
        first: String,
        /// The unit that differs.
        second: String,
    },
    /// A comma that may stand for thousands or for a decimal point.
    AmbiguousComma {
        /// The number as written.
        written: String,
    },
    /// A comma in a run that may belong to a number or separate two values.
    ///
    /// Only a run separated by semicolons may have decimal commas.
    CommaDecimal {
        /// The number as written.
        written: String,
    },
    /// A full stop where a comma should separate two values.
    DotForComma {
        /// The two values as written.
        written: String,
        /// The two values with a comma.
        instead: String,
    },
    /// Two numbers with nothing but space between them.
    TwoNumbers {
        /// The text as written.
        written: String,
    },
    /// A range where one number is wanted.
    ARange {
        /// The range as written.
        written: String,
    },
    /// A value below nothing.
    Negative {
        /// The number as written.
        written: String,
    },
    /// A number too large or too long to keep.
    TooBig {
        /// The number as written.
        written: String,
    },
    /// More decimals than the quantity has.
    TooFine {
        /// The number as written.
        written: String,
        /// How many decimals there may be.
        decimals: u32,
    },
    /// A fraction over nothing.
    ZeroBelow {
        /// The fraction as written.
        written: String,
    },
    /// Text that belongs to nothing.
    Leftover {
        /// The text.
        written: String,
        /// What would be right.
        example: &'static str,
    },
    /// A bracket that is never closed.
    Unclosed {
        /// The opening bracket.
        open: char,
        /// The bracket that is missing.
        close: char,
    },
    /// A bracket closed by another kind, or never opened.
    Mismatched {
        /// The closing bracket that is written.
        found: char,
        /// The bracket that would fit; `None` where none is open.
        wanted: Option<char>,
    },
    /// A bracket inside a bracket.
    Nested {
        /// The inner bracket.
        open: char,
    },
    /// A place in the run with nothing in it.
    EmptyPlace,
    /// Nothing stands before the first bracket.
    NoFirst,
    /// A list of values without brackets.
    NoBrackets {
        /// The list with brackets.
        instead: String,
    },
    /// Two kinds of separator in one run.
    MixedSeparators {
        /// The separator met first.
        first: char,
        /// The separator that differs.
        second: char,
    },
    /// A slash that may separate sizes or make a fraction.
    SlashFraction {
        /// The text that may be a fraction.
        written: String,
    },
    /// Two runs with a slash between them, without a unit after each.
    SlashBetweenRuns,
    /// A bracket that means repeats in this house.
    HouseBracket {
        /// The bracket as written.
        open: char,
        /// The bracket that holds sizes in this house.
        sizes_in: char,
    },
    /// The same run in two systems, with unlike numbers of values.
    UnequalRuns {
        /// How many values the first has.
        first: usize,
        /// How many values the second has.
        second: usize,
    },
    /// Two sizes with one name.
    RepeatedLabel {
        /// The name.
        label: String,
    },
    /// A name with a slash that may be one size or two.
    LabelSlash {
        /// What stands before the slash.
        first: String,
        /// What stands after it.
        second: String,
    },
    /// A put-up without its length.
    NoLength,
    /// A put-up without its mass.
    NoMass,
    /// A put-up of nothing.
    ZeroPutUp {
        /// The part that is nothing.
        written: String,
    },
    /// The same thing in two systems that do not agree.
    Disagree {
        /// The figure met first.
        first: String,
        /// The figure that does not agree.
        second: String,
    },
    /// Not one of the two lengths of an inch.
    NotAnInch {
        /// The text as written.
        written: String,
    },
    /// A needle without its size.
    NoNeedleSize {
        /// The text as written.
        written: String,
    },
    /// A bare number where a needle size is wanted.
    NeedleUnit {
        /// The number as written.
        written: String,
    },
    /// Not a currency code.
    NoCurrency {
        /// The text as written.
        written: String,
    },
    /// A sign that several currencies share.
    SharedSign {
        /// The sign.
        sign: char,
        /// The number as written.
        number: String,
        /// Codes that use the sign.
        codes: &'static [&'static str],
    },
}

impl Problem {
    /// A short stable name for the problem, for tables and machine output.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Empty { .. } => "empty",
            Self::NoNumber { .. } => "no-number",
            Self::NoUnit { .. } => "no-unit",
            Self::UnknownUnit { .. } => "unknown-unit",
            Self::UnitOnSome { .. } => "unit-on-some",
            Self::MixedUnits { .. } => "mixed-units",
            Self::AmbiguousComma { .. } => "ambiguous-comma",
            Self::CommaDecimal { .. } => "comma-decimal",
            Self::DotForComma { .. } => "dot-for-comma",
            Self::TwoNumbers { .. } => "two-numbers",
            Self::ARange { .. } => "a-range",
            Self::Negative { .. } => "negative",
            Self::TooBig { .. } => "too-big",
            Self::TooFine { .. } => "too-fine",
            Self::ZeroBelow { .. } => "zero-below",
            Self::Leftover { .. } => "leftover",
            Self::Unclosed { .. } => "unclosed",
            Self::Mismatched { .. } => "mismatched",
            Self::Nested { .. } => "nested",
            Self::EmptyPlace => "empty-place",
            Self::NoFirst => "no-first",
            Self::NoBrackets { .. } => "no-brackets",
            Self::MixedSeparators { .. } => "mixed-separators",
            Self::SlashFraction { .. } => "slash-fraction",
            Self::SlashBetweenRuns => "slash-between-runs",
            Self::HouseBracket { .. } => "house-bracket",
            Self::UnequalRuns { .. } => "unequal-runs",
            Self::RepeatedLabel { .. } => "repeated-label",
            Self::LabelSlash { .. } => "label-slash",
            Self::NoLength => "no-length",
            Self::NoMass => "no-mass",
            Self::ZeroPutUp { .. } => "zero-put-up",
            Self::Disagree { .. } => "disagree",
            Self::NotAnInch { .. } => "not-an-inch",
            Self::NoNeedleSize { .. } => "no-needle-size",
            Self::NeedleUnit { .. } => "needle-unit",
            Self::NoCurrency { .. } => "no-currency",
            Self::SharedSign { .. } => "shared-sign",
        }
    }
}
