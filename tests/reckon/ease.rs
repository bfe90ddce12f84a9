//! Ease, and which size to make.

use super::fabric;
use ballband::measure::{FabricLength, Inch, Percent, RunStyle, SizeRun, System};
use ballband::reckon::ease::{Range, by_size, changes_sign, ease, percent, range, which_size};

fn run(text: &str) -> SizeRun<FabricLength> {
    SizeRun::parse(text, RunStyle::default(), Inch::TRADE).unwrap()
}

#[test]
fn of_one_size() {
    // Farm and Fiber Knits: a garment of 42 in on a chest of 34 in.
    assert_eq!(ease(fabric("34 in"), fabric("42 in")), Some(fabric("8 in")));
    assert_eq!(ease(fabric("9 in"), fabric("8.1 in")), Some(fabric("-0.9 in")));
    // Wabi Sabi: a sock of 8.1 in on 9 in.
    assert_eq!(percent(fabric("9 in"), fabric("8.1 in")), Some(Percent::from_hundredths(-1000)));
    assert_eq!(percent(fabric("0 in"), fabric("8.1 in")), None);
    assert_eq!(ease(FabricLength::from_nanometres(i64::MIN), fabric("1 cm")), None);
}

#[test]
fn of_every_size() {
    let of = |to_fit: &str, finished: &str| {
        by_size(&run(to_fit), &run(finished)).map(|eases| eases.show(System::Metric, Inch::TRADE))
    };
    assert_eq!(of("76 (86, 96) cm", "84 (94, 104) cm"), Some("8 (8, 8) cm".to_owned()));
    assert_eq!(of("76 (–, 96) cm", "84 (94, 104) cm"), Some("8 (–, 8) cm".to_owned()));
    assert_eq!(of("76 (86, 96) cm", "90 cm"), Some("14 (4, -6) cm".to_owned()));
    assert_eq!(of("76 (86, 96) cm", "84 (94) cm"), None);
    let eases = by_size(&run("76 (86, 96) cm"), &run("90 cm")).unwrap();
    assert_eq!(range(&eases), Some(Range { least: fabric("-6 cm"), most: fabric("14 cm") }));
    assert!(changes_sign(&eases));
    assert!(!changes_sign(&run("0 (2, 4) cm")));
    assert!(!changes_sign(&by_size(&run("10 (12, 14) cm"), &run("8 (10, 14) cm")).unwrap()), "nothing has no sign");
    let none = SizeRun::from_values(vec![None, None]);
    assert_eq!(range(&none), None);
    assert!(!changes_sign(&none));
}

#[test]
fn the_nearest_size() {
    let finished = run("84 (94, –, 104, 115) cm");
    let which = |body, wanted| which_size(fabric(body), fabric(wanted), &finished);
    // Love of Knitting: a bust of 40 in with 2 to 4 in of ease is 42 to 44 in; 100 and 105 cm and more here.
    assert_eq!(which("40 in", "2 in"), Some(3));
    assert_eq!(which("84 cm", "5 cm"), Some(1), "89 is as near to 84 as to 94");
    assert_eq!(which("84 cm", "4.9 cm"), Some(0));
    assert_eq!(which("84 cm", "-20 cm"), Some(0));
    assert_eq!(which("300 cm", "0 cm"), Some(4));
    assert_eq!(
        which_size(fabric("84 cm"), fabric("5 cm"), &run("94 (84) cm")),
        Some(0),
        "by measurement, not by place"
    );
    assert_eq!(which_size(fabric("84 cm"), fabric("5 cm"), &SizeRun::from_values(vec![None])), None);
    assert_eq!(which_size(FabricLength::from_nanometres(i64::MAX), fabric("5 cm"), &finished), None);
}
