//! Stitches on hold: put there within a row or by the next sentence, and worked from where they wait.

use super::blocks::{end, told};
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
