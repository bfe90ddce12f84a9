//! Markers: where they hang, from row to row, in every size.

use super::blocks::{end, told};
use super::random::Dice;
use super::{row, written};
use ballband::notation::rows::{Fault, Hand, Needle, Reading, follow, work};

/// Common practice: a yoke worked in the round gains eight stitches at its four points in every round of increases.
#[test]
fn a_raglan_gains_eight_at_its_four_points() {
    let text = "Cast on 64 (68, 72) sts, pm for BOR and join.\n\
                Rnd 1: K10 (11, 12), pm, k22 (23, 24), pm, k10 (11, 12), pm, k22 (23, 24), pm.\n\
                Rnd 2: *K to 1 st before m, m1l, k1, sl m, k1, m1r; rep from * 3 more times, k to end.";
    // The last point is where the round begins, and what follows it stands there no more.
    let found = told(&[text], 3);
    assert_eq!(
        found[0].1,
        [64, 68, 72].map(|had| Fault::Short { by: 1, had }).into_iter().enumerate().collect::<Vec<_>>()
    );
    // With the beginning of the round in the midst of the back all four points are within it.
    let text = "Cast on 64 (68, 72) sts.\n\
                Rnd 1: K11 (12, 12), pm, k10, pm, k22 (24, 24), pm, k10, pm, k to end.\n\
                Rnd 2: *K to 1 st before m, m1l, k1, sl m, k1, m1r; rep from * 3 more times, k to end. (8 sts inc'd)\n\
                Rnd 3: Knit.\nRepeat rnds 2-3 9 times more. [144 (148, 152) sts]\n\
                Rnd 4: K21 (22, 22), sm, k30, rm, k42 (44, 44), sm, k30, rm, k to end.";
    assert_eq!(end(&[text], 3), [Some(144), Some(148), Some(152)]);
    // One stitch too few in one section of one size.
    let found = told(&[&text.replace("k42 (44, 44)", "k42 (43, 44)")], 3);
    assert_eq!(found[0].0, "sm");
    assert_eq!(found[0].1, [(1, Fault::MarkerAhead { left: 1 })]);
}

#[test]
fn a_shawl_grows_beside_its_spine() {
    let text = "Cast on 7 sts.\nRow 1 (WS): K2, p1, pm, p1, pm, p1, k2.\n\
                Row 2 (RS): K2, yo, k to m, yo, sm, k1, sm, yo, k to last 2 sts, yo, k2. (4 sts inc'd)\n\
                Row 3 (WS): K2, p to last 2 sts, k2.\nRepeat rows 2-3 9 times more. [47 sts]\n\
                Row 4 (RS): K23, sm, k1, sm, k23.";
    assert_eq!(end(&[text], 1), [Some(47)]);
    let found = told(&[&text.replace("K23, sm, k1", "K22, sm, k2")], 1);
    assert_eq!(found, [("sm".to_owned(), vec![(0, Fault::MarkerAhead { left: 1 })])]);
    let found = told(&[&text.replace("K23, sm, k1, sm, k23", "K25, sm, k22")], 1);
    assert_eq!(found, [("sm".to_owned(), vec![(0, Fault::MarkerPassed { by: 1 })])]);
}

/// Worked flat, a marker that is not in the middle stands elsewhere seen from the other side.
#[test]
fn the_other_side_counts_from_the_other_end() {
    let text = "Cast on 20 sts.\nRow 1 (RS): K5, pm, k to end.\nRow 2 (WS): P15, sm, p5.\nRow 3 (RS): K to m, sm, k2tog, k to end.\nRow 4: P14, rm, p5.";
    assert_eq!(end(&[text], 1)[0], Some(19));
    let found = told(&[&text.replace("P15, sm, p5", "P5, sm, p15")], 1);
    assert_eq!(found, [("sm".to_owned(), vec![(0, Fault::MarkerAhead { left: 10 })])]);
    // Nobody knows from which side these are worked.
    let plain = "Cast on 20 sts.\nRow 1 (RS): K5, pm, k to end.\nWork even until it measures 5 cm.\nNext row: K5, sm, k to end.";
    assert_eq!(told(&[plain], 1), []);
    let middle = "Cast on 20 sts.\nRow 1 (RS): K10, pm, k to end.\nWork even until it measures 5 cm.\nNext row: K9, sm, k to end.";
    assert_eq!(told(&[middle], 1), [("sm".to_owned(), vec![(0, Fault::MarkerAhead { left: 1 })])]);
}

#[test]
fn stitches_before_a_marker_fill_what_is_said() {
    let set = "Cast on 20 sts.\nRow 1 (RS): K10, pm, k10.\n";
    let row = |words: &str| told(&[&format!("{set}Row 2 (WS): {words}")], 1);
    assert_eq!(row("P to 2 sts before m, p2tog, sm, p to end. [19 sts]"), []);
    assert_eq!(row("P to 3 sts before m, p2tog, p1, sm, p2tog, p to last 4 sts, p4. [18 sts]"), []);
    assert_eq!(
        row("P to 3 sts before m, p2tog, sm, p to end."),
        [("sm".to_owned(), vec![(0, Fault::MarkerAhead { left: 1 })])]
    );
    assert_eq!(
        row("P to 2 sts before m, p3, sm, p to end."),
        [("sm".to_owned(), vec![(0, Fault::MarkerPassed { by: 1 })])]
    );
    assert_eq!(row("P9, p to 3 sts before m, p to end.")[0].1, [(0, Fault::MarkerNear { says: 3, left: 1 })]);
    assert_eq!(row("P to m, sm, p to m, sm, p to end.")[0].1, [(0, Fault::NoMarker)]);
    assert_eq!(row("P to 2 sts past m, p8."), []);
    assert_eq!(row("P to 2 sts past m, p7.")[0].1, [(0, Fault::LeftOver { left: 1, had: 20 })]);
    assert_eq!(row("*P2, k3; rep from * to m, sm, *k1, p1; rep from * to end."), []);
    assert_eq!(
        row("*P2, k2; rep from * to m, sm, p to end.")[0].1,
        [(0, Fault::RepeatLeft { left: 2, of: 4, room: 10 })]
    );
    // Without "sm" a marker that the words came to is behind them.
    assert_eq!(row("P to 2 sts before m, p2tog, p2tog, p to end."), []);
}

#[test]
fn many_markers_go_by_their_numbers_or_one_after_another() {
    let set = "Cast on 40 sts.\nRnd 1: [K10, pm] 4 times.\n";
    let row = |words: &str| told(&[&format!("{set}Rnd 2: {words}")], 1);
    assert_eq!(row("[K to m, sm] 4 times. [40 sts]"), []);
    assert_eq!(row("[K to 2 sts before m, k2tog, sm] 4 times. [36 sts]"), []);
    assert_eq!(row("*K to 2 sts before m, k2tog, sm; rep from * around. [36 sts]"), []);
    assert_eq!(row("*K to 3 sts before m, k2tog, sm; rep from * around.")[0].1, [(0, Fault::MarkerAhead { left: 1 })]);
    assert_eq!(row("K to second m, sm, k20."), []);
    assert_eq!(row("K to last m, sm."), []);
    assert_eq!(row("K to first m, k30."), []);
    assert_eq!(row("K to m, k to m, k to m, k10."), []);
    assert_eq!(row("K to m, rm, k to m, rm, k20.\nRnd 3: K30, sm, k10."), []);
    assert_eq!(row("K to m, rm, k to m, rm, k20.\nRnd 3: K10, sm, k30.")[0].1, [(0, Fault::MarkerAhead { left: 20 })]);
    assert_eq!(row("Knit.\nRnds 3-6: Knit.\nRnd 7: *K8, k2tog; rep from * around.\nRnd 8: [K9, sm] 4 times."), []);
}

/// What is not written in the rows is not known, and nothing is told of it.
#[test]
fn unknown_markers_are_left_alone() {
    for text in [
        "Cast on 64 sts, placing markers after 10 and 42 sts.\nRnd 1: K5, pm, k to m, sm, k to m, sm, k to m, k to end.",
        "Cast on 64 sts.\nPlace a marker at each side.\nRnd 1: K5, pm, k59.\nRnd 2: K to m, sm, k to m, sm, k to m, sm, k to end.",
        "Cast on 64 sts.\nRnd 1: K to m, sm, k2, pm, k to end.\nRnd 2: K to m, sm, k2, sm, k to end.",
        "Cast on 64 sts.\nRnd 1: K to m, m1, sm, k to end.",
        "Cast on 64 sts.\nRow 1: K10, pm, k10, turn.\nRow 2: P to m, sm, p to end.",
    ] {
        assert_eq!(told(&[text], 1), [], "{text}");
    }
    let mut blocks = [
        written("Cast on 20 sts.\nRnd 1: K10, pm, k10."),
        written("Rnd 2: K to m, sm, k to m, sm, k to m, sm, k to end."),
    ];
    blocks[1].marked = true;
    assert_eq!(follow(&blocks, 1).told, []);
}

/// A needle as a list of stitches and markers, with nothing shared with the program.
struct Model {
    left: Vec<bool>,
    right: Vec<bool>,
}

const STITCH: bool = false;
const MARKER: bool = true;

impl Model {
    fn to_marker(&self) -> Option<usize> {
        self.left.iter().position(|thing| *thing == MARKER)
    }

    fn stitches(&self) -> usize {
        self.left.iter().filter(|thing| **thing == STITCH).count()
    }

    /// Knits so many, markers on the way included.
    fn knit(&mut self, mut many: usize) {
        while many > 0 {
            let thing = self.left.remove(0);
            many -= usize::from(thing == STITCH);
            self.right.push(thing);
        }
    }
}

fn places(things: &[bool]) -> Vec<i64> {
    let mut stitches = 0;
    let mut places = Vec::new();
    for thing in things {
        if *thing == MARKER { places.push(stitches) } else { stitches += 1 }
    }
    places
}

/// Random rows by markers: the places behind each are those of the model.
#[test]
fn random_markers_hang_where_their_model_has_them() {
    let mut dice = Dice(31);
    for _ in 0..if cfg!(debug_assertions) { 5_000 } else { 200_000 } {
        let mut left = vec![STITCH; 10 + dice.roll(30) as usize];
        for _ in 0..1 + dice.roll(4) {
            let at = 1 + dice.roll(left.len() as u64 - 1) as usize;
            left.insert(at, MARKER);
        }
        let before = places(&left);
        let total = left.iter().filter(|thing| **thing == STITCH).count() as i64;
        let mut model = Model { left, right: Vec::new() };
        let mut words: Vec<String> = Vec::new();
        for _ in 0..dice.roll(12) {
            let gap = model.to_marker();
            match dice.roll(7) {
                0 => {
                    let many = 1 + dice.roll(6) as usize;
                    if many <= model.stitches() {
                        model.knit(many);
                        words.push(format!("k{many}"));
                    }
                }
                // A decrease over a marker is nobody's row.
                1 if gap.map_or(model.stitches() >= 2, |gap| gap >= 2) => {
                    model.left.drain(..2);
                    model.right.push(STITCH);
                    words.push("k2tog".to_owned());
                }
                2 => {
                    model.right.push(STITCH);
                    words.push("m1".to_owned());
                }
                3 if gap.is_some_and(|gap| gap > 0) => {
                    let gap = gap.unwrap();
                    let short = dice.roll(gap.min(4) as u64) as usize;
                    model.knit(gap - short);
                    words.push(if short == 0 { "k to m".to_owned() } else { format!("k to {short} sts before m") });
                }
                4 if gap == Some(0) => {
                    model.left.remove(0);
                    model.right.push(MARKER);
                    words.push("sm".to_owned());
                }
                5 if gap == Some(0) => {
                    model.left.remove(0);
                    words.push("rm".to_owned());
                }
                // Two in one place cannot be told apart.
                6 if gap != Some(0) && model.right.last() == Some(&STITCH) => {
                    model.right.push(MARKER);
                    words.push("pm".to_owned());
                }
                _ => {}
            }
        }
        model.knit(model.stitches());
        words.push("k to end".to_owned());
        model.right.append(&mut model.left);
        let text = words.join(", ");
        let (_, items) = row(&format!("Row 1: {text}."));
        let hand = Hand { needle: Needle::of(total), marks: Some(before.clone()), ..Hand::default() };
        let outcome = work(&items, &hand, 0, Reading::More);
        assert_eq!(outcome.faults, [], "{text} on {total} with {before:?}");
        assert_eq!(outcome.marks, Some(places(&model.right)), "{text} on {total} with {before:?}");
    }
}
