//! From a swatch or a sample to a garment.

use super::{count, fabric, grams, square_inches, yarn};
use ballband::measure::{Area, Count, Mass, YarnLength};
use ballband::reckon::evidence::{LONG_TAIL_CAST_ON, Swatch, SwatchStitches, by_stitches, scaled, split, used};
use proptest::prelude::*;

#[test]
fn weighed_before_and_after() {
    assert_eq!(used(grams("200"), grams("20")), Some(grams("180")));
    assert_eq!(used(grams("200"), grams("200")), Some(Mass::ZERO));
    assert_eq!(used(grams("20"), grams("200")), None);
    assert_eq!(used(grams("20"), Mass::from_nanograms(-1)), None);
}

#[test]
fn in_proportion() {
    // Colourful Designs: 250 yd × 1000 ÷ 728 = 343.406593 yd; up to the micrometre.
    let more = scaled(yarn("250 yd"), square_inches(728), square_inches(1000)).unwrap();
    assert_eq!(more, YarnLength::from_micrometres(228_600_000_i64 * 1000 / 728 + 1));
    // Get Knitting: 70 g for 100 × 100 stitches, 130,800 stitches.
    assert_eq!(by_stitches(grams("70"), count("10000"), count("130800")), Some(grams("915.6")));
    // Knit n More: 25,200 stitches at 45 to the yard.
    assert_eq!(by_stitches(yarn("1 yd"), count("45"), count("25200")), Some(yarn("560 yd")));
    assert_eq!(by_stitches(grams("1"), Count::ZERO, count("1")), None);
    assert_eq!(scaled(Mass::from_nanograms(-1), square_inches(1), square_inches(1)), None);
    assert_eq!(scaled(grams("1"), Area::from_square_micrometres(1), square_inches(1_000_000)), None);
}

#[test]
fn a_swatch() {
    // Kephren Knitting Studio: 8 × 8 in at 10 g is 6.4 sq in to the gram, and 80 sq in are 12.5 g.
    let swatch = Swatch { mass: grams("10"), area: Area::of(fabric("8 in"), fabric("8 in")).unwrap() };
    assert_eq!(swatch.area_of(grams("10")), Some(square_inches(64)));
    assert_eq!(swatch.area_of(grams("1")).map(Area::square_micrometres), Some(4_000_000_000));
    assert_eq!(swatch.mass_of(square_inches(80)), Some(grams("12.5")));
    assert_eq!(Swatch { mass: Mass::ZERO, ..swatch }.area_of(grams("1")), None);
    assert_eq!(Swatch { area: Area::ZERO, ..swatch }.mass_of(square_inches(1)), None);
}

/// Tossing the Stash: 20 × 20 + 40 + 20 = 460.
#[test]
fn edges_count() {
    let swatch =
        SwatchStitches { stitches: count("20"), rows: count("20"), cast_on: LONG_TAIL_CAST_ON, cast_off: count("1") };
    assert_eq!(swatch.worked(), Some(count("460")));
    assert_eq!(SwatchStitches { rows: Count::from_thousandths(-1), ..swatch }.worked(), None);
    assert_eq!(SwatchStitches { rows: Count::from_thousandths(i64::MAX), ..swatch }.worked(), None);
}

#[test]
fn parts_of_a_total() {
    let parts = |total, shares: &[i64]| {
        let shares: Vec<Count> = shares.iter().map(|share| Count::from_whole(*share).unwrap()).collect();
        let parts = split(Mass::from_nanograms(total), &shares)?;
        Some(parts.into_iter().map(Mass::nanograms).collect::<Vec<_>>())
    };
    assert_eq!(parts(100, &[1, 1, 1]), Some(vec![34, 33, 33]));
    assert_eq!(parts(10, &[1, 5, 0]), Some(vec![2, 8, 0]), "1⅔ and 8⅓");
    assert_eq!(parts(0, &[1, 2]), Some(vec![0, 0]));
    assert_eq!(parts(10, &[0, 0]), None);
    assert_eq!(parts(10, &[]), None);
    assert_eq!(parts(10, &[-1, 3]), None);
    assert_eq!(parts(-10, &[1]), None);
    assert_eq!(parts(i64::MAX, &[7, 7, 7]).map(|parts| parts.iter().sum::<i64>()), Some(i64::MAX));
}

proptest! {
    #[test]
    fn parts_sum_to_the_total_and_are_fair(total in 0..=i64::MAX, shares in proptest::collection::vec(0..1_000_000_i64, 1..12)) {
        let counts: Vec<Count> = shares.iter().map(|share| Count::from_thousandths(*share)).collect();
        let whole: i128 = shares.iter().map(|share| i128::from(*share)).sum();
        match split(YarnLength::from_micrometres(total), &counts) {
            None => prop_assert_eq!(whole, 0),
            Some(parts) => {
                prop_assert_eq!(parts.len(), shares.len());
                prop_assert_eq!(YarnLength::sum(parts.iter().copied()), Some(YarnLength::from_micrometres(total)));
                for (part, share) in parts.iter().zip(&shares) {
                    let fair = i128::from(total) * i128::from(*share);
                    let apart = (i128::from(part.micrometres()) * whole - fair).abs();
                    prop_assert!(apart < whole, "less than a micrometre from its share");
                }
            }
        }
    }

    #[test]
    fn never_below_the_evidence(nanograms in 0..1_000_000_000_000_i64, from in 1..1_000_000_i64, to in 0..1_000_000_i64) {
        let (from, to) = (Count::from_thousandths(from), Count::from_thousandths(to));
        let result = by_stitches(Mass::from_nanograms(nanograms), from, to).unwrap().nanograms();
        let exact = i128::from(nanograms) * i128::from(to.thousandths());
        let over = i128::from(result) * i128::from(from.thousandths()) - exact;
        prop_assert!(over >= 0 && over < i128::from(from.thousandths()));
    }
}
