//! Charts: built, counted, measured, and put in words that give the same chart again.

mod moving;
mod reading;
pub mod round_trip;

use ballband::notation::chart::colours::colours;
use ballband::notation::chart::counts::counts;
use ballband::notation::chart::floats::floats;
use ballband::notation::chart::written::{between, written};
use ballband::notation::chart::{Chart, Draft, Means, Problem, Side, Trouble, build};

/// Returns what is written of a chart worked flat from the right side. In the key `=CC` is a colour.
pub fn draft(key: &[(&str, &str)], rows: &[&str]) -> Draft {
    let means = |written: &str| match written.split_once('=') {
        Some(("", colour)) => Means { stitch: None, colour: Some(colour.to_owned()) },
        Some((stitch, colour)) => Means { stitch: Some(stitch.to_owned()), colour: Some(colour.to_owned()) },
        None => Means { stitch: Some(written.to_owned()), colour: None },
    };
    Draft {
        rows: rows.iter().map(|row| (*row).to_owned()).collect(),
        key: key.iter().map(|(sign, written)| ((*sign).to_owned(), means(written))).collect(),
        repeat: None,
        round: false,
        begins: Side::Right,
        between: None,
    }
}

fn words(chart: &Chart) -> Vec<String> {
    written(chart).into_iter().map(|row| format!("{}: {}", row.label, row.words)).collect()
}

const LACE: [(&str, &str); 5] = [(".", "knit"), ("o", "yo"), ("/", "k2tog"), ("\\", "ssk"), ("^", "s2kp2")];

/// A right-side row is read from the right, a wrong-side row from the left with the stitches of the other side, and only
/// what stands in the box is repeated (common practice; reading charts, Vogue Knitting and Berroco).
#[test]
fn rows_are_read_from_the_side_they_begin_on() {
    let lace = Draft { repeat: Some((1, 6)), ..draft(&LACE, &[".o/.\\o.", "/......", "..o^o..", "......."]) };
    assert_eq!(
        words(&build(&lace).unwrap()),
        [
            "Row 1 (RS): *k1, yo, ssk, k1, k2tog, yo; rep from * to last st, k1",
            "Row 2 (WS): P2tog, *p6; rep from * to end",
            "Row 3 (RS): *k2, yo, s2kp2, yo, k1; rep from * to last st, k1",
            "Row 4 (WS): Purl",
        ]
    );
    let from_behind = Draft { begins: Side::Wrong, ..lace.clone() };
    assert_eq!(
        words(&build(&from_behind).unwrap())[0],
        "Row 1 (WS): P1, *yo, p2tog, p1, ssp, yo, p1; rep from * to end"
    );
    let round = Draft { round: true, repeat: Some((2, 6)), begins: Side::Wrong, ..lace.clone() };
    assert_eq!(words(&build(&round).unwrap())[0], "Round 1: K1, *yo, ssk, k1, k2tog, yo; rep from * to last st, k1");
    let sparse = build(&Draft { between: Some("purl".to_owned()), ..lace }).unwrap();
    assert_eq!(words(&sparse)[2], "Row 5 (RS): *k2, yo, s2kp2, yo, k1; rep from * to last st, k1");
    let between = between(&sparse).unwrap();
    assert_eq!((between.label.as_str(), between.words.as_str()), ("Row 2 and every other WS row", "Purl"));
}

#[test]
fn equal_stitches_and_colours_are_counted_together() {
    let key = [(".", "=MC"), ("#", "=CC"), ("d", "k2tog=CC"), ("o", "yo"), ("b", "mb")];
    let chart = build(&draft(&key, &["..##.", "ddd..", "oobbb", "....."])).unwrap();
    assert_eq!(
        words(&chart),
        [
            "Row 1 (RS): K1 MC, k2 CC, k2 MC",
            "Row 2 (WS): [p2tog CC] 3 times, p2 MC",
            "Row 3 (RS): [mb] 3 times, [yo] twice",
            "Row 4 (WS): Purl in MC",
        ]
    );
}

/// Counts of well-known stitch patterns, from their definitions (common practice): a row of Old Shale over 18 stitches
/// takes 18 and leaves 18, and a bobble is worked of one stitch into one.
#[test]
fn stitches_are_counted_without_the_cells_that_have_none() {
    let old_shale = draft(&LACE, &["///o.o.o.o.o.o///"]);
    let count = counts(&build(&old_shale).unwrap())[0].all;
    assert_eq!((count.consumed, count.produced), (17, 17), "five knitted stitches between six yarn overs");
    let old_shale = draft(&LACE, &["///.o.o.o.o.o.o///"]);
    let count = counts(&build(&old_shale).unwrap())[0].all;
    assert_eq!((count.consumed, count.produced), (18, 18));
    let gaps = draft(
        &[(".", "knit"), ("#", "no stitch"), ("3", "increase 1 to 3"), ("c", "2/2 LC"), ("b", "mb")],
        &["##.3#ccccb"],
    );
    let count = counts(&build(&gaps).unwrap())[0].all;
    assert_eq!((count.consumed, count.produced), (7, 9));
    let boxed = Draft { repeat: Some((1, 4)), ..draft(&LACE, &["..o/.."]) };
    let count = counts(&build(&boxed).unwrap())[0];
    assert_eq!((count.all.consumed, count.repeat.consumed, count.repeat.produced), (6, 4, 4));
}

fn float(draft: &Draft) -> Vec<Option<(String, u32)>> {
    floats(&build(draft).unwrap()).into_iter().map(|float| float.map(|float| (float.colour, float.stitches))).collect()
}

/// A float is what lies between two stitches of a colour; in the round the last stitch is followed by the first, and a
/// repeat by itself (common practice). The rule of the trade to hold it against is an inch (lengths of floats, zpag.net).
#[test]
fn floats_pass_the_edge_of_a_round_and_of_a_repeat() {
    let key = [(".", "=MC"), ("#", "=CC")];
    let flat = draft(&key, &["#....#.", ".......", "...#...", "#.#####"]);
    let told = |colour: &str, stitches| Some((colour.to_owned(), stitches));
    assert_eq!(float(&flat), [told("CC", 4), None, told("MC", 1), told("CC", 1)]);
    let round = Draft { round: true, ..flat.clone() };
    assert_eq!(float(&round), [told("CC", 4), None, told("CC", 6), told("MC", 6)]);
    let repeated = Draft { repeat: Some((1, 5)), ..draft(&key, &["#......"]) };
    assert_eq!(float(&repeated), [None], "the edge is worked once");
    let repeated = Draft { repeat: Some((1, 5)), ..draft(&key, &["..#...."]) };
    assert_eq!(float(&repeated), [told("CC", 4)]);
    let gaps = draft(&[(".", "=MC"), ("#", "=CC"), ("x", "no stitch")], &["#.xx.#"]);
    assert_eq!(float(&gaps), [told("CC", 2)]);
}

#[test]
fn shares_of_colours_are_those_of_their_stitches() {
    let key = [(".", "=MC"), ("#", "=CC"), ("d", "k2tog=CC"), ("x", "no stitch")];
    let counted = colours(&build(&draft(&key, &["...#", "..dx"])).unwrap());
    let seen: Vec<_> = counted.iter().map(|one| (one.colour.as_str(), one.stitches, one.share)).collect();
    assert_eq!(seen, [("MC", 5, 7143), ("CC", 2, 2857)]);
    let boxed = Draft { repeat: Some((1, 2)), ..draft(&key, &["...#", "...."]) };
    let counted = colours(&build(&boxed).unwrap());
    assert_eq!(counted.iter().map(|one| one.stitches).collect::<Vec<_>>(), [3, 1]);
}

#[test]
fn every_mistake_is_told_with_where_it_is() {
    let wrong = |draft: &Draft| build(draft).unwrap_err();
    let key = [(".", "knit"), ("c", "2/2 LC")];
    assert_eq!(
        wrong(&draft(&key, &["....", "..?.", ".?."])),
        [
            (Trouble::Row(1, 2..3), Problem::Unknown('?')),
            (Trouble::Row(2, 0..3), Problem::Width { row: 3, cells: 3, first: 4 }),
        ]
    );
    assert_eq!(
        wrong(&draft(&key, &["ccc."])),
        [(Trouble::Row(0, 0..3), Problem::Cut { name: "2/2 LC".to_owned(), cells: 4, run: 3 })]
    );
    let cut = Draft { repeat: Some((1, 3)), ..draft(&key, &[".cccc"]) };
    assert_eq!(wrong(&cut), [(Trouble::Row(0, 1..5), Problem::AcrossRepeat("2/2 LC".to_owned()))]);
    for repeat in [(0, 2), (3, 2), (1, 6), (6, 6), (u32::MAX, u32::MAX)] {
        let draft = Draft { repeat: Some(repeat), ..draft(&key, &["....."]) };
        assert_eq!(wrong(&draft), [(Trouble::Repeat, Problem::Repeat { columns: 5 })], "{repeat:?}");
    }
    assert_eq!(wrong(&draft(&key, &[])), [(Trouble::Chart, Problem::Empty)]);
    assert_eq!(wrong(&draft(&[("ab", "knit"), ("", "knit")], &["aa"])).len(), 2);
}
