//! Heads and hats.

use std::collections::BTreeSet;

use ballband::standards::Band;
use ballband::standards::heads::{CSV, all, of, read, schemes};
use ballband::standards::provenance::Provenance;

use super::{cm, inches};

#[test]
fn the_table_as_a_whole() {
    let rows = read(CSV).unwrap();
    assert_eq!(rows, all());
    assert_eq!(rows.len(), super::lines(CSV));
    let mut seen = BTreeSet::new();
    for row in &rows {
        super::check_sources(row.provenance, &row.sources);
        assert!(super::bands_agree(row.metric, row.imperial), "{row:?}");
        assert_eq!(row.height.is_some(), row.height_measured.is_some(), "{row:?}");
        assert!(seen.insert((&row.scheme, &row.size)), "{row:?} is there twice");
    }
}

#[test]
fn within_a_scheme_heads_grow() {
    assert_eq!(schemes().len(), 8);
    let distinct: BTreeSet<&str> = schemes().into_iter().collect();
    assert_eq!(distinct.len(), 8, "a scheme stands in two places");
    let mut alike = Vec::new();
    let mut rows = 0;
    for scheme in schemes() {
        let scheme: Vec<_> = of(scheme).collect();
        rows += scheme.len();
        for pair in scheme.windows(2) {
            assert!(pair[0].height <= pair[1].height, "{pair:?}");
            if pair[0].metric == pair[1].metric {
                alike.push((pair[0].size.as_str(), pair[1].size.as_str()));
            } else {
                assert!(pair[0].metric.min < pair[1].metric.min, "{pair:?}");
                assert!(pair[0].metric.max <= pair[1].metric.max, "{pair:?}");
            }
        }
    }
    assert_eq!(rows, all().len());
    // One designer makes the same hat for both.
    assert_eq!(alike, [("Teen", "Woman")]);
}

#[test]
fn a_head_and_its_hat() {
    let row = |scheme: &str, size: &str| of(scheme).find(|row| row.size == size).unwrap();
    let woman = row("magazine craft table: head", "Woman");
    assert_eq!(woman.metric, Band { min: cm("53.5"), max: cm("59.5") });
    assert_eq!(woman.imperial, inches("21", "23.5"));
    assert_eq!(woman.height, Some(inches("13", "15")));
    assert_eq!(row("CYC head circumference", "Man").height, None);
    assert_eq!(of("nobody").count(), 0);
}

/// The scheme that sizes are told by measures heads, leaves no gap, and was read.
#[test]
fn a_head_is_told_by_a_scheme_that_measures_heads() {
    let rows: Vec<_> = of(ballband::standards::heads::BODY).collect();
    assert!(rows.len() > 1 && !ballband::standards::heads::BODY.contains("hat"));
    assert!(
        rows.windows(2).all(|pair| pair[1].metric.min <= pair[0].metric.max && pair[0].metric.max < pair[1].metric.max)
    );
    assert!(rows.iter().all(|row| row.provenance == Provenance::Read && !row.note.contains("not head")));
    let size = |cm: i64| {
        let head = ballband::measure::FabricLength::from_nanometres(cm * 10_000_000);
        ballband::standards::heads::nearest(head).map(|row| row.size.as_str())
    };
    assert_eq!(
        [size(26), size(27), size(54), size(63), size(64)],
        [None, Some("Preemie"), Some("Adult"), Some("Adult XL"), None]
    );
}
