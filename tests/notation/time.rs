//! Texts that are made to take long: the time and memory they take grow no faster than they do.

use super::written;
use ballband::notation::rows::{Written, follow};
use std::time::Instant;

/// Reads and follows a text in no more time than it takes ten times over on a slow machine.
fn timed(text: &str) -> Written {
    let begun = Instant::now();
    let blocks = [written(text)];
    let read = begun.elapsed();
    follow(&blocks, 1);
    let all = begun.elapsed();
    assert!(all.as_secs() < 8, "{}: read {read:?}, all {all:?}", text.get(..40).unwrap_or(text));
    let [block] = blocks;
    block
}

#[test]
fn a_sentence_may_have_thousands_of_leads() {
    timed(&"starting there, ".repeat(4_000));
}

#[test]
fn stitches_may_be_put_aside_thousands_of_times() {
    let aside = "Place next 1 st on hold for left sleeve.\n".repeat(2_000);
    for sleeve in ["left", "right"] {
        let across = format!("K across {sleeve} sleeve sts.\n").repeat(2_000);
        timed(&format!("Cast on 40000 sts.\n{aside}{across}"));
    }
}

#[test]
fn rows_may_be_thousands_apart() {
    let again = "Work dec row every 20000th row once more.\n".repeat(1_000);
    timed(&format!("Cast on 99999 sts.\nDec row: K2tog, k to end.\n{again}"));
}

#[test]
fn repeats_may_stand_behind_thousands_of_rows() {
    let rows: String = (1..4_000).map(|row| format!("Row {row}: K9.\n")).collect();
    let again = "Repeat last 2 rows 3 times. [9 sts]\n".repeat(1_000);
    timed(&format!("Cast on 9 sts.\n{rows}Repeat last 3500 rows once more.\n{again}"));
}

#[test]
fn a_sentence_may_have_thousands_of_spells() {
    timed(&format!("Dec row: K2tog, k to end.\nWork dec row {}", "every 4th row 3 times, then ".repeat(4_000)));
}

#[test]
fn a_label_may_be_a_thousand_rows() {
    // One statement for all, and none for each.
    assert_eq!(timed(&"Rows 1-999: Work as rows 1.\n".repeat(500)).statements.len(), 500);
    assert_eq!(timed(&"Rows 1-999: Work as rows 4-6.\n".repeat(500)).statements.len(), 1_500);
}

#[test]
fn thousands_of_lines_may_be_for_one_size_and_for_the_others() {
    timed(&format!("{}{}", "Size 1 only: k1.\n".repeat(4_000), "All other sizes:\n".repeat(4_000)));
    timed("Sizes 1-99999999999 only: k1.");
}

#[test]
fn thousands_of_brackets_may_be_left_open() {
    for words in ["k1 [4 sts, ", "Work even [4 sts, ", "k1. (4 sts "] {
        timed(&words.repeat(4_000));
    }
}
