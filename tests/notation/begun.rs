//! Beginnings: how many are cast on or picked up, and what is on the needle beside them. Common practice.

use super::blocks::{end, told};
use ballband::notation::rows::Fault;

#[test]
fn stitches_are_cast_on_in_many_words() {
    for (words, stitches) in [
        ("Cast 60 sts on to a 4 mm needle.", 60),
        ("Cast on sixty stitches.", 60),
        ("Cast on sixty-four sts.", 64),
        ("Using a closed toe cast-on, CO 24.", 24),
        ("Using a closed toe cast-on, CO 24 sts.", 24),
        ("CO 24 sts, pm and join.", 24),
        // 2 × 12 = 24.
        ("CO 12 sts on each of 2 needles (24 sts).", 24),
        ("CO 12 sts on each of 2 needles.", 24),
        ("CO 12 sts on each needle (24 sts).", 24),
        ("CO 24 sts: 12 sts on each needle.", 24),
        ("CO 24 sts (12 sts on each needle) and join.", 24),
    ] {
        let text = format!("{words}\nRnd 1: K{stitches}.");
        assert_eq!(end(&[&text], 1), [Some(stitches)], "{words}");
        let wrong = format!("{words}\nRnd 1: K{}.", stitches + 2);
        assert!(matches!(told(&[&wrong], 1)[0].1[..], [(0, Fault::Short { by: 2, .. })]), "{words}");
    }
    let needles = told(&["CO 12 sts on each of 2 needles (26 sts)."], 1);
    assert_eq!(needles, [("26".to_owned(), vec![(0, Fault::Stated { says: 26, is: 24 })])]);
    // On how many needles nobody knows.
    assert_eq!(told(&["CO 12 sts on each needle.\nRnd 1: K30."], 1), []);
}

/// 20 + 14 + 20 + 32 = 86.
#[test]
fn stitches_picked_up_along_several_edges_are_one_sum() {
    for words in [
        "Pick up and knit 20 sts down left front neck, 14 sts across front neck, 20 sts up right front neck and 32 sts across back neck.",
        "Pick up and knit 20 sts down left front, 14 across front, 20 along right front and 32 across back.",
        "With RS facing, pick up and k 20 sts down left front, 14 across front, 20 along right front, and 32 across back.",
        "Pick up and knit 20 sts along the left side and then 14 sts from front and back, 20 sts up right side, pick up and knit 32 sts across back neck.",
    ] {
        let text = |says| format!("BO all sts.\n{words} [{says} sts]\nRnd 1: K86.");
        assert_eq!(end(&[&text(86)], 1), [Some(86)], "{words}");
        let wrong = told(&[&text(88)], 1);
        assert_eq!(wrong[0].1, [(0, Fault::Stated { says: 88, is: 86 })], "{words}");
    }
    // Of one side or of both, the words do not tell.
    assert_eq!(told(&["BO all sts.\nPick up and knit 12 sts along each side. [24 sts]"], 1), []);
}

#[test]
fn what_is_on_the_needle_may_stay_as_others_are_picked_up() {
    let tab = "CO 3 sts.\nKnit 6 rows.\nPick up and knit 3 sts along side edge, then pick up and knit 3 sts from cast-on edge.";
    // 3 + 3 + 3 = 9.
    assert_eq!(end(&[&format!("{tab} [9 sts]\nRow 1: K9.")], 1), [Some(9)]);
    let side = "CO 20 sts.\nRow 1: K20.\nPick up 30 sts along the left side.";
    for says in [30, 50] {
        assert_eq!(end(&[&format!("{side} [{says} sts]")], 1), [Some(says)]);
        // Without a count nobody knows which.
        assert_eq!(told(&[&format!("{side}\nRow 1: K{says}.")], 1), []);
    }
    let neither = told(&[&format!("{side} [48 sts]")], 1);
    assert_eq!(neither, [("48".to_owned(), vec![(0, Fault::Stated { says: 48, is: 50 })])]);
    // The last stitch stays: 1 + 29.
    for ends in [
        "BO all sts but do not fasten off last st: 1 st.",
        "BO all sts, leaving last st on needle.",
        "Cast off all sts except the last st.",
    ] {
        for says in [29, 30] {
            let text =
                format!("CO 40 sts.\n{ends}\nWith RS facing, pick up and k 29 sts along side edge. [{says} sts]");
            assert_eq!(end(&[&text], 1), [Some(says)], "{text}");
        }
    }
    assert_eq!(
        end(&["CO 40 sts.\nBO all sts, fasten off last st.\nPick up and knit 29 sts.\nRow 1: K29."], 1),
        [Some(29)]
    );
}

/// 30 - 10 of a heel are worked, 15 come from its flap and ten more are worked: 30 + 15 = 45.
#[test]
fn what_is_worked_behind_an_edge_is_counted() {
    for row in [
        "K20, pick up and knit 15 sts along side of flap and k10",
        "K20, pick up and knit 15 sts along side of flap, k10",
        "K20, pick up and k15 sts from front and back of the gap and k to end",
    ] {
        assert_eq!(end(&[&format!("CO 30 sts.\nRow 1: {row}. [45 sts]")], 1), [Some(45)], "{row}");
    }
}

/// A yoke of 66 leaves 56 for a sleeve; with 8 at the underarm it has 64.
#[test]
fn what_is_worked_behind_a_taking_up_is_counted() {
    let yoke = "CO 66 sts.\nRow 1: K10, place next 56 sts on waste yarn.";
    for words in [
        "Place 56 held sts on dpns, rejoin yarn, pick up and knit 8 sts, k to end.",
        "Return 56 held sts to needles, k56, pick up and knit 8 sts.",
        "Return 56 held sts to needles, pick up and knit 4 sts, k56, pick up and knit 4 sts.",
        "Return 56 held sts to needle and pick up and knit 8 sts.",
        "Slip 56 sleeve sts from waste yarn to dpns, rejoin yarn, pick up and knit 8 sts.",
        "Rejoin yarn to held sts and k56, pick up and k8 sts.",
        "Return rem 56 sts to needle.\nBeg at centre of underarm CO, pick up and knit 4 sts, k56, pick up and knit 4 sts.",
        "Beg at centre of underarm CO, pick up and knit 4 sts, k56 held sts, pick up and knit 4 sts.",
    ] {
        let text = |body: &str, says: &str| format!("{yoke}\n{body}Sleeves:\n{words}{says}\nRnd 1: Knit. [64 sts]");
        assert_eq!(end(&[&text("BO all sts.\n", " [64 sts]")], 1), [Some(64)], "{words}");
        assert_eq!(end(&[&text("BO all sts.\n", "")], 1), [Some(64)], "{words}");
        // The body's ten may be on a needle of their own.
        assert_eq!(told(&[&text("", " [64 sts]")], 1), [], "{words}");
        assert_eq!(told(&[&text("", "")], 1), [], "{words}");
        let wrong = told(&[&text("BO all sts.\n", " [66 sts]")], 1);
        assert_eq!(wrong, [("66".to_owned(), vec![(0, Fault::Stated { says: 66, is: 64 })])], "{words}");
    }
}

#[test]
fn a_piece_worked_as_another_comes_to_as_many() {
    let join = "Body:\nCO 144 sts.\nYoke:\nJoining rnd: K across 58 sleeve sts, k72 front sts, k across 58 sleeve sts, k72 back sts.";
    for second in [
        "Right sleeve:\nWork as for left sleeve.",
        "Right sleeve:\nWork as for left sleeve, reversing shaping.",
        "Make second sleeve the same.",
        "Work second sleeve as for first.",
    ] {
        for waits in ["Leave sts on waste yarn.\n", ""] {
            let text = |says| format!("Left sleeve:\nCO 58 sts.\nRow 1: K58.\n{waits}{second}\n{join} [{says} sts]");
            // 58 + 72 + 58 + 72 = 260.
            assert_eq!(end(&[&text(260)], 1), [Some(260)], "{second}");
            let wrong = told(&[&text(250)], 1);
            assert_eq!(wrong, [("250".to_owned(), vec![(0, Fault::Stated { says: 250, is: 260 })])], "{second}");
        }
    }
    // Not all of it, or one that was bound off.
    for text in [
        "Back:\nCO 58 sts.\nRow 1: K58.\nFront:\nWork as for back to row 20.\nRow 1: K30.",
        "Left sleeve:\nCO 58 sts.\nRow 1: K12, place next 6 sts on hold, k40.\nBO all sts.\nRight sleeve:\nWork as for left sleeve.\nRow 1: K99.",
    ] {
        assert!(told(&[text], 1).iter().all(|(_, sizes)| sizes[0].1 == Fault::Unknown), "{text}");
    }
}
