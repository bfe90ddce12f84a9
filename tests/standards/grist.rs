//! Length per mass by weight.

use std::collections::BTreeSet;

use ballband::measure::YarnLength;
use ballband::standards::grist::{CSV, all, read, widest};

#[test]
fn the_table_as_a_whole() {
    let rows = read(CSV).unwrap();
    assert_eq!(rows, all());
    assert_eq!(rows.len(), super::lines(CSV));
    let mut seen = BTreeSet::new();
    for row in &rows {
        super::check_sources(row.provenance, &row.sources);
        assert!(row.category <= 7);
        assert!(row.min.is_some() || row.max.is_some(), "{row:?}");
        if let (Some(min), Some(max)) = (row.min, row.max) {
            assert!(min <= max, "{row:?}");
        }
        assert!(seen.insert((row.sources.clone(), row.category)), "{row:?} is there twice");
    }
    let categories: BTreeSet<u8> = rows.iter().map(|row| row.category).collect();
    assert_eq!(categories, (0..=7).collect());
}

#[test]
fn within_a_sheet_heavier_yarn_is_shorter() {
    let mut sheets: BTreeSet<&[String]> = BTreeSet::new();
    for row in all() {
        sheets.insert(&row.sources);
    }
    assert_eq!(sheets.len(), 4);
    for sheet in sheets {
        let rows: Vec<_> = all().iter().filter(|row| row.sources == sheet).collect();
        for pair in rows.windows(2) {
            assert!(pair[0].category + 1 == pair[1].category, "{pair:?}");
            // Open sides are left out; sheets overlap with each other, and a little within themselves.
            if let (Some(light), Some(heavy)) = (pair[0].min, pair[1].min) {
                assert!(light > heavy, "{pair:?}");
            }
            if let (Some(light), Some(heavy)) = (pair[0].max, pair[1].max) {
                assert!(light > heavy, "{pair:?}");
            }
        }
    }
}

#[test]
fn bands_come_out_in_metres_to_100_g() {
    let metres = YarnLength::from_metres;
    // Light: 200 m (S06) to 300 m (S06); Jumbo: open below, 40 m (S05).
    assert_eq!(widest(3).1, metres(300));
    assert_eq!(widest(7), (None, metres(40)));
    assert_eq!(widest(0).1, None);
    assert_eq!(widest(9), (None, None));
    // 901 yd to the pound is 181.63 m in 100 g, by hand: 901 × 0.9144 ÷ 4.5359237.
    assert_eq!(widest(3).0.map(|length| length.micrometres() / 10_000), Some(18163));
}
