//! Single quantities, as writers put them.

use ballband::measure::{
    Amount, Count, FabricLength, Inch, Mass, Needle, NeedleSize, Percent, Price, PutUp, System, YarnLength,
};

#[test]
fn yarn_lengths() {
    for (text, micrometres) in [
        ("820 m", 820_000_000),
        ("820m", 820_000_000),
        (" 820  metres ", 820_000_000),
        ("500 yds", 457_200_000),
        ("500 yds.", 457_200_000),
        ("1 yard", 914_400),
        ("1½ m", 1_500_000),
        ("1 1/2 m", 1_500_000),
        ("1-1/2 m", 1_500_000),
        ("1/2 m", 500_000),
        ("1⁄2 m", 500_000),
        ("1 ½ m", 1_500_000),
        ("⅓ m", 333_333),
        (".5 m", 500_000),
        ("12,5 m", 12_500_000),
        ("0,125 m", 125_000),
        ("1270,500 m", 1_270_500_000),
        ("0 m", 0),
        ("0.0000004 m", 0),
        ("0.0000005 m", 1),
    ] {
        assert_eq!(YarnLength::parse(text).map(YarnLength::micrometres), Ok(micrometres), "{text}");
    }
}

#[test]
fn masses_and_fabric() {
    assert_eq!(Mass::parse("452 g").map(Mass::nanograms), Ok(452_000_000_000));
    assert_eq!(Mass::parse("1.2 kg").map(Mass::nanograms), Ok(1_200_000_000_000));
    assert_eq!(Mass::parse("1¾ oz").map(Mass::nanograms), Ok(49_611_665_469));
    for (text, nanometres) in [
        ("84 cm", 840_000_000),
        ("45 mm", 45_000_000),
        ("37¼\"", 931_250_000),
        ("37 1/4 inches", 931_250_000),
        ("37¼″", 931_250_000),
        ("37¼ in.", 931_250_000),
        ("1.5 m", 1_500_000_000),
        ("-5 cm", -50_000_000),
        ("−2½ in", -62_500_000),
    ] {
        let length = FabricLength::parse(text, Inch::TRADE).map(FabricLength::nanometres);
        assert_eq!(length, Ok(nanometres), "{text}");
    }
}

#[test]
fn shares_and_counts() {
    assert_eq!(Percent::parse("10%").map(Percent::hundredths), Ok(1000));
    assert_eq!(Percent::parse("12.5 %").map(Percent::hundredths), Ok(1250));
    assert_eq!(Percent::parse("12,5 %").map(Percent::show), Ok("12.5%".to_owned()));
    assert_eq!(Percent::from_hundredths(1000).on_top(), Some((11_000, 10_000)));
    assert_eq!(Percent::from_hundredths(i64::MAX).on_top(), None);
    assert_eq!(Count::parse("4.5").map(Count::thousandths), Ok(4500));
    assert_eq!(Count::parse("84 sts").map(Count::show), Ok("84".to_owned()));
    assert_eq!(Count::parse("4.5").map(Count::whole), Ok(None));
    assert_eq!(Count::parse("4").map(Count::whole), Ok(Some(4)));
}

#[test]
fn put_ups_in_every_order() {
    let grams = |number| Mass::from_grams(number).unwrap();
    let metres = |number| YarnLength::from_metres(number).unwrap();
    for (text, length, mass) in [
        ("225 m / 100 g", metres(225), grams(100)),
        ("100 g / 225 m", metres(225), grams(100)),
        ("50 g = 112 m / 122 yd", metres(112), grams(50)),
        ("50 g ≈ 112 m/122 yd", metres(112), grams(50)),
        ("115 g (4 oz), 384 m (420 yds)", metres(384), grams(115)),
        ("25 g 115 m", metres(115), grams(25)),
        ("210 yd / 100 g", YarnLength::from_yards(210).unwrap(), grams(100)),
        ("50 g – 112 m", metres(112), grams(50)),
        ("225 m per 100 g ball", metres(225), grams(100)),
        ("3.5 oz/100 g, 210 m", metres(210), Mass::parse("3.5 oz").unwrap()),
    ] {
        assert_eq!(PutUp::parse(text), Ok(PutUp { length, mass }), "{text}");
    }
    assert_eq!(PutUp::parse("225 m / 100 g").unwrap().show(System::Metric), "225 m / 100 g");
    assert_eq!(PutUp::parse("225 m / 100 g").unwrap().show(System::Imperial), "246 yd / 3.53 oz");
}

#[test]
fn arithmetic_with_put_ups() {
    let put_up = PutUp::parse("225 m / 100 g").unwrap();
    let length = |text| YarnLength::parse(text).unwrap();
    assert_eq!(put_up.length_of(Mass::parse("452 g").unwrap()), Some(length("1017 m")));
    assert_eq!(put_up.mass_of(length("1017 m")), Some(Mass::parse("452 g").unwrap()));
    assert_eq!(length("450 m").put_ups_up(put_up), Some(2));
    assert_eq!(length("450.000001 m").put_ups_up(put_up), Some(3));
    assert_eq!(length("820 m").per(put_up), Some(Count::from_thousandths(3644)));
    assert_eq!(PutUp::parse("192 m / 50 g").unwrap().length_in_100_g(), Some(length("384 m")));
    // Published sums, done again: 180 g of 220 m to 200 g is 198 m; 14.32 g at 115 m to 25 g is 65.872 m.
    let sum = |put_up: &str, mass: &str| {
        PutUp::parse(put_up).unwrap().length_of(Mass::parse(mass).unwrap()).unwrap().show_exact(System::Metric)
    };
    assert_eq!(sum("200 g = 220 m", "180 g"), "198 m");
    assert_eq!(sum("25 g 115 m", "14.32 g"), "65.872 m");
    let nothing = PutUp { length: YarnLength::ZERO, mass: Mass::ZERO };
    assert_eq!(length("1 m").put_ups_up(nothing), None);
    assert_eq!(nothing.length_of(Mass::from_nanograms(1)), None);
}

#[test]
fn arithmetic_says_when_it_does_not_fit() {
    let most = YarnLength::from_micrometres(i64::MAX);
    let one = YarnLength::from_micrometres(1);
    assert_eq!(most.checked_add(one), None);
    assert_eq!(YarnLength::sum([most, one]), None);
    assert_eq!(YarnLength::sum([one, one]), Some(YarnLength::from_micrometres(2)));
    assert_eq!(most.times_up(2, 1), None);
    assert_eq!(most.times_up(i64::MAX, i64::MAX), Some(most));
    assert_eq!(one.times_up(1, 2), Some(one));
    assert_eq!(one.times_near(1, 2), Some(one));
    assert_eq!(one.times_down(1, 2), Some(YarnLength::ZERO));
    assert_eq!(one.times_near(1, 0), None);
    assert_eq!(YarnLength::from_micrometres(i64::MIN).checked_sub(one), None);
    assert_eq!(YarnLength::from_metres(i64::MAX), None);
}

#[test]
fn amounts() {
    for (text, shown) in [
        ("4.5 skeins", "4.5 skeins"),
        ("1 ball", "1 skein"),
        ("½ hank", "0.5 skein"),
        ("2 cakes", "2 skeins"),
        ("3 cones", "3 skeins"),
        ("452 g", "452 g"),
        ("1010 m", "1,010 m"),
        ("500 yds", "457 m"),
        ("2 oz", "57 g"),
    ] {
        assert_eq!(Amount::parse(text).map(|amount| amount.show(System::Metric)), Ok(shown.to_owned()), "{text}");
    }
    let put_up = PutUp::parse("225 m / 100 g").ok();
    let amount = Amount::parse("4.5 skeins").unwrap();
    assert_eq!(amount.length(put_up), YarnLength::parse("1012.5 m").ok());
    assert_eq!(amount.mass(put_up), Mass::parse("450 g").ok());
    assert_eq!(amount.length(None), None);
    assert_eq!(Amount::parse("452 g").unwrap().mass(None), Mass::from_grams(452));
}

#[test]
fn needles() {
    let mm = |hundredths| NeedleSize::Metric(FabricLength::from_hundredths_of_mm(hundredths).unwrap());
    let us = |number: &str| NeedleSize::Us(number.to_owned());
    let cm = |number: i64| Some(FabricLength::from_nanometres(number * 10_000_000));
    let rows = [
        ("4 mm circular 80 cm", mm(400), cm(80), "circular"),
        ("3.5 mm circular, 80 cm", mm(350), cm(80), "circular"),
        ("US 6 circular 32 in", us("6"), cm(80), "circular"),
        ("US 6 circular 32\"", us("6"), cm(80), "circular"),
        ("US10½", us("10.5"), None, ""),
        ("us 10 1/2 straights", us("10.5"), None, "straights"),
        ("US 00", us("00"), None, ""),
        ("US 1.5 dpns", us("1.5"), None, "dpns"),
        ("4 mm dpns", mm(400), None, "dpns"),
        ("4mm", mm(400), None, ""),
        ("2,25 mm", mm(225), None, ""),
        ("UK 8 straights", NeedleSize::Uk("8".to_owned()), None, "straights"),
        ("4 mm, 80 cm", mm(400), cm(80), ""),
        ("4 mm set of 5 dpns", mm(400), None, "set of 5 dpns"),
    ];
    for (text, size, circular, words) in rows {
        let needle = Needle { size, circular, words: words.to_owned() };
        assert_eq!(Needle::parse(text, Inch::TRADE), Ok(needle), "{text}");
    }
    let shown = |text| Needle::parse(text, Inch::TRADE).unwrap().show(System::Metric, Inch::TRADE);
    assert_eq!(shown("3.75 mm circular 32 in"), "3.75 mm circular 80 cm");
    assert_eq!(shown("US 10½"), "US 10.5");
}

#[test]
fn prices() {
    for (text, minor, shown) in [
        ("7.00 GBP", 700, "£7.00"),
        ("GBP 7", 700, "£7.00"),
        ("£7", 700, "£7.00"),
        ("£ 7.50", 750, "£7.50"),
        ("6 EUR", 600, "€6.00"),
        ("6,50 €", 650, "€6.50"),
        ("7 chf", 700, "7.00 CHF"),
        ("900 JPY", 900, "900 JPY"),
        ("1.25 KWD", 1250, "1.250 KWD"),
        ("9223372036854775807 JPY", i64::MAX, "9223372036854775807 JPY"),
        ("0.05 USD", 5, "0.05 USD"),
    ] {
        let price = Price::parse(text).unwrap();
        assert_eq!((price.minor, price.show().as_str()), (minor, shown), "{text}");
    }
}

#[test]
fn the_system_a_writer_used() {
    for (text, system) in [
        ("210 yd / 100 g", Some(System::Imperial)),
        ("225 m / 100 g", Some(System::Metric)),
        ("34 (37¼, 41)\" / 85 (93, 102.5) cm", Some(System::Imperial)),
        ("820 (905, 990) m", Some(System::Metric)),
        ("4.5 skeins", None),
        ("in 5", None),
        ("", None),
    ] {
        assert_eq!(System::of(text), system, "{text}");
    }
}
