//! Rows that stop and turn: stitches cast on between two turns, some worked alone, others left. Common practice.

use super::blocks::{end, told};
use ballband::measure::{RunStyle, SizeNames};
use ballband::notation::rows::{Fault, Lexicon, follow, read};

/// A buttonhole gives back the two that were cast off: 64 - 2 + 2 = 64; 20 + 3 = 23.
#[test]
fn stitches_are_cast_on_between_two_turns() {
    let hole = "CO 64 sts.\nRow: K3, cast off 2 sts, k to end. [62 sts]\n";
    for back in ["k3", "k5", "k to end"] {
        let text =
            format!("{hole}Next row: K to last 3 sts, turn, cast on 2 sts, turn, {back}. [64 sts]\nNext row: P64.");
        assert_eq!(end(&[&text], 1), [Some(64)], "{back}");
    }
    assert_eq!(
        end(&["CO 20 sts.\nNext row: P to last 12 sts, turn, CO 3, turn, p12. [23 sts]\nNext row: K23."], 1),
        [Some(23)]
    );
    for back in ["k2", "k4", "k6"] {
        let wrong = told(&[&format!("{hole}Next row: K to last 3 sts, turn, cast on 2 sts, turn, {back}.")], 1);
        assert!(matches!(wrong[0].1[..], [(0, Fault::LeftOver { .. } | Fault::Short { .. })]), "{back}: {wrong:?}");
    }
}

#[test]
fn some_stitches_are_worked_alone_behind_a_turn() {
    for words in [
        "K22, turn and work on these 22 sts only",
        "K22, turn and cont on these sts only, leaving rem sts on a holder",
        "K22, turn and work on these sts only, leaving rem 18 sts on a holder",
        "K22, turn, leave rem 18 sts on a holder",
    ] {
        let text = |back| format!("CO 40 sts.\nNext row: {words}.\nNext row: P{back}.");
        assert_eq!(end(&[&text(22)], 1), [Some(22)], "{words}");
        assert!(matches!(told(&[&text(24)], 1)[0].1[..], [(0, Fault::Short { by: 2, .. })]), "{words}");
    }
    for words in [
        "K22, turn; leave rem sts unworked",
        "K22, leave rem 18 sts unworked, turn",
        "K22, turn, leaving rem 18 sts unworked",
    ] {
        assert_eq!(
            end(&[&format!("CO 40 sts.\nNext row: {words}.\nNext row: P22. [40 sts]")], 1),
            [Some(40)],
            "{words}"
        );
    }
}

#[test]
fn stitches_just_worked_are_put_aside() {
    for words in ["K22 and slip these sts onto a holder, k18", "K22, slip these 22 sts onto a holder, k to end"] {
        let text = |says| format!("CO 40 sts.\nNext row: {words}. [{says} sts]");
        assert_eq!(end(&[&text(18)], 1), [Some(18)], "{words}");
        assert_eq!(told(&[&text(20)], 1)[0].1, [(0, Fault::Stated { says: 20, is: 18 })], "{words}");
    }
    for (words, after) in [("Place sts on holder.", Some(0)), ("Leave these sts on a holder.", Some(0))] {
        assert_eq!(end(&[&format!("CO 40 sts.\nKnit 4 rows.\n{words}")], 1), [after], "{words}");
    }
    // Those that were worked or those that were not, the words do not tell.
    assert_eq!(told(&["CO 40 sts.\nRow 1: K22.\nPlace sts on holder.\nRow 2: P22."], 1), []);
    assert_eq!(end(&["CO 40 sts.\nRow 1: K22.\nPlace these 22 sts on a holder.\nRow 2: K18."], 1), [Some(18)]);
}

#[test]
fn a_size_is_named_alone_before_its_row() {
    let mut lexicon = Lexicon::default();
    lexicon.name_sizes(&SizeNames::parse("S (M)", RunStyle::default()).unwrap());
    let found = |text: &str| follow(&[read(text, &lexicon, RunStyle::default())], 2).told;
    for text in
        ["CO 60 (64) sts.\nS: K60. M: K64.", "CO 60 (64) sts.\nS: Row 1: K60.\nM: Row 1: K64.\nAll sizes: K60 (64)."]
    {
        assert_eq!(found(text), [], "{text}");
    }
    let wrong = found("CO 60 (64) sts.\nS: K60. M: K66.");
    assert_eq!(wrong[0].sizes, [(1, Fault::Short { by: 2, had: 64 })]);
}

/// 64 - 4 = 60, 70 - 2 = 68; the first size works nothing.
#[test]
fn a_dash_means_that_a_size_skips_it() {
    let text = "CO 60 (64, 70) sts.\nRow 1: [K– (14, 33), k2tog] – (4, 2) times.";
    assert_eq!(end(&[text], 3), [Some(60), Some(60), Some(68)]);
    let wrong = told(&[&format!("{text} [58 (60, 68) sts]")], 3);
    assert_eq!(wrong[0].1, [(0, Fault::Stated { says: 58, is: 60 })]);
    // A row that is short for another size is still short.
    assert_eq!(told(&["CO 60 (66, 70) sts.\nRow 1: [K– (14, 33), k2tog] – (4, 2) times."], 3)[0].1.len(), 1);
}
