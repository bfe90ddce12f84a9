//! Chart to words to chart: the same stitches in the same colours stand in the same places.

use super::reading::{Row, Seen, row};
use ballband::notation::chart::counts::sum;
use ballband::notation::chart::written::written;
use ballband::notation::chart::{Chart, Draft, Means, Side, Worked, build};
use ballband::standards::chart_symbols::all;
use proptest::prelude::*;

const SIGNS: &[u8] = b"abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789";

/// A chart of any size: a key of any stitches, some in colours, and rows of any of them.
pub fn drafts() -> impl Strategy<Value = Draft> {
    let colour = prop_oneof![Just(None), Just(Some("MC")), Just(Some("CC")), Just(Some("DD"))];
    let key = prop::collection::vec((0..all().len(), colour), 1..8);
    let rows = prop::collection::vec(prop::collection::vec(0..64_usize, 1..12), 1..8);
    let repeat = prop::option::of((0..24_usize, 0..24_usize));
    (key, rows, 1..24_usize, repeat, any::<bool>(), any::<bool>()).prop_map(
        |(key, rows, width, repeat, round, behind)| {
            // Cables are not worked from behind, so those charts have none.
            let flat = !round;
            let stitch = |at: usize| &all()[at].stitch;
            let key: Vec<(usize, Option<&str>)> = key
                .into_iter()
                .map(|(at, colour)| (if flat && stitch(at).ws_short.is_none() { 0 } else { at }, colour))
                .collect();
            // Each row is filled with runs of whole stitches from the left, and with single cells where none fits.
            let single = key.iter().position(|(at, _)| stitch(*at).cells == 1);
            let mut signs: Vec<(String, Means)> = key
                .iter()
                .zip(SIGNS)
                .map(|((at, colour), sign)| {
                    let colour = colour.filter(|_| stitch(*at).name != "no stitch").map(str::to_owned);
                    (char::from(*sign).to_string(), Means { stitch: Some(stitch(*at).name.clone()), colour })
                })
                .collect();
            signs.push(("9".to_owned(), Means { stitch: Some("purl".to_owned()), colour: None }));
            let fill = |choices: Vec<usize>| {
                let (mut row, mut choices) = (String::new(), choices.into_iter().cycle());
                while row.len() < width {
                    let at = choices.next().unwrap() % key.len();
                    let cells = usize::try_from(stitch(key[at].0).cells).unwrap();
                    let (sign, cells) = if row.len() + cells <= width {
                        (char::from(SIGNS[at]), cells)
                    } else {
                        (single.map_or('9', |at| char::from(SIGNS[at])), 1)
                    };
                    row.extend(std::iter::repeat_n(sign, cells));
                }
                row
            };
            let rows = rows.into_iter().map(fill).collect();
            let repeat = repeat
                .map(|(one, other)| (one % width, other % width))
                .map(|(one, other)| (one.min(other), one.max(other)));
            let column = |at: usize| u32::try_from(at + 1).unwrap();
            Draft {
                rows,
                key: signs,
                repeat: repeat.map(|(from, to)| (column(from), column(to))),
                round,
                begins: if behind { Side::Wrong } else { Side::Right },
                between: None,
            }
        },
    )
}

/// The stitches of a stretch as it is worked, those that are none left out.
fn seen(chart: &Chart, stretch: &[Worked], side: Side) -> Vec<Seen> {
    let mut seen: Vec<Seen> = stretch
        .iter()
        .filter_map(|worked| chart.sign(*worked))
        .filter(|sign| !sign.is_nothing())
        .map(|sign| (sign.stitch.name.clone(), sign.colour.clone()))
        .collect();
    if side == Side::Right {
        seen.reverse();
    }
    seen
}

/// Returns the stitches of a row that was read, the repeat worked once.
fn once(row: &Row) -> Vec<Seen> {
    [row.before.clone(), row.repeat.clone(), row.after.clone()].concat()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(if cfg!(debug_assertions) { 500 } else { 20_000 }))]

    #[test]
    fn chart_to_words_to_chart_is_the_same_chart(draft in drafts()) {
        // A repeat may cut a cable, which is refused.
        let chart = match build(&draft) {
            Ok(chart) => chart,
            Err(_) => build(&Draft { repeat: None, ..draft }).unwrap(),
        };
        for (at, (worked, written)) in chart.rows.iter().zip(written(&chart)).enumerate() {
            let side = chart.side(at);
            let whole = seen(&chart, worked, side);
            let read = row(&written.words, side, whole.len());
            prop_assert_eq!(once(&read), whole, "{}", written.words);
            if written.words.contains('*') {
                let parts = chart.parts(worked);
                let (first, last) = if side == Side::Right { (parts.right, parts.left) } else { (parts.left, parts.right) };
                prop_assert_eq!(&read.before, &seen(&chart, first, side));
                prop_assert_eq!(&read.repeat, &seen(&chart, parts.repeat, side));
                prop_assert_eq!(read.left, sum(&chart, last).consumed, "{}", written.words);
            }
        }
    }
}
