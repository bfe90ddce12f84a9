//! A count that is lost is told of once, at the first words that lose it, whatever the cause.

use super::blocks::{end, told};
use ballband::notation::rows::Fault;

#[test]
fn a_count_that_is_lost_is_told_at_the_words_that_lose_it() {
    for (row, words) in [
        ("BO to marker, k to end.", "BO to marker"),
        ("*K2tog; rep from * to 3 sts before m, k to end.", "*K2tog; rep from * to 3 sts before m"),
        ("K to m, *k2tog; rep from * to end.", "*k2tog; rep from * to end"),
        ("[K to m, k2tog] 501 times, k to end.", "[K to m, k2tog] 501 times"),
    ] {
        let text = format!("Cast on 40 sts.\nRow 1: {row}\nRow 2: K999.\nRow 3: K998.");
        assert_eq!(told(&[&text], 1), [(words.to_owned(), vec![(0, Fault::Unknown)])], "{row}");
        // A count behind it is believed.
        let stated = format!("Cast on 40 sts.\nRow 1: {row} [30 sts]\nRow 2: K30.");
        assert_eq!(end(&[&stated], 1), [Some(30)], "{row}");
        // Where nothing comes behind it, nobody needs the count.
        let alone = format!("Cast on 40 sts.\nRow 1: {row}\nBind off all sts.");
        assert_eq!(told(&[&alone], 1), [], "{row}");
    }
}

/// Every part is looked at before it is worked, and that is counted too, so a row cannot take for ever.
#[test]
fn a_row_that_takes_for_ever_is_given_up_and_told_of() {
    let inner = vec!["[k1, yo, k2tog] 2 times"; 2_000].join(", ");
    let text = format!("Cast on 40 sts.\nRow 1: [[pm, {inner}] 400 times] 400 times.\nRow 2: K40.");
    let begun = std::time::Instant::now();
    let found = told(&[&text], 1);
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].1, [(0, Fault::Unknown)]);
    assert!(begun.elapsed().as_secs() < 5, "{:?}", begun.elapsed());
}

/// A row that shapes and a plain one are a pair: to go on as established may be to go on shaping (common practice).
#[test]
fn to_go_on_as_established_may_be_to_go_on_shaping() {
    let pair = "Cast on 40 sts.\nRow 1: K2tog, k to end.\nRow 2: Purl.\n";
    let lost = |words: &str| told(&[&format!("{pair}{words}\nNext row: K39.")], 1);
    for words in ["Work as established until it measures 10 cm.", "Continue until it measures 10 cm."] {
        assert_eq!(lost(words), [(words.trim_end_matches('.').to_owned(), vec![(0, Fault::Unknown)])], "{words}");
        // After two plain rows nothing is shaped any more.
        assert_eq!(lost(&format!("Knit 1 row.\n{words}")), [], "{words}");
        assert_eq!(lost(&format!("Knit 4 rows.\n{words}")), [], "{words}");
    }
    // What names the stitch is of that.
    for words in
        ["Rib as set until it measures 10 cm.", "Continue in rib until it measures 10 cm.", "Work even for 10 cm."]
    {
        assert_eq!(lost(words), [], "{words}");
    }
    assert_eq!(
        end(&["Cast on 40 sts.\nRow 1: *K2, p2; rep from * to end.\nWork as established for 10 cm."], 1),
        [Some(40)]
    );
}
