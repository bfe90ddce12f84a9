//! Hands and mittens.

use std::collections::BTreeSet;

use ballband::standards::Band;
use ballband::standards::hands::{CSV, all, of, read, schemes};

use super::{cm, inches};

#[test]
fn the_table_as_a_whole() {
    let rows = read(CSV).unwrap();
    assert_eq!(rows, all());
    assert_eq!(rows.len(), super::lines(CSV));
    let mut seen = BTreeSet::new();
    for row in &rows {
        super::check_sources(row.provenance, &row.sources);
        assert_eq!(row.metric.is_some(), row.imperial.is_some(), "{row:?}");
        if let (Some(metric), Some(imperial)) = (row.metric, row.imperial) {
            assert!(super::bands_agree(metric, imperial), "{row:?}");
        }
        assert!(row.metric.is_some() || row.length.is_some(), "{row:?}");
        assert_eq!(row.length.is_some(), row.length_measured.is_some(), "{row:?}");
        assert!(seen.insert((&row.scheme, &row.size)), "{row:?} is there twice");
    }
}

#[test]
fn within_a_scheme_hands_grow_without_a_gap() {
    assert_eq!(schemes().len(), 4);
    let mut rows = 0;
    let mut apart = Vec::new();
    for scheme in schemes() {
        let scheme: Vec<_> = of(scheme).collect();
        rows += scheme.len();
        for pair in scheme.windows(2) {
            if let (Some(small), Some(large)) = (pair[0].metric, pair[1].metric) {
                assert!(small.min < large.min && small.max < large.max, "{pair:?}");
                if small.max != large.min {
                    apart.push(pair[1].size.as_str());
                }
            }
            if let (Some(small), Some(large)) = (pair[0].length, pair[1].length) {
                assert!(small.min < large.min && small.max < large.max, "{pair:?}");
            }
        }
    }
    assert_eq!(rows, all().len());
    // Each band begins where the one before ends.
    assert_eq!(apart, [""; 0]);
}

#[test]
fn a_hand_and_a_mitten() {
    let woman = of("maker who follows CYC: hand, no thumb").find(|row| row.size == "Woman").unwrap();
    assert_eq!(woman.metric, Some(Band { min: cm("15"), max: cm("19") }));
    assert_eq!(woman.imperial, Some(inches("6", "7.5")));
    assert_eq!(woman.length, None);
    let mitten = of("experienced charity knitter: mitten").find(|row| row.size == "Adult medium").unwrap();
    assert_eq!((mitten.metric, mitten.length), (None, Some(inches("7.5", "7.5"))));
    assert_eq!(of("nobody").count(), 0);
}

#[test]
fn a_hand_is_told_by_a_scheme_that_measures_hands() {
    let rows: Vec<_> = of(ballband::standards::hands::BODY).collect();
    assert!(rows.len() > 1 && rows.iter().all(|row| row.metric.is_some() && row.length.is_none()));
    let size = |text: &str| ballband::standards::hands::nearest(cm(text)).map(|row| row.size.as_str());
    assert_eq!([size("7"), size("19"), size("20"), size("24")], [None, Some("Woman"), Some("Man"), None]);
}
