//! Charts held against their words, both ways, and words that are not the chart's.

use super::chart::draft;
use super::chart::round_trip::drafts;
use ballband::measure::RunStyle;
use ballband::notation::chart::written::written;
use ballband::notation::chart::{Chart, Draft, Side, build};
use ballband::notation::compare::{Unlike, Words, compare};
use ballband::notation::rows::{Counts, Item, Lexicon, read_items};
use proptest::prelude::*;

const LACE: [(&str, &str); 6] =
    [(".", "knit"), ("-", "purl"), ("o", "yo"), ("/", "k2tog"), ("\\", "ssk"), ("^", "s2kp2")];

fn items(text: &str) -> Vec<Item> {
    read_items(text, &Lexicon::default(), RunStyle::default()).unwrap_or_else(|trouble| panic!("{text}: {trouble:?}"))
}

/// What is unlike in a row, counted from 0, with the words it points at.
fn unlike(chart: &Chart, row: usize, text: &str) -> Option<(Unlike, String)> {
    let (items, lexicon) = (items(text), Lexicon::default());
    let found = compare(chart, row, Words { items: &items, text, lexicon: &lexicon }, 0)?;
    let (Unlike::Stitch { at, .. } | Unlike::Repeat { at, .. }) = &found;
    let words = text[at.clone()].to_owned();
    Some((found, words))
}

fn stitch(
    number: usize,
    chart: Option<&str>,
    words: Option<&str>,
    at: &str,
) -> Option<(usize, Option<String>, Option<String>, String)> {
    Some((number, chart.map(str::to_owned), words.map(str::to_owned), at.to_owned()))
}

fn told(chart: &Chart, row: usize, text: &str) -> Option<(usize, Option<String>, Option<String>, String)> {
    match unlike(chart, row, text)? {
        (Unlike::Stitch { number, chart, words, .. }, at) => Some((number, chart, words, at)),
        (other, _) => panic!("{text}: {other:?}"),
    }
}

fn feather() -> Draft {
    Draft { repeat: Some((1, 6)), ..draft(&LACE, &[".o/.\\o.", "/......", "..o^o..", "......."]) }
}

/// Ways to write the same row (common practice).
#[test]
fn equal_rows_are_equal_however_they_are_written() {
    let chart = build(&feather()).unwrap();
    for text in [
        "*K1, yo, ssk, k1, k2tog, yo; rep from * to last st, k1",
        "K1, *yo, ssk, k1, k2tog, yo, k1; rep from * to end",
        "[K1, yfwd, ssk, k1, k2 tog, yo] 5 times, k1",
        "K1, (yo, ssk, knit 1, k2tog, yo, k1) 3 (4, 5) times",
        "*K1, yo, ssk, k1, k2tog, yo; rep from * twice more, k1",
        "*[K1, yo, ssk, k1, k2tog, yo] twice; rep from * to last st, k1",
    ] {
        assert_eq!(unlike(&chart, 0, text), None, "{text}");
    }
    // Wrong-side rows are worked from the left, and knitting looks purled.
    for text in ["P2tog, *p6; rep from * to end", "P2tog, p to end", "P2tog, *p3, p3; rep from * to end"] {
        assert_eq!(unlike(&chart, 1, text), None, "{text}");
    }
    for text in [
        "K2, *yo, cdd, yo, k3; rep from * to last 5 sts, yo, s2kp, yo, k2",
        "*K2, yo, sl 2 kwise, k1, p2sso, yo, k1; rep from * to last st, k1",
    ] {
        assert_eq!(unlike(&chart, 2, text), None, "{text}");
    }
    for text in ["Purl", "P to end", "P7"] {
        assert_eq!(unlike(&chart, 3, text), None, "{text}");
    }
    // Words that do not tell their stitches are left alone.
    for text in ["Work in patt to end", "K to 2 sts before m, k2tog, k to end"] {
        assert_eq!(unlike(&chart, 0, text), None, "{text}");
    }
    let ribs = build(&Draft { round: true, ..draft(&LACE, &["--.."]) }).unwrap();
    for text in ["*K2, p2; rep from * around", "K2, p2", "*K2, p2, k2, p2; rep from * around"] {
        assert_eq!(unlike(&ribs, 0, text), None, "{text}");
    }
    let cables = draft(&[("-", "purl"), ("c", "2/2 LC"), ("b", "mb"), ("3", "increase 1 to 3")], &["-cccc-b3"]);
    let cables = build(&cables).unwrap();
    for text in ["(K1, yo, k1) in next st, MB, p1, C4F, p1", "Kyok, mb, p1, 2/2 LC, p1"] {
        assert_eq!(unlike(&cables, 0, text), None, "{text}");
    }
}

#[test]
fn the_first_stitch_that_differs_is_told() {
    let chart = build(&feather()).unwrap();
    let row = "*K1, yo, ssk, k1, k2tog, yo; rep from * to last st, k1";
    assert_eq!(told(&chart, 0, &row.replace("ssk", "k2tog")), stitch(3, Some("ssk"), Some("k2tog"), "k2tog"));
    assert_eq!(told(&chart, 0, &row.replace("k2tog, yo", "yo, k2tog")), stitch(5, Some("k2tog"), Some("yo"), "yo"));
    assert_eq!(
        told(&chart, 0, &row.replace("last st, k1", "end")),
        stitch(13, Some("k"), None, row.replace("last st, k1", "end").as_str())
    );
    assert_eq!(told(&chart, 3, "Knit"), stitch(1, Some("p"), Some("k"), "Knit"));
    assert_eq!(told(&chart, 1, "P8"), stitch(1, Some("p2tog"), Some("p"), "P8"));
    // Purled as the chart shows it, where the wrong side faces.
    assert_eq!(told(&chart, 1, "K2tog, k to end"), stitch(1, Some("p2tog"), Some("k2tog"), "K2tog"));
    let wide = "*K1, yo, ssk, k1; rep from * to last st, k1";
    assert!(
        matches!(unlike(&chart, 0, wide), Some((Unlike::Repeat { chart: 6, words: 4, .. }, _))),
        "{:?}",
        unlike(&chart, 0, wide)
    );
    let flat = build(&draft(&LACE, &["..."])).unwrap();
    assert_eq!(told(&flat, 0, "K2"), stitch(3, Some("k"), None, "K2"));
    assert_eq!(told(&flat, 0, "K4"), stitch(4, None, Some("k"), "K4"));
}

#[test]
fn colours_are_compared_where_the_words_name_them() {
    let chart = build(&Draft { round: true, ..draft(&[(".", "=MC"), ("#", "=CC")], &["##.."]) }).unwrap();
    assert_eq!(unlike(&chart, 0, "*K2 MC, k2 CC; rep from * around"), None);
    assert_eq!(unlike(&chart, 0, "*K2, k2; rep from * around"), None);
    assert_eq!(told(&chart, 0, "*K3 MC, k1 CC; rep from * around"), stitch(3, Some("k CC"), Some("k MC"), "K3 MC"));
}

#[test]
fn a_word_of_her_own_is_held_against_its_stitches() {
    let chart = build(&draft(&[(".", "knit"), ("b", "mb"), ("/", "k2tog")], &[".b."])).unwrap();
    let mut lexicon = Lexicon::default();
    lexicon.add("SB", Counts::new(1, 1));
    lexicon.add("XX", Counts::new(2, 1));
    let with = |text: &str| {
        let items = read_items(text, &lexicon, RunStyle::default()).unwrap();
        compare(&chart, 0, Words { items: &items, text, lexicon: &lexicon }, 0)
    };
    assert_eq!(with("K1, SB, k1"), None);
    assert!(with("K1, XX, k1").is_some());
}

/// Numbers that look random and are the same every time.
fn roll(seed: &mut u64, below: usize) -> usize {
    *seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
    usize::try_from(*seed >> 33).unwrap() % below
}

/// The names of a row's stitches as it is worked with its repeat twice, from the characters themselves.
fn model(row: &str, repeat: Option<(usize, usize)>, wrong: bool) -> Vec<char> {
    let cells: Vec<char> = row.chars().collect();
    let width = cells.len();
    let mut all = cells.clone();
    if let Some((from, to)) = repeat {
        let boxed = cells[width - to..=width - from].to_vec();
        all.splice(width - to..width - to, boxed);
    }
    if !wrong {
        all.reverse();
    }
    all
}

/// Two charts that differ in one cell: the words of the one are unlike the other just at that stitch.
#[test]
fn a_changed_stitch_is_found_where_it_is() {
    let mut seed = 29;
    let mut different = 0;
    for _ in 0..if cfg!(debug_assertions) { 2_000 } else { 50_000 } {
        let width = 3 + roll(&mut seed, 10);
        let signs = [".", "-", "/", "\\", "^"];
        let row: Vec<&str> = (0..width).map(|_| signs[roll(&mut seed, 5)]).collect();
        let mut other = row.clone();
        other[roll(&mut seed, width)] = signs[roll(&mut seed, 5)];
        let (from, to) = (1 + roll(&mut seed, width), 1 + roll(&mut seed, width));
        let repeat = (roll(&mut seed, 3) > 0).then_some((from.min(to), from.max(to)));
        let wrong = roll(&mut seed, 2) == 0;
        let make = |row: &[&str]| {
            let column = |at: usize| u32::try_from(at).unwrap();
            let begins = if wrong { Side::Wrong } else { Side::Right };
            let repeat = repeat.map(|(from, to)| (column(from), column(to)));
            build(&Draft { repeat, begins, ..draft(&LACE, &[&row.concat()]) }).unwrap()
        };
        let (one, two) = (make(&row), make(&other));
        let words = &written(&two)[0].words;
        let found = unlike(&one, 0, words);
        let alike = row == other;
        assert_eq!(found.is_none(), alike, "{row:?} and {words}: {found:?}");
        let (first, second) = (model(&row.concat(), repeat, wrong), model(&other.concat(), repeat, wrong));
        let at = first.iter().zip(&second).position(|(one, two)| one != two);
        // Where the two take as many there is one way to lay them beside each other.
        let takes = |row: &[&str]| {
            row.iter().map(|sign| ["/", "\\"].contains(sign) as u8 + 2 * (*sign == "^") as u8).collect::<Vec<_>>()
        };
        if takes(&row) != takes(&other) {
            continue;
        }
        if let (Some(at), Some((Unlike::Stitch { number, .. }, _))) = (at, found) {
            assert_eq!(number, at + 1, "{row:?} and {words}");
            different += 1;
        }
    }
    assert!(different > 200, "{different}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(if cfg!(debug_assertions) { 300 } else { 10_000 }))]

    /// The words that are made of a chart are those of the chart.
    #[test]
    fn every_chart_is_like_its_own_words(draft in drafts()) {
        let chart = match build(&draft) {
            Ok(chart) => chart,
            Err(_) => build(&Draft { repeat: None, ..draft }).unwrap(),
        };
        let lexicon = Lexicon::default();
        for (at, row) in written(&chart).iter().enumerate() {
            // A few stitches have words that rows do not know.
            let Ok(items) = read_items(&row.words, &lexicon, RunStyle::default()) else { continue };
            let words = Words { items: &items, text: &row.words, lexicon: &lexicon };
            prop_assert_eq!(compare(&chart, at, words, 0), None, "{}", row.words);
        }
    }
}

#[test]
fn repeats_of_nothing_are_given_up() {
    let chart = build(&draft(&LACE, &["..."])).unwrap();
    let text = "k1, [[[pm] 9999 times] 9999 times] 9999 times, k2";
    assert_eq!(unlike(&chart, 0, text), None);
}

/// A shoulder of three stitches bound off and five knitted: the stitch left from binding off is the first of those five, or, in a
/// studio that counts it apart, stands before the other four (both common practice).
#[test]
fn the_stitch_left_from_binding_off_is_counted_as_the_studio_does() {
    let key = [(".", "knit"), ("-", "purl"), ("b", "bind off")];
    let chart = build(&draft(&key, &[".....bbb"])).unwrap();
    let with = |text: &str, apart: bool| {
        let mut lexicon = Lexicon::default();
        if apart {
            lexicon.leave_bound_off();
        }
        let items = read_items(text, &lexicon, RunStyle::default()).unwrap();
        compare(&chart, 0, Words { items: &items, text, lexicon: &lexicon }, 0)
    };
    let otherwise = |unlike: Option<Unlike>| match unlike {
        Some(Unlike::Stitch { bound_off, .. }) => bound_off,
        other => panic!("{other:?}"),
    };
    for text in ["BO 3 sts, k5", "BO 3 sts, k to end", "BO 3 sts, k4, k1"] {
        assert_eq!(with(text, false), None, "{text}");
    }
    for text in ["BO 3 sts, k4", "BO 3 sts, k to end", "BO 2 sts, BO 1 st, k3, k1"] {
        assert_eq!(with(text, true), None, "{text}");
    }
    // Alike only as the other houses count.
    assert_eq!(otherwise(with("BO 3 sts, k4", false)), Some(false));
    assert_eq!(otherwise(with("BO 3 sts, k5", true)), Some(true));
    // Wrong in either way.
    assert_eq!(otherwise(with("BO 3 sts, k3", false)), None);
    assert_eq!(otherwise(with("BO 3 sts, k3", true)), None);
    assert_eq!(otherwise(with("BO 3 sts, p4", true)), None);
    // A repeat of binding off: 2 x (2 bound off, 2 knitted), or one knitted behind the one that is left.
    let twice = build(&draft(&key, &["..bb..bb"])).unwrap();
    let repeated = |text: &str, apart: bool| {
        let mut lexicon = Lexicon::default();
        if apart {
            lexicon.leave_bound_off();
        }
        let items = read_items(text, &lexicon, RunStyle::default()).unwrap();
        compare(&twice, 0, Words { items: &items, text, lexicon: &lexicon }, 0)
    };
    assert_eq!(repeated("*BO 2 sts, k2; rep from * to end", false), None);
    assert_eq!(repeated("*BO 2 sts, k1; rep from * to end", true), None);
    assert_eq!(repeated("[BO 2 sts, k1] twice", true), None);
    assert_eq!(otherwise(repeated("[BO 2 sts, k1] twice", false)), Some(false));
}
