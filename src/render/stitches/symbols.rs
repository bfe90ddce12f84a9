//! The drawings of stitches, after the council's published descriptions, and the marks of colours.
//!
//! Each is drawn in a square 200 wide and 200 high, with its corner at the top left. Which drawing is whose is told in
//! the `shape` column of `chart_symbols.csv`.

/// A point of a drawing.
pub type Point = (i64, i64);

/// One piece of a drawing.
#[derive(Clone, Copy, Debug)]
pub enum Part {
    /// A line through points.
    Line(&'static [Point]),
    /// A circle round a point.
    Ring(Point, i64),
    /// A filled circle.
    Disc(Point, i64),
    /// A filled shape.
    Area(&'static [Point]),
}

use Part::{Area, Disc, Line, Ring};

const RISING: Part = Line(&[(40, 170), (160, 30)]);
const FALLING: Part = Line(&[(40, 30), (160, 170)]);
const LEG_RIGHT: Part = Line(&[(100, 100), (155, 165)]);
const LEG_LEFT: Part = Line(&[(100, 100), (45, 165)]);
const LEG_MIDDLE: Part = Line(&[(100, 100), (100, 170)]);
const FOOT: Part = Line(&[(30, 182), (170, 182)]);
const VEE: Part = Line(&[(45, 40), (100, 155), (155, 40)]);
const VEE_FOOT: Part = Line(&[(55, 155), (145, 155)]);
const LOW_VEE: Part = Line(&[(45, 95), (100, 175), (155, 95)]);
const FOUR: Part = Line(&[(114, 85), (114, 20), (78, 65), (130, 65)]);
const FIVE: Part = Line(&[(124, 20), (86, 20), (83, 48), (110, 45), (124, 60), (112, 82), (82, 80)]);
const LOW_FOUR: Part = Line(&[(114, 180), (114, 115), (78, 160), (130, 160)]);
const LOW_FIVE: Part = Line(&[(124, 115), (86, 115), (83, 143), (110, 140), (124, 155), (112, 178), (82, 175)]);
const ROOF: Part = Line(&[(30, 92), (100, 35), (170, 92)]);

/// Returns the drawing of a stitch; an empty one for knitting, and for what is drawn otherwise: cables and no stitch.
pub fn stitch(name: &str) -> &'static [Part] {
    match name {
        "purl" => &[Disc((100, 100), 24)],
        "yarn over" => &[Ring((100, 100), 46)],
        "k2tog" => &[RISING, LEG_RIGHT],
        "ssk" => &[FALLING, LEG_LEFT],
        "p2tog" => &[RISING, LEG_RIGHT, FOOT],
        "ssp" => &[FALLING, LEG_LEFT, FOOT],
        "k1fb" => &[Line(&[(100, 30), (100, 170)]), Line(&[(100, 100), (50, 50)])],
        "M1 knitwise" => &[Line(&[(48, 165), (48, 40), (100, 115), (152, 40), (152, 165)])],
        "M1 purlwise" => &[Line(&[(65, 168), (65, 36), (115, 36), (142, 58), (142, 82), (115, 104), (65, 104)])],
        "M1 right" | "lifted increase right" => &[RISING, Line(&[(100, 100), (48, 45)])],
        "M1 left" | "lifted increase left" => &[FALLING, Line(&[(100, 100), (152, 45)])],
        "slip purlwise, yarn behind" => &[VEE, VEE_FOOT],
        "slip purlwise, yarn in front" => &[VEE, VEE_FOOT, Line(&[(55, 85), (145, 85)])],
        "k3tog" => &[RISING, LEG_RIGHT, LEG_MIDDLE],
        "p3tog" => &[RISING, LEG_RIGHT, LEG_MIDDLE, FOOT],
        "sk2p or sssk" => &[FALLING, LEG_LEFT, LEG_MIDDLE],
        "sssp" => &[FALLING, Line(&[(66, 30), (172, 154)]), LEG_LEFT, LEG_MIDDLE, FOOT],
        "s2kp2" => &[Line(&[(100, 25), (100, 172)]), Line(&[(45, 172), (100, 85), (155, 172)])],
        "k1 tbl" => &[Line(&[(50, 172), (140, 85), (142, 50), (118, 28), (82, 28), (58, 50), (60, 85), (150, 172)])],
        "p1 tbl" => &[
            Line(&[(58, 150), (136, 76), (138, 48), (116, 28), (84, 28), (62, 48), (64, 76), (142, 150)]),
            Line(&[(70, 178), (130, 178)]),
        ],
        "bobble" => &[Disc((100, 100), 66)],
        "increase 1 to 3" => &[Line(&[(45, 45), (100, 170), (155, 45)]), Line(&[(100, 40), (100, 170)])],
        "increase 1 to 4" => &[LOW_VEE, FOUR],
        "increase 1 to 5" => &[LOW_VEE, FIVE],
        "decrease 4 to 1, left" => &[Line(&[(30, 92), (65, 35), (170, 92)]), LOW_FOUR],
        "decrease 4 to 1, right" => &[Line(&[(30, 92), (135, 35), (170, 92)]), LOW_FOUR],
        "decrease 4 to 1, centred" => &[ROOF, LOW_FOUR],
        "decrease 5 to 1" => &[ROOF, LOW_FIVE],
        "k1 wrapping yarn twice" => &[Ring((78, 100), 42), Ring((122, 100), 42)],
        "bind off" => &[Line(&[(36, 150), (50, 112), (82, 90), (118, 90), (150, 112), (164, 150)])],
        "cast on" => &[Line(&[(100, 40), (100, 160)]), Line(&[(40, 100), (160, 100)])],
        _ => &[],
    }
}

/// Returns the mark of a colour by its place in the key, so that no cell is told by its colour alone. The first has none,
/// which is a sign of its own: an empty square. From the eighteenth on marks come again.
pub fn mark(place: usize) -> &'static [Part] {
    const MARKS: [&[Part]; 16] = [
        &[Line(&[(62, 62), (138, 138)]), Line(&[(138, 62), (62, 138)])],
        &[Disc((100, 100), 40)],
        &[Area(&[(100, 55), (148, 140), (52, 140)])],
        &[Line(&[(60, 60), (140, 60), (140, 140), (60, 140), (60, 60)])],
        &[Line(&[(100, 50), (150, 100), (100, 150), (50, 100), (100, 50)])],
        &[Line(&[(100, 50), (100, 150)]), Line(&[(50, 100), (150, 100)])],
        &[Line(&[(100, 50), (100, 150)])],
        &[Line(&[(50, 100), (150, 100)])],
        &[Area(&[(100, 145), (52, 60), (148, 60)])],
        &[Ring((100, 100), 44)],
        &[Line(&[(60, 140), (140, 60)])],
        &[Line(&[(60, 60), (140, 140)])],
        &[Area(&[(62, 62), (138, 62), (138, 138), (62, 138)])],
        &[Line(&[(55, 65), (100, 138), (145, 65)])],
        &[Line(&[(55, 138), (100, 65), (145, 138)])],
        &[Line(&[(80, 50), (80, 150)]), Line(&[(120, 50), (120, 150)])],
    ];
    let turn = place.checked_sub(1).map(|place| place % MARKS.len());
    turn.and_then(|turn| MARKS.get(turn)).copied().unwrap_or_default()
}
