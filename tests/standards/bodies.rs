//! Body sizes.

use std::collections::BTreeSet;

use ballband::measure::FabricLength;
use ballband::standards::Band;
use ballband::standards::bodies::{Body, BodyRow, girth, measurements, nearest, read, row, rows};
use ballband::standards::provenance::Provenance;

use super::{cm, inches};

fn sizes(body: Body) -> &'static [&'static str] {
    match body {
        Body::Women => &["XS", "S", "M", "L", "XL/1X", "2X", "3X", "4X", "5X"],
        Body::Men => &["S", "M", "L", "XL", "2X"],
        Body::Youth => &["12", "14", "16"],
        Body::Child => &["2", "4", "6", "8", "10"],
        Body::Baby => &["3 months", "6 months", "12 months", "18 months", "24 months"],
    }
}

/// Rows that are not larger than the one before, each with its reason.
const NOT_LARGER: &[(Body, &str, &str)] = &[
    // The larger sizes were recalled from a later edition than the smaller ones (`SOURCES.md`).
    (Body::Women, "centre back neck to cuff", "3X"),
    // The council prints 20 in for both.
    (Body::Baby, "hip", "12 months"),
];

/// Girths grow with every size; lengths may stay as they are.
fn is_girth(measurement: &str) -> bool {
    matches!(measurement, "bust" | "chest" | "waist" | "hip" | "upper arm")
}

fn of(body: Body, measurement: &str) -> Vec<&'static BodyRow> {
    rows(body).iter().filter(|row| row.measurement == measurement).collect()
}

#[test]
fn the_tables_as_a_whole() {
    for body in Body::ALL {
        let table = read(body.csv()).unwrap();
        assert_eq!(table, rows(body));
        assert_eq!(table.len(), super::lines(body.csv()));
        let mut seen = BTreeSet::new();
        for row in &table {
            super::check_sources(row.provenance, &row.sources);
            assert!(super::bands_agree(row.metric, row.imperial), "{row:?}");
            assert!(row.metric.min > FabricLength::ZERO, "{row:?}");
            assert!(seen.insert((&row.measurement, &row.size)), "{row:?} is there twice");
        }
        assert_eq!(measurements(body).len(), 9, "{body:?}");
        assert_eq!(measurements(body).first(), Some(&girth(body)));
    }
}

#[test]
fn every_measurement_has_every_size_and_they_grow() {
    let mut exceptions = Vec::new();
    for body in Body::ALL {
        for measurement in measurements(body) {
            let rows = of(body, measurement);
            let found: Vec<&str> = rows.iter().map(|row| row.size.as_str()).collect();
            assert_eq!(found, sizes(body), "{body:?}, {measurement}");
            for pair in rows.windows(2) {
                let (small, large) = (pair[0], pair[1]);
                let larger =
                    |small: i64, large: i64| if is_girth(measurement) { small < large } else { small <= large };
                let metric = larger(small.metric.min.nanometres(), large.metric.min.nanometres())
                    && larger(small.metric.max.nanometres(), large.metric.max.nanometres());
                let imperial = larger(small.imperial.min.thousandths(), large.imperial.min.thousandths())
                    && larger(small.imperial.max.thousandths(), large.imperial.max.thousandths());
                // No two sizes share a girth.
                let apart = !is_girth(measurement) || small.metric.max < large.metric.min;
                if !(metric && imperial && apart) {
                    exceptions.push((body, measurement, large.size.as_str()));
                }
            }
        }
    }
    assert_eq!(exceptions, NOT_LARGER);
}

#[test]
fn what_most_rows_rest_on() {
    let memory = |body| rows(body).iter().filter(|row| row.provenance == Provenance::Memory).count();
    assert_eq!(Body::ALL.map(memory), [72, 45, 12, 15, 41]);
    // What a size is chosen by was read for women, children and most babies.
    assert!(of(Body::Women, "bust").iter().all(|row| row.provenance == Provenance::Read && row.metric_printed));
    assert!(of(Body::Child, "chest").iter().all(|row| row.provenance == Provenance::Read));
    assert!(!row(Body::Women, "hip", "M").unwrap().metric_printed);
}

#[test]
fn sizes_that_designers_write() {
    for (body, written, size) in [
        (Body::Women, "m", "M"),
        (Body::Women, " XL ", "XL/1X"),
        (Body::Women, "1X", "XL/1X"),
        (Body::Women, "1xl", "XL/1X"),
        (Body::Women, "XL/1X", ""),
        (Body::Women, "2XL", "2X"),
        (Body::Women, "XXL", "2X"),
        (Body::Women, "XXXL", "3X"),
        (Body::Women, "3X", "3X"),
        (Body::Women, "5xl", "5X"),
        (Body::Women, "6XL", ""),
        (Body::Women, "XS", "XS"),
        (Body::Women, "XXS", ""),
        (Body::Women, "X", ""),
        (Body::Women, "2XX", ""),
        (Body::Women, "", ""),
        (Body::Men, "1X", "XL"),
        (Body::Men, "xl", "XL"),
        (Body::Men, "XXL", "2X"),
        (Body::Men, "3XL", ""),
        (Body::Men, "XS", ""),
        (Body::Youth, "14 years", "14"),
        (Body::Youth, "4 years", ""),
        (Body::Child, "4", "4"),
        (Body::Child, "4 years", "4"),
        (Body::Child, "10 Yrs", "10"),
        (Body::Child, "8y", "8"),
        (Body::Child, "4-6 years", ""),
        (Body::Child, "years", ""),
        (Body::Child, "5", ""),
        (Body::Baby, "6 months", "6 months"),
        (Body::Baby, "6m", "6 months"),
        (Body::Baby, "24 mo", "24 months"),
        (Body::Baby, "3-6 months", ""),
        (Body::Baby, "6", ""),
        (Body::Baby, "2 years", ""),
    ] {
        let found = row(body, girth(body), written).map_or("", |row| row.size.as_str());
        assert_eq!(found, size, "{body:?} {written:?}");
    }
    assert_eq!(row(Body::Women, "chest", "M"), None);
    let medium = row(Body::Women, "bust", "M").unwrap();
    assert_eq!(medium.metric, Band { min: cm("91.5"), max: cm("96.5") });
    assert_eq!(medium.imperial, inches("36", "38"));
}

#[test]
fn the_nearest_size() {
    for (body, measurement, length, size, outside, beyond) in [
        (Body::Women, "bust", "91.5", "M", "0", false),
        (Body::Women, "bust", "96.5", "M", "0", false),
        (Body::Women, "bust", "97", "M", "0.5", false),
        (Body::Women, "bust", "101", "L", "-0.5", false),
        // Halfway between M (to 96.5) and L (from 101.5): the smaller.
        (Body::Women, "bust", "99", "M", "2.5", false),
        (Body::Women, "bust", "70", "XS", "-1", true),
        (Body::Women, "bust", "71", "XS", "0", false),
        (Body::Women, "bust", "157", "5X", "0", false),
        (Body::Women, "bust", "200", "5X", "43", true),
        // M ends and L begins at 66.
        (Body::Men, "back hip length", "66", "M", "0", false),
        // 6 and 12 months share it.
        (Body::Baby, "hip", "50.5", "6 months", "0", false),
        (Body::Child, "chest", "57", "4", "-1.5", false),
    ] {
        let found = nearest(body, measurement, cm(length)).unwrap();
        assert_eq!(found.row.size, size, "{body:?} {measurement} {length}");
        assert_eq!((found.outside, found.beyond), (cm(outside), beyond), "{body:?} {measurement} {length}");
    }
    assert_eq!(nearest(Body::Women, "chest", cm("90")), None);
    // Too far from everything for a distance is still no panic.
    assert_eq!(nearest(Body::Women, "bust", FabricLength::from_nanometres(i64::MIN)), None);
}
