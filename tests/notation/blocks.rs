//! Whole blocks: the count goes on from row to row and block to block.

use super::written;
use ballband::notation::rows::{Fault, follow};

pub fn told(texts: &[&str], sizes: usize) -> Vec<(String, Vec<(usize, Fault)>)> {
    let blocks: Vec<_> = texts.iter().map(|text| written(text)).collect();
    let followed = follow(&blocks, sizes);
    followed.told.into_iter().map(|told| (texts[told.block][told.at].to_owned(), told.sizes)).collect()
}

/// The stitches after the last statement.
pub fn end(texts: &[&str], sizes: usize) -> Vec<Option<i64>> {
    let blocks: Vec<_> = texts.iter().map(|text| written(text)).collect();
    let followed = follow(&blocks, sizes);
    assert_eq!(followed.told, [], "{texts:?}");
    followed.counts.last().unwrap().last().unwrap().clone()
}

#[test]
fn a_raglan_gains_eight_every_other_round() {
    // Common practice: four points, two increases at each.
    let text = "Cast on 64 sts.\nRnd 1: *K to 1 st before m, kfb, sm, kfb; rep from * 3 times more, k to end.\n\
                Rnd 2: Knit.\nRepeat rnds 1-2 3 times more.";
    assert_eq!(end(&[text], 1), [Some(64 + 4 * 8)]);
}

#[test]
fn a_crown_comes_to_its_last_stitches() {
    let text = "Cast on 96 (104, 112) sts.\nRnd 1: *K6, k2tog; rep from * around. [84 (91, 98) sts]\nRnd 2: Knit.\n\
                Rnd 3: *K5, k2tog; rep from * around. [72 (78, 84) sts; 12 (13, 14) dec'd]";
    assert_eq!(end(&[text], 3), [Some(72), Some(78), Some(84)]);
}

#[test]
fn rows_are_worked_in_the_order_of_their_numbers() {
    let text = "Cast on 10 sts.\nRow 2 and all WS rows: Purl.\nRow 1: K1, m1, k to end. [11 sts]\nRow 3: K1, m1, k to end. [12 sts]";
    assert_eq!(end(&[text], 1)[0], Some(12));
    let text =
        "Cast on 10 sts.\nRows 1 and 3: K1, m1, k to end.\nRows 2 and 4: P to end.\nRows 5-8: As rows 1-4. [14 sts]";
    assert_eq!(end(&[text], 1)[0], Some(14));
}

#[test]
fn short_rows_leave_the_count_alone() {
    let text = "Cast on 60 sts.\nRow 1 (RS): K to last 5 sts, turn.\nRow 2 (WS): P to last 5 sts, turn.\n\
                Row 3 (RS): K to last 10 sts, turn.\nRow 4 (WS): P to last 10 sts, turn.\nRow 5 (RS): K to end.\nRow 6: P to end. [60 sts]";
    assert_eq!(end(&[text], 1), [Some(60)]);
}

#[test]
fn the_count_goes_on_in_the_next_block_and_begins_anew_with_cast_on() {
    assert_eq!(end(&["Cast on 50 sts.", "Row 1: K2tog, k to end. [49 sts]"], 1), [Some(49)]);
    assert_eq!(end(&["Cast on 50 sts.", "Cast on 20 sts.\nRow 1: Knit."], 1), [Some(20)]);
    let apart = told(&["Cast on 50 sts.", "52 sts.\nRow 1: Knit."], 1);
    assert_eq!(apart, [("52".to_owned(), vec![(0, Fault::Section { says: 52, is: 50 })])]);
}

#[test]
fn figures_are_told_for_each_size_that_has_the_mistake() {
    let found = told(&["Cast on 48 (50, 54) sts.\nRow 1: *K2, p2; rep from * to end."], 3);
    let fault = |room| Fault::RepeatLeft { left: 2, of: 4, room };
    assert_eq!(found, [("*K2, p2; rep from * to end".to_owned(), vec![(1, fault(50)), (2, fault(54))])]);
}

#[test]
fn times_that_fit_only_in_all_are_told() {
    let found = told(&["Cast on 48 sts.\nRow 1: *K2, p2; rep from * 12 times."], 1);
    assert_eq!(found, [("12".to_owned(), vec![(0, Fault::InAll { times: 12 })])]);
    assert_eq!(told(&["Cast on 48 sts.\nRow 1: *K2, p2; rep from * 11 times."], 1), []);
    let text = "Cast on 40 sts.\nRow 1: K1, m1, k to end.\nRow 2: Purl.\nRepeat rows 1-2 5 times. [45 sts]";
    assert_eq!(told(&[text], 1), [("5".to_owned(), vec![(0, Fault::InAll { times: 5 })])]);
    assert_eq!(told(&[&text.replace("45", "46")], 1), []);
}

#[test]
fn a_repeat_that_no_longer_fits_is_told_with_its_turn() {
    let text = "Cast on 96 sts.\nRnd 1: *K6, k2tog; rep from * around.\nRepeat rnd 1 2 times more.";
    assert_eq!(told(&[text], 1), [("rnd 1".to_owned(), vec![(0, Fault::Again { pass: 1, had: 84 })])]);
}

#[test]
fn what_words_do_not_tell_is_not_guessed() {
    let text = "Cast on 40 sts.\nRow 1: Work chart A.\nRow 2: *K3, p2; rep from * to end.";
    assert_eq!(told(&[text], 1), [("Row 1: Work chart A".to_owned(), vec![(0, Fault::Unknown)])]);
    // A count behind it is believed, and later rows are held against it.
    let known = text.replace("chart A.", "chart A. [42 sts]");
    assert_eq!(told(&[&known], 1).len(), 1);
    assert_eq!(told(&[&known], 1)[0].1, [(0, Fault::RepeatLeft { left: 2, of: 5, room: 42 })]);
    // As many stitches as before, where the rows before add none.
    let even = "Cast on 40 sts.\nRow 1: *K2, p2; rep from * to end.\nRow 2: Work as established.\nRow 3: *K2, p2; rep from * to end.";
    assert_eq!(end(&[even], 1), [Some(40)]);
}

#[test]
fn rows_worked_until_so_many_are_left_come_to_just_as_many() {
    let text =
        "Cast on 40 sts.\nRow 1: K1, k2tog, k to last 3 sts, ssk, k1.\nRow 2: Purl.\nRepeat rows 1-2 until 8 sts rem.";
    assert_eq!(end(&[text], 1), [Some(8)]);
    let odd = told(&[&text.replace("8 sts", "9 sts")], 1);
    assert_eq!(odd[0].1, [(0, Fault::Missed { wanted: 9, is: 8 })]);
}

/// A chart in words stands beside what is worked: it is of so many stitches as the chart.
#[test]
fn the_words_of_a_chart_leave_the_count_alone() {
    let chart = "Chart tide line:\nRow 1: *K1, yo, k2tog; rep from * to last st, k1. [7 sts]\nRow 2: Purl.";
    assert_eq!(end(&["Cast on 41 sts.", chart, "Row 1: K41."], 1), [Some(41)]);
    assert_eq!(end(&[&format!("Cast on 41 sts.\n{chart}\nBody:\nRow 1: K41.")], 1).last(), Some(&Some(41)));
    // A chart that adds stitches may be worked here or later.
    let grows = "Chart 2:\nRow 1: K1, yo, k to end.";
    assert_eq!(end(&["Cast on 41 sts.", grows, "Row 1: K41."], 1), [None]);
    let wrong = told(&["Cast on 41 sts.", chart, "Row 1: K40."], 1);
    assert_eq!(wrong.len(), 1);
}
