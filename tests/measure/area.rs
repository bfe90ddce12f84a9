//! Areas of fabric.

use ballband::measure::{Area, FabricLength, Inch};

fn length(text: &str) -> FabricLength {
    FabricLength::parse(text, Inch::TRADE).unwrap()
}

#[test]
fn width_times_height() {
    for (width, height, square_micrometres) in [
        ("1 mm", "1 mm", 1_000_000),
        ("1 cm", "1 cm", 100_000_000),
        ("1 in", "1 in", 625_000_000),
        ("20 m", "50 m", 1_000_000_000_000_000),
        ("0 cm", "5 cm", 0),
        ("0.0005 mm", "0.001 mm", 1),
        ("0.0004 mm", "0.001 mm", 0),
    ] {
        let area = Area::of(length(width), length(height)).map(Area::square_micrometres);
        assert_eq!(area, Some(square_micrometres), "{width} × {height}");
    }
    let exact = FabricLength::parse("1 in", Inch::EXACT).unwrap();
    assert_eq!(Area::of(exact, exact), Some(Area::from_square_micrometres(645_160_000)));
}

#[test]
fn what_is_no_area_is_none() {
    let most = FabricLength::from_nanometres(i64::MAX);
    assert_eq!(Area::of(length("-1 cm"), length("-1 cm")), None);
    assert_eq!(Area::of(most, most), None);
    assert_eq!(Area::share_of(most, most, i64::MAX, i64::MAX), None);
    assert_eq!(Area::share_of(length("1 cm"), length("1 cm"), 1, 0), None);
}
