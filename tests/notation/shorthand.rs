//! The same row in the many spellings that designers use (common practice), with counts worked out by hand.

use super::blocks::{end, told};
use super::written;
use ballband::notation::rows::Fault;

/// Each text begins on so many stitches and leaves so many; nothing of it is unread.
#[test]
fn rows_in_many_spellings() {
    for (before, row, after) in [
        (40, "Row 1: *K2, p2. Rep from * to end.", 40),
        (40, "Row 1: K2tog to end.", 20),
        (41, "Row 1: K2tog to last st, k1.", 21),
        (60, "Row 1: (K8, k2tog) x6.", 54),
        (60, "Row 1: [K8, k2tog] x 6.", 54),
        (60, "Row 1: [K2, p2] fifteen times.", 60),
        (48, "Row 1: *k6, k2tog* rep 6 times.", 42),
        (40, "Rnd 1: Knit.\nKnit until sleeve measures 14 cm, ending last rnd 2 sts before end of rnd.", 40),
        (24, "Rnd 1: *K1, M1L, k to last st on needle, M1R, k1; repeat from * on second needle. (4 sts increased)", 28),
        (60, "Row 1: BO 8, k until 22 sts on needle after BO, BO 8, k to end.", 44),
        (40, "Row 1: K to first wrapped st, k wrapped st together with its wrap, k to end.", 40),
        (1, "Pick up and knit 20 sts, 14 sts, 20 sts and 32 sts. 86 sts.", 86),
        (
            40,
            "Inc rnd: M1, k to end.\nNext rnd: Knit.\nWork inc rnd every 6th rnd once more.\nKnit until it measures 14 cm, ending last rnd 2 sts before end of rnd.",
            42,
        ),
        (24, "Rnd 1: *K1, M1L, knit to last st, M1R, k1; repeat from * on second needle.", 28),
        (40, "Row 1: Inc in next st, k to end.", 41),
        (40, "Row 1: Inc 1 st in first st, k to last st, inc in last st.", 42),
        (40, "Row 1: Kfb in first st, k to end.", 41),
        (40, "Row 1: Slip first st, k to end.", 40),
        (40, "Row 1: Work sts as they appear.", 40),
        (40, "Row 1: Knit the knits and purl the purls.", 40),
        (40, "Row 1: K20, pm for side, k20.", 40),
        (40, "Purl 1 row (turning ridge).", 40),
        (40, "Work 16 rows in rib as given for back.", 40),
        (40, "Row 1: K2tog, k to end.\nThese 2 rows form the pattern.\nRow 2: K39.", 39),
        (40, "Row 1: K2tog, k to end.\nRep this row 9 times.", 30),
        (40, "Row 1: K2tog, k to end.\nRep this row until 30 sts rem.", 30),
        (40, "Row 1: K2tog, k to end.\nRow 2: Purl.\nRep Rows 1-2, 9 more times.", 30),
        (40, "Row 1: K2tog, k to end.\nRep row 1 until a total of 30 sts remain.", 30),
        (40, "Row 1: K2tog, k to end. 39 sts; 4 gusset sts.", 39),
        (40, "Row 1: K2tog, k to end. Total 39 sts.", 39),
        (40, "Row 1: K2tog, k to end. <39 sts>", 39),
        (40, "Row 1: K2tog, k to end. You should now have 39 sts.", 39),
        (40, "Cont dec every other row to 30 sts.", 30),
        (40, "Work in stocking stitch, inc 1 st at each end of 5th and every foll 8th row to 70 sts.", 70),
        (
            40,
            "Row 1: K27, w&t.\nRow 2: P to 1 st before last wrapped st, w&t.\nRow 3: K to first wrapped st, knit wrap tog with st, k to end.",
            40,
        ),
    ] {
        let text = format!("CO {before} sts.\n{row}");
        let read = written(&text);
        let unread: Vec<_> = read.statements.iter().filter_map(|statement| statement.trouble.clone()).collect();
        assert_eq!(unread, [], "{text}");
        assert_eq!(end(&[&text], 1), [Some(after)], "{text}");
    }
}

/// In the round what is bound off at the end may go on with the next round; nothing is said to be missing then.
#[test]
fn stitches_are_bound_off_past_the_end_of_a_round() {
    let text = "CO 160 sts.\nRnd 1: Knit.\nNext rnd: K to 4 sts before end of rnd; bind off 8 sts, k until 72 sts on needle after BO, bind off 8 sts, k to end.";
    assert_eq!(told(&[text], 1), []);
    let flat = told(&["CO 160 sts.\nRow 1: Knit.\nRow 2: K to last 4 sts, bind off 8 sts."], 1);
    assert_eq!(flat.len(), 1);
}

#[test]
fn counts_in_other_words_are_held_against_the_row() {
    for words in ["Total 38 sts.", "<38 sts>", "There should be 38 sts.", "You should now have 38 sts."] {
        let found = told(&[&format!("CO 40 sts.\nRow 1: K2tog, k to end. {words}")], 1);
        assert_eq!(found, [("38".to_owned(), vec![(0, Fault::Stated { says: 38, is: 39 })])], "{words}");
    }
    // Of some of them it says nothing of all.
    for words in ["[4 gusset sts]", "[20 sts each side]", "(10 sts between markers)"] {
        assert_eq!(told(&[&format!("CO 40 sts.\nRow 1: K2tog, k to end. {words}")], 1), [], "{words}");
    }
}

#[test]
fn the_last_stitches_are_as_many_as_the_yarn_is_drawn_through() {
    let crown = |words: &str| told(&[&format!("CO 60 sts.\nRnd 1: Knit.\n{words}")], 1);
    assert_eq!(crown("Cut yarn, thread through rem 60 sts and pull tight."), []);
    assert_eq!(crown("Cut yarn, draw through remaining sts."), []);
    let wrong = crown("Cut yarn, thread through rem 58 sts and pull tight.");
    assert_eq!(wrong, [("58".to_owned(), vec![(0, Fault::Stated { says: 58, is: 60 })])]);
}

/// Nothing is made up where the words do not tell how many: stitches between turns or markers are not all.
#[test]
fn some_of_the_stitches_are_not_all() {
    for words in [
        "Rep short rows 1 and 2 until 10 sts rem unwrapped.",
        "Rep rows 1 and 2 until there are 14 sts between markers.",
    ] {
        let text = format!("CO 40 sts.\nShort row 1 (RS): K27, w&t.\nShort row 2 (WS): P26, w&t.\n{words}");
        assert!(!told(&[&text], 1).iter().any(|(_, sizes)| matches!(sizes[0].1, Fault::Missed { .. })), "{words}");
    }
}
