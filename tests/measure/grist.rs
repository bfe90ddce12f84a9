//! Length per mass.

use ballband::measure::{Grist, Mass, Percent, PutUp, YarnLength};
use proptest::prelude::*;

fn grist(put_up: &str) -> Grist {
    Grist::of(PutUp::parse(put_up).unwrap()).unwrap()
}

fn per_100_g(grist: Option<Grist>) -> i64 {
    grist.unwrap().per_100_g().unwrap().micrometres()
}

#[test]
fn as_the_ball_band_says() {
    assert_eq!(per_100_g(Some(grist("225 m / 100 g"))), 225_000_000);
    assert_eq!(per_100_g(Some(grist("25 g 115 m"))), 460_000_000);
    assert_eq!(per_100_g(Some(grist("210 yd / 50 g"))), 384_048_000);
    // Maddie Harvey Designs: 14.32 g at 115 m to 25 g are 65.87 m.
    assert_eq!(grist("25 g 115 m").length_of(Mass::parse("14.32 g").unwrap()), YarnLength::parse("65.872 m").ok());
    assert_eq!(grist("225 m / 100 g").mass_of(YarnLength::from_metres(1017).unwrap()), Mass::from_grams(452));
}

#[test]
fn held_together() {
    // Susanna Winter: 400 m doubled is 200 m; LBHandknits: 800 and 300 m doubled are 400 and 150 m.
    assert_eq!(per_100_g(grist("400 m / 100 g").held(2)), 200_000_000);
    assert_eq!(per_100_g(grist("800 m / 100 g").held(2)), 400_000_000);
    assert_eq!(per_100_g(grist("300 m / 100 g").held(2)), 150_000_000);
    // LBHandknits: 0.25 g + 0.5 g to the metre; 100 ÷ 0.75 by hand.
    let both = Grist::together([grist("400 m / 100 g"), grist("200 m / 100 g")]);
    assert_eq!(per_100_g(both), 133_333_333);
}

#[test]
fn how_far_apart() {
    let apart = |one: &str, two: &str| grist(one).apart(grist(two)).map(Percent::hundredths);
    assert_eq!(apart("200 m / 100 g", "220 m / 100 g"), Some(1000));
    assert_eq!(apart("200 m / 100 g", "150 m / 100 g"), Some(-2500));
    assert_eq!(apart("200 m / 100 g", "100 m / 50 g"), Some(0));
    // Gerwerken Crafts: the same skein holds 430 or 440 yd; 10 ÷ 430 by hand.
    assert_eq!(apart("430 yd / 100 g", "440 yd / 100 g"), Some(233));
}

#[test]
fn what_is_no_grist_is_none() {
    let put_up = |micrometres, nanograms| PutUp {
        length: YarnLength::from_micrometres(micrometres),
        mass: Mass::from_nanograms(nanograms),
    };
    for (micrometres, nanograms) in [(0, 1), (1, 0), (-1, 1), (1, -1), (i64::MAX, 1), (1, i64::MAX)] {
        assert_eq!(Grist::of(put_up(micrometres, nanograms)), None, "{micrometres} µm, {nanograms} ng");
    }
    let heavy = Grist::of(put_up(1, 9_000_000)).unwrap();
    assert_eq!(heavy.held(0), None);
    assert_eq!(heavy.held(2), None);
    assert_eq!(Grist::together([heavy, heavy]), None);
    assert_eq!(Grist::together([]), None);
    assert_eq!(heavy.mass_of(YarnLength::from_micrometres(i64::MAX)), None);
}

proptest! {
    #[test]
    fn equal_strands_divide_the_grist(metres in 20..3000_i64, grams in 20..500_i64, strands in 1..8_u32) {
        let length = YarnLength::from_metres(metres).unwrap();
        let one = Grist::of(PutUp { length, mass: Mass::from_grams(grams).unwrap() }).unwrap();
        let all = one.held(strands).unwrap();
        prop_assert_eq!(Grist::together(vec![one; strands as usize]), Some(all));
        // G ÷ n, worked from the ball band in one step, to the micrometre.
        let expected = length.times_near(100, grams * i64::from(strands)).unwrap().micrometres();
        prop_assert!((per_100_g(Some(all)) - expected).abs() <= 1);
    }

    #[test]
    fn one_yarn_is_as_its_put_up_says(metres in 20..3000_i64, grams in 20..500_i64, nanograms in 0..2_000_000_000_000_i64) {
        let put_up = PutUp { length: YarnLength::from_metres(metres).unwrap(), mass: Mass::from_grams(grams).unwrap() };
        let mass = Mass::from_nanograms(nanograms);
        let once = put_up.length_of(mass).unwrap().micrometres();
        let twice = Grist::of(put_up).unwrap().length_of(mass).unwrap().micrometres();
        prop_assert!((once - twice).abs() <= 1);
    }
}
