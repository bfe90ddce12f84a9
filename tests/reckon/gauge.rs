//! From measurements to stitches and back.

use super::{count, fabric};
use ballband::measure::{Count, FabricLength, Inch};
use ballband::reckon::gauge::PerLength;
use ballband::reckon::multiple::{Multiple, Parity};
use proptest::prelude::*;

fn per(number: &str, over: &str) -> PerLength {
    PerLength { count: count(number), over: fabric(over) }
}

#[test]
fn stitches_and_rows_of_a_measurement() {
    for (number, over, measure, expected, publisher) in [
        ("5", "1 in", "36 in", "180", "Pink Brutus Knits"),
        ("5", "1 in", "7¾ in", "38.75", "Kristen TenDyke"),
        ("5", "1 in", "12 in", "60", "Kristen TenDyke"),
        ("5.5", "1 in", "9 in", "49.5", "Knitting Unplugged"),
        ("5.5", "1 in", "13 in", "71.5", "Knitting Unplugged"),
        ("6", "1 in", "8 in", "48", "Olive Knits"),
        ("5.5", "1 in", "12 in", "66", "Jill Wolcott Knits"),
        ("7.5", "1 in", "8.1 in", "60.75", "Wabi Sabi"),
        ("22", "10 cm", "84 cm", "184.8", "by hand"),
    ] {
        let gauge = per(number, over);
        assert_eq!(gauge.count_for(fabric(measure)), Some(count(expected)), "{publisher}: {measure}");
        assert_eq!(gauge.length_of(count(expected)), Some(fabric(measure)), "{publisher}: {expected}");
    }
}

#[test]
fn whole_counts_on_either_side() {
    let gauge = per("5", "1 in");
    let seven = gauge.whole_for(fabric("36 in"), Multiple { of: 7, ..Multiple::ANY }).unwrap();
    assert_eq!((seven.below, seven.above, seven.nearest), (Some(175), 182, 182));
    let cuff = gauge.whole_for(fabric("7¾ in"), Multiple { parity: Some(Parity::Even), ..Multiple::ANY }).unwrap();
    assert_eq!((cuff.below, cuff.above, cuff.nearest), (Some(38), 40, 38));
    // 22 over 10 cm is 2.2 to the centimetre; a nanometre below 12.5 stitches is nearer to 12, though it is 12.500 in
    // thousandths.
    let just_below = FabricLength::from_nanometres(12_500 * 100_000_000 / 22_000);
    let whole = per("22", "10 cm").whole_for(just_below, Multiple::ANY).unwrap();
    assert_eq!(per("22", "10 cm").count_for(just_below), Some(count("12.5")));
    assert_eq!(whole.nearest, 12);
}

#[test]
fn made_at_another_gauge() {
    let (wanted, made) = (per("22", "10 cm"), per("21", "10 cm"));
    assert_eq!(wanted.finished_at(made, fabric("105 cm")), Some(fabric("110 cm")));
    assert_eq!(wanted.finished_at(per("5.5", "1 in"), fabric("105 cm")), Some(fabric("105 cm")));
    assert_eq!(wanted.finished_at(per("0", "10 cm"), fabric("105 cm")), None);
}

#[test]
fn statements_that_agree() {
    let same = |one: PerLength, two: PerLength| {
        assert_eq!(one.same(two), two.same(one));
        one.same(two)
    };
    let ten = per("22", "10 cm");
    let inches = |number: &str, over: &str, inch| PerLength {
        count: count(number),
        over: FabricLength::parse(over, inch).unwrap(),
    };
    assert_eq!(same(ten, per("22", "4 in")), Some(true));
    assert_eq!(same(ten, per("5.5", "1 in")), Some(true));
    assert_eq!(same(ten, inches("22", "4 in", Inch::EXACT)), Some(true));
    assert_eq!(same(ten, per("22.5", "10 cm")), Some(true));
    assert_eq!(same(ten, per("22.501", "10 cm")), Some(false));
    assert_eq!(same(ten, per("5", "1 in")), Some(false));
    assert_eq!(same(ten, per("11", "5 cm")), Some(true));
    assert_eq!(same(ten, per("22", "0 cm")), None);
}

#[test]
fn what_is_no_gauge_gives_nothing() {
    for gauge in [per("0", "10 cm"), per("22", "0 cm"), per("22", "-1 cm")] {
        assert_eq!(gauge.count_for(fabric("10 cm")), None);
        assert_eq!(gauge.whole_for(fabric("10 cm"), Multiple::ANY), None);
        assert_eq!(gauge.length_of(count("22")), None);
    }
    assert_eq!(per("22", "10 cm").count_for(fabric("-10 cm")), None);
    let most = PerLength { count: Count::from_thousandths(i64::MAX), over: FabricLength::from_nanometres(1) };
    let least = PerLength { count: Count::from_thousandths(1), ..most };
    assert_eq!(most.count_for(FabricLength::from_nanometres(i64::MAX)), None);
    assert_eq!(most.finished_at(least, FabricLength::from_nanometres(i64::MAX)), None);
}

proptest! {
    #[test]
    fn there_and_back(thousandths in 1..60_000_i64, stitches in 1..1000_i64) {
        let gauge = PerLength { count: Count::from_thousandths(thousandths), over: fabric("10 cm") };
        let stitches = Count::from_whole(stitches).unwrap();
        prop_assert_eq!(gauge.count_for(gauge.length_of(stitches).unwrap()), Some(stitches));
    }
}
