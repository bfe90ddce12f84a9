//! Rows that are worked again: which they are, and what they come to.

use super::blocks::{end, told};
use super::written;
use ballband::notation::rows::{Fault, follow};

#[test]
fn plain_rows_are_among_the_last_ones() {
    // One stitch less at each end, once and three times more: 40 - 2 * 4.
    let sleeve = "Cast on 40 sts.\nDec row: K1, k2tog, k to last 3 sts, ssk, k1.\nKnit 3 rows.\nRepeat last 4 rows 3 times more. [32 sts]";
    assert_eq!(end(&[sleeve], 1), [Some(32)]);
    let wrong = told(&[&sleeve.replace("[32 sts]", "[999 sts]")], 1);
    assert_eq!(wrong, [("999".to_owned(), vec![(0, Fault::Stated { says: 999, is: 32 })])]);
    // As many as there are, and no more.
    let few = told(
        &[&sleeve.replace("Dec row", "Row 1").replace("last 4 rows", "last 5 rows").replace("[32 sts]", "[999 sts]")],
        1,
    );
    assert_eq!(few, [("last 5 rows".to_owned(), vec![(0, Fault::FewRows { says: 5, had: 4 })])]);
    // Nobody knows how many rows these are.
    for words in ["Work even for 5 cm.", "Knit 4 (6, 8) rows."] {
        let text = sleeve.replace("Knit 3 rows.", words).replace(" [32 sts]", "\nRow 9: K999.");
        assert_eq!(told(&[&text], 1), [("last 4 rows".to_owned(), vec![(0, Fault::Unknown)])], "{words}");
        let text = sleeve.replace("Knit 3 rows.", &format!("{words}\nDec row: K2tog, k to end."));
        assert_eq!(end(&[&text.replace("last 4 rows", "last row").replace("32", "34")], 1), [Some(34)], "{words}");
    }
}

#[test]
fn rows_that_were_worked_again_are_among_the_last_ones() {
    let dec = "K2tog, k to end.";
    let text = format!(
        "Cast on 40 sts.\nRow 1: {dec}\nRow 2: {dec}\nRow 3: {dec}\nRow 4: {dec} [36 sts]\nRow 5: K.\nRow 6: P.\n\
         Repeat rows 5 and 6 3 times more.\nRep last 8 rows once more. [36 sts]\nRep last 9 rows once more. [35 sts]"
    );
    // Behind the first repeat the last eight are plain, and the ninth from the end of the next is plain too.
    let found = told(&[&text], 1);
    assert_eq!(found, [("35".to_owned(), vec![(0, Fault::Stated { says: 35, is: 36 })])]);
    assert_eq!(end(&[&text.replace("Rep last 9 rows", "Rep last 17 rows")], 1), [Some(35)]);
    // Worked until so many are left: 36, 35, 34, then these two and the one before once more.
    let until =
        format!("Cast on 40 sts.\nRow 1: {dec}\nRepeat row 1 until 34 sts rem.\nRep last 3 rows once more. [31 sts]");
    assert_eq!(end(&[&until], 1), [Some(31)]);
}

/// Each repeat takes in the one before it; the rows that are kept do not double with it.
#[test]
fn repeats_of_repeats_come_to_an_end() {
    let mut text = "Cast on 40 sts.\nRow 1: Knit.\nRow 2: Purl.\n".to_owned();
    for times in 0..60 {
        let rows = 2_u64.saturating_pow(times + 1).min(90_000);
        text.push_str(&format!("Repeat last {rows} rows 99999 times more.\n"));
    }
    let begun = std::time::Instant::now();
    told(&[&text], 1);
    assert!(begun.elapsed().as_secs() < 5, "{:?}", begun.elapsed());
}

#[test]
fn a_row_may_be_as_another_by_way_of_many() {
    let chain: String = (2..=40).map(|row| format!("Row {row}: As row {}.\n", row - 1)).collect();
    let text = format!("Cast on 100 sts.\nRow 1: K2tog, k to end.\n{chain}Row 41: K60.");
    assert_eq!(end(&[&text], 1), [Some(60)]);
    let circle = "Cast on 40 sts.\nRow 1: As row 3.\nRow 2: As row 1.\nRow 3: As row 2.\nRow 4: As row 1.";
    assert_eq!(told(&[circle], 1), [("As row 2".to_owned(), vec![(0, Fault::Circle { row: 2 })])]);
    assert_eq!(told(&["Row 1: As row 1."], 1), [("As row 1".to_owned(), vec![(0, Fault::Circle { row: 1 })])]);
    let missing = "Row 1: As row 7.\nRow 2: As row 1.";
    assert_eq!(told(&[missing], 1), [("As row 7".to_owned(), vec![(0, Fault::NoRow { row: 7 })])]);
}

#[test]
fn eighty_thousand_rows_are_followed_in_the_time_it_takes_to_read_them() {
    let rows: String = (1..80_000).step_by(2).map(|row| format!("Row {row}: K40.\n")).collect();
    let block = written(&format!("Cast on 40 sts.\nRow 2 and all WS rows: P40.\n{rows}"));
    let begun = std::time::Instant::now();
    let followed = follow(&[block], 1);
    assert!(begun.elapsed().as_secs() < 5, "{:?}", begun.elapsed());
    assert_eq!(followed.told, []);
    assert_eq!(followed.counts[0].last(), Some(&vec![Some(40)]));
}

#[test]
fn a_repeat_that_loses_the_count_is_told_of() {
    let text = "Cast on 40 sts.\nRow 1: BO to marker, k to end. [30 sts]\nRepeat row 1 once more.\nRow 2: K999.";
    assert_eq!(told(&[text], 1), [("row 1".to_owned(), vec![(0, Fault::Unknown)])]);
    assert_eq!(end(&[&text.replace("once more.", "once more. [20 sts]").replace("K999", "K20")], 1), [Some(20)]);
}

/// Common practice: shoulders are bound off at the beginning of two rows, one for each side.
#[test]
fn a_sentence_may_be_several_rows() {
    let text = "Cast on 40 sts.\nBO 3 sts at beg of next 2 rows.\nRepeat last 2 rows twice more. [22 sts]\nRep last 4 rows once more. [10 sts]";
    assert_eq!(end(&[text], 1), [Some(10)]);
    let half = "Cast on 40 sts.\nBO 3 sts at beg of next 2 rows.\nRepeat last row once more.\nRow 9: K999.";
    assert_eq!(told(&[half], 1), [("last row".to_owned(), vec![(0, Fault::Unknown)])]);
    // How many rows these are, nobody knows, so nobody can say that there are too few.
    let some = "Cast on 40 sts.\nNext 4 rows: Knit.\nRepeat last 4 rows twice more. [40 sts]";
    assert_eq!(end(&[some], 1), [Some(40)]);
}
