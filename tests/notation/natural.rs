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
