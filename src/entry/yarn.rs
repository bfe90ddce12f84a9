//! A yarn.

use super::field::record;
use super::gauge::Gauge;
use super::value::{Colour, Map, Private, Ref, Weight, to};
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
        /// What lies in the cupboard, for each shade.
        "on hand" => on_hand: Private<Map<Amount>> = "{ reedbed: 3 balls, rope: 64 g }",
        /// Whether it is no longer made.
        "discontinued" => discontinued: Option<bool> = "false",
    }
}
