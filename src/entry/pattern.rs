//! A design.

use super::evidence::{Consumed, Piece, WeighedSwatch};
use super::field::{Field, record};
use super::gauge::Gauge;
use super::testers::Testers;
use super::value::{Choice, Date, Map, Margin, Private, Ref, Stage, Verdict, Wearer, Web, Words, to};
use super::yaml::{Node, Notes, Yaml};
use crate::measure::{Count, FabricLength, Needle, Price, Run, SizeNames, YarnLength};
use crate::standards::levels::Level;

record! {
    /// A design, from sketch to published.
    pub struct Pattern: "a pattern" {
        /// What it is: pullover, hat, shawl.
        "garment" => garment: Option<String> = "pullover",
        /// Whose standard body table applies.
        "wearer" => wearer: Option<Wearer>,
        /// The project level.
        "level" => level: Option<Level>,
        /// How far the design has come; `published` if it has a date of publication, else `sketch`.
        "stage" => stage: Option<Stage>,
        /// The day it came to each stage; a day that is still to come is planned.
        "reached" => reached: Private<Option<Reached>> = "{ sketch: 2026-08-02, swatch: 2026-09-14 }",
        /// The day it could first be had.
        "published" => published: Option<Date>,
        /// How it is made, in working order.
        "construction" => construction: Vec<String> = "[top-down, in the round]",
        /// The gauges it is made to: one for each stitch, the main one first.
        "gauge" => gauge: Vec<Gauge> = "{ stitches: 22, rows: 30, over: 10 cm, in: stockinette, needle: 4 mm }",
        /// The needles it takes.
        "needles" => needles: Vec<Needle> = "[4 mm circular 80 cm, 3.5 mm dpns]",
        /// The names of its sizes, smallest first.
        "sizes" => sizes: Option<SizeNames>,
        /// The body it is meant for: a measurement each.
        "to fit" => to_fit: Map<Run<FabricLength>> = "{ chest: '76 (86, 96) cm' }",
        /// The finished thing: a measurement each.
        "finished" => finished: Map<Run<FabricLength>> = "{ chest: '84 (94, 104) cm', length: '56 (57, 58) cm' }",
        /// The stitches across a finished measurement, by its name.
        "stitch counts" => stitch_counts: Map<Run<Count>> = "{ chest: '184 (206, 228)' }",
        /// The rows or rounds up a finished measurement, by its name.
        "row counts" => row_counts: Map<Run<Count>> = "{ length: '168 (171, 174)' }",
        /// The pieces of fabric it is made of, to work out one size's yarn from another's.
        "pieces" => pieces: Vec<Piece> = "[ { shape: tube, girth: chest, length: length } ]",
        /// The yarns it takes.
        "yarn" => yarn: Vec<YarnUse> = "[ { colour: MC, yarn: heron-dk, shade: reedbed, needs: '820 (905, 990) m' } ]",
        /// What is added to needs before whole skeins are bought; the studio's if it is not given.
        "margin" => margin: Option<Margin> = "15%",
        /// What else it takes.
        "notions" => notions: Vec<String> = "[tapestry needle, stitch markers]",
        /// The techniques a knitter will meet.
        "techniques" => techniques: Vec<Ref<to::Technique>> = "[short-rows, grafting]",
        /// Her own abbreviations in its written rows, by how they are written.
        "abbreviations" => abbreviations: Map<Abbreviation> = "{ MB: { what: make a bobble, uses: 1, makes: 1 } }",
        /// Where it can be had.
        "sold at" => sold_at: Vec<Sale> = "[ { place: quay-shop, url: 'https://example.org/yoke', price: 7.00 GBP } ]",
        /// What was wrong in earlier printings.
        "errata" => errata: Vec<Erratum> = "[ { date: 2026-11-01, text: 'Round 14, size S only: knit 6, not 5.' } ]",
        /// Whose idea it builds on.
        "after" => after: Vec<After> = "[ { what: the reeds, source: a tile in a ferry hall } ]",
        /// The piece that was knitted and weighed.
        "sample" => sample: Option<Sample> = "{ size: M, used: 452 g }",
        /// A piece of the fabric that was measured and weighed.
        "swatch" => swatch: Option<WeighedSwatch> = "{ weight: 10 g, width: 20 cm, length: 20 cm }",
        /// The call for test knitters.
        "test knit" => test_knit: Option<TestKnit> = "{ opens: 2026-09-01, closes: 2026-10-15, sizes wanted: '1 (2, 2)' }",
        /// Those who knitted it before publication; of one with `share: true` the site shows yarn, size and length, never the name.
        "testers" => testers: Testers = "[ { name: Ines, size: M, used: { MC: 905 m } } ]",
        /// The sizes that others have knitted.
        "tested in" => tested_in: Option<SizeNames> = "S (M, L)",
        /// Checks that are not made here or weigh otherwise, each with a reason.
        "checks" => checks: Map<Ruling> = "{ yardage-unlikely: { is: off, because: the smallest sizes are for children } }",
    }
}

record! {
    /// The day a design came to each stage.
    pub struct Reached: "the days a design came to its stages" {
        /// An idea, perhaps drawn.
        "sketch" => sketch: Option<Date>,
        /// A piece of fabric to judge gauge and pattern by.
        "swatch" => swatch: Option<Date>,
        /// The first whole piece was begun.
        "sample" => sample: Option<Date>,
        /// The text went to a technical editor.
        "tech edit" => tech_edit: Option<Date>,
        /// Others began to make it.
        "test knit" => test_knit: Option<Date>,
        /// It could be had.
        "published" => published: Option<Date>,
        /// It could no longer be had.
        "retired" => retired: Option<Date>,
    }
}

impl Reached {
    /// Returns the day of each stage that has one, in the order of stages.
    pub fn days(&self) -> impl Iterator<Item = (Stage, Date)> {
        Stage::ALL.iter().filter_map(|(_, stage)| Some((*stage, self.day(*stage)?)))
    }

    /// Returns the day it came to a stage, or is planned to.
    pub fn day(&self, stage: Stage) -> Option<Date> {
        match stage {
            Stage::Sketch => self.sketch,
            Stage::Swatch => self.swatch,
            Stage::Sample => self.sample,
            Stage::TechEdit => self.tech_edit,
            Stage::TestKnit => self.test_knit,
            Stage::Published => self.published,
            Stage::Retired => self.retired,
        }
    }
}

record! {
    /// One yarn a pattern takes, in one colour.
    pub struct YarnUse: "a yarn of a pattern" {
        /// The label of the colour in the text: MC, CC, A.
        "colour" => colour: Option<String> = "MC",
        /// The yarn.
        "yarn" => yarn: Option<Ref<to::Yarn>>,
        /// The shade of the sample.
        "shade" => shade: Option<String> = "reedbed",
        /// The length it takes, for each size; worked out from sample or swatch if it is not given.
        "needs" => needs: Option<Run<YarnLength>>,
        /// The stitches worked in it, for each size.
        "stitches" => stitches: Option<Run<Count>>,
        /// How many strands of it are held together; one if it is not given. Needs are of all strands.
        "strands" => strands: Option<u32>,
        /// Other yarns that are held together with it. Each takes as much length as one strand of it.
        "held with" => held_with: Vec<Held>,
        /// The skeins that the printed pattern asks for, for each size.
        "skeins" => skeins: Option<Run<Count>>,
    }
}

record! {
    /// One yarn that is held together with another.
    pub struct HeldYarn: "a yarn held with another" {
        /// The yarn.
        "yarn" => yarn: Ref<to::Yarn>,
        /// Its shade.
        "shade" => shade: Option<String>,
        /// How many strands of it are held; one if it is not given.
        "strands" => strands: Option<u32>,
    }
}

impl YarnUse {
    /// Returns whether more than one strand is held, of this yarn or of several.
    pub fn has_several_strands(&self) -> bool {
        self.strands.is_some_and(|strands| strands > 1) || !self.held_with.is_empty()
    }
}

/// A yarn held together with another: its key, or its key and shade. It is a line of its own, without needs.
#[derive(Clone, Debug)]
pub struct Held(pub YarnUse);

impl Field for Held {
    const WHAT: &'static str = "a yarn's key, or `{ yarn: KEY, shade: NAME }`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let HeldYarn { yarn, shade, strands } = match node.value {
            Yaml::Map(_) => HeldYarn::read(node, notes)?,
            _ => HeldYarn { yarn: Ref::read(node, notes)?, shade: None, strands: None },
        };
        let (colour, needs, stitches, skeins) = (None, None, None, None);
        Some(Self(YarnUse { colour, yarn: Some(yarn), shade, needs, stitches, strands, held_with: Vec::new(), skeins }))
    }

    fn schema(definitions: &mut super::schema::Definitions) -> super::schema::Schema {
        Ref::<to::Yarn>::schema(definitions).or(HeldYarn::schema(definitions))
    }
}

record! {
    /// One of her own abbreviations: how many stitches it takes and leaves, or what is worked in its place.
    pub struct Abbreviation: "an abbreviation" {
        /// What it means, in words.
        "what" => what: String = "make a bobble",
        /// The stitches it takes from the left needle.
        "uses" => uses: Option<u32> = "1",
        /// The stitches it leaves on the right needle.
        "makes" => makes: Option<u32> = "1",
        /// What is worked in its place, as it would stand in a row: its stitches are then counted.
        "rows" => rows: Option<String> = "'(k1, yo, k1) in next st, turn, p3, turn, sk2p'",
    }
}

record! {
    /// One place that sells a pattern.
    pub struct Sale: "a place that sells it" {
        /// The shop.
        "place" => place: Ref<to::Person>,
        /// The page of the pattern there.
        "url" => url: Option<Web>,
        /// What it costs there.
        "price" => price: Option<Price>,
    }
}

record! {
    /// One correction.
    pub struct Erratum: "a correction" {
        /// The day it was made known.
        "date" => date: Date,
        /// What was wrong and what is right.
        "text" => text: String = "'Round 14, size S only: knit 6, not 5.'",
    }
}

record! {
    /// Whose idea a design builds on.
    pub struct After: "what a design is after" {
        /// What was taken up.
        "what" => what: String = "the reeds",
        /// Whose it is.
        "source" => source: Words = "a tile in a ferry hall",
    }
}

record! {
    /// The piece that was knitted and weighed.
    pub struct Sample: "a sample" {
        /// Its size.
        "size" => size: String = "M",
        /// What went into it: all together, or by colour.
        "used" => used: Option<Consumed>,
    }
}

record! {
    /// The call for test knitters.
    pub struct TestKnit: "a test knit" {
        /// The first day.
        "opens" => opens: Option<Date>,
        /// The last day.
        "closes" => closes: Option<Date>,
        /// How many testers are wanted, for each size.
        "sizes wanted" => sizes_wanted: Option<Run<Count>>,
        /// Where to apply.
        "apply" => apply: Option<Web>,
        /// The days on which testers say how they get on.
        "check-ins" => check_ins: Vec<Date> = "[2026-09-15, 2026-10-01]",
        /// What testers send back; what is usual if it is not given.
        "comes back" => comes_back: Vec<String> = "[the gauge after washing, the weight of the yarn used]",
        /// What testers are given.
        "reward" => reward: Option<String> = "the finished pattern and one other of your choice",
    }
}

record! {
    /// How much one check weighs in one pattern, and why.
    pub struct Ruling: "what a pattern says of a check" {
        /// How much it weighs.
        "is" => is: Verdict,
        /// Why.
        "because" => because: String = "the smallest sizes are for children",
    }
}

impl Pattern {
    /// Returns the stage, worked out where it is not given.
    pub fn stage(&self) -> Stage {
        self.stage.unwrap_or(if self.published.is_some() { Stage::Published } else { Stage::Sketch })
    }

    /// Returns how many sizes the design has: one if none are named.
    pub fn size_count(&self) -> usize {
        self.sizes.as_ref().map_or(1, |names| names.len().max(1))
    }
}
