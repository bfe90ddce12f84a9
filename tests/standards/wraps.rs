//! Wraps per inch.

use std::collections::BTreeSet;

use ballband::standards::wraps::{CSV, all, read, widest};
use ballband::standards::yarn_weights::by_name;

#[test]
fn the_table_as_a_whole() {
    let rows = read(CSV).unwrap();
    assert_eq!(rows, all());
    assert_eq!(rows.len(), super::lines(CSV));
    let mut seen = BTreeSet::new();
    for row in &rows {
        super::check_sources(row.provenance, &row.sources);
        assert!(row.min.is_some() || row.max.is_some(), "{row:?}");
        if let (Some(min), Some(max)) = (row.min, row.max) {
            assert!(min <= max, "{row:?}");
        }
        for name in row.name.split(" or ") {
            assert_eq!(by_name(name).unwrap().number, row.category, "{row:?}");
        }
        assert!(seen.insert((&row.scheme, &row.name)), "{row:?} is there twice");
    }
}

#[test]
fn within_a_scheme_heavier_yarn_wraps_less_often() {
    let schemes: BTreeSet<&str> = all().iter().map(|row| row.scheme.as_str()).collect();
    assert_eq!(schemes.len(), 5);
    for scheme in schemes {
        let rows: Vec<_> = all().iter().filter(|row| row.scheme == scheme).collect();
        assert_eq!(rows[0].category, 0, "{scheme}");
        for pair in rows.windows(2) {
            // No category is left out, though one may have two names.
            assert!(pair[1].category - pair[0].category <= 1, "{pair:?}");
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
fn the_widest_band() {
    assert_eq!(widest(3), (Some(11), Some(17)));
    assert_eq!(widest(0), (Some(16), None));
    assert_eq!(widest(7), (None, Some(5)));
    assert_eq!(widest(9), (None, None));
}
