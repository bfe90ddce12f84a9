//! Pieces that come together in one round: two that are worked alike, parts of one, and pieces that nobody knows (E28 of the
//! trade's checks). Common practice.

use super::blocks::{end, told};
use ballband::notation::rows::Fault;

/// 58 + 72 + 58 + 72 = 260.
#[test]
fn pieces_worked_alike_are_as_many_as_are_named() {
    for sleeves in [
        "Sleeves (make 2):\nCO 58 sts.",
        "Sleeves (both alike):\nCO 58 sts.",
        "Sleeves (work 2):\nCO 58 sts.\nLeave sts on waste yarn.",
        "Sleeves:\nCO 58 sts.",
        "Sleeve (make 2):\nCO 58 sts.",
        "Sleeve 1:\nCO 58 sts.\nSleeve 2:\nCO 58 sts.",
        "Left sleeve:\nCO 58 sts.\nRight sleeve:\nCO 58 sts.",
    ] {
        for join in [
            "K58 left sleeve sts, k72 front sts, k58 right sleeve sts, k72 back sts",
            "K58 sleeve sts, pm, k72 front sts, pm, k58 sleeve sts, pm, k72 back sts, pm",
            "K across 58 sleeve sts, k across 72 front sts, k across 58 sleeve sts, k across 72 back sts",
            "K58 held left sleeve sts, k72 held front sts, k58 held right sleeve sts, k72 held back sts",
        ] {
            let text = |join: &str, says| {
                format!("Front:\nCO 72 sts.\nBack:\nCO 72 sts.\n{sleeves}\nYoke:\nJoining rnd: {join}. [{says} sts]")
            };
            assert_eq!(end(&[&text(join, 260)], 1), [Some(260)], "{sleeves} {join}");
            let sum = told(&[&text(join, 250)], 1);
            assert_eq!(sum, [("250".to_owned(), vec![(0, Fault::Stated { says: 250, is: 260 })])], "{sleeves} {join}");
            let front = told(&[&text(&join.replacen("72", "70", 1), 258)], 1);
            assert_eq!(front, [("70".to_owned(), vec![(0, Fault::Held { says: 70, had: 72 })])], "{sleeves} {join}");
        }
    }
    // 36 + 72 + 36 = 144.
    let fronts = "Back:\nCO 72 sts.\nFronts (make 2):\nCO 36 sts.\nYoke:\nJoining row: K36 right front sts, k72 back sts, k36 left front sts.";
    assert_eq!(end(&[fronts], 1), [Some(144)]);
}

/// 58 + 144 + 58 = 260; a cardigan's body of 144 without ten at each side is 31 + 62 + 31 = 124, and 124 + 116 = 240.
#[test]
fn parts_of_one_piece_come_to_the_round() {
    let sleeves = "Sleeves (make 2):\nCO 58 sts.\nLeave sts on waste yarn.\n";
    let body = "Body:\nCO 144 sts.\nLeave sts on a spare needle.\n";
    let cardigan =
        "Body:\nCO 144 sts.\nNext row: K31, BO 10, k62, BO 10, k31. [124 sts]\nLeave sts on a spare needle.\n";
    for (pieces, join, says) in [
        (
            format!("{body}{sleeves}"),
            "K58 left sleeve sts, pm, k72 front sts, pm, k58 right sleeve sts, pm, k72 back sts",
            260,
        ),
        (format!("{body}{sleeves}"), "K58 left sleeve sts, k72 body sts, k58 right sleeve sts, k72 body sts", 260),
        (format!("{sleeves}{body}"), "K72 front sts, k58 left sleeve sts, k72 back sts, k58 right sleeve sts", 260),
        // The body is still on the needle.
        (
            format!("{sleeves}Body:\nCO 144 sts.\nRnd 1: Knit.\n"),
            "K72 front sts, k58 left sleeve sts, k72 back sts, k58 right sleeve sts",
            260,
        ),
        (
            format!("{cardigan}{sleeves}"),
            "K31 right front sts, pm, k58 sleeve sts, pm, k62 back sts, pm, k58 sleeve sts, pm, k31 left front sts",
            240,
        ),
    ] {
        let text = format!("{pieces}Yoke:\nJoining rnd: {join}. [{says} sts]\nNext rnd: Knit. [{says} sts]");
        assert_eq!(end(&[&text], 1), [Some(says)], "{text}");
    }
    // 72 + 70 are not the body's 144.
    let wrong = format!(
        "{body}{sleeves}Yoke:\nJoining rnd: K58 left sleeve sts, k72 body sts, k58 right sleeve sts, k70 body sts."
    );
    assert!(told(&[&wrong], 1).iter().all(|(_, sizes)| matches!(sizes[0].1, Fault::Held { had: 144, .. })));
    assert!(!told(&[&wrong], 1).is_empty());
}

/// What the words do not tell is not told of.
#[test]
fn pieces_that_nobody_knows_are_not_missing() {
    for text in [
        "Body:\nCO 144 sts.\nJoining rnd: K58 left sleeve sts, k72 front sts, k58 right sleeve sts, k72 back sts. [260 sts]",
        "Sleeves:\nCO 40 sts.\nWork chart A.\nBody:\nCO 144 sts.\nJoining rnd: K72 front sts, k58 sleeve sts, k72 back sts, k58 sleeve sts. [260 sts]",
        // The last stitch of each is worked with the first of the next.
        "Front:\nCO 72 sts.\nSleeves (make 2):\nCO 58 sts.\nJoining rnd: K57 left sleeve sts, k2tog, k70 front sts, k2tog. [129 sts]",
        "Thumb:\nCO 5 sts.\nYoke:\nJoining rnd: K58 sleeve sts, k72 body sts. [135 sts]",
        // Stitches put aside out of a piece may be of another.
        "Yoke:\nCO 100 sts.\nRow 1: K40, place next 20 sts on hold, k40.\nBody:\nCO 30 sts.\nJoining row: K20 sleeve sts, k80 yoke sts, k30 body sts. [130 sts]",
    ] {
        assert_eq!(told(&[text], 1), [], "{text}");
    }
}
