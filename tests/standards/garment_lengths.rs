//! Where a hem falls.

use std::collections::BTreeSet;

use ballband::standards::Band;
use ballband::standards::garment_lengths::{CSV, all, read};

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
        assert!(["child", "woman", "man"].contains(&row.group.as_str()), "{row:?}");
        assert!(seen.insert((&row.group, &row.length)), "{row:?} is there twice");
    }
    for pair in rows.windows(2).filter(|pair| pair[0].group == pair[1].group) {
        assert!(pair[0].metric.max < pair[1].metric.min, "{pair:?}");
    }
}

#[test]
fn men_are_measured_from_the_hip() {
    let man = all().iter().find(|row| row.group == "man").unwrap();
    assert_eq!((man.metric, man.imperial), (Band { min: cm("2.5"), max: cm("5") }, inches("1", "2")));
    assert_eq!(man.measured_from, "from the back hip length");
    assert!(all().iter().filter(|row| row.group != "man").all(|row| row.measured_from == "down from the waist"));
}
