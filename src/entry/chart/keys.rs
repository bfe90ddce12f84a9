//! The keys of charts and swatches, and their values.

use crate::entry::field::{Field, record, wrong_type};
use crate::entry::schema::{Definitions, Schema};
use crate::entry::value::{Covers, Fabric, Face, Map};
use crate::entry::yaml::{Node, Notes, Trail, Yaml};
use crate::measure::FabricLength;
use crate::notation::chart::Means;
use crate::standards::chart_symbols;

record! {
    /// What stands in a `chart` block.
    pub struct ChartKeys: "a chart" {
        /// What it is called; a swatch names its chart by it.
        "name" => name: Option<String> = "reeds",
        /// Whether it is worked flat, as it is if nothing is said, or in the round.
        "worked" => worked: Option<Fabric>,
        /// The side that row 1 is worked from; the right one if nothing is said.
        "begins" => begins: Option<Face>,
        /// How the rows between are worked, where the chart shows only every other row.
        "other rows" => other_rows: Option<String> = "purl",
        /// What each character stands for.
        "key" => key: Map<Meaning> = "{ o: MC, x: CC }",
        /// The rows from the bottom up, the first one worked first; each from left to right, a character for a cell. Two `|` in
        /// a row are the edges of what is repeated in that row.
        "rows" => rows: ChartRows,
        /// The columns that are repeated, counted from the right.
        "repeat" => repeat: Option<RepeatKeys>,
        /// How many stitches every row leaves, where it is the same throughout.
        "stitches" => stitches: Option<u32> = "18",
        /// Whether it shows everything that is knitted in its colours, or a part; a part if nothing is said.
        "covers" => covers: Option<Covers>,
    }
}

record! {
    /// The columns of a chart that are repeated.
    pub struct RepeatKeys: "a repeat" {
        /// The first column, counted from the right, where a right-side row begins.
        "from" => from: u32 = "3",
        /// The last column.
        "to" => to: u32 = "14",
    }
}

record! {
    /// What a character stands for where it has both a stitch and a colour.
    pub struct MeaningKeys: "what a character of a chart means" {
        /// The stitch.
        "stitch" => stitch: Option<String> = "k2tog",
        /// The label of the colour in the pattern's list of yarns.
        "colour" => colour: Option<String> = "CC",
    }
}

record! {
    /// How much of a chart is shown as fabric.
    pub struct SwatchKeys: "a swatch" {
        /// The name of the chart, where it is not written out here.
        "chart" => chart: Option<String> = "reeds",
        /// How wide the fabric is.
        "over" => over: Option<FabricLength>,
        /// How often the repeat stands side by side; three times if neither this nor a width is given.
        "repeats" => repeats: Option<u32> = "3",
        /// How often the chart stands one above the other; once if nothing is said.
        "up" => up: Option<u32> = "2",
    }
}

/// What a character stands for: a stitch's name or a colour's label, or both.
#[derive(Clone, Debug)]
pub struct Meaning(pub Means);

impl Field for Meaning {
    const WHAT: &'static str = "a colour's label, a stitch's name, or `{ stitch: NAME, colour: LABEL }`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        if let Yaml::Map(_) = node.value {
            let MeaningKeys { stitch, colour } = MeaningKeys::read(node, notes)?;
            return Some(Self(Means { stitch, colour }));
        }
        let text = String::read(node, notes)?;
        // What is no stitch is a colour, and whether the pattern has it is asked when its yarns are known.
        let is_stitch = chart_symbols::find(&text).is_some();
        let (stitch, colour) = if is_stitch { (Some(text), None) } else { (None, Some(text)) };
        Some(Self(Means { stitch, colour }))
    }

    fn schema(definitions: &mut Definitions) -> Schema {
        String::schema(definitions).or(MeaningKeys::schema(definitions))
    }
}

/// The rows of a chart: a text of several lines, or a list.
#[derive(Clone, Debug)]
pub struct ChartRows(pub Vec<String>);

impl Field for ChartRows {
    const WHAT: &'static str = "a row a line";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        match node.value {
            Yaml::List(items) => {
                let row = |(at, value)| String::read(&Node { value, trail: Trail::Item(&node.trail, at) }, notes);
                items.iter().enumerate().map(row).collect::<Option<Vec<String>>>().map(Self)
            }
            Yaml::Null | Yaml::Map(_) => {
                wrong_type(node, Self::WHAT, notes);
                None
            }
            _ => {
                let text = String::read(node, notes)?;
                Some(Self(text.lines().filter(|line| !line.trim().is_empty()).map(str::to_owned).collect()))
            }
        }
    }

    fn schema(_: &mut Definitions) -> Schema {
        Schema::of(&["string", "array"], "[xox, oxo]").else_write(Self::WHAT)
    }
}
