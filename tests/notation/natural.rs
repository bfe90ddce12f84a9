//! Ways in which designers write that are no list of stitches.

use super::blocks::{end, told};
use super::written;
use ballband::notation::rows::{Doing, Fault};

#[test]
fn a_heading_may_hold_commas_and_the_word_row() {
    for heading in ["Heel, first half", "Round the ankle", "Short rows", "Two rounds between", "Left front"] {
        let text = format!("Cast on 20 sts.\nRow 1: Knit.\n{heading}:\nRow 1: K2tog, k to end. [19 sts]");
        assert_eq!(end(&[&text], 1), [Some(19)], "{heading}");
        let headings =
            written(&text).statements.iter().filter(|one| matches!(one.doing, Doing::Heading { .. })).count();
        assert_eq!(headings, 1, "{heading}");
    }
    // These say of which rows they are, and nothing of what is worked.
    for label in ["Next row", "All WS rows", "Set-up rnd"] {
        assert!(written(&format!("{label}:")).statements[0].trouble.is_some(), "{label}");
    }
}

#[test]
fn a_cord_is_knitted_without_turning() {
    let text = "On 3.5 mm dpns, cast on 3 sts.\nNext row: K3, do not turn, slide the sts to the other end.\n\
                Repeat the last row until the cord measures 10 cm. [3 sts]";
    assert_eq!(end(&[text], 1), [Some(3)]);
}

#[test]
fn stitches_are_picked_up_with_whatever_stands_before() {
    let text = "With 3.5 mm needles and MC, RS facing, pick up and knit 62 (66) sts along the lower edge.\n\
                Row 1 (WS): P2, *k2, p2; rep from * to end. [62 (66) sts]";
    assert_eq!(end(&[text], 2), [Some(62), Some(66)]);
}

#[test]
fn a_repeat_may_end_otherwise_and_another_row_may_follow_it() {
    let rows = "Cast on 20 sts.\nRow 1: K1, m1, k to end.\nRow 2: Purl.\n";
    let or = format!("{rows}Repeat rows 1-2 3 times more, or until it is as long as you want it. [24 sts]");
    assert_eq!(end(&[&or], 1), [Some(24)]);
    let and = format!("{rows}Repeat rows 1-2 3 times more, and row 1 once more. [25 sts]");
    assert_eq!(end(&[&and], 1), [Some(25)]);
    let wrong = format!("{rows}Repeat rows 1-2 3 times more, and row 1 once more. [24 sts]");
    assert_eq!(told(&[&wrong], 1), [("24".to_owned(), vec![(0, Fault::Stated { says: 24, is: 25 })])]);
}

/// The stitches after the last statement, whatever was told.
fn last(text: &str) -> Option<i64> {
    let blocks = [written(text)];
    let followed = ballband::notation::rows::follow(&blocks, 1);
    *followed.counts.last().and_then(|block| block.last()).and_then(|seen| seen.first()).unwrap()
}

#[test]
fn a_sentence_of_rows_that_says_more_is_not_counted() {
    for sentence in [
        "Work rows 1-2 of Part A 5 times.",
        "Knit 10 rows, binding off 3 sts at the beginning of the last 2 rows.",
        "Knit 2 rows, casting on 4 sts at the end of each row.",
        "Knit 4 rows, working M1R at each end of the second row.",
        "Work 4 rows in St st, placing the last 5 sts on a holder.",
        "Work 6 rows in pattern, dropping 2 sts on row 3.",
        "Work even on 20 sts until the strap measures 10 cm.",
        "Work row 3 in MC.",
        "Work as established until 8 rows are done, binding off 3 sts twice.",
    ] {
        let text = format!("Cast on 40 sts.\nRow 1: K2, yo, k2tog, k to end.\n{sentence}");
        assert_eq!(last(&text), None, "{sentence}");
        // And the row after it is told of.
        let blocks = [written(&format!("{text}\nNext row: K2, k2tog, k to end."))];
        let told = ballband::notation::rows::follow(&blocks, 1).told;
        assert!(told.iter().any(|told| told.sizes == [(0, Fault::Unknown)]), "{sentence}: {told:?}");
    }
}

#[test]
fn a_sentence_of_plain_rows_keeps_the_count() {
    for sentence in [
        "Work 4 rows in St st.",
        "Knit 10 rows, ending with a WS row.",
        "Work in k2, p2 rib until piece measures 10 (4 in) cm from the cast-on edge.",
        "Work even in pattern for 6 more rows.",
        "Continue in garter st for 12 rows.",
        "Work in 2x2 rib for 8 rounds.",
        "Knit every row until the scarf is 150 cm long, ending after a RS row.",
        "Continue as established until the cuff measures 4½ in.",
        "Purl 1 row with CC.",
    ] {
        let text = format!("Cast on 40 sts.\nRow 1: K2, yo, k2tog, k to end.\n{sentence}");
        assert_eq!(end(&[&text], 1), [Some(40)], "{sentence}");
    }
}

#[test]
fn a_row_that_says_more_than_as_set_is_not_counted() {
    let begin = "Cast on 40 sts.\nRow 1: K2, yo, k2tog, k to end.\n";
    let repeated = "Repeat row 1 until 10 rows are worked, decreasing 2 sts.";
    assert_eq!(last(&format!("{begin}{repeated}")), None, "{repeated}");
    for row in ["Work as set, binding off 3 sts.", "Knit the next 3 sts, k2tog."] {
        assert_eq!(last(&format!("{begin}Row 2: {row}")), None, "{row}");
    }
}

#[test]
fn stitches_are_bound_off_in_the_middle() {
    for which in ["centre", "center", "the middle", "the next", "the following", "next"] {
        let text = format!("Cast on 40 sts.\nRow 1: K15, bind off {which} 10 sts, k to end. [30 sts]");
        assert_eq!(end(&[&text], 1), [Some(30)], "{which}");
        let text = format!("Cast on 40 sts.\nBind off {which} 10 sts, k to end. [30 sts]");
        assert_eq!(end(&[&text], 1), [Some(30)], "{which}");
    }
    for all in ["all sts", "all rem sts loosely", "in pattern", "rem sts"] {
        let text = format!("Cast on 40 sts.\nRow 1: Bind off {all}. [0 sts]");
        assert_eq!(end(&[&text], 1), [Some(0)], "{all}");
    }
    for unsure in ["all but 10 sts", "half of the sts"] {
        assert_eq!(last(&format!("Cast on 40 sts.\nRow 1: Bind off {unsure}.")), None, "{unsure}");
    }
}

#[test]
fn rows_are_repeated_until_so_many_are_left() {
    let rows = "Cast on 20 sts.\nRow 1: K1, k2tog, k to end.\n";
    for until in ["4 sts remain on needles", "4 stitches are left on the needle", "4 sts rem", "there are 4 sts"] {
        assert_eq!(end(&[&format!("{rows}Repeat row 1 until {until}. [4 sts]")], 1), [Some(4)], "{until}");
    }
    let one = "Cast on 8 sts.\nRow 1: K2tog, k to end.\nRepeat row 1 until 1 stitch remains.";
    assert_eq!(end(&[one], 1), [Some(1)]);
    let inside = "Cast on 9 sts.\nRow 1: [K2tog] until 1 stitch remains, k1. [5 sts]";
    assert_eq!(end(&[inside], 1), [Some(5)]);
}

#[test]
fn stitches_are_put_aside_at_both_ends() {
    let begin = "Cast on 40 sts.\n";
    let both = format!("{begin}Place first 10 sts on hold, k20, place last 10 sts on hold.");
    assert_eq!(end(&[&both], 1), [Some(20)]);
    let labelled = format!(
        "{begin}Row 1: Place first 10 sts on hold for the left sleeve, k20, place last 10 sts on hold. [20 sts]"
    );
    assert_eq!(end(&[&labelled], 1), [Some(20)]);
    for (sentence, left) in [
        ("Place the next 10 sts on hold for the thumb and cut the yarn.", Some(30)),
        ("Place 10 sts on a holder, leaving 30 sts.", Some(30)),
        ("Place 10 sts on hold, place next 10 sts on hold.", None),
        ("Place 10 sts on hold, and the following 8 sts on waste yarn.", None),
        ("Place 20 sts on needle 2.\nRow 1: Knit.", Some(40)),
    ] {
        assert_eq!(last(&format!("{begin}{sentence}")), left, "{sentence}");
    }
}

#[test]
fn stitches_are_cast_on_past_a_marker() {
    assert_eq!(end(&["Cast on 40 sts, pm, cast on 10 sts. [50 sts]"], 1), [Some(50)]);
    let sizes = "Cast on 40 (44) sts, pm, cast on 10 sts, place marker, CO 2 (3) sts. [52 (57) sts]";
    assert_eq!(end(&[sizes], 2), [Some(52), Some(57)]);
    // More than one number, and nobody knows what is cast on.
    assert_eq!(last("Cast on 40 sts, then 10 sts more."), None);
    // Along several edges they are one row.
    let edges = "Pick up and knit 10 sts along the edge, 20 sts across the back";
    assert_eq!(last(&format!("{edges}.")), Some(30));
    // Onto stitches that are there it is a row.
    let rows = "Cast on 40 sts.\nRow 1: Knit.\nCast on 8 sts, knit to end. [48 sts]";
    assert_eq!(end(&[rows], 1), [Some(48)]);
    assert_eq!(end(&["Cast on 40 sts.\nRow 1: Knit.\nCO 8 sts, K to end. [48 sts]"], 1), [Some(48)]);
}

#[test]
fn changes_are_told_evenly_and_at_the_ends() {
    let begin = "Cast on 40 sts.\n";
    for (row, count) in [
        ("Increase 8 sts evenly across row.", 48),
        ("Row 1: Increase 8 sts evenly spaced across the row.", 48),
        ("Row 1: Knit, increasing 8 sts evenly.", 48),
        ("Knit 1 row, increasing 8 sts evenly across.", 48),
        ("Row 1 (WS): Purl across, dec 5 sts evenly.", 35),
        ("Rnd 1: Work in rib, decreasing 4 sts evenly around.", 36),
        ("Inc 1 st at each end of row.", 42),
        ("Row 1: Inc 1 st at each end.", 42),
        ("Dec 2 sts at both ends of the next row.", 36),
        ("With MC, increase 8 sts evenly across row.", 48),
    ] {
        assert_eq!(end(&[&format!("{begin}{row}")], 1), [Some(count)], "{row}");
        assert_eq!(end(&[&format!("{begin}{row} [{count} sts]")], 1), [Some(count)], "{row}");
    }
    let sizes = "Cast on 40 (42, 44, 46) sts.\nRow 1: Knit, dec 2 (1, 0, 3) sts evenly. [38 (41, 44, 43) sts]";
    assert_eq!(end(&[sizes], 4), [Some(38), Some(41), Some(44), Some(43)]);
    // The change is held against what is said of it.
    let wrong = format!("{begin}Knit 1 row, increasing 8 sts evenly. [46 sts]");
    assert_eq!(told(&[&wrong], 1), [("46".to_owned(), vec![(0, Fault::Stated { says: 46, is: 48 })])]);
    let few = format!("{begin}Row 1: Knit, decreasing 30 sts evenly.");
    assert!(!told(&[&few], 1).is_empty());
    for unsure in [
        "Knit 4 rows, increasing 8 sts evenly across each row.",
        "Knit 4 rows, increasing 8 sts evenly.",
        "Inc 8 sts evenly over the next 3 rows.",
        "Row 1: Inc 1 st at each end of every row.",
        "Turn, decrease 3 sts somewhere.",
    ] {
        assert_eq!(last(&format!("{begin}{unsure}")), None, "{unsure}");
    }
}

#[test]
fn a_stitch_is_worked_all_along() {
    for (row, count) in
        [("Rnd 1: K2tog around.", 20), ("Row 1: K2tog across.", 20), ("Row 1: K1, ssk across row, [20 sts]", 20)]
    {
        let cast_on = if row.contains("K1") { 39 } else { 40 };
        assert_eq!(end(&[&format!("Cast on {cast_on} sts.\n{row}")], 1), [Some(count)], "{row}");
    }
    assert_eq!(told(&["Cast on 41 sts.\nRow 1: K2tog across."], 1).len(), 1);
}

#[test]
fn where_the_stitches_lie_and_what_ends_them() {
    let begin = "Cast on 40 sts.\nRow 1: Knit.\n";
    assert_eq!(end(&[&format!("{begin}Slide sts to other end of needle.\nRow 2: K to end. [40 sts]")], 1), [Some(40)]);
    assert_eq!(last(&format!("{begin}Using the larger needle, bind off all sts.")), None);
}

#[test]
fn an_aside_that_takes_stitches_off_the_needle_is_not_counted() {
    let begin = "Cast on 40 sts.\nRow 1: Knit.\n";
    for (aside, count) in [
        ("Leave the first 10 sts unworked.", None),
        ("Divide for neck: place 10 sts on hold.", Some(30)),
        ("Return to the 10 held sts.", None),
        ("Remove the last 5 sts.", None),
        ("Leave the sleeve on hold.", Some(40)),
        ("Note that the marker stays where it is.", Some(40)),
    ] {
        assert_eq!(last(&format!("{begin}{aside}\nNext row: Knit.")), count, "{aside}");
    }
}

#[test]
fn an_excerpt_begins_with_a_whole_word() {
    let message = |row: &str| {
        let pattern = format!("---\ntitle: Hat\n---\n\n```rows\nCast on 40 sts.\n{row}\n```\n");
        let found = crate::support::read(&[("patterns/hat.md", &pattern)]).findings;
        let unread =
            found.iter().find(|finding| finding.code.name == "row-unread").map(|finding| finding.message.clone());
        unread.unwrap_or_else(|| panic!("{row}: {found:?}"))
    };
    let long = message("Row 1 (RS): K2, yo, k2tog, purl to last 8 sts, a little lace here, k2.");
    assert!(long.ends_with("understood up to `…purl to last 8 sts`"), "{long}");
    let short = message("Row 1: K2, yo, a little lace here, k2.");
    assert!(short.ends_with("understood up to `Row 1: K2, yo`"), "{short}");
}
