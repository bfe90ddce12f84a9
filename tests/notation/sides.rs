//! Right and wrong sides through repeats: worked flat they alternate (E27 of the trade's checks: rows that begin on one side are
//! an even number apart). Common practice.

use super::blocks::told;
use ballband::notation::rows::{Fault, Side};

/// What is told of sides, with the words it stands at.
fn sides(text: &str) -> Vec<(String, Side, bool)> {
    let side = |(at, sizes): (String, Vec<(usize, Fault)>)| match sizes.first() {
        Some((_, Fault::Side { side, again })) => Some((at, *side, *again)),
        _ => None,
    };
    told(&[text], 1).into_iter().filter_map(side).collect()
}

const THREE: &str = "Cast on 40 sts.\nRow 1 (RS): Knit.\nRow 2 (WS): Purl.\nRow 3 (RS): K2tog, k to end.\n";

#[test]
fn an_odd_number_of_rows_worked_again_comes_from_the_other_side() {
    for words in
        ["Repeat rows 1-3 twice more.", "Repeat last 3 rows once more.", "Rep rows 1-3 until it measures 10 cm."]
    {
        let at = words.trim_end_matches('.').replace("Repeat ", "").replace("Rep ", "");
        let at = ["rows 1-3", "last 3 rows"].into_iter().find(|rows| at.starts_with(rows)).unwrap_or(&at).to_owned();
        assert_eq!(sides(&format!("{THREE}{words}")), [(at, Side::Right, true)], "{words}");
    }
    // Four rows are as they should be, and so are three behind an even number: 1 2 3 2 | 1 2 3.
    assert_eq!(
        sides(&format!("{THREE}Row 4 (WS): Purl.\nRepeat rows 1-4 5 times more.\nRepeat rows 1-3 once more.")),
        []
    );
    assert_eq!(sides(&format!("{THREE}Knit 1 row.\nRepeat rows 1-3 once more.")), []);
    // Twice three rows from the second side on: the second working begins on the other side.
    let twice = format!("{THREE}Knit 1 row.\nRepeat rows 1-3 twice more.");
    assert_eq!(sides(&twice), [("rows 1-3".to_owned(), Side::Right, true)]);
}

#[test]
fn rows_without_a_side_may_come_from_either() {
    assert_eq!(sides("Cast on 40 sts.\nRow 1: Knit.\nRow 2: Purl.\nRow 3: Knit.\nRepeat rows 1-3 twice more."), []);
    // Garter stitch: the side says where it begins.
    assert_eq!(sides("Cast on 40 sts.\nRow 1 (RS): Sl 1, k to end.\nRepeat row 1 9 times more."), []);
    // One row that shapes is not the same from both sides.
    let dec = "Cast on 40 sts.\nDec row (RS): K2tog, k to end.\nRepeat last row 3 times more.";
    assert_eq!(sides(dec), [("last row".to_owned(), Side::Right, true)]);
    let rounds =
        "Cast on 40 sts.\nRnd 1: Knit.\nRnd 2: Knit.\nRnd 3: *K2tog; rep from * around.\nRepeat rnd 3 once more.";
    assert_eq!(sides(rounds), []);
}

#[test]
fn a_row_behind_others_is_on_the_other_side() {
    let next = |words: &str| sides(&format!("{THREE}{words}"));
    let right = |at: &str| vec![(at.to_owned(), Side::Right, false)];
    assert_eq!(next("Next row (RS): Knit."), right("Next row (RS)"));
    assert_eq!(next("Next row (WS): Purl."), []);
    assert_eq!(next("Purl 1 row.\nNext row (RS): Knit."), []);
    assert_eq!(next("Knit 2 rows.\nNext row (RS): Knit."), right("Next row (RS)"));
    assert_eq!(next("BO 3 sts at beg of next 2 rows.\nNext row (RS): Knit."), right("Next row (RS)"));
    assert_eq!(next("Work even for 10 cm, ending with a WS row.\nNext row (RS): Knit."), []);
    assert_eq!(next("Work even for 10 cm, ending with a RS row.\nNext row (RS): Knit."), right("Next row (RS)"));
    assert_eq!(
        next("Work even until it measures 4 in, ending after a right side row.\nDec row (RS): K2tog, k to end."),
        right("Dec row (RS)")
    );
}

#[test]
fn so_many_rows_end_on_the_side_that_is_said() {
    let ends = |words: &str| -> Vec<(String, Fault)> {
        let text = format!("{THREE}Row 4 (WS): Purl.\n{words}");
        told(&[&text], 1).into_iter().map(|(at, sizes)| (at, sizes[0].1)).collect()
    };
    for words in ["Work 7 more rows, ending with a WS row.", "Knit 3 rows, ending with a WS row."] {
        assert_eq!(
            ends(words),
            [(words.trim_end_matches('.').to_owned(), Fault::Ends { side: Side::Right })],
            "{words}"
        );
    }
    for words in [
        "Work 8 more rows, ending with a WS row.",
        "Knit 3 rows, ending with a RS row.",
        "Repeat rows 1-4 once more, ending with a WS row.",
    ] {
        assert_eq!(ends(words), [], "{words}");
    }
}

/// Where the words leave it open nothing is told.
#[test]
fn sides_that_nobody_can_know_are_not_told_of() {
    for words in [
        "Work even for 10 cm.",
        "Break yarn.",
        "Slide sts to other end of needle.",
        "Do not turn.",
        "Place 10 sts on hold.",
        "Dec 1 st at each end of every 4th row 3 times.",
        "Rejoin yarn with RS facing.",
        "Bind off.\nCast on 30 sts.",
        "Sleeve:",
        "Knit 4 (6, 8) rows.",
        "Work as established.",
        "Begin on next row with the larger needles.",
    ] {
        assert_eq!(sides(&format!("{THREE}{words}\nNext row (RS): Knit.")), [], "{words}");
    }
    // Two-coloured brioche: each side is worked twice, the second time with the other yarn.
    let brioche =
        "Cast on 41 sts.\nRow 1 (RS): K1, *sl1yo, k1; rep from * to end, do not turn, slide.\nRow 2 (RS): Knit.";
    assert_eq!(sides(brioche), []);
    // Short rows that turn twice within one.
    assert_eq!(sides("Cast on 40 sts.\nShort row (RS): K20, turn, p to end.\nNext row (RS): Knit."), []);
}
