//! A yarn.

use super::field::{Field, record, wrong_type};
use super::gauge::Gauge;
use super::schema::{Definitions, Schema};
use super::value::{Colour, Map, Private, Ref, Weight, to};
use super::yaml::{Node, Notes, Yaml};
use crate::measure::{Amount, PutUp};

record! {
    /// A yarn. All but the title may be unknown.
    pub struct Yarn: "a yarn" {
        /// Who makes or dyes it.
        "maker" => maker: Option<Ref<to::Person>>,
        /// The standard weight, by name or number.
        "weight" => weight: Option<Weight>,
        /// What it is made of.
        "fibre" => fibre: Option<String> = "75% wool, 25% nylon",
        /// How it is sold: length and mass of one.
        "put-up" => put_up: Option<PutUp>,
        /// The gauge on its label.
        "gauge" => gauge: Option<Gauge> = "{ stitches: 22, over: 10 cm, needle: 4 mm }",
        /// Its shades, each with a colour.
        "shades" => shades: Map<Colour> = "{ reedbed: '#6b7f4c' }",
        /// How to wash it.
        "care" => care: Vec<String> = "[hand wash, dry flat]",
        /// What lies in the cupboard, for each shade; one amount for a yarn without shades.
        "on hand" => on_hand: Private<OnHand> = "{ reedbed: 3 balls, rope: 64 g }",
        /// Whether it is no longer made.
        "discontinued" => discontinued: Option<bool> = "false",
    }
}

/// What lies in the cupboard of one yarn.
#[derive(Clone, Debug)]
pub enum OnHand {
    /// So much of it, whatever its shade.
    All(Amount),
    /// So much of each shade.
    ByShade(Map<Amount>),
}

impl Default for OnHand {
    fn default() -> Self {
        Self::ByShade(Map::default())
    }
}

impl OnHand {
    /// Returns what is there of a shade; without one, what is there whatever its shade.
    pub fn of(&self, shade: Option<&str>) -> Option<Amount> {
        match (self, shade) {
            (Self::All(amount), None) => Some(*amount),
            (Self::ByShade(amounts), Some(shade)) => amounts.get(shade).copied(),
            (Self::All(_), Some(_)) | (Self::ByShade(_), None) => None,
        }
    }

    /// Returns the shades that are there, each once; nothing in the place of one for a yarn without shades.
    pub fn shades(&self) -> impl Iterator<Item = Option<&str>> {
        let (all, each) = match self {
            Self::All(_) => (Some(None), [].iter()),
            Self::ByShade(amounts) => (None, amounts.0.iter()),
        };
        all.into_iter().chain(each.map(|(shade, _)| Some(shade.as_str())))
    }
}

impl Field for OnHand {
    const WHAT: &'static str =
        "an amount for each shade like `{ reedbed: 3 balls }`, or one amount for a yarn without shades";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        match node.value {
            Yaml::Map(_) | Yaml::Null => Map::read(node, notes).map(Self::ByShade),
            Yaml::Text(_) | Yaml::Number(_) | Yaml::Fraction(_) => Amount::read(node, notes).map(Self::All),
            _ => {
                wrong_type(node, Self::WHAT, notes);
                None
            }
        }
    }

    fn absent() -> Option<Self> {
        Some(Self::default())
    }

    fn schema(definitions: &mut Definitions) -> Schema {
        Amount::schema(definitions).or(Map::<Amount>::schema(definitions))
    }
}
