//! Rounding by name.

use ballband::measure::{FabricLength, Inch, Mass, System, YarnLength, rounding};
use proptest::prelude::*;

#[test]
fn halves_go_away_from_zero() {
    let rows: &[(i128, i128, i128, i128, i128)] = &[
        // number, by, up, near, down
        (5, 2, 3, 3, 2),
        (-5, 2, -2, -3, -3),
        (5, -2, -2, -3, -3),
        (-5, -2, 3, 3, 2),
        (7, 3, 3, 2, 2),
        (-7, 3, -2, -2, -3),
        (8, 3, 3, 3, 2),
        (6, 3, 2, 2, 2),
        (0, 3, 0, 0, 0),
        (1, 2, 1, 1, 0),
        (i128::MAX, i128::MAX, 1, 1, 1),
        (i128::MAX - 1, i128::MAX, 1, 1, 0),
    ];
    for (number, by, up, near, down) in rows {
        assert_eq!(rounding::divide_up(*number, *by), Some(*up), "{number} / {by} up");
        assert_eq!(rounding::divide_near(*number, *by), Some(*near), "{number} / {by} near");
        assert_eq!(rounding::divide_down(*number, *by), Some(*down), "{number} / {by} down");
    }
}

#[test]
fn nothing_divides_by_nothing() {
    assert_eq!(rounding::divide_up(1, 0), None);
    assert_eq!(rounding::divide_near(1, 0), None);
    assert_eq!(rounding::divide_down(1, 0), None);
    assert_eq!(rounding::divide_near(i128::MIN, -1), None);
}

proptest! {
    #[test]
    fn the_three_roundings_enclose_the_quotient(number in -1_000_000_i128..1_000_000, by in -999_i128..1_000) {
        prop_assume!(by != 0);
        let up = rounding::divide_up(number, by).unwrap();
        let near = rounding::divide_near(number, by).unwrap();
        let down = rounding::divide_down(number, by).unwrap();
        prop_assert!(down <= near && near <= up && up - down <= 1);
        prop_assert_eq!(up == down, number % by == 0);
        // Never further off than half, and at exactly half the one that is larger without its sign.
        let off = (near * by - number).abs() * 2;
        prop_assert!(off <= by.abs());
        if off == by.abs() {
            prop_assert_eq!(near.abs(), up.abs().max(down.abs()));
        }
    }
}

#[test]
fn pages_show_what_a_tape_and_a_scale_can_tell() {
    let fabric = |text: &str| FabricLength::parse(text, Inch::TRADE).unwrap();
    let cm = |text: &str| fabric(text).show(System::Metric, Inch::TRADE);
    let inches = |text: &str| fabric(text).show(System::Imperial, Inch::TRADE);
    assert_eq!(cm("102.5 cm"), "102.5 cm");
    assert_eq!(cm("84 cm"), "84 cm");
    assert_eq!(cm("84.25 cm"), "84.5 cm");
    assert_eq!(cm("84.24 cm"), "84 cm");
    assert_eq!(cm("-84.25 cm"), "-84.5 cm");
    assert_eq!(inches("37.25 in"), "37¼ in");
    assert_eq!(inches("30.5 in"), "30½ in");
    assert_eq!(inches("0.75 in"), "¾ in");
    assert_eq!(inches("0 in"), "0 in");
    assert_eq!(inches("37.125 in"), "37¼ in");
    assert_eq!(inches("-0.75 in"), "-¾ in");
    assert_eq!(YarnLength::parse("930 m").unwrap().show(System::Imperial), "1,017 yd");
    assert_eq!(YarnLength::parse("1234567 m").unwrap().show(System::Metric), "1,234,567 m");
    assert_eq!(YarnLength::parse("100.5 m").unwrap().show(System::Metric), "101 m");
    assert_eq!(Mass::parse("50 g").unwrap().show(System::Imperial), "1.76 oz");
    assert_eq!(Mass::parse("2 oz").unwrap().show(System::Imperial), "2 oz");
    assert_eq!(Mass::parse("2 oz").unwrap().show(System::Metric), "57 g");
}

#[test]
fn a_garment_has_the_trades_inch_and_yarn_the_exact_yard() {
    let sixty = FabricLength::parse("60 in", Inch::TRADE).unwrap();
    assert_eq!(sixty.show_exact(System::Metric, Inch::TRADE), "150 cm");
    let sixty = FabricLength::parse("60 in", Inch::EXACT).unwrap();
    assert_eq!(sixty.show_exact(System::Metric, Inch::EXACT), "152.4 cm");
    assert_eq!(sixty.show(System::Metric, Inch::EXACT), "152.5 cm");
    assert_eq!(YarnLength::parse("1000 yd").unwrap().show(System::Metric), "914 m");
    assert_eq!(YarnLength::parse("1000 yd").unwrap().show_exact(System::Metric), "914.4 m");
    assert_eq!(Mass::parse("1 lb").unwrap(), Mass::parse("16 oz").unwrap());
    assert_eq!(Mass::parse("1 oz").unwrap().nanograms(), 28_349_523_125);
    assert_eq!(YarnLength::parse("1 yd").unwrap().micrometres(), 914_400);
    assert_eq!(Inch::parse("2.54").unwrap(), Inch::EXACT);
    assert_eq!(Inch::parse(" 2.5 cm ").unwrap(), Inch::default());
    assert_eq!(Inch::parse("2.6").unwrap_err().help(), "write `2.5` or `2.54`");
}
