//! A repeat that moves from row to row: marked in the rows themselves, counted and put in words.

use super::reading::row;
use super::{LACE, draft, words};
use ballband::notation::chart::counts::counts;
use ballband::notation::chart::written::written;
use ballband::notation::chart::{Chart, Draft, Problem, Side, Trouble, build};
use proptest::prelude::*;

/// A double decrease on the line between two repeats (common practice: the box steps over by the stitch that the decrease
/// takes from its neighbour). In each row what is repeated takes six stitches and leaves six.
fn leaning() -> Draft {
    draft(&LACE, &["|o/....|.", "|......|.", ".|o/....|", ".|......|"])
}

#[test]
fn the_box_may_step_from_row_to_row() {
    let chart = build(&leaning()).unwrap();
    assert_eq!(chart.width, 7);
    assert_eq!((chart.repeat_in(0), chart.repeat_in(2)), (Some(&(0..6)), Some(&(1..7))));
    assert_eq!(
        words(&chart),
        [
            "Row 1 (RS): K1, *k4, k2tog, yo; rep from * to end",
            "Row 2 (WS): Purl",
            "Row 3 (RS): *k4, k2tog, yo; rep from * to last st, k1",
            "Row 4 (WS): Purl",
        ]
    );
    for count in counts(&chart) {
        assert_eq!((count.all.consumed, count.all.produced), (7, 7));
        assert_eq!((count.repeat.consumed, count.repeat.produced), (6, 6));
    }
}

#[test]
fn rows_without_marks_have_the_box_of_all_rows() {
    let given = Draft { repeat: Some((2, 7)), ..leaning() };
    let given = Draft { rows: ["o/.....", ".......", ".|o/....|", "......."].map(str::to_owned).to_vec(), ..given };
    let chart = build(&given).unwrap();
    assert_eq!(
        (chart.repeat_in(0), chart.repeat_in(1), chart.repeat_in(2)),
        (Some(&(0..6)), Some(&(0..6)), Some(&(1..7)))
    );
    // Marks where the box stands anyway move nothing.
    let same = Draft { rows: ["|o/....|.", ".......", ".|o/....|", "......."].map(str::to_owned).to_vec(), ..given };
    assert_eq!(build(&same).unwrap(), chart);
}

#[test]
fn a_key_may_use_the_mark_for_a_stitch() {
    let chart = build(&draft(&[("|", "knit"), ("-", "purl")], &["|-|", "-|-"])).unwrap();
    assert_eq!((chart.width, chart.repeat.clone()), (3, None));
    assert_eq!(words(&chart)[0], "Row 1 (RS): K1, p1, k1");
}

#[test]
fn marks_that_give_no_box_are_told_with_their_row() {
    let wrong = |rows: &[&str], repeat| build(&Draft { repeat, ..draft(&LACE, rows) }).unwrap_err();
    let one = wrong(&["...|..", "|..|..."], None);
    assert_eq!(one[0], (Trouble::Row(0, 0..5), Problem::Marks { row: 1, marks: 1 }));
    let none = wrong(&["..||...", "|..|..."], None);
    assert_eq!(none[0], (Trouble::Row(0, 0..5), Problem::Marks { row: 1, marks: 2 }));
    let three = wrong(&["|..|..|.", "|..|..."], None);
    assert_eq!(three[0].1, Problem::Marks { row: 1, marks: 3 });
    let unmarked = wrong(&[".....", "|..|..."], None);
    assert_eq!(unmarked, [(Trouble::Row(0, 0..5), Problem::Unmarked { row: 1, marked: 2 })]);
    let wider = wrong(&[".....", "|..|..."], Some((1, 3)));
    assert_eq!(wider, [(Trouble::Row(1, 0..2), Problem::RepeatWidth { row: 2, cells: 2, others: 3 })]);
    let cut = build(&draft(&[("c", "2/2 LC"), (".", "knit")], &["|....|.", ".c|ccc.|"])).unwrap_err();
    assert!(cut.iter().any(|(_, problem)| matches!(problem, Problem::AcrossRepeat(_))), "{cut:?}");
}

/// Charts of plain and made stitches in which every row has a box of its own, all of one width.
fn shifted() -> impl Strategy<Value = (Draft, Vec<usize>, usize)> {
    (2..14_usize).prop_flat_map(|width| {
        (1..width).prop_flat_map(move |boxed| {
            let row = (prop::collection::vec(0..LACE.len(), width), 0..=width - boxed);
            (prop::collection::vec(row, 1..8), any::<bool>(), any::<bool>()).prop_map(move |(rows, round, behind)| {
                let written = |(cells, start): &(Vec<usize>, usize)| {
                    let mut row: String = cells.iter().map(|at| LACE[*at].0).collect();
                    row.insert(start + boxed, '|');
                    row.insert(*start, '|');
                    row
                };
                let starts = rows.iter().map(|(_, start)| *start).collect();
                let rows: Vec<String> = rows.iter().map(written).collect();
                let begins = if behind { Side::Wrong } else { Side::Right };
                (Draft { rows, round, begins, ..draft(&LACE, &[]) }, starts, boxed)
            })
        })
    })
}

/// The names of some cells of a row in the order they are worked.
fn worked(chart: &Chart, at: usize, cells: std::ops::Range<usize>) -> Vec<String> {
    let stands = chart.rows[at].iter().filter(|worked| cells.contains(&worked.cell));
    let mut names: Vec<String> = stands.map(|worked| chart.key[worked.sign].stitch.name.clone()).collect();
    if chart.side(at) == Side::Right {
        names.reverse();
    }
    names
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(if cfg!(debug_assertions) { 500 } else { 20_000 }))]

    #[test]
    fn words_of_a_moving_repeat_give_the_same_chart((draft, starts, boxed) in shifted()) {
        let chart = build(&draft).unwrap();
        for (at, written) in written(&chart).iter().enumerate() {
            let (side, cells) = (chart.side(at), starts[at]..starts[at] + boxed);
            let read = row(&written.words, side, chart.width);
            let names = |seen: &[super::reading::Seen]| seen.iter().map(|(name, _)| name.clone()).collect::<Vec<_>>();
            if !written.words.contains('*') {
                prop_assert_eq!(names(&read.repeat), worked(&chart, at, 0..chart.width));
                continue;
            }
            let (right, left) = (cells.end..chart.width, 0..cells.start);
            let (first, last) = if side == Side::Right { (right, left) } else { (left, right) };
            prop_assert_eq!(names(&read.before), worked(&chart, at, first), "{}", written.words);
            prop_assert_eq!(names(&read.repeat), worked(&chart, at, cells), "{}", written.words);
            prop_assert_eq!(names(&read.after), worked(&chart, at, last), "{}", written.words);
        }
    }
}
