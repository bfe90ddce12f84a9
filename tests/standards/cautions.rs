//! Cautions.

use std::collections::BTreeSet;

use ballband::standards::cautions::{CSV, Hazard, all, for_baby, of, read};

#[test]
fn the_table_as_a_whole() {
    let rows = read(CSV).unwrap();
    assert_eq!(rows, all());
    assert_eq!(rows.len(), super::lines(CSV));
    let mut seen = BTreeSet::new();
    for row in &rows {
        super::check_sources(row.provenance, &row.sources);
        assert!(row.sentence.ends_with('.') && row.sentence.matches(". ").count() == 0, "{row:?}");
        assert!(!row.applies_to.is_empty(), "{row:?}");
        assert!(seen.insert((&row.topic, &row.jurisdiction)), "{row:?} is there twice");
    }
    // What is only good practice comes from no rule.
    let without: Vec<&str> = rows.iter().filter(|row| row.reference.is_empty()).map(|row| row.topic.as_str()).collect();
    assert_eq!(without, ["loops and open lace"]);
}

#[test]
fn every_row_belongs_to_one_hazard() {
    let mut found: Vec<&str> = Vec::new();
    for (hazard, count) in Hazard::ALL.into_iter().zip([2, 5, 4, 4, 1, 1, 7]) {
        assert_eq!(of(hazard).count(), count, "{hazard:?}");
        found.extend(of(hazard).map(|row| row.sentence.as_str()));
    }
    let mut all: Vec<&str> = all().iter().map(|row| row.sentence.as_str()).collect();
    found.sort_unstable();
    all.sort_unstable();
    assert_eq!(found, all);
    let names: BTreeSet<&str> = Hazard::ALL.into_iter().map(Hazard::name).collect();
    assert_eq!(names.len(), Hazard::ALL.len());
}

#[test]
fn a_topic_without_a_hazard_is_a_fault() {
    let csv = CSV.replace("soft toys,EU/UK", "glitter,EU/UK");
    assert_eq!(read(&csv).unwrap_err().to_string(), "row 22: `glitter` has no hazard");
}

#[test]
fn what_holds_for_a_baby() {
    let topics: Vec<&str> = for_baby().map(|row| row.topic.as_str()).collect();
    assert_eq!(topics.len(), 14);
    for topic in ["small parts", "cords, young children", "infant sleep, bedding", "loops and open lace"] {
        assert!(topics.contains(&topic), "{topic}");
    }
    for topic in ["cords, older children", "children's sleepwear, large sizes", "care label", "soft toys"] {
        assert!(!topics.contains(&topic), "{topic}");
    }
}
