//! Ways to write what is read already: hyphens between stitches, `x` for times, shaping at one end.

use super::blocks::told;
use super::chart::draft;
use ballband::measure::RunStyle;
use ballband::notation::chart::build;
use ballband::notation::compare::{Words, compare};
use ballband::notation::rows::{Lexicon, read_items};

/// Each row with the stitches before and after it, worked out beside it.
#[test]
fn rows_in_other_spellings_come_out() {
    for (row, before, after) in [
        // Three are taken and one is left, between seven on either side.
        ("K7, sl1-k2tog-psso, k7.", 17, 15),
        ("K7, sl 1-k2tog-psso, k7.", 17, 15),
        ("*Sl1-k2tog-psso; rep from * to end.", 30, 10),
        ("*K1, sl1-k1-psso; rep from * to end.", 30, 20),
        ("K1-tbl, k to last st, k1-tbl.", 12, 12),
        ("*K1-tbl, p1-tbl; rep from * to end.", 12, 12),
        ("*K2-p2; rep from * to end.", 12, 12),
        ("Sl 1-wyif, k11.", 12, 12),
        // Ten pairs of two; five times k2tog and yo; three times two.
        ("[K1, p1] 10x.", 20, 20),
        ("[K1, p1] 10 x.", 20, 20),
        ("[K2tog, yo] 5x, k2.", 12, 12),
        ("K2 3x, p4.", 10, 10),
        ("K2tog 3x, k4.", 10, 7),
        ("*K1, p1; rep from * 9x more.", 20, 20),
        // One stitch at one end, two at both.
        ("Inc 1 st at beginning of row.", 20, 21),
        ("Inc 1 st at the beg of next row.", 20, 21),
        ("Dec 1 st at end of row.", 20, 19),
        ("Knit, dec 1 st at end of row.", 20, 19),
        ("Inc 2 sts at start of this row.", 20, 22),
        ("Dec 1 st at neck edge of next row.", 20, 19),
        ("Dec 1 st at beg and end of row.", 20, 18),
        ("K across to end.", 20, 20),
        ("K across to last 2 sts, k2tog.", 20, 19),
        ("Purl across.", 20, 20),
        // All but five are bound off.
        ("BO in pattern until 5 sts rem.", 20, 5),
        ("Bind off in patt until 5 sts remain, k5.", 20, 5),
        ("BO until 5 sts rem, k to end.", 20, 5),
    ] {
        for label in ["Row 1: ", ""] {
            let text = format!("Cast on {before} sts.\n{label}{row} [{after} sts]\nRow 2: K{after}.");
            assert_eq!(told(&[&text], 1), [], "{text}");
            let text = format!("Cast on {before} sts.\n{label}{row}\nRow 2: K{after}.");
            assert_eq!(told(&[&text], 1), [], "{text}");
            let wrong = format!("Cast on {before} sts.\n{label}{row}\nRow 2: K{}.", after + 1);
            assert_eq!(told(&[&wrong], 1).len(), 1, "{wrong}");
        }
    }
}

/// How often, or in how many rows, these are worked is not said by one end alone: nothing may be counted for them.
#[test]
fn other_words_of_one_end_are_still_not_counted() {
    for row in [
        "Inc 1 st at beg of every RS row.",
        "Dec 1 st at end of next 5 rows.",
        "Dec 1 st at neck edge every row.",
        "Inc 1 st at neck edge.",
    ] {
        let text = format!("Cast on 20 sts.\n{row}\nRow 2: *K7; rep from * to end.");
        let written = super::written(&text);
        let unread = written.statements.iter().any(|statement| statement.trouble.is_some());
        assert!(unread || told(&[&text], 1).len() == 1, "{row}: {written:#?}");
        assert!(!format!("{:?}", told(&[&text], 1)).contains("RepeatLeft"), "{row}");
    }
}

/// "Knit on RS, purl on WS" is the plain stitch (common practice), whichever side is named first.
#[test]
fn a_key_may_say_what_is_worked_on_either_side() {
    for plain in [
        "knit on RS, purl on WS",
        "k on RS; p on WS",
        "purl on WS, knit on RS",
        "Knit on the right side and purl on the wrong side",
        "k on RS / p on WS",
    ] {
        let key = [(".", plain), ("-", "purl on RS, knit on WS"), ("/", "k2tog on RS, p2tog on WS")];
        let chart = build(&draft(&key, &["..-", "..-", "/.-"])).unwrap_or_else(|bad| panic!("{plain}: {bad:?}"));
        let unlike = |row: usize, text: &str| {
            let lexicon = Lexicon::default();
            let items = read_items(text, &lexicon, RunStyle::default()).unwrap();
            compare(&chart, row, Words { items: &items, text, lexicon: &lexicon }, 0).is_some()
        };
        assert!(!unlike(0, "P1, k2") && !unlike(1, "P2, k1") && !unlike(2, "P1, k1, k2tog"), "{plain}");
        assert!(unlike(0, "P1, k1, p1") && unlike(1, "K2, p1"), "{plain}");
    }
    // No stitch is worked so: it is then no stitch, and charts take it for a colour's label.
    for none in ["knit on RS, knit on WS", "knit on RS", "sand on RS, purl on WS"] {
        assert_eq!(ballband::standards::chart_symbols::find(none), None, "{none}");
    }
}
