//! Stitches of charts.

use ballband::standards::abbreviations::{self, Stitches};
use ballband::standards::chart_symbols::{CSV, Cable, all, find, names, read};
use std::collections::BTreeSet;

#[test]
fn the_table_as_a_whole() {
    let rows = read(CSV).unwrap();
    assert_eq!(rows, all());
    assert_eq!(rows.len(), super::lines(CSV));
    let mut seen = BTreeSet::new();
    for row in &rows {
        super::check_sources(row.provenance, &row.sources);
        let stitch = &row.stitch;
        assert!(seen.insert(stitch.name.to_lowercase()), "{} is there twice", stitch.name);
        assert_eq!(find(&stitch.name).as_ref(), Some(stitch));
        assert_eq!(find(&stitch.name.to_uppercase()).as_ref(), Some(stitch));
        assert!(stitch.cells >= 1 && !row.shape.is_empty(), "{row:?}");
        // A comma would cut the words of a row in two.
        assert!(!stitch.short.contains(',') && !stitch.ws_short.as_ref().is_some_and(|word| word.contains(',')));
    }
}

/// No two stitches are written alike on one side, so that written rows say which is meant.
#[test]
fn short_words_are_each_of_one_stitch() {
    let own: Vec<&str> = all().iter().map(|row| row.stitch.short.as_str()).filter(|word| !word.is_empty()).collect();
    assert_eq!(own.iter().collect::<BTreeSet<_>>().len(), own.len());
    let other: Vec<&str> =
        all().iter().filter_map(|row| row.stitch.ws_short.as_deref()).filter(|word| !word.is_empty()).collect();
    assert_eq!(other.iter().collect::<BTreeSet<_>>().len(), other.len());
}

/// The counts are those that the table of abbreviations has from other sources.
#[test]
fn counts_are_those_of_the_abbreviations() {
    let mut held = 0;
    for stitch in all().iter().map(|row| &row.stitch).filter(|stitch| stitch.cable.is_none()) {
        let Some(known) = abbreviations::find(&stitch.short) else { continue };
        let (Some(Stitches::Fixed(consumed)), Some(Stitches::Fixed(produced))) = (known.consumed, known.produced)
        else {
            continue;
        };
        assert_eq!((stitch.consumed, stitch.produced), (consumed, produced), "{}", stitch.name);
        held += 1;
    }
    assert!(held >= 15, "only {held} were held");
}

/// What the table has of cables is what their names say; others follow from theirs alike.
#[test]
fn a_cable_follows_from_its_name() {
    let mut seen = 0;
    for row in all().iter().filter(|row| row.stitch.cable.is_some()) {
        let cable = row.stitch.cable.unwrap();
        assert_eq!(row.stitch.cells, cable.over + cable.middle + cable.under, "{}", row.stitch.name);
        assert_eq!((row.stitch.consumed, row.stitch.produced), (row.stitch.cells, row.stitch.cells));
        // Worked out from the name, the rest is the same; LT is another way to write LC.
        let other = row.stitch.name.replace("LC", "LT").replace("RC", "RT");
        let worked_out = find(&other).unwrap();
        assert_eq!(worked_out.meaning, row.stitch.meaning, "{}", row.stitch.name);
        assert_eq!(worked_out.cable, row.stitch.cable);
        seen += 1;
    }
    assert_eq!(seen, 14);
    // C4F is C4L and 2/2 LC; C4B leans right (decoding cable patterns, UK Hand Knitting, 2022; common practice).
    let cable = |over, under, left, purled| Cable { over, under, middle: 0, left, purled };
    for (written, wanted) in [
        ("C4F", cable(2, 2, true, false)),
        ("c4l", cable(2, 2, true, false)),
        ("C4B", cable(2, 2, false, false)),
        ("C6B", cable(3, 3, false, false)),
        ("T3F", cable(2, 1, true, true)),
        ("T3B", cable(2, 1, false, true)),
        ("T4B", cable(2, 2, false, true)),
        ("3/2 rpc", cable(3, 2, false, true)),
    ] {
        assert_eq!(find(written).unwrap().cable, Some(wanted), "{written}");
    }
    for written in ["C5F", "C0B", "0/2 LC", "2/ LC", "99/99 LC", "4294967295/1 LC", "CC", "MC", "T5F", "2/2", "/"] {
        assert_eq!(find(written), None, "{written}");
    }
}

#[test]
fn stitches_that_designers_write() {
    for (written, name) in
        [("k", "knit"), ("P", "purl"), ("yo", "yarn over"), ("kfb", "k1fb"), ("SSK", "ssk"), ("mb", "bobble")]
    {
        assert_eq!(find(written).map(|stitch| stitch.name).as_deref(), Some(name), "{written}");
    }
    for written in ["", "MC", "CC", "A", "CC1", "reedbed", "m", "sts", "*"] {
        assert_eq!(find(written), None, "{written}");
    }
    assert!(names().count() > 60);
}
