//! What needs are worked out from: pieces of fabric, a weighed swatch, weighed yarn.

use super::field::{Field, record, wrong_type};
use super::schema::{Definitions, Schema};
use super::value::{Map, PieceShape};
use super::yaml::{Node, Notes, Yaml};
use crate::measure::{Amount, Count, FabricLength, Mass, Run};

record! {
    /// One piece of fabric, or several alike, by shape and measurements.
    pub struct Piece: "a piece of fabric" {
        /// Its shape.
        "shape" => shape: PieceShape,
        /// How wide it is; for a rectangle.
        "width" => width: Option<Dimension> = "40 (44, 48) cm",
        /// The width of its upper end; for a trapezium.
        "top" => top: Option<Dimension> = "upper arm",
        /// The width of its lower end; for a trapezium.
        "bottom" => bottom: Option<Dimension> = "wrist",
        /// The whole way round; for a tube.
        "girth" => girth: Option<Dimension> = "chest",
        /// The long edge, from tip to tip; for a triangle.
        "edge" => edge: Option<Dimension> = "180 cm",
        /// How far across; for a circle.
        "diameter" => diameter: Option<Dimension> = "30 cm",
        /// From end to end; for a triangle, from the middle of the long edge to the point.
        "length" => length: Option<Dimension> = "length",
        /// How many there are; one if it is not given.
        "times" => times: Option<u32> = "2",
    }
}

impl Piece {
    /// Returns the sides that are given, each with its key.
    pub fn sides(&self) -> impl Iterator<Item = (&'static str, &Dimension)> {
        let all = [
            ("width", &self.width),
            ("top", &self.top),
            ("bottom", &self.bottom),
            ("girth", &self.girth),
            ("edge", &self.edge),
            ("diameter", &self.diameter),
            ("length", &self.length),
        ];
        all.into_iter().filter_map(|(key, side)| Some((key, side.as_ref()?)))
    }
}

/// A side of a piece: one of the pattern's finished measurements by name, or a run of its own.
#[derive(Clone, Debug)]
pub enum Dimension {
    /// A finished measurement.
    Finished(String),
    /// A measurement for each size.
    Own(Run<FabricLength>),
}

impl Field for Dimension {
    const WHAT: &'static str = "the name of a finished measurement, or a measurement like `84 (94, 104) cm`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let named =
            node.value.scalar().is_some_and(|text| text.trim_start().chars().next().is_some_and(char::is_alphabetic));
        if named { String::read(node, notes).map(Self::Finished) } else { Run::read(node, notes).map(Self::Own) }
    }

    fn schema(_: &mut Definitions) -> Schema {
        let side = Schema::of(&["string", "boolean"], "chest").with("minLength", 1).else_write(Self::WHAT);
        side.or_zero().saying("In mm, cm, m or in.")
    }
}

record! {
    /// A piece of the fabric, measured and weighed.
    pub struct WeighedSwatch: "a weighed swatch" {
        /// What it weighs.
        "weight" => weight: Mass,
        /// How wide it is.
        "width" => width: Option<FabricLength>,
        /// How long it is.
        "length" => length: Option<FabricLength>,
        /// The stitches of a row.
        "stitches" => stitches: Option<Count> = "44",
        /// The rows between cast-on and cast-off.
        "rows" => rows: Option<Count> = "60",
        /// How many rows the cast-on is worth in yarn; two if it is not given.
        "cast on" => cast_on: Option<Count> = "2",
        /// How many rows the cast-off is worth in yarn; one if it is not given.
        "cast off" => cast_off: Option<Count> = "1",
    }
}

/// What went into a piece: all of it together, or by colour.
#[derive(Clone, Debug)]
pub enum Consumed {
    /// All yarns together.
    All(Amount),
    /// By the label of the colour.
    ByColour(Map<Amount>),
}

impl Field for Consumed {
    const WHAT: &'static str = "an amount like `452 g`, or one for each colour like `{ MC: 380 g, CC: 72 g }`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        match node.value {
            Yaml::Map(_) => Map::read(node, notes).map(Self::ByColour),
            Yaml::Text(_) | Yaml::Number(_) | Yaml::Fraction(_) => Amount::read(node, notes).map(Self::All),
            _ => {
                wrong_type(node, Self::WHAT, notes);
                None
            }
        }
    }

    fn schema(definitions: &mut Definitions) -> Schema {
        Amount::schema(definitions).or(Map::<Amount>::schema(definitions).not_nothing())
    }
}
