//! Every sum that was collected from publishers, done again.
//!
//! `worked_examples.csv` is the collection as it was read, slips included. Each row has a closure here that works it out
//! with functions of `src`, or stands in `NORMS` with the reason why there is nothing to work out. Every figure of the
//! published answer must be accounted for, in order.

use std::collections::BTreeSet;

use super::{count, fabric, grams, square_inches, yarn};
use ballband::measure::rounding::{divide_near, divide_up};
use ballband::measure::{Area, Count, FabricLength, Grist, Inch, Mass, Percent, PutUp, System, YarnLength};
use ballband::reckon::evidence::{LONG_TAIL_CAST_ON, Swatch, SwatchStitches, by_stitches, scaled, used};
use ballband::reckon::gauge::PerLength;
use ballband::reckon::multiple::{Multiple, Parity};
use ballband::reckon::shape::{Shape, triangle_stitches};
use ballband::reckon::shaping::{Worked, paired};
use ballband::reckon::spread::{Change, Edges, spread};
use ballband::reckon::{Skeins, ease, skeins};
use ballband::standards::table::Table;
use ballband::standards::yardage::{self, Item};

const CSV: &str = include_str!("worked_examples.csv");

/// One part of a published answer.
enum Figure {
    /// Our value at the printed precision; the same is printed.
    Agrees(String),
    /// Printed, and no result: a formula, a figure that was given, a choice of the publisher.
    Given(&'static str),
    /// Printed otherwise than we work it out, as the note of the row says.
    Misprint { ours: String, printed: &'static str, why: &'static str },
    /// Not printed, or cut off; the note of the row has our value.
    Ours(String),
}

use Figure::{Agrees, Given, Misprint, Ours};

/// Topic, publisher, inputs and how to work them out.
type Sum = (&'static str, &'static str, &'static str, fn() -> Vec<Figure>);

/// Topic, publisher, inputs and why there is nothing to work out.
const NORMS: [(&str, &str, &str, &str); 3] = [
    ("B yarn: margin", "Devious Knitter", "sample used x", "a norm, not a sum"),
    ("B yarn: cable uplift", "HeartStrings FiberArts", "6-st cable", "a rule of thumb between 20 and 50 %"),
    (
        "D multi-size row",
        "E J Heywood",
        "P4 [5:6:6:5], p2tog, (p8 [9:7:8:7], p2tog) 6 [6:8:8:10] times, p4 [5:6:6:5]",
        "instructions of a row, which nothing here reads",
    ),
];

/// The yards of an item in the handbook's table, from the lightest yarn.
fn in_the_table(item: Item) -> Vec<Figure> {
    let rows = yardage::all().iter().filter(|row| row.item == item);
    rows.flat_map(|row| [row.length.min, row.length.max]).map(|length| Agrees(yards(length, 0))).collect()
}

/// A number of small units in a larger unit, near, with so many decimals.
fn decimal(small: i64, unit: i64, decimals: u32) -> String {
    let tens = 10_i128.pow(decimals);
    digits(divide_near(i128::from(small) * tens, unit.into()).unwrap(), decimals)
}

fn digits(scaled: i128, decimals: u32) -> String {
    let tens = 10_i128.pow(decimals);
    match decimals {
        0 => scaled.to_string(),
        _ => format!("{}.{:0width$}", scaled / tens, scaled % tens, width = decimals as usize),
    }
}

fn whole(count: Count) -> String {
    decimal(count.thousandths(), 1000, 0)
}

fn metres(length: YarnLength, decimals: u32) -> String {
    decimal(length.micrometres(), 1_000_000, decimals)
}

fn yards(length: YarnLength, decimals: u32) -> String {
    decimal(length.micrometres(), 914_400, decimals)
}

fn inches(length: FabricLength, decimals: u32) -> String {
    decimal(length.nanometres(), 25_000_000, decimals)
}

fn in_square_inches(area: Area, decimals: u32) -> String {
    decimal(area.square_micrometres(), 625_000_000, decimals)
}

fn percent(share: Percent, decimals: u32) -> String {
    decimal(share.hundredths(), 100, decimals)
}

fn put_up(text: &str) -> PutUp {
    PutUp::parse(text).unwrap()
}

fn grist(text: &str) -> Grist {
    Grist::of(put_up(text)).unwrap()
}

fn all(part: i64, of: i64) -> Percent {
    Percent::from_hundredths(10_000).times_near(part, of).unwrap()
}

fn per_inch(number: &str) -> PerLength {
    PerLength { count: count(number), over: fabric("1 in") }
}

fn bare(length: &str) -> PutUp {
    PutUp { length: yarn(length), mass: grams("50") }
}

fn to_buy(needs: YarnLength, put_up: PutUp) -> Skeins {
    skeins(needs, Percent::ZERO, put_up).unwrap()
}

fn rectangle(width: &str, height: &str) -> Area {
    Shape::Rectangle { width: fabric(width), height: fabric(height) }.area().unwrap()
}

fn sum(areas: &[Area]) -> Area {
    Area::sum(areas.iter().copied()).unwrap()
}

fn plain_swatch(stitches: &str, rows: &str) -> Count {
    let zero = Count::ZERO;
    SwatchStitches { stitches: count(stitches), rows: count(rows), cast_on: zero, cast_off: zero }.worked().unwrap()
}

fn nearest(gauge: &str, measure: &str, parity: Option<Parity>) -> i64 {
    let multiple = Multiple { parity, ..Multiple::ANY };
    per_inch(gauge).whole_for(fabric(measure), multiple).unwrap().nearest
}

/// An inch measurement in centimetres at an inch, with so many decimals.
fn centimetres(text: &str, inch: Inch, decimals: u32) -> String {
    decimal(FabricLength::parse(text, inch).unwrap().nanometres(), 10_000_000, decimals)
}

/// A body with a share of ease, up to the whole inch.
fn with_ease(body: &str, hundredths: i64) -> String {
    let (above, below) = Percent::from_hundredths(hundredths).on_top().unwrap();
    let finished = fabric(body).times_near(above, below).unwrap();
    assert_eq!(ease::percent(fabric(body), finished), Some(Percent::from_hundredths(hundredths)));
    digits(divide_up(finished.nanometres().into(), 25_000_000).unwrap(), 0)
}

const SUMS: &[Sum] = &[
    ("B yarn: sample weight", "Kati Maaria", "project 180 g; skein 200 g = 220 m", || {
        let taken = used(grams("200"), grams("20")).unwrap();
        vec![Agrees(format!("{} m", metres(put_up("200 g = 220 m").length_of(taken).unwrap(), 0)))]
    }),
    ("B yarn: remainder in skein", "Interweave", "70 g left of 100 g; skein 210 yd", || {
        vec![Agrees(format!("{} yd", yards(put_up("100 g = 210 yd").length_of(grams("70")).unwrap(), 0)))]
    }),
    ("B yarn: sample weight", "Yarnberry", "object 90 g; skein 142 g = 275 yd", || {
        let length = put_up("142 g = 275 yd").length_of(grams("90")).unwrap();
        vec![
            Agrees(format!("{} %", percent(all(90, 142), 0))),
            Agrees(format!("{} yd", yards(length, 0))),
            Misprint {
                ours: format!("{} yd", yards(length, 1)),
                printed: "176",
                why: "174 is 176 further down the page",
            },
        ]
    }),
    ("B yarn: leftover length", "Maddie Harvey Designs", "25 g ball = 115 m; left 14.32 g", || {
        let grist = grist("25 g = 115 m");
        vec![
            Agrees(format!("{} m per g", metres(grist.length_of(grams("1")).unwrap(), 1))),
            Agrees(format!("{} m", metres(grist.length_of(grams("14.32")).unwrap(), 2))),
        ]
    }),
    ("B yarn: leftover length", "Cottage Chick Knits", "113 g skein = 420 yd; left 80 g", || {
        let skein = put_up("113 g = 420 yd");
        vec![
            Agrees(format!("{} yd per g", yards(skein.length_of(grams("1")).unwrap(), 1))),
            Misprint {
                ours: yards(skein.length_of(grams("80")).unwrap(), 1),
                printed: "296 yd",
                why: "the rate was rounded to 3.7 first",
            },
        ]
    }),
    ("B yarn: swatch area", "Kephren Knitting Studio", "swatch 8 x 8 in weighs 10 g", || {
        let swatch = Swatch { mass: grams("10"), area: rectangle("8 in", "8 in") };
        vec![Agrees(format!("{} sq in per g", in_square_inches(swatch.area_of(grams("1")).unwrap(), 1)))]
    }),
    ("B yarn: added length by area", "Kephren Knitting Studio", "40 in round, 2 in longer, 6.4 sq in per g", || {
        let more = Shape::Tube { girth: fabric("40 in"), length: fabric("2 in") }.area().unwrap();
        let swatch = Swatch { mass: grams("10"), area: square_inches(64) };
        let mass = swatch.mass_of(more).unwrap();
        vec![
            Agrees(format!("{} sq in", in_square_inches(more, 0))),
            Agrees(format!("{} g", decimal(mass.nanograms(), 1_000_000_000, 1))),
        ]
    }),
    ("B yarn: added length by stitches", "KDD and Co", "8 in longer; 5 rows per in; 140 body sts", || {
        let rows = per_inch("5").count_for(fabric("8 in")).unwrap();
        vec![
            Agrees(format!("{} rows", whole(rows))),
            Agrees(format!("{} sts", whole(plain_swatch("140", &rows.show())))),
        ]
    }),
    ("B yarn: stitches", "Knit n More", "200 sts x 126 rows; 45 sts per yd", || {
        let body = plain_swatch("200", "126");
        let length = by_stitches(yarn("1 yd"), count("45"), body).unwrap();
        let sleeves = length.times_near(1, 3).unwrap();
        vec![
            Agrees(format!("{} sts", whole(body))),
            Agrees(format!("{} yd", yards(length, 0))),
            Agrees(yards(sleeves, 0)),
            Agrees(format!("{} yd", yards(length.checked_add(sleeves).unwrap(), 0))),
        ]
    }),
    (
        "B yarn: stitches by swatch",
        "Get Knitting",
        "swatch 100 x 100 sts = 70 g; back 150 x 260, front same, two sleeves 110 x 240",
        || {
            let (back, sleeve) = (plain_swatch("150", "260"), plain_swatch("110", "240"));
            let garment = Count::sum([back, back, sleeve, sleeve]).unwrap();
            let swatch = plain_swatch("100", "100");
            let mass = by_stitches(grams("70"), swatch, garment).unwrap();
            vec![
                Agrees(format!("{} sts", whole(garment))),
                Agrees(format!("factor {}", decimal(garment.thousandths(), swatch.thousandths(), 2))),
                Ours(format!("{} g", decimal(mass.nanograms(), 1_000_000_000, 1))),
            ]
        },
    ),
    ("B yarn: swatch with edges", "Tossing the Stash", "20 sts x 20 rows + 40 cast-on + 20 bind-off; 2 g", || {
        let swatch = SwatchStitches {
            stitches: count("20"),
            rows: count("20"),
            cast_on: LONG_TAIL_CAST_ON,
            cast_off: count("1"),
        };
        let stitches = swatch.worked().unwrap();
        vec![
            Agrees(format!("{} sts", whole(stitches))),
            Agrees(format!("{} sts per g", whole(stitches.times_near(1, 2).unwrap()))),
        ]
    }),
    (
        "B yarn: scaling sizes by area",
        "Colourful Designs",
        "new (28x15+10x8)x2; old (22x14+7x8)x2; colours 250, 90, 20, 60 yd",
        || {
            let (body, sleeve) = (rectangle("28 in", "15 in"), rectangle("10 in", "8 in"));
            let new = sum(&[body, sleeve, body, sleeve]);
            let (body, sleeve) = (rectangle("22 in", "14 in"), rectangle("7 in", "8 in"));
            let old = sum(&[body, sleeve, body, sleeve]);
            let colour = |length: &str, decimals| yards(scaled(yarn(length), old, new).unwrap(), decimals);
            vec![
                Agrees(in_square_inches(new, 0)),
                Agrees(in_square_inches(old, 0)),
                Agrees(decimal(new.square_micrometres(), old.square_micrometres(), 2)),
                Agrees(colour("250 yd", 0)),
                Agrees(colour("90 yd", 0)),
                Misprint { ours: colour("20 yd", 1), printed: "26", why: "even 20 × 1.37 is 27.4" },
                Misprint { ours: colour("60 yd", 1), printed: "83 yd", why: "rounded up, the others near" },
            ]
        },
    ),
    ("B yarn: rectangle area", "Lindy's Knits and Laces", "back 20 x 28 in, two pieces", || {
        let back = rectangle("20 in", "28 in");
        vec![Agrees(in_square_inches(back, 0)), Agrees(format!("{} sq in", in_square_inches(sum(&[back, back]), 0)))]
    }),
    ("B yarn: trapezium area", "Lindy's Knits and Laces", "sleeve 8 in to 15 in over 18 in", || {
        let sleeve = Shape::Trapezium { top: fabric("15 in"), bottom: fabric("8 in"), height: fabric("18 in") };
        vec![Given("(b1+b2)h/2"), Ours(format!("result {} sq in", in_square_inches(sleeve.area().unwrap(), 0)))]
    }),
    ("B yarn: garment area", "Sweet Meadow Knits", "49 x 23 + 14 x 18 x 2 in", || {
        let sleeve = rectangle("14 in", "18 in");
        let area = sum(&[rectangle("49 in", "23 in"), sleeve, sleeve]);
        vec![Agrees(format!("{} sq in", in_square_inches(area, 0)))]
    }),
    ("B yarn: part skeins summed", "Jennie Sits and Knits", "84 + 76 + 60 + 130 + 130 yd (page says 490)", || {
        let parts = ["84 yd", "76 yd", "60 yd", "130 yd", "130 yd"].map(yarn);
        let ours = yards(YarnLength::sum(parts).unwrap(), 0);
        vec![Misprint { ours, printed: "490 yd", why: "added wrongly, 10 too high" }]
    }),
    ("B yarn: piece area", "Jennie Sits and Knits", "22 x 14 ; 4.75 x 10 x 2 ; 7 x 10 in", || {
        let (body, sleeve, last) =
            (rectangle("22 in", "14 in"), rectangle("4.75 in", "10 in"), rectangle("7 in", "10 in"));
        vec![
            Agrees(in_square_inches(body, 0)),
            Agrees(in_square_inches(sum(&[sleeve, sleeve]), 0)),
            Agrees(in_square_inches(last, 0)),
            Agrees(format!("{} sq in", in_square_inches(sum(&[body, sleeve, sleeve, last]), 0))),
        ]
    }),
    ("B yarn: round count", "Cromulent Knitter", "8 sts more every 2nd round, 16 rounds from 8", || {
        // Pairs of rounds as one: the first of 16 stitches, each further one of 16 more.
        let pairs = |pairs| triangle_stitches(16, 16, pairs).unwrap();
        let (total, eight) = (pairs(8), pairs(4));
        // After round 11 the sixth pair has had one of its rounds, of 48.
        let eleven = pairs(5) + (pairs(6) - pairs(5)) / 2;
        vec![
            Agrees(format!("{total} sts")),
            Agrees(eight.to_string()),
            Given("after round 8"),
            Agrees(format!("= {} %", percent(all(eight, total), 0))),
            Agrees(eleven.to_string()),
            Given("after round 11"),
            Agrees(format!("= {} %", percent(all(eleven, total), 0))),
        ]
    }),
    ("B yarn: shawl formula", "Madorville", "7 sts, +2 each row, N rows", || {
        // Two more a row is four more every second row: 7, 7, 11, 11, … ends with 2N + 3, as the page says. With two
        // more in every single row it would be N² + 6N, and end with 2N + 5.
        for rows in (2..300).step_by(2) {
            assert_eq!(triangle_stitches(14, 8, rows / 2), Some(rows * rows + 5 * rows));
            assert_eq!(
                triangle_stitches(7, 4, rows / 2).zip(triangle_stitches(7, 4, rows / 2 - 1)).map(|(n, m)| n - m),
                Some(2 * rows + 3)
            );
            assert_eq!(triangle_stitches(7, 2, rows), Some(rows * rows + 6 * rows));
        }
        vec![Given("N^2 + 5N sts"), Given("7 to 2N+3")]
    }),
    ("B yarn: cable uplift", "Creative Knitting", "46-st cable panel = 7.25 in; plain 6 sts per in", || {
        let plain = per_inch("6").count_for(fabric("7.25 in")).unwrap();
        vec![Agrees(format!("{} plain sts", plain.show())), Given("46")]
    }),
    ("B yarn: plausibility", "K Yarns", "man's medium, 4 skeins of 800 yd", || {
        let skeins = |length| bare(length).length_of_skeins(count("4")).unwrap();
        assert_eq!(yards(skeins("400 yd"), 0), "1600");
        vec![Agrees(format!("{} yd", yards(skeins("800 yd"), 0))), Given("4 x 400 yd")]
    }),
    ("B yarn: humidity", "Gerwerken Crafts", "100 g sock skein", || {
        let apart = grist("430 yd / 100 g").apart(grist("440 yd / 100 g")).unwrap();
        vec![Given("430 yd"), Given("440 yd"), Ours(format!("{} % spread", percent(apart, 1)))]
    }),
    ("C substitution: skeins", "A Good Yarn", "9 balls of 200 yd (182 m); new ball 109 yd (100 m)", || {
        let (in_yards, in_metres) = (bare("200 yd"), bare("182 m"));
        let (in_yards, in_metres) =
            (in_yards.length_of_skeins(count("9")).unwrap(), in_metres.length_of_skeins(count("9")).unwrap());
        let (by_yards, by_metres) = (to_buy(in_yards, bare("109 yd")), to_buy(in_metres, bare("100 m")));
        assert_eq!(by_metres.whole, 17);
        vec![
            Agrees(format!("{} yd", yards(in_yards, 0))),
            Agrees(format!("{} m", metres(in_metres, 0))),
            Agrees(decimal(by_yards.exact.thousandths(), 1000, 1)),
            Agrees(format!("{} balls", by_yards.whole)),
            Ours(format!("{} yd route", decimal(by_yards.exact.thousandths(), 1000, 2))),
            Ours(format!("{} m route", decimal(by_metres.exact.thousandths(), 1000, 2))),
        ]
    }),
    ("C substitution: skeins", "Wools of Nations", "10 skeins of 112 m; new 192 m", || {
        let needs = bare("112 m").length_of_skeins(count("10")).unwrap();
        let buy = to_buy(needs, bare("192 m"));
        vec![
            Agrees(format!("{} m", metres(needs, 0))),
            Agrees(decimal(buy.exact.thousandths(), 1000, 1)),
            Agrees(format!("{} skeins", buy.whole)),
        ]
    }),
    ("C substitution: rounding dissent", "Nordic Mart", "1100 yd at 109 yd per skein", || {
        let buy = to_buy(yarn("1100 yd"), bare("109 yd"));
        vec![
            Agrees(decimal(buy.exact.thousandths(), 1000, 2)),
            Misprint { ours: buy.whole.to_string(), printed: "10", why: "the shop rounds up only from three tenths" },
        ]
    }),
    ("C substitution: per colour", "Nordic Mart", "4 x 115, 2 x 115, 2 x 115 yd; new 220 yd", || {
        let needs = |skeins| bare("115 yd").length_of_skeins(count(skeins)).unwrap();
        let exact = |needs| decimal(to_buy(needs, bare("220 yd")).exact.thousandths(), 1000, 2);
        assert_eq!(to_buy(needs("4"), bare("220 yd")).whole, 3);
        assert_eq!(to_buy(needs("2"), bare("220 yd")).whole, 2);
        let down = || Misprint { ours: exact(needs("2")), printed: "1", why: "rounded down on purpose" };
        vec![
            Agrees(yards(needs("4"), 0)),
            Agrees(yards(needs("2"), 0)),
            Agrees(format!("{} yd", yards(needs("2"), 0))),
            Agrees(exact(needs("4"))),
            down(),
            down(),
        ]
    }),
    ("C substitution: by weight put-up", "Holst Garn", "350 g; 50 g per skein at 238 m", || {
        let skein = put_up("50 g = 238 m");
        vec![
            Agrees(format!("{} skeins", grams("350").portions_up(skein.mass).unwrap())),
            Ours(format!("{} m", metres(skein.length_of(grams("350")).unwrap(), 0))),
        ]
    }),
    ("C held together: same yarn", "Susanna Winter", "400 m per 100 g doubled", || {
        let doubled = grist("400 m / 100 g").held(2).and_then(Grist::per_100_g).unwrap();
        vec![Agrees(format!("{} m per 100 g", metres(doubled, 0)))]
    }),
    ("C held together: same yarn", "LBHandknits", "800 and 300 m per 100 g doubled", || {
        let doubled = |text| metres(grist(text).held(2).and_then(Grist::per_100_g).unwrap(), 0);
        vec![Agrees(doubled("800 m / 100 g")), Agrees(format!("{} m per 100 g", doubled("300 m / 100 g")))]
    }),
    ("C held together: unlike yarns", "LBHandknits", "A 400 m, B 200 m per 100 g", || {
        let both = Grist::together([grist("400 m / 100 g"), grist("200 m / 100 g")]).unwrap();
        let metre = both.mass_of(yarn("1 m")).unwrap();
        vec![
            Ours(format!("{} g per m", decimal(metre.nanograms(), 1_000_000_000, 2))),
            Ours(format!("{} m per 100 g", metres(both.per_100_g().unwrap(), 1))),
        ]
    }),
    ("C held together: gauge", "Bonito Club", "22 sts per 10 cm, two strands", || {
        let gauge = count("22").times_near(72, 100).unwrap();
        vec![
            Given("x 0.72"),
            Agrees(gauge.show()),
            Agrees(format!("{} sts", Multiple::ANY.around(gauge).unwrap().nearest)),
        ]
    }),
    ("B yarn: adult sweater by gauge", "Dummies", "7-8, 6-7, 5-6, 4-5, 3-4, 1.5-3 sts per in", || {
        in_the_table(Item::AdultSweater)
    }),
    ("B yarn: hat by gauge", "Dummies", "same classes", || in_the_table(Item::Hat)),
    ("C grist", "Yarnworker", "g, yd on label", || {
        let ounce = Mass::parse("1 oz").unwrap();
        let ounces = Mass::parse("1 lb").unwrap().portions_up(ounce).unwrap();
        vec![
            Misprint {
                ours: decimal(ounce.nanograms(), 1_000_000_000, 4),
                printed: "28",
                why: "the ounce is rounded to whole grams",
            },
            Agrees(format!("x {ounces} = yd per lb")),
        ]
    }),
    ("D stitches from measure", "Pink Brutus Knits", "36 in at 5 sts per in; repeat 7", || {
        let stitches = per_inch("5").count_for(fabric("36 in")).unwrap();
        let seven = Multiple { of: 7, ..Multiple::ANY };
        let around = per_inch("5").whole_for(fabric("36 in"), seven).unwrap();
        vec![
            Agrees(format!("{} sts", whole(stitches))),
            Agrees(format!("{} repeats", decimal(stitches.thousandths(), 7000, 1))),
            Ours(format!("{} or {}", around.below.unwrap(), around.above)),
        ]
    }),
    ("D sleeve shaping", "Kristen TenDyke", "7.75 in and 12 in at 5 sts per in", || {
        let cuff = per_inch("5").count_for(fabric("7.75 in")).unwrap();
        let (below, above) = (nearest("5", "7.75 in", Some(Parity::Even)), nearest("5", "12 in", None));
        let shaping = paired(below, above, 108, Worked::Flat).unwrap();
        vec![
            Agrees(cuff.show()),
            Agrees(below.to_string()),
            Agrees(above.to_string()),
            Agrees(format!("{} more", 2 * shaping.times())),
            Agrees(format!("{} increase rows", shaping.times())),
        ]
    }),
    ("D sleeve shaping", "Knitting Unplugged", "9 in and 13 in at 5.5 sts per in", || {
        let exact = |measure| per_inch("5.5").count_for(fabric(measure)).unwrap().show();
        vec![
            Agrees(exact("9 in")),
            Agrees(nearest("5.5", "9 in", None).to_string()),
            Agrees(exact("13 in")),
            Agrees(format!("{} sts", nearest("5.5", "13 in", None))),
        ]
    }),
    ("D rows from measure", "Olive Knits", "8 in at 6 rows per in", || {
        vec![Agrees(format!("{} rows", whole(per_inch("6").count_for(fabric("8 in")).unwrap())))]
    }),
    ("D rows and repeat", "Jill Wolcott Knits", "12 in at 5.5 rows per in; 6-row repeat", || {
        let six = Multiple { of: 6, ..Multiple::ANY };
        let rows = per_inch("5.5").whole_for(fabric("12 in"), six).unwrap();
        assert_eq!(rows.below, Some(rows.above));
        assert_eq!(six.stitches(11), Some(rows.nearest));
        vec![Agrees(format!("{} rows", rows.nearest)), Ours(format!("{} repeats", rows.nearest / six.of))]
    }),
    ("D unit conversion", "Frasier Knits", "36 in", || both_inches("36 in", ["90 cm", "91.4 cm"])),
    ("D unit conversion", "Frasier Knits", "60 in", || both_inches("60 in", ["150 cm", "152.4 cm"])),
    ("D unit conversion", "Jenna Sargent Edit", "60 in", || {
        let exact = FabricLength::parse("60 in", Inch::EXACT).unwrap();
        vec![
            Agrees(centimetres("60 in", Inch::TRADE, 0)),
            Agrees(exact.show(System::Metric, Inch::EXACT)),
            Ours(format!("exact {}", centimetres("60 in", Inch::EXACT, 1))),
        ]
    }),
    ("D ease sock", "Wabi Sabi", "ankle 9 in, 10 % negative, 7.5 sts per in", || {
        let (above, below) = Percent::from_hundredths(-1000).on_top().unwrap();
        let girth = fabric("9 in").times_near(above, below).unwrap();
        let even = Multiple { parity: Some(Parity::Even), ..Multiple::ANY };
        vec![
            Agrees(format!("{} in", inches(girth, 1))),
            Agrees(format!("{} sts", per_inch("7.5").count_for(girth).unwrap().show())),
            Agrees(format!("choose {}", per_inch("7.5").whole_for(girth, even).unwrap().nearest)),
        ]
    }),
    ("D ease torso", "Love of Knitting newsletter", "bust 40 in, standard 2 to 4 in", || {
        let finished = |ease| fabric("40 in").checked_add(fabric(ease)).unwrap();
        assert_eq!(ease::ease(fabric("40 in"), finished("2 in")), Some(fabric("2 in")));
        vec![Agrees(inches(finished("2 in"), 0)), Agrees(format!("{} in", inches(finished("4 in"), 0)))]
    }),
    ("D ease torso", "Farm and Fiber Knits", "chest 34 in, garment 42 in", || {
        let ease = ease::ease(fabric("34 in"), fabric("42 in")).unwrap();
        assert!(ease > FabricLength::ZERO);
        vec![Agrees(format!("{} in positive", inches(ease, 0)))]
    }),
    ("D ease percent", "Yarngal", "36 in, 5 to 10 % ; 15 to 20 %", || {
        vec![
            Agrees(with_ease("36 in", 500)),
            Agrees(format!("{} in", with_ease("36 in", 1000))),
            Agrees(with_ease("36 in", 1500)),
            Agrees(format!("{} in", with_ease("36 in", 2000))),
        ]
    }),
    ("D mixed-size body", "Sally Melville", "front of 45 in size, back of 41 in size", || {
        let half = |girth| fabric(girth).times_near(1, 2).unwrap();
        vec![Agrees(format!("{} in", inches(half("45 in").checked_add(half("41 in")).unwrap(), 0)))]
    }),
    (
        "D multiple plus edge",
        "Mary Gildersleeve",
        "multiple of 6 plus 1, 3 edge sts each side, 5 and 7 repeats",
        || {
            let multiple = Multiple { of: 6, plus: 1 + 3 + 3, parity: None };
            let stitches = |repeats| multiple.stitches(repeats).unwrap();
            vec![Agrees(stitches(5).to_string()), Agrees(format!("{} sts", stitches(7)))]
        },
    ),
    ("D multiple plus edge", "Read Knitting Patterns", "multiple of 6 plus 2", || {
        let multiple = Multiple { of: 6, plus: 2, parity: None };
        (1..=32).filter(|stitches| multiple.fits(*stitches)).map(|stitches| Agrees(stitches.to_string())).collect()
    }),
    ("D spread evenly", "Wool Pack Yarn", "51 sts, 4 increases, in the round", || {
        let gaps = spread(51, 4, Change::Increase, Edges::Round).unwrap();
        let each = |gap: &ballband::reckon::spread::Gap| vec![gap.stitches; usize::try_from(gap.times).unwrap()];
        gaps.iter().flat_map(each).map(|gap| Agrees(gap.to_string())).collect()
    }),
];

/// The page prints both factors, each with its result.
fn both_inches(text: &str, printed: [&str; 2]) -> Vec<Figure> {
    let trade = format!("{} cm", centimetres(text, Inch::TRADE, 0));
    let exact = format!("{} cm", centimetres(text, Inch::EXACT, 1));
    assert_eq!([&*trade, &*exact], printed);
    vec![
        Agrees(trade),
        Agrees(format!("by {}", Inch::TRADE.show())),
        Agrees(exact),
        Agrees(format!("by {}", Inch::EXACT.show())),
    ]
}

/// Where a figure stands in a text, not as a part of a longer number.
fn find(text: &str, figure: &str) -> Option<usize> {
    let part_of_number = |c: char| c.is_ascii_digit() || c == '.';
    text.match_indices(figure).map(|(at, _)| at).find(|at| {
        let (before, after) = (&text[..*at], &text[at + figure.len()..]);
        let starts = !figure.starts_with(|c: char| c.is_ascii_digit()) || !before.ends_with(part_of_number);
        let ends = !figure.ends_with(|c: char| c.is_ascii_digit()) || !after.starts_with(|c: char| c.is_ascii_digit());
        starts && ends
    })
}

/// What is wrong with the figures of a row; empty if nothing is.
fn wrong(published: &str, note: &str, figures: &[Figure]) -> Vec<String> {
    let mut wrong = Vec::new();
    let mut rest = published;
    for figure in figures {
        let printed = match figure {
            Agrees(ours) => ours,
            Given(printed) => *printed,
            Misprint { ours, printed, why } => {
                if find(printed, ours).is_some() || find(note, ours).is_none() || why.is_empty() {
                    wrong.push(format!("{ours} for {printed}: {note}"));
                }
                printed
            }
            Ours(ours) => {
                if find(note, ours).is_none() {
                    wrong.push(format!("{ours} is not in {note}"));
                }
                continue;
            }
        };
        match find(rest, printed) {
            Some(at) => {
                if rest[..at].contains(|c: char| c.is_ascii_digit()) {
                    wrong.push(format!("{} is not accounted for", &rest[..at]));
                }
                rest = &rest[at + printed.len()..];
            }
            None => wrong.push(format!("{printed} is not in {rest}")),
        }
    }
    if rest.contains(|c: char| c.is_ascii_digit()) {
        wrong.push(format!("{rest} is not accounted for"));
    }
    wrong
}

#[test]
fn every_row_is_worked_out_and_agrees() {
    let table = Table::read(CSV).unwrap();
    let mut trouble = Vec::new();
    let mut rows = BTreeSet::new();
    for row in table.rows() {
        let cell = |column| row.get(column).unwrap();
        let key = (cell("topic"), cell("publisher"), cell("inputs"));
        assert!(rows.insert(key), "{key:?} is there twice");
        let sums: Vec<&Sum> = SUMS.iter().filter(|sum| (sum.0, sum.1, sum.2) == key).collect();
        let norms = NORMS.iter().filter(|norm| (norm.0, norm.1, norm.2) == key).count();
        if sums.len() + norms != 1 {
            trouble.push(format!("{key:?}: {} closures and {norms} reasons", sums.len()));
        }
        for (_, _, _, work) in sums {
            let figures = work();
            assert!(!figures.is_empty());
            for wrong in wrong(cell("published answer"), cell("provenance"), &figures) {
                trouble.push(format!("{key:?}: {wrong}"));
            }
        }
    }
    let keys = SUMS.iter().map(|sum| (sum.0, sum.1, sum.2));
    for key in keys.chain(NORMS.iter().map(|norm| (norm.0, norm.1, norm.2))) {
        if !rows.contains(&key) {
            trouble.push(format!("{key:?} is no row"));
        }
    }
    assert!(NORMS.iter().all(|norm| !norm.3.is_empty()));
    assert_eq!(SUMS.len() + NORMS.len(), rows.len());
    assert_eq!(rows.len(), 53);
    assert!(trouble.is_empty(), "{trouble:#?}");
}

#[test]
fn a_wrong_figure_would_be_seen() {
    let agrees = |text: &str| Agrees(text.to_owned());
    assert!(wrong("80 sq in ; 12.5 g", "", &[agrees("80 sq in"), agrees("12.5 g")]).is_empty());
    assert!(!wrong("80 sq in ; 12.5 g", "", &[agrees("80 sq in")]).is_empty(), "one left over");
    assert!(!wrong("80 sq in ; 12.5 g", "", &[agrees("12.5 g")]).is_empty(), "one left out");
    assert!(!wrong("80 sq in ; 12.5 g", "", &[agrees("80 sq in"), agrees("2.5 g")]).is_empty());
    assert!(!wrong("180 sts", "", &[agrees("80 sts")]).is_empty());
    assert!(!wrong("", "recomputed 480", &[Ours("48".to_owned())]).is_empty());
    let misprint = |ours: &str| Misprint { ours: ours.to_owned(), printed: "490 yd", why: "a slip" };
    assert!(wrong("490 yd", "recomputed 480", &[misprint("480")]).is_empty());
    assert!(!wrong("490 yd", "recomputed 480", &[misprint("490")]).is_empty());
}
