//! Stitches put aside and taken up again, and shaping told in a sentence.

use super::blocks::{end, told};
use ballband::measure::RunStyle;
use ballband::notation::rows::{Counts, Fault, Lexicon, follow, read};

/// A yoke divided: what is put aside, the body and what is cast on at the underarms are all of it (common practice).
const YOKE: &str = "Cast on 200 (220) sts.\n\
    Rnd 1: K30 (33), place next 40 (44) sts on hold, CO 8 (10) sts, k60 (66), place next 40 (44) sts on waste yarn, CO 8 (10) sts, k30 (33). [136 (152) sts]\n\
    Knit 10 rounds.\nBind off all sts.";

#[test]
fn a_sleeve_begins_with_what_the_yoke_left_for_it() {
    let sleeve = "Sleeves:\nReturn 40 (44) held sts to 4 mm dpns and pick up and knit 8 (10) sts at underarm. [48 (54) sts]\nRnd 1: Knit.";
    assert_eq!(end(&[YOKE, sleeve], 2), [Some(48), Some(54)]);
    let found = told(&[YOKE, &sleeve.replace("Return 40 (44)", "Return 40 (42)")], 2);
    assert_eq!(found[0], ("40 (42)".to_owned(), vec![(1, Fault::Held { says: 42, had: 44 })]));
    let found = told(&[YOKE, &sleeve.replace("[48 (54) sts]", "[48 (56) sts]")], 2);
    assert_eq!(found, [("48 (56)".to_owned(), vec![(1, Fault::Stated { says: 56, is: 54 })])]);
    // Both sleeves at once, or others than the rows know of.
    assert_eq!(end(&[YOKE, "Place 80 (88) sleeve sts from hold onto needle."], 2), [Some(80), Some(88)]);
    assert_eq!(end(&["Return 42 held sts to needles."], 1), [Some(42)]);
    // Stitches that are only moved are no others.
    assert_eq!(told(&["Cast on 60 sts.\nRnd 1: Knit.\nPlace next 20 sts on needle 2."], 1), []);
}

#[test]
fn shaping_at_both_ends_takes_two_at_a_time() {
    let shaped = |words: &str| format!("Cast on 60 (65) sts.\nRow 1: Knit.\n{words}");
    assert_eq!(
        end(&[&shaped("Dec 1 st at each end of every 4th row 8 times. [44 (49) sts]")], 2),
        [Some(44), Some(49)]
    );
    assert_eq!(end(&[&shaped("Inc 1 st each side every 6th row until 80 (85) sts.")], 2), [Some(80), Some(85)]);
    let odd = told(&[&shaped("Dec 1 st at each end of every 4th row until 40 sts rem.")], 2);
    assert_eq!(odd, [("40".to_owned(), vec![(1, Fault::Missed { wanted: 40, is: 41 })])]);
    let wrong = told(&[&shaped("Dec 1 st at each end of every 4th row 8 times. [44 (48) sts]")], 2);
    assert_eq!(wrong, [("44 (48)".to_owned(), vec![(1, Fault::Stated { says: 48, is: 49 })])]);
    let falls = told(&[&shaped("Inc 1 st at both ends of every row until 50 sts rem.")], 1);
    assert_eq!(falls[0].1, [(0, Fault::Missed { wanted: 50, is: 60 })]);
    // Five or six times: nobody can tell, so a count behind it is believed.
    let unclear = shaped(
        "Dec 1 st at each end of next and every foll 4th row 5 times. [50 (55) sts]\nRow 2: *K5; rep from * to end.",
    );
    assert_eq!(end(&[&unclear], 2), [Some(50), Some(55)]);
}

#[test]
fn a_stitch_that_is_dropped_is_not_put_aside() {
    let mut lexicon = Lexicon::default();
    lexicon.add("drop", Counts::new(1, 0));
    let text = "Cast on 40 sts.\nRow 1: K10, [drop, k1] twice, k to end.\nReturn 20 held sts to needle.";
    let found = |text: &str| follow(&[read(text, &lexicon, RunStyle::default())], 1).told;
    assert_eq!(found(text), []);
    let aside = text.replace("k to end", "place next 10 sts on hold, k to end");
    assert_eq!(found(&aside)[0].sizes, [(0, Fault::Held { says: 20, had: 10 })]);
}
