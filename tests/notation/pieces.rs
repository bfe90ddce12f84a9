//! Pieces that are knitted apart and joined: on-hold, body and underarm stitches come to the round, front and back too (E28 of
//! the trade's checks). Common practice.

use super::blocks::{end, told};
use ballband::notation::rows::Fault;

/// A back of 60 (66, 72) stitches and a front of as many, each of which loses its two: 58 (64, 70).
const PIECES: &str = "Back:\nCast on 60 (66, 72) sts.\nRow 1: K2tog, k to last 2 sts, ssk.\nPlace all sts on hold.\n\
                      Front:\nCast on 60 (66, 72) sts.\nRow 1: K2tog, k to last 2 sts, ssk. [58 (64, 70) sts]\nYoke:\n";

fn joined(words: &str) -> String {
    format!("{PIECES}{words}")
}

/// Twice 58 (64, 70) and twice 6 that are cast on between: 128 (140, 152).
#[test]
fn front_and_back_come_to_the_round() {
    for words in [
        "Joining rnd: K58 (64, 70) front sts, CO 6, k58 (64, 70) held back sts, CO 6. [128 (140, 152) sts]",
        "Joining rnd: K across 58 (64, 70) front sts, CO 6, k across 58 (64, 70) back sts, CO 6. [128 (140, 152) sts]",
        "Joining rnd: K across front sts, CO 6, k across back sts, CO 6. [128 (140, 152) sts]",
        "Joining rnd: K across back sts, CO 6, k across the sts of front, CO 6. [128 (140, 152) sts]",
        "Next rnd: Knit across all front sts, cast on 6 sts, knit across all back sts, cast on 6 sts. [128 (140, 152) sts]",
        "Place front and back sts on one circular needle. [116 (128, 140) sts]\nRnd 1: *K29 (32, 35), m1; rep from * around. [120 (132, 144) sts]\nRnd 2: K120 (132, 144), CO 8. [128 (140, 152) sts]",
        "Slip the front and the back sts onto a circular needle and cast on 12 sts. [128 (140, 152) sts]",
    ] {
        assert_eq!(end(&[&joined(words)], 3), [Some(128), Some(140), Some(152)], "{words}");
    }
}

#[test]
fn a_join_that_does_not_come_out_is_told() {
    let wrong =
        told(&[&joined("Joining rnd: K across 58 (64, 70) front sts, CO 6, k across 60 (66, 70) back sts, CO 6.")], 3);
    assert_eq!(
        wrong,
        [(
            "60 (66, 70)".to_owned(),
            vec![(0, Fault::Held { says: 60, had: 58 }), (1, Fault::Held { says: 66, had: 64 })]
        )]
    );
    let sum =
        told(&[&joined("Joining rnd: K across front sts, CO 6, k across back sts, CO 6. [124 (140, 152) sts]")], 3);
    assert_eq!(sum, [("124 (140, 152)".to_owned(), vec![(0, Fault::Stated { says: 124, is: 128 })])]);
    let together = told(&[&joined("Place front and back sts on one circular needle. [116 (128, 142) sts]")], 3);
    assert_eq!(together, [("116 (128, 142)".to_owned(), vec![(2, Fault::Stated { says: 142, is: 140 })])]);
    // Those on the needle are too few for what is said of them.
    let live = told(&[&joined("Joining rnd: K across 60 (64, 70) front sts, CO 6, k across back sts, CO 6.")], 3);
    assert_eq!(live.len(), 1, "{live:?}");
    assert!(matches!(live[0].1.as_slice(), [(0, Fault::Short { by: 2, .. })]), "{live:?}");
}

/// A yoke of 280 stitches: 90 for the back, 50 for a sleeve, 90 for the front, 50 for the other; 8 under each arm.
#[test]
fn sleeves_wait_while_the_body_is_worked() {
    let yoke = "Yoke:\nCast on 280 sts.\nDividing rnd: K90 back sts, place next 50 sts on hold for left sleeve, CO 8, k90 front sts, \
                place next 50 sts on hold for right sleeve, CO 8. [196 sts]\nRnd 1: Knit. [196 sts]\nBind off.\nSleeves:\n";
    let sleeve = |words: &str| told(&[&format!("{yoke}{words}")], 1);
    assert_eq!(sleeve("Return 50 held left sleeve sts to needle and pick up and knit 8 sts. [58 sts]"), []);
    assert_eq!(sleeve("K50 held sleeve sts, pick up and knit 8. [58 sts]"), []);
    let held = |says: i64| vec![("48".to_owned(), vec![(0, Fault::Held { says, had: 50 })])];
    assert_eq!(sleeve("Return 48 held left sleeve sts to needle."), held(48));
    assert_eq!(sleeve("Rnd 1: K48 held right sleeve sts, pick up and knit 8."), held(48));
    // Both sleeves together are a hundred, of which the left one is fifty.
    let both = sleeve("Return 100 held left sleeve sts to needle.");
    assert_eq!(both, [("100".to_owned(), vec![(0, Fault::Held { says: 100, had: 50 })])]);
    assert_eq!(sleeve("Return 100 held sleeve sts to needle."), []);
}

/// Where the words leave it open nothing is told.
#[test]
fn pieces_that_nobody_can_be_sure_of_are_not_told_of() {
    for words in [
        // What is cast on under another heading is no front.
        "Cast on 200 sts.\nRow 1: K62 front sts, k to end. [200 sts]",
        // Both fronts may be meant, or one.
        "Left front:\nCast on 30 sts.\nPlace all sts on hold.\nRight front:\nCast on 31 sts.\nPlace all sts on hold.\nYoke:\nCast on 5 sts.\nK61 held front sts.",
        "Swatch:\nCast on 30 sts.\nRow 1: Knit.\nHat:\nCast on 100 sts.\nReturn 40 held sts to needle.",
    ] {
        assert_eq!(told(&[words], 1), [], "{words}");
    }
    // How many a piece has that was bound off, or worked in words that cannot be counted, nobody knows.
    for ends in ["Bind off all sts.", "Work chart A.", "Shape as for the back."] {
        let text =
            joined("Joining rnd: K across back sts, CO 6. [999 sts]").replacen("Place all sts on hold.", ends, 1);
        assert!(
            told(&[&text], 3).iter().all(|(_, sizes)| !matches!(sizes[0].1, Fault::Stated { .. } | Fault::Held { .. })),
            "{ends}"
        );
    }
}

/// The heading above a block names the piece too; one for its shaping does not part it.
#[test]
fn a_piece_is_called_by_the_heading_under_which_it_was_cast_on() {
    let text = "Back:\nCast on 60 sts.\nArmholes:\nRow 1: BO 4, k to end. [56 sts]\nPlace all sts on hold.\nFront:\nCast on 40 sts.\nRow 1: Knit.\nYoke:\n";
    let yoke = |words: &str| told(&[&format!("{text}{words}")], 1);
    assert_eq!(yoke("Joining rnd: K across 40 front sts, k across 56 back sts. [96 sts]"), []);
    assert_eq!(
        yoke("Joining rnd: K across 40 front sts, k across 60 back sts."),
        [("60".to_owned(), vec![(0, Fault::Held { says: 60, had: 56 })])]
    );
}
