mod grist;
mod levels;
mod needles;
mod table;
mod yarn_weights;

use std::collections::BTreeSet;

/// The ids that `SOURCES.md` lists.
fn known_sources() -> BTreeSet<&'static str> {
    include_str!("../../src/standards/SOURCES.md")
        .lines()
        .filter_map(|line| line.strip_prefix("| "))
        .filter_map(|line| line.split(' ').next())
        .filter(|id| id.len() == 3 && id[1..].bytes().all(|byte| byte.is_ascii_digit()))
        .collect()
}

/// Every row has a source, and `SOURCES.md` lists it.
fn check_sources(sources: &[String]) {
    assert!(!sources.is_empty());
    for id in sources {
        assert!(known_sources().contains(id.as_str()), "{id} is not in SOURCES.md");
    }
}

/// No text of a table is lost: as many rows as the file has lines after the header.
fn lines(csv: &str) -> usize {
    csv.lines().count() - 1
}

#[test]
fn the_sources_are_listed_once() {
    let text = include_str!("../../src/standards/SOURCES.md");
    assert!(text.contains("Source: Craft Yarn Council's www.YarnStandards.com"));
    for id in known_sources() {
        assert_eq!(text.matches(&format!("\n| {id} |")).count(), 1, "{id}");
    }
}
