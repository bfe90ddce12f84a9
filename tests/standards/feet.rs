//! Feet and socks.

use std::collections::BTreeSet;

use ballband::standards::Band;
use ballband::standards::feet::{CSV, FootRow, FootSpan, all, of, read, schemes};
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
        assert!(["Child", "Woman", "Man"].contains(&row.group.as_str()), "{row:?}");
        let spans: Vec<FootSpan> = [row.girth, row.sock_height, row.foot_length].into_iter().flatten().collect();
        assert!(!spans.is_empty(), "{row:?}");
        for span in spans {
            assert!(super::bands_agree(span.metric, span.imperial), "{row:?}");
        }
        assert!(seen.insert((&row.scheme, &row.group, &row.us_shoe)), "{row:?} is there twice");
    }
    assert_eq!(schemes().len(), 5);
    assert_eq!(schemes().into_iter().map(|scheme| of(scheme).count()).sum::<usize>(), rows.len());
}

#[test]
fn the_councils_socks_are_remembered_and_grow() {
    let rows: Vec<_> = of("CYC sock sizing").collect();
    assert_eq!(rows.len(), 12);
    assert!(rows.iter().all(|row| row.provenance == Provenance::Memory));
    for pair in rows.windows(2).filter(|pair| pair[0].group == pair[1].group) {
        for span in [|row: &FootRow| row.girth, |row: &FootRow| row.sock_height, |row: &FootRow| row.foot_length] {
            let [small, large] = [span(pair[0]), span(pair[1])].map(Option::unwrap);
            assert!(small.metric.max < large.metric.min && small.imperial.max < large.imperial.min, "{pair:?}");
        }
    }
    // Children's sizes begin anew after 13, so this is no band of numbers.
    assert_eq!(rows[3].us_shoe.as_deref(), Some("10-2"));
}

#[test]
fn a_cell_may_hold_a_range() {
    let blog = of("yarn shop blog").next().unwrap();
    let length = FootSpan { metric: Band { min: cm("23"), max: cm("24") }, imperial: inches("9", "9.5") };
    assert_eq!((blog.girth, blog.foot_length), (None, Some(length)));
    assert_eq!(of("yarn company article").next().unwrap().us_shoe, None);
    let backwards = CSV.replace("9-9.5", "9.5-9");
    assert_eq!(read(&backwards).unwrap_err().to_string(), "row 15: `9.5-9` in `foot_length_in` is not a band");
}

#[test]
fn a_foot_is_told_by_its_group_and_half_a_step_beyond_the_ends() {
    use ballband::standards::feet::{Foot, nearest};
    let shoe = |group: &str, what, text: &str| nearest(group, what, cm(text)).and_then(|row| row.us_shoe.as_deref());
    assert_eq!(shoe("Woman", Foot::Length, "22"), Some("3-6"));
    assert_eq!(shoe("Woman", Foot::Length, "21.5"), None);
    assert_eq!(shoe("Man", Foot::Girth, "23"), Some("10.5-12"));
    assert_eq!(shoe("Nobody", Foot::Girth, "23"), None);
}
