//! Rows of a chart of the same text, worked by its name.

use super::chart::draft;
use super::chart::round_trip::drafts;
use ballband::measure::RunStyle;
use ballband::notation::chart::counts::sum;
use ballband::notation::chart::written::written as in_words;
use ballband::notation::chart::{Draft, build};
use ballband::notation::rows::{
    ChartRows, Doing, Fault, Lexicon, Misfit, Needle, Outcome, Reading, Side, Written, count, follow, is_even, read,
    read_items,
};

use proptest::prelude::*;

const COLOURS: [(&str, &str); 2] = [(".", "=MC"), ("#", "=CC")];
const LACE: [(&str, &str); 5] = [(".", "knit"), ("o", "yo"), ("/", "k2tog"), ("\\", "ssk"), ("_", "no stitch")];

/// Four rounds of six stitches.
fn lamps() -> Draft {
    Draft { round: true, repeat: Some((1, 6)), ..draft(&COLOURS, &["......", ".#..#.", "##..##", "......"]) }
}

/// A yoke that grows: round 3 makes seven of six.
fn reeds() -> Draft {
    let key = [(".", "knit"), ("m", "m1"), ("_", "no stitch")];
    Draft { round: true, repeat: Some((1, 7)), ..draft(&key, &["..._...", "..._...", "...m...", "......."]) }
}

/// An edge stitch at the right, four repeated, two at the left; every row takes and leaves 4n + 3.
fn edged() -> Draft {
    Draft { repeat: Some((2, 5)), ..draft(&LACE, &["..o/...", ".......", "...o/..", "......."]) }
}

/// A triangle: three stitches become five, and five seven.
fn triangle() -> Draft {
    let rows = ["__...__", "_o...o_", "_....._", "o.....o"];
    Draft { rows: rows.iter().map(|row| (*row).to_owned()).collect(), ..draft(&LACE, &[]) }
}

fn lexicon(charts: &[(Option<&str>, Draft)]) -> Lexicon {
    let mut lexicon = Lexicon::default();
    for (place, (name, draft)) in charts.iter().enumerate() {
        let chart = build(draft).unwrap();
        let even = chart.between.as_deref().is_some_and(|words| is_even(words, &lexicon, RunStyle::default()));
        lexicon.add_chart(ChartRows::of(*name, place, &chart, even));
    }
    lexicon
}

fn written(charts: &[(Option<&str>, Draft)], text: &str) -> Written {
    let written = read(text, &lexicon(charts), RunStyle::default());
    let troubles: Vec<_> = written.statements.iter().filter_map(|statement| statement.trouble.as_ref()).collect();
    assert!(troubles.is_empty(), "{text}: {troubles:?}");
    written
}

/// What is told of a text: the words, and each size with its fault.
fn told(charts: &[(Option<&str>, Draft)], text: &str, sizes: usize) -> Vec<(String, Vec<(usize, Fault)>)> {
    let followed = follow(&[written(charts, text)], sizes);
    followed.told.into_iter().map(|told| (text[told.at].to_owned(), told.sizes)).collect()
}

/// The stitches behind the last statement, nothing being told.
fn end(charts: &[(Option<&str>, Draft)], text: &str, sizes: usize) -> Vec<Option<i64>> {
    let followed = follow(&[written(charts, text)], sizes);
    assert_eq!(followed.told, [], "{text}");
    followed.counts[0].last().unwrap().clone()
}

fn one(draft: Draft) -> [(Option<&'static str>, Draft); 1] {
    [(Some("lamps"), draft)]
}

/// 96 = 16 × 6, 108 = 18 × 6, 120 = 20 × 6; 112 = 18 × 6 + 4.
#[test]
fn a_yoke_whose_repeat_divides_every_size_and_one_that_does_not() {
    for words in [
        "Work rounds 1–4 of chart lamps.",
        "Work Rnds 1-4 of Chart Lamps.",
        "Work rnds 1 to 4 of the colour chart.",
        "Work chart lamps.",
        "Work the chart.",
        "Work the 4 rounds of the chart.",
        "Work the 4 rounds of the chart 3 times.",
        "Work all rounds of chart lamps around.",
        "Knit the lamps chart.",
        "Work in patt from chart lamps, rnds 1-4.",
        "Follow chart lamps across all sts.",
        "With MC and CC, work rounds 1–4 of chart lamps.",
        "Work in stranded knitting from chart lamps for 8 rnds.",
        "Work in lace patt from the chart (rnds 1-4) twice.",
        "Work chart lamps, reading all rounds from right to left.",
        "Work rnds 1-4 of chart lamps 16 (18, 20) times around.",
        "Work rnds 1-4 of chart lamps, repeating it 16 (18, 20) times across.",
        "Continue in chart lamps until the piece measures 12 cm.",
        "Rnds 1-4: Work chart lamps.",
        "Rnds 5-12: Work rnds 1-4 of chart around.",
        "Next 4 rnds: Work rnds 1-4 of chart lamps.",
        "Rnd 1: Work row 1 of chart around.",
        "Rnd 1: Work chart lamps.",
        "Rnd 1: Work rnd 2 of chart lamps 16 (18, 20) times around.",
    ] {
        let text = format!("Cast on 96 (108, 120) sts.\n{words}\nNext rnd: K96 (108, 120).");
        assert_eq!(end(&one(lamps()), &text, 3), [Some(96), Some(108), Some(120)], "{words}");
    }
    for (words, at) in [
        ("Work rounds 1–4 of chart lamps.", "Work rounds 1–4 of chart lamps"),
        ("Rnd 1: Work row 1 of chart around.", "Work row 1 of chart around"),
        ("Rnds 1-4: Work chart lamps.", "Work chart lamps"),
        ("Continue in chart lamps until the piece measures 12 cm.", "Continue in chart lamps"),
    ] {
        let fault = Fault::RepeatLeft { left: 4, of: 6, room: 112 };
        let text = format!("Cast on 96 (112, 120) sts.\n{words}");
        assert_eq!(told(&one(lamps()), &text, 3), [(at.to_owned(), vec![(1, fault)])], "{words}");
    }
    // 16 × 6 = 96 of 108; 17 × 6 = 102 and there are 96.
    let times = |times| format!("Cast on 96 (108) sts.\nRnd 1: Work rnd 1 of chart lamps {times} times around.");
    assert_eq!(told(&one(lamps()), &times("16"), 2)[0].1, [(1, Fault::LeftOver { left: 12, had: 108 })]);
    assert_eq!(told(&one(lamps()), &times("17 (18)"), 2)[0].1, [(0, Fault::Short { by: 6, had: 96 })]);
}

/// Round 2 makes seven of each six: 96 → 16 × 7 = 112, and the whole chart again does not fit.
#[test]
fn a_chart_that_grows_changes_the_count() {
    assert_eq!(end(&one(reeds()), "Cast on 96 (108) sts.\nWork rnds 1-3 of chart lamps.", 2), [Some(112), Some(126)]);
    let wrong = "Cast on 96 sts.\nWork rnds 1-3 of chart lamps. [110 sts]";
    assert_eq!(told(&one(reeds()), wrong, 1), [("110".to_owned(), vec![(0, Fault::Stated { says: 110, is: 112 })])]);
    // Round 1 fits 96 and round 4 does not: 96 = 13 × 7 + 5.
    let later = "Cast on 96 sts.\nWork rnds 1-2 and 4 of chart lamps.";
    let what = Misfit::RepeatLeft { left: 5, of: 7, room: 96 };
    assert_eq!(told(&one(reeds()), later, 1)[0].1, [(0, Fault::InChart { row: 4, what })]);
    // 112 = 18 × 6 + 4.
    let again = "Cast on 96 sts.\nWork rnds 1-3 of chart lamps twice.";
    assert_eq!(told(&one(reeds()), again, 1)[0].1, [(0, Fault::Again { pass: 1, had: 112 })]);
    let last = "Cast on 96 sts.\nWork rnds 1-3 of chart lamps.\nRepeat last 3 rnds once more.";
    assert_eq!(
        told(&one(reeds()), last, 1),
        [("last 3 rnds".to_owned(), vec![(0, Fault::Again { pass: 1, had: 112 })])]
    );
    // Round 4 takes seven.
    assert_eq!(end(&one(reeds()), "Cast on 96 sts.\nWork chart lamps.\nRepeat rnd 4 twice more.", 1), [Some(112)]);
}

/// One stitch at the right edge, two at the left: 4n + 3 between the threes, so 4n + 9 in all.
#[test]
fn edges_are_worked_once() {
    let fits = |sts: i64| format!("Cast on {sts} sts.\nRow 1 (RS): K3, work row 1 of chart to last 3 sts, k3.");
    assert_eq!(end(&one(edged()), &fits(33), 1), [Some(33)]);
    let fault = Fault::RepeatLeft { left: 1, of: 4, room: 25 };
    assert_eq!(
        told(&one(edged()), &fits(34), 1)[0],
        ("work row 1 of chart to last 3 sts".to_owned(), vec![(0, fault)])
    );
    assert_eq!(told(&one(edged()), &fits(8), 1)[0].1, [(0, Fault::Short { by: 1, had: 8 })]);
    // What follows "to last 3 sts" takes four.
    let tail = fits(33).replace("k3.", "k4.");
    assert_eq!(told(&one(edged()), &tail, 1)[0].1, [(0, Fault::Tail { says: 3, takes: 4 })]);
    for row in [
        "K3, work row 3 of chart lamps, k3.",
        "K3, chart lamps to last 3 sts, k3.",
        "K3, work chart lamps over next 27 sts, k3.",
        "K3, work row 2 of chart lamps over the next 27 sts, k3.",
        "K3, work row 1 of chart 6 times, k3.",
        "K3, pm, work row 1 of chart to last 3 sts, pm, k3.\nRow 2: P to m, sm, work row 2 of chart to m, sm, p to end.",
    ] {
        assert_eq!(end(&one(edged()), &format!("Cast on 33 sts.\nRow 1: {row}"), 1), [Some(33)], "{row}");
    }
    // 26 = 3 + 4 × 5 + 3.
    let over = "Cast on 33 sts.\nRow 1: K3, work row 1 of chart over next 26 sts, k4.";
    assert_eq!(told(&one(edged()), over, 1)[0].1, [(0, Fault::RepeatLeft { left: 3, of: 4, room: 23 })]);
    // A whole sentence is over all stitches: 4 × 8 + 3.
    assert_eq!(end(&one(edged()), "Cast on 35 sts.\nWork rows 1-4 of chart lamps.", 1), [Some(35)]);
}

/// 3 → 5 in row 2, 5 → 7 in row 4; with three at either edge 9 → 11 → 13.
#[test]
fn a_lace_triangle_grows_row_by_row() {
    let rows = "Rows 1-4: K3, work chart lamps to last 3 sts, k3.";
    assert_eq!(end(&one(triangle()), &format!("Cast on 9 sts.\n{rows} [13 sts]"), 1), [Some(13)]);
    let each = "Row 1: K3, work row 1 of chart, k3. [9 sts]\nRow 2: K3, work row 2 of chart, k3. [11 sts]\n\
                Row 3: K3, work row 3 of chart, k3.\nRow 4: K3, work row 4 of chart, k3. [13 sts]";
    assert_eq!(end(&one(triangle()), &format!("Cast on 9 sts.\n{each}"), 1), [Some(13)]);
    assert_eq!(end(&one(triangle()), "Cast on 3 sts.\nWork chart lamps. [7 sts]", 1), [Some(7)]);
    // Row 3 takes five; four are left over or one is missing.
    let wrong = "Cast on 9 sts.\nWork rows 3 and 4 of chart lamps.";
    assert_eq!(told(&one(triangle()), wrong, 1)[0].1, [(0, Fault::RepeatLeft { left: 4, of: 5, room: 9 })]);
    let short = "Cast on 4 sts.\nWork rows 3 and 4 of chart lamps.";
    assert_eq!(told(&one(triangle()), short, 1)[0].1, [(0, Fault::Short { by: 1, had: 4 })]);
    // "Work chart" in one row: which of its rows?
    let unsaid = "Cast on 9 sts.\nRow 1: K3, work chart to last 3 sts, k3.\nRow 2: K9.";
    assert_eq!(told(&one(triangle()), unsaid, 1)[0].1, [(0, Fault::Unknown)]);
}

/// Seen from the wrong side the two cells at the left come first: a yo and a stitch, then 2 × 4 and the one at the right. The
/// marker hangs behind the first stitch of that row, so two are behind it where the right side faces again.
#[test]
fn wrong_side_rows_are_worked_from_the_other_end() {
    let chart = || one(Draft { repeat: Some((2, 5)), ..draft(&LACE, &[".......", "o......"]) });
    for row in ["Row 2 (WS): Work row 2 of chart lamps.", "Work row 2 of chart lamps."] {
        let text = format!("Cast on 10 sts.\nRow 1 (RS): K9, pm, k1.\n{row}\nNext row (RS): K9, sm, k2.");
        assert_eq!(end(&chart(), &text, 1), [Some(11)], "{row}");
        let turned = text.replace("K9, sm, k2", "K10, sm, k1");
        assert_eq!(told(&chart(), &turned, 1)[0].1, [(0, Fault::MarkerPassed { by: 1 })], "{row}");
    }
    // In the round every row is read from the right: one stitch, 2 × 4, one and a yo.
    let round = one(Draft { round: true, ..chart()[0].1.clone() });
    let text = "Cast on 10 sts.\nRnd 1: K9, pm, k1.\nRnd 2: Work rnd 2 of chart lamps.\nRnd 3: K9, sm, k2.";
    assert_eq!(end(&round, text, 1), [Some(11)]);
}

/// Rows between those of the chart are as they are said to be.
#[test]
fn rows_between_change_nothing_if_they_are_plain() {
    let sparse = |words: &str| Draft { between: Some(words.to_owned()), ..edged() };
    for words in ["purl", "Purl.", "knit", "work even", "purl all sts"] {
        let text = "Cast on 35 sts.\nWork rows 1-8 of chart lamps. [35 sts]\nWork row 7 of chart lamps.";
        assert_eq!(end(&one(sparse(words)), text, 1), [Some(35)], "{words}");
    }
    // Row 8 is there, row 9 is not.
    let beyond = told(&one(sparse("purl")), "Cast on 35 sts.\nWork rows 1-9 of chart lamps.", 1);
    assert_eq!(beyond[0].1, [(0, Fault::NoChartRow { row: 9, last: 8, chart: 0 })]);
    let unknown = "Cast on 35 sts.\nWork rows 1-8 of chart lamps.\nRow 1: K35.";
    for words in ["k2tog, yo, p to end", "as the row before", "as row 1", "p to last 2 sts, p2tog"] {
        assert_eq!(told(&one(sparse(words)), unknown, 1)[0].1, [(0, Fault::Unknown)], "{words}");
    }
}

/// A chart goes by its name, capitals and spaces aside; two alike are told apart by the letter or not at all.
#[test]
fn charts_are_found_by_name() {
    let two = [(Some("tide"), lamps()), (Some("Tide line"), edged()), (Some("A"), reeds())];
    let of = |words: &str| end(&two, &format!("Cast on 99 sts.\n{words}"), 1);
    // 99 = 4 × 24 + 3 = 6 × 16 + 3.
    for words in ["Work chart tide line.", "Work chart Tideline.", "Work rows 1-4 of the TIDE LINE chart."] {
        assert_eq!(of(words), [Some(99)], "{words}");
    }
    assert_eq!(told(&two, "Cast on 99 sts.\nWork chart tide.", 1).len(), 1);
    assert_eq!(end(&two, "Cast on 60 sts.\nWork rnds 1-3 of chart a.", 1), [Some(70)]);
    let alike = [(Some("Lamps"), lamps()), (Some("lamps"), edged())];
    assert_eq!(end(&alike, "Cast on 35 sts.\nWork chart lamps.", 1), [Some(35)]);
    assert_eq!(end(&alike, "Cast on 36 sts.\nWork chart Lamps.", 1), [Some(36)]);
    assert_eq!(end(&alike, "Cast on 35 sts.\nWork chart LAMPS.", 1), [None]);
    // "The chart" is the only one, also if it has no name.
    assert_eq!(end(&[(None, edged())], "Cast on 35 sts.\nWork the chart.", 1), [Some(35)]);
    assert_eq!(end(&alike, "Cast on 35 sts.\nWork the chart.", 1), [None]);
    let mut unread = lexicon(&[(None, edged())]);
    unread.has_unread_charts();
    let written = read("Cast on 35 sts.\nWork the chart.", &unread, RunStyle::default());
    assert!(!matches!(written.statements[1].doing, Doing::Chart(_)), "{written:?}");
}

#[test]
fn rows_that_a_chart_has_not_are_told() {
    let fault = |row| Fault::NoChartRow { row, last: 4, chart: 0 };
    for (words, at, row) in [
        ("Work rnds 1–30 of chart lamps.", "Work rnds 1–30 of chart lamps", 5),
        ("Rnd 9: Work rnd 9 of chart around.", "Work rnd 9 of chart around", 9),
        ("Rnds 1-8: Work rnds 1-8 of chart lamps.", "Work rnds 1-8 of chart lamps", 5),
    ] {
        let text = format!("Cast on 96 sts.\n{words}");
        assert_eq!(told(&one(lamps()), &text, 1), [(at.to_owned(), vec![(0, fault(row))])], "{words}");
    }
    let text = "Cast on 96 sts.\nWork rnds 1-4 of chart lamps.\nRepeat rnds 5-6 once more.";
    assert_eq!(told(&one(lamps()), text, 1)[0].1, [(0, Fault::NoRow { row: 5 })]);
}

/// Words that may mean something else leave the count open, and nothing in them is unread.
#[test]
fn other_words_are_not_guessed() {
    for words in [
        "Work chart B.",
        "Work rounds 1–4 of chart B.",
        "Beginning with rnd 3, work chart lamps.",
        "Work chart lamps over the first 48 sts only.",
        "Work chart lamps, at the same time inc 1 st at each end of every 4th row.",
        "Work rnds 1-4 of chart lamps, dec 8 sts evenly on the last.",
        "Work rows 1-4 of charts lamps and B.",
        "Work the 5 rounds of the chart.",
        "Rnd 1: *K1, work chart lamps; rep from * around.",
        "Rnd 1: Work chart B around.",
        "Rnd 1: Work lamps.",
    ] {
        let followed =
            follow(&[read(&format!("Cast on 96 sts.\n{words}"), &lexicon(&one(lamps())), RunStyle::default())], 1);
        assert_eq!(followed.told, [], "{words}");
        assert_eq!(followed.counts[0].last().unwrap(), &[None], "{words}");
    }
    // However it comes to them.
    assert_eq!(end(&one(lamps()), "Cast on 96 sts.\nWork chart lamps until 8 sts rem.", 1), [Some(8)]);
    // What is said of a chart and works nothing.
    let aside = "Cast on 96 sts.\nThe chart shows every round.\nRnd 1: K96.";
    assert_eq!(end(&one(lamps()), aside, 1), [Some(96)]);
}

/// Sides and the rows worked so far go on as if the rows were written out.
#[test]
fn sides_and_history_go_on() {
    let begun = "Cast on 35 sts.\nRow 1 (RS): Knit.\nRow 2 (WS): Purl.\n";
    assert_eq!(
        end(&one(edged()), &format!("{begun}Work rows 1-4 of chart lamps.\nNext row (RS): K35."), 1),
        [Some(35)]
    );
    let wrong = format!("{begun}Work rows 1-3 of chart lamps.\nNext row (RS): K35.");
    assert_eq!(told(&one(edged()), &wrong, 1)[0].1, [(0, Fault::Side { side: Side::Right, again: false })]);
    // 35 → 34 → 33: one fewer in each pair of the last row of the chart and a decrease.
    let text = "Cast on 35 sts.\nWork rows 1-4 of chart lamps.\nNext row: K2tog, k to end.\nRepeat last row once more. [33 sts]";
    assert_eq!(end(&one(edged()), text, 1), [Some(33)]);
    let few = "Cast on 35 sts.\nWork rows 1-4 of chart lamps.\nRepeat last 5 rows once more.";
    assert_eq!(told(&one(edged()), few, 1)[0].1, [(0, Fault::FewRows { says: 5, had: 4 })]);
    assert_eq!(end(&one(edged()), &few.replace("last 5", "last 4"), 1), [Some(35)]);
    // The rows of the chart, not those of the brim.
    let brim = "Cast on 96 sts.\nRnd 1: *K2, p2; rep from * around.\nYoke:\nWork rnds 1-3 of chart lamps.\nRepeat rnd 1 once more.";
    assert_eq!(told(&one(reeds()), brim, 1)[0].1, [(0, Fault::Again { pass: 1, had: 112 })]);
    // A count that was lost before is asked for.
    let lost = "Cast on 35 sts.\nWork lace of your own.\nWork rows 1-4 of chart lamps.";
    assert_eq!(told(&one(edged()), lost, 1)[0].1, [(0, Fault::Unknown)]);
}

/// However often, it takes no time.
#[test]
fn rows_without_end_are_given_up() {
    let begun = std::time::Instant::now();
    let many = "Work rnds 1-4 of chart lamps 99999 times.\nRnd 1: Work chart lamps 99999 times around.\n".repeat(40);
    follow(&[written(&one(reeds()), &format!("Cast on 96 sts.\n{many}"))], 1);
    follow(&[written(&one(lamps()), &format!("Cast on 96 sts.\n{many}"))], 1);
    assert!(begun.elapsed().as_secs() < 5, "{:?}", begun.elapsed());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(if cfg!(debug_assertions) { 300 } else { 10_000 }))]

    /// A row of a chart is counted as the words that are made of it are: two readings that share nothing but the chart.
    #[test]
    fn a_row_of_a_chart_is_counted_as_its_words(draft in drafts(), repeats in 0..4_i64, over in 0..3_i64) {
        let chart = match build(&draft) {
            Ok(chart) => chart,
            Err(_) => build(&Draft { repeat: None, ..draft }).unwrap(),
        };
        let mut lexicon = Lexicon::default();
        lexicon.add_chart(ChartRows::of(Some("lamps"), 0, &chart, false));
        let read_row = |words: &str| read_items(words, &lexicon, RunStyle::default());
        for (at, (row, written)) in chart.rows.iter().zip(in_words(&chart)).enumerate() {
            let parts = chart.parts(row);
            let takes = |stretch| i64::from(sum(&chart, stretch).consumed);
            let (again, edges) = (takes(parts.repeat), takes(parts.left) + takes(parts.right));
            // A few stitches have words that rows do not know; what takes none is never worked as often as it goes.
            let Ok(items) = read_row(&written.words) else { continue };
            if again == 0 {
                continue;
            }
            let fixed = !written.words.contains('*');
            let stitches = edges + again * if fixed { 1 } else { repeats } + if fixed { 0 } else { over };
            let of = |items: &[_]| count(items, Needle::of(stitches), 0, Reading::More);
            let short = |outcome: &Outcome| (outcome.after, outcome.change, outcome.faults.is_empty());
            let words = format!("Work row {} of chart lamps", at + 1);
            let whole = of(&read_row(&words).unwrap());
            prop_assert_eq!(short(&whole), short(&of(&items)), "{} on {}", written.words, stitches);
            let over_so_many = of(&read_row(&format!("{words} over next {stitches} sts")).unwrap());
            prop_assert_eq!(short(&over_so_many), short(&whole), "{} on {}", written.words, stitches);
            if over == 0 {
                let times = if fixed { 1 } else { repeats };
                let so_often = of(&read_row(&format!("{words} {times} times")).unwrap());
                prop_assert_eq!(short(&so_often), short(&whole), "{} on {}", written.words, stitches);
            }
        }
    }
}
