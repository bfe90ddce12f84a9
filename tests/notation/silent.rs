//! Sentences that may change stitches are never taken for words that change none: what is not understood is told of, or the
//! count is lost and that is told.

use super::blocks::told;
use super::written;
use ballband::notation::rows::Fault;

/// Nothing is counted from the old number behind a sentence.
fn is_not_swallowed(sentence: &str) {
    let text = format!("CO 40 sts.\nRow 1: Knit.\n{sentence}\nNext row: *K7; rep from * to end.");
    let read = written(&text);
    let faults: Vec<Fault> = told(&[&text], 1).into_iter().map(|(_, sizes)| sizes[0].1).collect();
    let unread = read.statements.iter().any(|statement| statement.trouble.is_some());
    assert!(unread || !faults.is_empty(), "{sentence}: {read:#?}");
    // Five of forty stay behind sevens.
    assert!(!faults.iter().any(|fault| matches!(fault, Fault::RepeatLeft { room: 40, .. })), "{sentence}: {faults:?}");
}

#[test]
fn what_may_shape_is_not_taken_for_an_aside() {
    for sentence in [
        "Change to larger needles, increasing evenly across next row.",
        "Change to MC and dec evenly across.",
        "Join new yarn, bind off centre sts.",
        "Divide for neck, binding off centre ten sts.",
        "Beg with a WS row, dec one at each end of next 4 rows.",
        "Start decreasing at each end of next row.",
        "With MC, decreasing one each side, knit 1 row.",
        "With MC, make one at each end.",
        "Turn, knit two together.",
        "Turn and work into front and back of each st.",
        "Remove the last two sts from the needle.",
        "Next row: Working inc at each end, knit to end.",
        "Row 2: Working inc in first and last st, k to end.",
        "Starting with a double decrease, k to end.",
        "Starting at underarm and decreasing one st, k to end.",
        "From RS, working two sts as one at each end, k to end.",
        "BO all but 4 sts.",
        "Knit until half are gone.",
        "Work in pattern until half are gone.",
        "Both sides decreased",
        "Row 2: K20, B, k20.",
        "Drop Stitch",
        "Halve stitches",
        "Knit two together twice:",
        "Work to end, decreasing twice:",
        "Row 2: K2 (sts worked together), k to end.",
        "Row 2: K5 (double the next st), k35.",
        "Row 2: K5 (both sts together), k35.",
    ] {
        is_not_swallowed(sentence);
    }
}

#[test]
fn what_stands_behind_a_repeat_is_not_thrown_away() {
    for sentence in [
        "Repeat row 1 3 times more and bind off 4 sts.",
        "Repeat row 1 3 times while decreasing 1 st at each end of every RS row.",
        "Rep row 1 5 times and at the same time inc 1 st at each end every row.",
        "Repeat row 1 until 10 cm, decreasing at each end.",
        "Rep last row until 10 cm, then bind off 3 sts.",
        "Work row 1 every 4th row twice, ending with 33 sts.",
        "Work row 1 once more, working one dec only.",
    ] {
        is_not_swallowed(sentence);
    }
}

/// Words that speak of shaping and do none are asides all the same.
#[test]
fn what_only_speaks_of_shaping_changes_nothing() {
    for sentence in [
        "Place a marker for the dec line.",
        "Note that the dec rnd comes every fourth rnd from here.",
        "Weave in the cast-on tail.",
        "Change to dpns when there are too few sts for the circular needle.",
        "Join to work in the round, being careful not to twist the cast-on edge.",
        "You will now increase for the thumb.",
    ] {
        let text = format!("CO 40 sts.\nRow 1: Knit.\n{sentence}\nNext row: K40.");
        let unread: Vec<_> = written(&text).statements.into_iter().filter_map(|statement| statement.trouble).collect();
        assert!(told(&[&text], 1).is_empty() && unread.is_empty(), "{sentence}: {unread:?}");
    }
}
