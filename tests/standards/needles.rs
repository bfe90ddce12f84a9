//! Needle sizes.

use std::collections::BTreeMap;

use ballband::measure::{FabricLength, Inch, NeedleSize};
use ballband::standards::needles::{CSV, all, metric, read, row, rows, uk, us};

fn mm(text: &str) -> FabricLength {
    FabricLength::parse(&format!("{text} mm"), Inch::TRADE).unwrap()
}

#[test]
fn the_table_as_a_whole() {
    let table = read(CSV).unwrap();
    assert_eq!(table, all());
    assert_eq!(table.len(), super::lines(CSV));
    for pair in table.windows(2) {
        assert!(pair[0].metric < pair[1].metric, "{pair:?}");
    }
    let mut numbers: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for row in &table {
        super::check_sources(row.provenance, &row.sources);
        assert!(row.us.is_some() || row.uk.is_some(), "{row:?}");
        if let Some(us) = &row.us {
            numbers.entry(us).or_default().push(row.disagreement.as_deref().unwrap_or(""));
            assert!(NeedleSize::parse(&format!("US {us}")) == Ok(NeedleSize::Us(us.clone())), "{row:?}");
        }
        if let Some(uk) = &row.uk {
            assert_eq!(rows(&NeedleSize::Uk(uk.clone())).len(), 1, "{row:?}");
            assert!(NeedleSize::parse(&format!("UK {uk}")) == Ok(NeedleSize::Uk(uk.clone())), "{row:?}");
        }
    }
    // A US number on two rows is a disagreement, and each of them says so.
    for (number, notes) in numbers {
        assert!(notes.len() == 1 || notes.iter().all(|note| !note.is_empty()), "US {number}");
    }
}

#[test]
fn every_uk_number_from_19_to_000_is_there_but_the_two_odd_ones() {
    // Size 16 lies between two metric sizes and has no row; the others run without a gap.
    let mut wanted: Vec<String> = (1..=19).rev().filter(|n| *n != 16).map(|n| n.to_string()).collect();
    wanted.extend(["0", "00", "000"].map(str::to_owned));
    let found: Vec<String> = all().iter().filter_map(|row| row.uk.clone()).collect();
    assert_eq!(found, wanted);
}

#[test]
fn the_pairs_a_tech_editor_checks() {
    for (size, number) in [
        ("2", "0"),
        ("2.25", "1"),
        ("2.5", "1.5"),
        ("2.75", "2"),
        ("3", "2.5"),
        ("3.25", "3"),
        ("3.5", "4"),
        ("3.75", "5"),
        ("4", "6"),
        ("4.5", "7"),
        ("5", "8"),
        ("5.5", "9"),
        ("6", "10"),
        ("6.5", "10.5"),
        ("8", "11"),
        ("9", "13"),
        ("10", "15"),
    ] {
        assert_eq!(us(mm(size)), Some(number), "{size} mm");
        assert_eq!(metric(&NeedleSize::Us(number.to_owned())), Some(mm(size)), "US {number}");
    }
    assert_eq!(uk(mm("4")), Some("8"));
    assert_eq!(us(mm("7")), None);
    assert_eq!(us(mm("7.5")), None);
    assert_eq!(row(mm("4.1")), None);
}

#[test]
fn disagreements_are_kept() {
    let found: Vec<FabricLength> = rows(&NeedleSize::Us("17".to_owned())).iter().map(|row| row.metric).collect();
    assert_eq!(found, [mm("12"), mm("12.5"), mm("12.75")]);
    assert!(row(mm("2.5")).unwrap().disagreement.is_some());
    assert!(row(mm("4")).unwrap().disagreement.is_none());
    assert!(rows(&NeedleSize::Us("99".to_owned())).is_empty());
    assert_eq!(metric(&NeedleSize::Metric(mm("4.1"))), Some(mm("4.1")));
}
