//! Stitches on hold: put there within a row or by the next sentence, and worked from where they wait.

use super::blocks::{end, told};
use super::random::Dice;
use ballband::measure::RunStyle;
use ballband::notation::rows::{Counts, Doing, Fault, Item, Lexicon, follow, read};

/// Ways to say the same (common practice): of 60 (66, 72) stitches 20 (22, 24) wait, so 40 (44, 48) are left.
#[test]
fn a_row_puts_stitches_aside_in_many_words() {
    for words in [
        "place next 20 (22, 24) sts on hold",
        "place next 20 (22, 24) sts on waste yarn for sleeve",
        "place the next 20 (22, 24) sts on a holder for left sleeve",
        "place next 20 (22, 24) sleeve sts on waste yarn",
        "place next 20 (22, 24) sts for sleeve on a spare needle",
        "sl next 20 (22, 24) sts to holder",
        "sl next 20 (22, 24) sts onto waste yarn for thumb",
        "slip next 20 (22, 24) sts to a stitch holder",
        "put 20 (22, 24) sts on hold",
        "transfer next 20 (22, 24) sts to scrap yarn",
    ] {
        let text =
            format!("Cast on 60 (66, 72) sts.\nRow 1: K10, {words}, k to end. [40 (44, 48) sts]\nRow 2: K40 (44, 48).");
        assert_eq!(told(&[&text], 3), [], "{words}");
        let read = read(&text, &Lexicon::default(), RunStyle::default());
        let Doing::Row { items, .. } = &read.statements[1].doing else { panic!("{words}: {read:#?}") };
        assert!(matches!(items[1], Item::Hold { rest: false, .. }), "{words}: {items:#?}");
    }
    // What is slipped otherwise is still on the needle.
    for words in ["sl next 20 sts to cn and hold in front", "sl next 20 sts purlwise", "slip next 20 sts knitwise"] {
        let text = format!("Cast on 60 sts.\nRow 1: K10, {words}, k to end. [60 sts]");
        assert_eq!(told(&[&text], 1), [], "{words}");
    }
}

#[test]
fn a_stitch_that_an_abbreviation_drops_is_not_put_aside() {
    let mut lexicon = Lexicon::default();
    lexicon.add("drop", Counts::new(1, 0));
    let found = |text: &str| follow(&[read(text, &lexicon, RunStyle::default())], 1).told;
    // 40 - 3 = 37, and the 20 that come back are of another piece.
    let text = "Cast on 40 sts.\nRow 1: K10, drop 3 times, k to end. [37 sts]\nReturn 20 held sts to needle.";
    assert_eq!(found(text), []);
    let aside = text.replace("drop 3 times", "place next 3 sts on hold");
    assert_eq!(found(&aside)[0].sizes, [(0, Fault::Held { says: 20, had: 3 })]);
}

/// All that remain behind a count are as many as it says.
#[test]
fn what_remains_is_what_was_counted() {
    let back = |rest: &str| {
        format!(
            "Cast on 44 (46, 48) sts.\nBO 7 sts at beg of next 2 rows. [30 (32, 34) sts]\nPlace rem {rest} sts on holder for back neck."
        )
    };
    assert_eq!(told(&[&back("30 (32, 34)")], 3), []);
    let wrong = told(&[&back("30 (30, 34)")], 3);
    assert_eq!(wrong, [("30 (30, 34)".to_owned(), vec![(1, Fault::LeftOver { left: 2, had: 32 })])]);
}

/// 55 (60, 66) stitches, of which 40 are worked: 15 (20, 26) remain.
#[test]
fn what_remains_of_a_row_may_be_put_aside() {
    for words in [
        "Row 1: K40. Place remaining 15 (20, 26) sts on hold.",
        "Row 1: K40.\nPlace rem 15 (20, 26) sts on a holder.",
        "Row 1: K40.\nPlace next 15 (20, 26) sts on waste yarn for back.",
        "Row 1: K40, place rem 15 (20, 26) sts on holder.",
        "Row 1: K40, turn, place rem 15 (20, 26) sts on holder.",
        "Row 1: K40, place rem 15 (20, 26) sts on holder, turn.",
        "Row 1: K40, turn. Place remaining 15 (20, 26) sts on hold.",
        "K40. Sl rem 15 (20, 26) sts to holder.",
        "Row 1: K40. Leave remaining 15 (20, 26) sts on a holder.",
        "Row 1: K40, leave rem 15 (20, 26) sts on hold.",
        "Row 1: K40, turn, leaving rem 15 (20, 26) sts on a holder.",
        "Row 1: K40, place rem sts on hold.",
        "Row 1: K40, turn, slip rem sts to holder.",
        "Row 1: K40. Place remaining sts on hold.",
        "Row 1: K40, turn. Place remaining sts on hold.",
    ] {
        let text = format!("Cast on 55 (60, 66) sts.\n{words}\nRow 2: P40. [40 sts]");
        assert_eq!(told(&[&text], 3), [], "{words}");
        assert_eq!(end(&[&text], 3), [Some(40); 3], "{words}");
    }
    let wrong = |text: &str| told(&[&format!("Cast on 55 sts.\n{text}")], 1);
    let over = |left, had| vec![(0, Fault::LeftOver { left, had })];
    let short = |by, had| vec![(0, Fault::Short { by, had })];
    assert_eq!(wrong("Row 1: K40. Place remaining 14 sts on hold."), [("14".to_owned(), over(1, 55))]);
    assert_eq!(wrong("Row 1: K40. Place remaining 16 sts on hold."), [("16".to_owned(), short(1, 15))]);
    let turned = "place rem 14 sts on holder";
    assert_eq!(wrong(&format!("Row 1: K40, turn, {turned}.")), [(turned.to_owned(), over(1, 55))]);
    assert_eq!(wrong("Row 1: K40, turn. Place rem 17 sts on holder."), [("17".to_owned(), short(2, 15))]);
    // Others than those that stay unworked: the row is still one that does not come to its end.
    assert_eq!(wrong("Row 1: K40. Place next 10 sts on hold.")[0].1, over(15, 55));
    assert_eq!(wrong("Row 1: K40.\nRow 2: P40. Place remaining 15 sts on hold.")[0].1, over(15, 55));
    assert_eq!(wrong("Row 1: K40.\nRow 2: P40. Place remaining sts on hold.")[0].1, over(15, 55));
    // Without a number nobody knows which group is meant later.
    let later = "Cast on 55 sts.\nRow 1: K40, place rem sts on hold.\nRow 2: P40.\nReturn 17 held sts to needle.";
    assert_eq!(told(&[later], 1), []);
    // All that are on the needle, where no row left any.
    let all =
        "Cast on 55 sts.\nRow 1: BO 5 sts, k to end.\nPlace remaining sts on hold.\nReturn 50 held sts to needle.";
    assert_eq!(told(&[all], 1), []);
    let other = told(&[&all.replace("Return 50", "Return 48")], 1);
    assert_eq!(other, [("48".to_owned(), vec![(0, Fault::Held { says: 48, had: 50 })])]);
    // The sizes that put none aside work to the end.
    let some = "Cast on 55 (60) sts.\nRow 1: K40 (60).\nSize 1 only: Place remaining 15 sts on hold.\nRow 2: P40 (60).";
    assert_eq!(told(&[some], 2), []);
}

/// A yoke of 200 (220) leaves 40 (44) for each sleeve; with 8 (10) picked up at the underarm a sleeve has 48 (54).
#[test]
fn held_stitches_are_worked_from_where_they_wait() {
    let yoke = "Cast on 200 (220) sts.\nRnd 1: K60 (66), place next 40 (44) sts on hold, k60 (66), place next 40 (44) sts on hold. [120 (132) sts]";
    for words in [
        "K40 (44) held sts, pick up and knit 8 (10) sts",
        "K across 40 (44) held sts, pick up and knit 8 (10) sts",
        "Knit across the 40 (44) held sleeve sts, pick up and knit 8 (10) sts",
        "K40 (44) sts from holder, pick up and knit 8 (10) sts",
        "Pick up and knit 8 (10) sts, work across 40 (44) sts from waste yarn",
        "Work across the held 40 (44) sts in patt, pick up and knit 8 (10) sts",
    ] {
        let sleeve = format!("Bind off all sts.\nSleeves:\nRnd 1: {words}. [48 (54) sts]\nRnd 2: K48 (54).");
        assert_eq!(told(&[yoke, &sleeve], 2), [], "{words}");
        // The body's stitches may still be on a needle of their own.
        let sleeve = sleeve.replace("Bind off all sts.\n", "");
        assert_eq!(told(&[yoke, &sleeve], 2), [], "{words}");
        // They may have been brought to the needle before.
        let needle = sleeve.replace("Rnd 1:", "Return 40 (44) held sts to needle.\nRnd 1:");
        assert_eq!(told(&[yoke, &needle], 2), [], "{words}");
        let wrong = sleeve.replace("40 (44)", "40 (42)").replace("[48 (54) sts]", "").replace("K48 (54)", "K48 (52)");
        assert_eq!(told(&[yoke, &wrong], 2), [("40 (42)".to_owned(), vec![(1, Fault::Held { says: 42, had: 44 })])]);
        let wrong = sleeve.replace("[48 (54) sts]", "[48 (56) sts]");
        let fault = (1, Fault::Stated { says: 56, is: 54 });
        let bound = format!("Bind off all sts.\n{wrong}");
        assert_eq!(told(&[yoke, &bound], 2), [("48 (56)".to_owned(), vec![fault])], "{words}");
    }
    // Body and sleeves joined: 120 + 2 x 30 = 180.
    let joined = "Cast on 120 sts.\nRnd 1: K60, k30 held sts, k60, k30 sts from holder. [180 sts]\nRnd 2: K180.";
    assert_eq!(told(&[joined], 1), []);
    let short = told(&[&joined.replace("k60, k30 sts", "k62, k30 sts")], 1);
    assert_eq!(short[0].1, [(0, Fault::Short { by: 2, had: 120 })]);
}

#[test]
fn what_is_said_before_stitches_works_none() {
    for row in [
        "With RS facing, k across 40 held sts, pick up and knit 8 sts from underarm",
        "With RS facing and MC, k40 held sts, pick up and k 8 sts",
        "RS facing, pick up and k 8 sts, k across 40 sts from holder",
        "With larger needles, k40 held sts, pick up and knit 8 sts",
        "Using 3.5 mm dpns and MC, k40 held sts, pick up and knit 8 sts",
        "With MC and the smaller circular needle, k40 held sts, pick up and knit 8 sts",
        "With MC, k40 held sts, using backward loop method CO 8 sts",
        "Join yarn, k40 held sts, using the backward-loop method, CO 8 sts",
    ] {
        for label in ["Rnd 1: ", ""] {
            let text = format!("{label}{row}. [48 sts]\nRnd 2: K48.");
            assert_eq!(told(&[&text], 1), [], "{text}");
            let wrong = told(&[&text.replace("[48 sts]", "[50 sts]")], 1);
            assert_eq!(wrong[0].1, [(0, Fault::Stated { says: 50, is: 48 })], "{text}");
        }
    }
}

/// Bound off in the middle: 40 - 10 = 30.
#[test]
fn stitches_in_the_middle_are_bound_off() {
    for words in [
        "bind off the 10 centre sts",
        "BO centre 10 sts",
        "bind off next 10 sts",
        "BO 10 center sts",
        "cast off the next 10 neck sts",
    ] {
        let text = format!("Cast on 40 sts.\nRow 1: K15, {words}, k to end. [30 sts]");
        assert_eq!(told(&[&text], 1), [], "{words}");
        let exact = format!("Cast on 40 sts.\nRow 1: K15, {words}, k15.\nRow 2: K30.");
        assert_eq!(told(&[&exact], 1), [], "{words}");
    }
}

/// Random rows that put stitches aside and work others from there, with and without a turn, against sums of their own: each comes
/// out, and with a stitch more or fewer at the end it does not.
#[test]
fn random_rows_with_holds_come_out() {
    let mut dice = Dice(11);
    let mut roll = |below: u64| i64::try_from(dice.roll(below)).unwrap();
    for _ in 0..if cfg!(debug_assertions) { 1_000 } else { 20_000 } {
        let (mut takes, mut leaves, mut row) = (0, 0, Vec::new());
        for _ in 0..1 + roll(5) {
            let number = 1 + roll(30);
            match roll(4) {
                0 => {
                    row.push(format!("place next {number} sts on hold"));
                    takes += number;
                }
                1 => {
                    row.push(format!("k{number} held sts"));
                    leaves += number;
                }
                2 => {
                    row.push(format!("[k{number}, sl next 2 sts to holder] twice"));
                    takes += 2 * number + 4;
                    leaves += 2 * number;
                }
                _ => {
                    row.push(format!("p{number}"));
                    takes += number;
                    leaves += number;
                }
            }
        }
        // Some end with what is worked, some with what remains, put aside in the row, behind a turn or by the next sentence.
        let (last, rest) = (1 + roll(40), 1 + roll(40));
        row.push(format!("k{last}"));
        let (before, after) = (takes + last + rest, leaves + last);
        let end = match roll(5) {
            0 => format!(", place rem {rest} sts on hold."),
            1 => format!(", turn, place rem {rest} sts on hold."),
            2 => format!(". Place remaining {rest} sts on hold."),
            3 => ", place rem sts on hold.".to_owned(),
            _ => format!(", BO {rest} sts."),
        };
        let text = format!("Cast on {before} sts.\nRow 1: {}{end}\nRow 2: P{after}.", row.join(", "));
        let faults = |text: &str| -> Vec<Fault> {
            let told = told(&[text], 1).into_iter().flat_map(|(_, sizes)| sizes);
            // Whether held stitches are those put aside is another matter.
            told.map(|(_, fault)| fault).filter(|fault| !matches!(fault, Fault::Held { .. })).collect()
        };
        assert_eq!(faults(&text), [], "{text}");
        for wrong in [after + 1, after - 1] {
            let wrong = text.replace(&format!("Row 2: P{after}"), &format!("Row 2: P{wrong}"));
            assert_eq!(faults(&wrong).len(), 1, "{wrong}");
        }
        if !text.contains("rem sts") {
            let wrong = text.replace(&format!("Cast on {before} sts"), &format!("Cast on {} sts", before + 1));
            assert!(!faults(&wrong).is_empty(), "{wrong}");
        }
    }
}

/// Two in the row as it is written, and two in each of three more: 8 of 48 wait, 40 are left.
#[test]
fn rows_that_are_worked_again_put_stitches_aside_again() {
    let text = "Cast on 48 sts.\nRow 1: Place next 2 sts on hold, k to end.\nRepeat row 1 3 times more. [40 sts]\n\
                Return 8 held sts to needle.";
    assert_eq!(told(&[text], 1), []);
    let found = told(&[&text.replace("Return 8", "Return 9")], 1);
    assert_eq!(found, [("9".to_owned(), vec![(0, Fault::Held { says: 9, had: 2 })])]);
    // Whether the first is among them is tried both ways, and what did not fit is not kept.
    let all = text.replace("3 times more", "4 times");
    let found = told(&[&all.replace("Return 8", "Return 10")], 1);
    assert!(found.iter().any(|(_, sizes)| sizes == &[(0, Fault::Held { says: 10, had: 2 })]), "{found:?}");
}
