//! Quantities in front matter.

use crate::entry::field::{Field, wrong_type};
use crate::entry::schema::{Definitions, Schema};
use crate::entry::yaml::{Node, Notes};
use crate::finding::{Code, Severity};
use crate::measure::{Amount, Count, FabricLength, Inch, Mass, Misread, Needle, Percent, Price, PutUp};
use crate::standards::yarn_weights::{self, YarnWeight};

/// A quantity that cannot be read.
pub static BAD_QUANTITY: Code = Code {
    name: "bad-quantity",
    severity: Severity::Error,
    what: "A quantity, or a size run, cannot be read with certainty: no unit, a wrong unit, a bracket too many.",
    why: "Every number on the pages is worked out from these; none is guessed.",
    bad: "put-up: 225 / 100",
    good: "put-up: 225 m / 100 g",
};

/// A weight that is no standard category.
pub static WEIGHT_UNKNOWN: Code = Code {
    name: "weight-unknown",
    severity: Severity::Error,
    what: "A yarn's weight is no standard category's name or number, or is a name that two categories share.",
    why: "Yarns and patterns are listed by standard weight.",
    bad: "weight: middling",
    good: "weight: DK",
};

/// Notes a quantity that could not be read, at its guilty part.
pub fn note_misread(misread: &Misread, node: &Node<'_>, notes: &mut Notes<'_>) {
    // The text was trimmed by YAML, so its bytes are those of the value.
    notes.part(&BAD_QUANTITY, node, misread.at.clone(), misread.to_string(), Some(misread.help()));
}

fn read_with<T>(
    node: &Node<'_>,
    what: &str,
    notes: &mut Notes<'_>,
    parse: impl Fn(&str, Inch) -> Result<T, Misread>,
) -> Option<T> {
    let Some(text) = node.value.scalar() else {
        wrong_type(node, what, notes);
        return None;
    };
    parse(text, notes.settings.inch).map_err(|misread| note_misread(&misread, node, notes)).ok()
}

/// A figure, as the patterns of schemas have it.
pub(super) const FIGURE: &str = "[0-9¼½¾⅓⅔⅛⅜⅝⅞]";

/// The characters of which a unit of fabric holds at least one.
pub(super) const FABRIC_UNITS: &str = "MmIi\"″”";

/// The characters of which a unit of yarn's length holds at least one.
pub(super) const YARN_UNITS: &str = "MmYy";

/// Returns the schema of a text in which a figure stands before a unit that holds one of these characters.
fn figure_then(units: &str, example: &str, what: &str) -> Schema {
    Schema::of(&["string"], example).pattern(&format!("{FIGURE}[\\s\\S]*[{units}]"), what)
}

macro_rules! quantity {
    ($($type:ty, $what:literal, $parse:expr, $schema:expr;)*) => { $(
        impl Field for $type {
            const WHAT: &'static str = $what;

            fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
                read_with(node, Self::WHAT, notes, $parse)
            }

            fn schema(_: &mut Definitions) -> Schema {
                let schema: fn(&str) -> Schema = $schema;
                schema(Self::WHAT)
            }
        }
    )* };
}

quantity! {
    Amount, "an amount like `4.5 skeins`, `452 g` or `1010 m`", |text, _| Self::parse(text),
        |what| figure_then("A-Za-z", "452 g", what).saying("In skeins, balls, hanks, cakes or cones, in g, kg, oz or lb, or in m or yd.");
    Count, "a number", |text, _| Self::parse(text), |what| {
        let number = Schema::of(&["number", "string"], "22").with("minimum", 0);
        number.pattern(FIGURE, what).saying("Up to three decimals.")
    };
    Mass, "a weight like `12 g`", |text, _| Self::parse(text),
        |what| figure_then("GgOoLl", "12 g", what).saying("In g, kg, oz or lb.");
    FabricLength, "a measurement like `10 cm` or `4 in`", Self::parse,
        |what| figure_then(FABRIC_UNITS, "10 cm", what).saying("In mm, cm, m or in.");
    Inch, "`2.5` or `2.54`", |text, _| Self::parse(text), |what| {
        let number = Schema::of(&["number", "string"], "2.54").with("minimum", 2.5).with("maximum", 2.54);
        number.pattern("2[.,]5", what).saying("In centimetres.")
    };
    Needle, "a needle like `4 mm circular 80 cm` or `US 6`", Self::parse, |what| {
        let size = format!("{FIGURE}[\\s\\S]*[A-Za-z]|[A-Za-z][\\s\\S]*{FIGURE}");
        let needle = Schema::of(&["string"], "4 mm circular 80 cm").pattern(&size, what);
        needle.saying("Its size first, in mm or as a US or UK number; then its kind, and its length in cm or in.")
    };
    Percent, "a percentage like `10%`", |text, _| Self::parse(text), |what| figure_then("%A-Za-z", "10%", what);
    Price, "a price like `7.00 GBP`", |text, _| Self::parse(text), |what| {
        let price = Schema::of(&["string"], "7.00 GBP").pattern(&format!("{FIGURE}[\\s\\S]*[A-Za-z£€]|[A-Za-z£€][\\s\\S]*{FIGURE}"), what);
        price.saying("The currency by its three letters.")
    };
    PutUp, "how it is sold, like `225 m / 100 g`", |text, _| Self::parse(text), |what| {
        let both = format!("{FIGURE}[\\s\\S]*[A-Za-z][\\s\\S]*{FIGURE}[\\s\\S]*[A-Za-z]");
        let put_up = Schema::of(&["string"], "225 m / 100 g").pattern(&both, what);
        put_up.saying("A length in m or yd and a mass in g, kg, oz or lb.")
    };
}

/// What is added to needs before whole skeins are counted: from nothing to as much again. Less than needs would leave a
/// knitter short, and more is a slip.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Margin(Percent);

impl Margin {
    /// A tenth: common practice is 10 to 15 in the hundred over what the sample took.
    pub const USUAL: Self = Self(Percent::from_hundredths(1000));

    /// Returns the margin of a share; nothing for one that is out of bounds.
    pub fn new(share: Percent) -> Option<Self> {
        (0..=10_000).contains(&share.hundredths()).then_some(Self(share))
    }

    /// Returns the share.
    pub fn share(self) -> Percent {
        self.0
    }
}

impl Field for Margin {
    const WHAT: &'static str = "a percentage from `0%` to `100%`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let share = Percent::read(node, notes)?;
        let margin = Self::new(share);
        if margin.is_none() {
            let message = format!("{} is no margin", share.show());
            notes.value(&BAD_QUANTITY, node, message, Some(format!("write {}", Self::WHAT)));
        }
        margin
    }

    fn schema(_: &mut Definitions) -> Schema {
        figure_then("%A-Za-z", "10%", Self::WHAT)
    }
}

/// A standard weight, and the name she gives it.
#[derive(Clone, Debug)]
pub struct Weight {
    /// The standard category.
    pub category: &'static YarnWeight,
    /// The name as written, or the category's own where she wrote its number.
    pub words: String,
}

impl Field for Weight {
    const WHAT: &'static str = "a standard weight's name or number, like `DK` or `3`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let text = String::read(node, notes)?;
        match yarn_weights::by_name(&text) {
            Ok(category) => {
                let number = text.bytes().all(|byte| byte.is_ascii_digit());
                Some(Self { category, words: if number { category.name.clone() } else { text } })
            }
            Err(why) => {
                notes.value(&WEIGHT_UNKNOWN, node, why.to_string(), Some(why.help()));
                None
            }
        }
    }

    fn schema(_: &mut Definitions) -> Schema {
        // Names are read in any capitals and under several systems, so the usual ones are offered and not insisted on.
        let usual =
            ["Lace", "Super Fine", "Fine", "DK", "Light", "Worsted", "Aran", "Medium", "Bulky", "Super Bulky", "Jumbo"];
        let number = Schema::of(&["string", "integer"], "DK").with("maximum", 7).with("minLength", 1);
        number.else_write(Self::WHAT).offering(usual)
    }
}
