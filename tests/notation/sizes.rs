//! Rows and sentences for some of the sizes.

use super::blocks::{end, told};
use ballband::measure::{RunStyle, SizeNames};
use ballband::notation::rows::{Fault, Lexicon, Written, read};

fn in_sizes(names: &str, text: &str) -> Written {
    let mut lexicon = Lexicon::default();
    lexicon.name_sizes(&SizeNames::parse(names, RunStyle::default()).unwrap());
    read(text, &lexicon, RunStyle::default())
}

/// The sizes of each statement, of five.
fn sizes(names: &str, text: &str) -> Vec<Vec<usize>> {
    let written = in_sizes(names, text);
    assert!(written.unknown_sizes.is_empty(), "{text}");
    written.statements.iter().map(|statement| (0..5).filter(|size| statement.is_for(*size)).collect()).collect()
}

/// The ways in which patterns say it (common practice).
#[test]
fn sizes_are_named_by_number_or_by_name() {
    let names = "XS (S, M, L, XL)";
    for (text, wanted) in [
        ("Sizes 1 and 2 only: Row 5: Knit.", vec![0, 1]),
        ("Size 5 only: K to end.", vec![4]),
        ("Sizes 3 (4, 5) only: K to end.", vec![2, 3, 4]),
        ("Sizes XS, S and M only: K to end.", vec![0, 1, 2]),
        ("Sizes M–XL only, k to end.", vec![2, 3, 4]),
        ("For size L only: k to end.", vec![3]),
        ("For sizes S (M, L), k to end.", vec![1, 2, 3]),
        ("Row 5 (sizes 3 and 4 only): K to end.", vec![2, 3]),
        ("All sizes: K to end.", vec![0, 1, 2, 3, 4]),
        ("Row 5: K to end.", vec![0, 1, 2, 3, 4]),
    ] {
        assert_eq!(sizes(names, text), [wanted], "{text}");
    }
    // Names that are numbers go before the places in the row of sizes.
    assert_eq!(sizes("1 (2, 4, 6, 8)", "Size 4 only: K to end."), [[2]]);
    assert_eq!(sizes("80 (90, 100, 110, 120) cm", "Size 2 only: K to end."), [[1]]);
    // A needle is no size of a garment.
    assert!(in_sizes(names, "Size 4 needles are used.").statements.iter().all(|statement| statement.only.is_none()));
    let unknown = in_sizes(names, "Sizes L and 3XL only: K to end.");
    assert_eq!(unknown.unknown_sizes.len(), 1);
    assert_eq!(in_sizes(names, "Size 6 only: K to end.").unknown_sizes.len(), 1);
}

#[test]
fn a_line_alone_holds_until_another_says_otherwise() {
    let text = "Sizes 1 and 2 only:\nRow 1: Knit.\nRow 2: Purl.\nSize 3 only: Knit 2 rows.\nAll other sizes: Knit 4 rows.\nAll sizes:\nRow 3: Knit.\n\
                Size 5 only: Knit 1 row. All sizes: Purl 1 row.\nSize 2 only:\nYoke:\nRow 1: Knit.";
    let all = vec![0, 1, 2, 3, 4];
    assert_eq!(
        sizes("XS (S, M, L, XL)", text),
        [vec![0, 1], vec![0, 1], vec![2], vec![3, 4], all.clone(), vec![4], all.clone(), all.clone(), all]
    );
}

#[test]
fn only_those_sizes_work_it() {
    let text = "Cast on 40 (44, 48) sts.\nSizes 1 and 2 only: Row 1: K2tog, k to end.\nSize 3 only: Row 1: [K2tog] twice, k to end.\n\
                Row 2: Purl. [39 (43, 46) sts]\nSize 3 only: Repeat row 2 once more.";
    assert_eq!(end(&[text], 3), [None, None, Some(46)]);
    assert_eq!(end(&[&text.replace("Size 3 only: Repeat", "All sizes: Repeat")], 3), [Some(39), Some(43), Some(46)]);
    let wrong =
        "Cast on 40 (44, 48) sts.\nSize 2 only: Row 1: K43.\nSizes 1 and 3 only: Row 1: *K8; rep from * to end.";
    assert_eq!(told(&[wrong], 3), [("K43".to_owned(), vec![(1, Fault::LeftOver { left: 1, had: 44 })])]);
}

#[test]
fn a_run_may_have_values_for_those_sizes_alone() {
    let names = "XS (S, M, L, XL)";
    let written =
        in_sizes(names, "Cast on 40 (44, 48, 52, 56) sts.\nSizes 3 (4, 5) only: Row 1: K8 (9, 10), k2tog, k to end.");
    let run = &written.numbers[1];
    assert_eq!((0..5).map(|size| run.of(size)).collect::<Vec<_>>(), [0, 0, 8, 9, 10]);
    // One of neither number is left as it is, and told of.
    let odd = in_sizes(names, "Sizes 3 (4, 5) only: Row 1: K8 (9), k to end.");
    assert_eq!(odd.numbers[0].values.len(), 2);
}

#[test]
fn ten_thousand_lines_for_one_size_are_read_in_the_time_it_takes_to_read_them() {
    let text = "Size S only: Knit 1 row.\n".repeat(10_000);
    let begun = std::time::Instant::now();
    assert_eq!(in_sizes("S (M, L)", &text).statements.len(), 10_000);
    assert!(begun.elapsed().as_secs() < 5, "{:?}", begun.elapsed());
}
