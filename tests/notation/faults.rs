//! What cannot be read is told at its place, and nothing before it is lost.

use super::written;
use ballband::notation::rows::{Doing, Trouble};

#[test]
fn what_cannot_be_read_is_marked_and_no_more() {
    for (text, guilty, unknown_word) in [
        ("Row 1: K2, k2tgo, k2.", "k2tgo", true),
        ("Row 1: K2, do a little dance here, k2.", "do a little dance here", false),
        ("Row 1: K2, [k1, p1], k2.", "[k1, p1]", false),
        ("Row 1: *K2, p2.", "*K2, p2", false),
        ("Row 1: K2, (k1, p1.", "(k1, p1", false),
        ("Row 1: K2 (3,, 4), p2.", ",,", false),
        ("Row 1: K2, zzz, k2.", "zzz", true),
        ("Turn and k2tog somehow.", "somehow", true),
    ] {
        let written = written(text);
        let (trouble, at) = written.statements[0].trouble.clone().unwrap_or_else(|| panic!("{text}: {written:#?}"));
        assert_eq!(&text[at], guilty, "{text}");
        assert_eq!(trouble == Trouble::UnknownWord, unknown_word, "{text}");
        assert!(matches!(&written.statements[0].doing, Doing::Row { .. }), "{text}");
    }
}

#[test]
fn every_sentence_that_designers_write_around_rows_is_read() {
    for text in [
        "Join in the round, being careful not to twist.",
        "With 3.5 mm needles and MC, cast on 84 (92, 100) sts using the long-tail method.",
        "Change to 4 mm needles.",
        "Work even until piece measures 10 cm (4 in).",
        "Knit 4 rows.",
        "Rep Rows 1 and 2 until 8 sts rem.",
        "Repeat last 2 rows 4 times more.",
        "Repeat rows 1-8 3 (4, 5) times more. [48 (56, 64) sts]",
        "Bind off all sts in pattern.",
        "Place 20 sts on waste yarn.",
        "Row 2 and all WS rows: Purl.",
        "Rows 3 and 4: As rows 1 and 2.",
        "Next row (RS): K10, pm, k to end. 48 sts.",
        "Rnd 3 (dec): [K6, k2tog] around — 56 sts.",
        "Short row 1 (RS): K to last 5 sts, w&t.",
        "**K2, *p1, k1; rep from * 3 times more; rep from ** to end.",
        "BO 6 sts at beg of next 2 rows.",
        "K10, BO 5, k to end.",
        "Brim:",
    ] {
        let written = written(text);
        assert!(!written.statements.is_empty(), "{text}");
        for statement in &written.statements {
            assert_eq!(statement.trouble, None, "{text}");
        }
    }
}
