//! Multiples of a repeat.

use super::count;
use ballband::reckon::multiple::{Multiple, Neighbours, Parity};
use proptest::prelude::*;

fn multiple(of: i64, plus: i64, parity: Option<Parity>) -> Multiple {
    Multiple { of, plus, parity }
}

#[test]
fn repeats() {
    // Read Knitting Patterns: a multiple of 6 plus 2.
    let six = multiple(6, 2, None);
    assert_eq!((1..=5).map(|repeats| six.stitches(repeats)).collect::<Vec<_>>(), [8, 14, 20, 26, 32].map(Some));
    let fit: Vec<i64> = (-10..33).filter(|stitches| six.fits(*stitches)).collect();
    assert_eq!(fit, [8, 14, 20, 26, 32]);
    // Mary Gildersleeve: a multiple of 6 plus 1 with 3 stitches at each edge.
    assert_eq!(multiple(6, 7, None).stitches(5), Some(37));
    assert_eq!(multiple(6, 7, None).stitches(7), Some(49));
    assert_eq!(multiple(i64::MAX, 0, None).stitches(2), None);
}

#[test]
fn counts_on_either_side() {
    let around = |wanted: &str, multiple: Multiple| {
        multiple.around(count(wanted)).map(|Neighbours { below, above, nearest }| (below, above, nearest))
    };
    assert_eq!(around("180", multiple(7, 0, None)), Some((Some(175), 182, 182)));
    assert_eq!(around("178.5", multiple(7, 0, None)), Some((Some(175), 182, 182)), "ties go up");
    assert_eq!(around("178.499", multiple(7, 0, None)), Some((Some(175), 182, 175)));
    assert_eq!(around("182", multiple(7, 0, None)), Some((Some(182), 182, 182)));
    assert_eq!(around("3", multiple(7, 0, None)), Some((None, 7, 7)));
    assert_eq!(around("38.75", multiple(1, 0, Some(Parity::Even))), Some((Some(38), 40, 38)));
    assert_eq!(around("38.75", multiple(1, 0, Some(Parity::Odd))), Some((Some(37), 39, 39)));
    assert_eq!(around("50", multiple(7, 1, Some(Parity::Even))), Some((Some(50), 50, 50)));
    assert_eq!(around("50", multiple(7, 1, Some(Parity::Odd))), Some((Some(43), 57, 57)));
    assert_eq!(around("50", multiple(4, 1, Some(Parity::Even))), None, "4n + 1 is never even");
    assert_eq!(around("50", multiple(4, -1, None)), Some((Some(47), 51, 51)));
    assert_eq!(around("0", multiple(4, -9, None)), Some((None, 3, 3)));
    assert_eq!(around("50", multiple(0, 3, None)), None);
    assert_eq!(around("50", multiple(-4, 3, None)), None);
    assert_eq!(around("50", multiple(i64::MAX, i64::MAX, None)), None);
}

proptest! {
    #[test]
    fn neighbours_fit_and_enclose(
        thousandths in 0..2_000_000_i64,
        of in 1..40_i64,
        plus in -10..40_i64,
        parity in prop_oneof![Just(None), Just(Some(Parity::Even)), Just(Some(Parity::Odd))],
    ) {
        let wanted = ballband::measure::Count::from_thousandths(thousandths);
        let multiple = multiple(of, plus, parity);
        // The same by trying every number.
        let all: Vec<i64> = (1..2200).filter(|stitches| multiple.fits(*stitches)).collect();
        for stitches in &all {
            prop_assert!(stitches - plus >= of && (stitches - plus) % of == 0);
            prop_assert!(parity.is_none_or(|parity| parity == Parity::of(*stitches)));
        }
        let below = all.iter().copied().filter(|stitches| stitches * 1000 <= thousandths).max();
        let above = all.iter().copied().find(|stitches| stitches * 1000 >= thousandths);
        let found = multiple.around(wanted);
        prop_assert_eq!(found.and_then(|found| found.below), below);
        prop_assert_eq!(found.map(|found| found.above), above);
    }
}
