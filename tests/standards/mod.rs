mod abbreviations;
mod bodies;
mod cautions;
mod chart_symbols;
mod ease;
mod feet;
mod garment_lengths;
mod grist;
mod hands;
mod heads;
mod levels;
mod needles;
mod table;
mod wraps;
mod yardage;
mod yarn_weights;

use std::collections::BTreeSet;

use ballband::measure::{Count, FabricLength, Inch};
use ballband::standards::provenance::Provenance;
use ballband::standards::{Band, CREDIT};

/// The ids that `SOURCES.md` lists.
fn known_sources() -> BTreeSet<&'static str> {
    include_str!("../../src/standards/SOURCES.md")
        .lines()
        .filter_map(|line| line.strip_prefix("| "))
        .filter_map(|line| line.split(' ').next())
        .filter(|id| id.len() == 3 && id[1..].bytes().all(|byte| byte.is_ascii_digit()))
        .collect()
}

/// Every row has a source, `SOURCES.md` lists it, and what was only remembered names no other.
fn check_sources(provenance: Provenance, sources: &[String]) {
    assert!(!sources.is_empty());
    let remembered = sources.iter().any(|id| id == "M00");
    assert_eq!(remembered, provenance == Provenance::Memory, "{sources:?}");
    assert!(!remembered || sources.len() == 1, "{sources:?}");
    for id in sources {
        assert!(known_sources().contains(id.as_str()), "{id} is not in SOURCES.md");
    }
}

/// A length of so many centimetres.
fn cm(text: &str) -> FabricLength {
    FabricLength::parse(&format!("{text} cm"), Inch::TRADE).unwrap()
}

/// A band of so many inches, or anything else that is counted.
fn inches(min: &str, max: &str) -> Band<Count> {
    Band { min: Count::parse(min).unwrap(), max: Count::parse(max).unwrap() }
}

/// Whether centimetres are within 0.8 cm of what the inches are at 2.54.
///
/// The council rounds to half a centimetre, some houses to a whole one.
fn agree(metric: FabricLength, imperial: Count) -> bool {
    (metric.nanometres() - imperial.thousandths() * 25_400).abs() <= 8_000_000
}

fn bands_agree(metric: Band<FabricLength>, imperial: Band<Count>) -> bool {
    agree(metric.min, imperial.min) && agree(metric.max, imperial.max)
}

/// No text of a table is lost: as many rows as the file has lines after the header.
fn lines(csv: &str) -> usize {
    csv.lines().count() - 1
}

#[test]
fn the_sources_are_listed_once() {
    let text = include_str!("../../src/standards/SOURCES.md");
    assert!(text.contains(CREDIT));
    for id in known_sources() {
        assert_eq!(text.matches(&format!("\n| {id} |")).count(), 1, "{id}");
    }
}

#[test]
fn inches_that_do_not_agree_would_be_seen() {
    assert!(agree(cm("91.5"), Count::parse("36").unwrap()));
    assert!(agree(cm("-10"), Count::from_thousandths(-4000)));
    assert!(!agree(cm("90.5"), Count::parse("36").unwrap()));
    assert!(!agree(cm("10"), Count::from_thousandths(-4000)));
}

/// Every table with the name of its file.
fn tables() -> Vec<(String, &'static str)> {
    use ballband::standards as s;
    let mut tables: Vec<(String, &str)> = [
        ("abbreviations", s::abbreviations::CSV),
        ("cautions", s::cautions::CSV),
        ("chart_symbols", s::chart_symbols::CSV),
        ("fit_ease", s::ease::CSV),
        ("foot_sock", s::feet::CSV),
        ("garment_length", s::garment_lengths::CSV),
        ("grist_by_weight", s::grist::CSV),
        ("hand", s::hands::CSV),
        ("head", s::heads::CSV),
        ("needle_sizes", s::needles::CSV),
        ("skill_levels", s::levels::CSV),
        ("typical_yardage", s::yardage::CSV),
        ("wpi", s::wraps::CSV),
        ("yarn_weights", s::yarn_weights::CSV),
    ]
    .map(|(name, csv)| (name.to_owned(), csv))
    .into();
    tables.extend(s::bodies::Body::ALL.map(|body| (format!("body_{}", body.name()), body.csv())));
    tables
}

#[test]
fn every_file_is_read_and_its_rows_are_counted() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src/standards");
    let mut files: Vec<String> = std::fs::read_dir(folder)
        .unwrap()
        .filter_map(|file| file.unwrap().file_name().into_string().unwrap().strip_suffix(".csv").map(str::to_owned))
        .collect();
    let mut read: Vec<String> = tables().into_iter().map(|(name, _)| name).collect();
    files.sort();
    read.sort();
    assert_eq!(files, read);
    for (name, csv) in tables() {
        let (all, memory) = (lines(csv), csv.lines().filter(|line| line.contains(",memory,M00")).count());
        let row = format!("\n| {name}.csv | {all} | {} | {memory} |", all - memory);
        assert!(include_str!("../../src/standards/SOURCES.md").contains(&row), "{row}");
    }
}

#[test]
fn every_source_is_used_or_mentioned() {
    let disagreements = include_str!("../../src/standards/SOURCES.md").split("## Disagreements found").nth(1).unwrap();
    for id in known_sources() {
        let used = tables().iter().any(|(_, csv)| csv.contains(id));
        assert!(used || disagreements.contains(id), "{id}");
    }
}
