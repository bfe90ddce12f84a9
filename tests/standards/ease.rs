//! Ease and named fits.

use std::collections::BTreeSet;

use ballband::measure::FabricLength;
use ballband::standards::ease::{CSV, Edition, Fit, all, named, read};
use ballband::standards::provenance::Provenance;

use super::cm;

#[test]
fn the_table_as_a_whole() {
    let rows = read(CSV).unwrap();
    assert_eq!(rows, all());
    assert_eq!(rows.len(), super::lines(CSV));
    let mut seen = BTreeSet::new();
    for row in &rows {
        super::check_sources(row.provenance, &row.sources);
        assert!(super::agree(row.metric_min, row.imperial_min), "{row:?}");
        assert_eq!(row.metric_max.is_some(), row.imperial_max.is_some(), "{row:?}");
        if let (Some(metric), Some(imperial)) = (row.metric_max, row.imperial_max) {
            assert!(super::agree(metric, imperial), "{row:?}");
            assert!(row.metric_min <= metric && row.imperial_min <= imperial, "{row:?}");
        }
        assert!(seen.insert((row.edition, row.fit)), "{row:?} is there twice");
    }
    for edition in [Edition::Current, Edition::Older] {
        let rows: Vec<_> = rows.iter().filter(|row| row.edition == edition).collect();
        assert_eq!(rows.iter().map(|row| row.fit).collect::<Vec<_>>(), Fit::ALL);
        for pair in rows.windows(2) {
            assert!(pair[0].metric_max.is_some_and(|max| max <= pair[1].metric_min), "{pair:?}");
        }
        assert_eq!(rows.last().unwrap().metric_max, None);
    }
}

#[test]
fn a_fit_for_every_ease() {
    for (ease, fit) in [
        ("-40", Fit::VeryClose),
        ("-10", Fit::VeryClose),
        ("-5", Fit::VeryClose),
        ("-2.6", Fit::VeryClose),
        ("-2.5", Fit::Close),
        ("0", Fit::Close),
        ("2.4", Fit::Close),
        ("2.5", Fit::Classic),
        ("5", Fit::Classic),
        ("10", Fit::Classic),
        ("10.1", Fit::Loose),
        ("15", Fit::Loose),
        ("15.1", Fit::Oversized),
        ("60", Fit::Oversized),
    ] {
        let row = named(cm(ease)).unwrap();
        assert_eq!((row.edition, row.fit), (Edition::Current, fit), "{ease} cm");
    }
    assert_eq!(named(FabricLength::from_nanometres(i64::MIN)).unwrap().fit, Fit::VeryClose);
    assert_eq!(named(FabricLength::from_nanometres(i64::MAX)).unwrap().fit, Fit::Oversized);
    // The close fits were not seen in a copy of the current edition, and whoever shows one has to say so.
    assert_eq!(named(cm("0")).unwrap().provenance, Provenance::Memory);
    assert_eq!(named(cm("8")).unwrap().provenance, Provenance::Read);
}

#[test]
fn the_older_edition_is_kept() {
    let older = |fit: Fit| all().iter().find(|row| row.edition == Edition::Older && row.fit == fit).unwrap();
    assert_eq!(older(Fit::VeryClose).metric_min, cm("0"));
    assert_eq!(older(Fit::Close).metric_max, Some(cm("5")));
    // Called standard there.
    assert_eq!(older(Fit::Classic).metric_max, Some(cm("10")));
}
