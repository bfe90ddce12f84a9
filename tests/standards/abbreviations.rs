//! Abbreviations.

use std::collections::BTreeMap;

use ballband::standards::abbreviations::{CSV, Kind, Stitches, all, find, read};

#[test]
fn the_table_as_a_whole() {
    let rows = read(CSV).unwrap();
    assert_eq!(rows, all());
    assert_eq!(rows.len(), super::lines(CSV));
    let mut seen = BTreeMap::new();
    for row in &rows {
        super::check_sources(row.provenance, &row.sources);
        let counted = matches!(row.kind, Kind::Stitch | Kind::Edge | Kind::ShortRow);
        assert_eq!(row.consumed.is_some(), counted, "{row:?}");
        assert_eq!(row.produced.is_some(), counted, "{row:?}");
        assert_eq!(row.count_basis.is_some(), counted, "{row:?}");
        // Even with capitals aside no two rows are written alike, so that nothing is found by chance.
        for form in &row.forms {
            assert!(!form.trim().is_empty(), "{row:?}");
            assert_eq!(seen.insert(form.to_lowercase(), row), None, "{form} is there twice");
            assert_eq!(find(form), Some(row));
            assert_eq!(find(&form.to_uppercase()), Some(row));
        }
    }
    for kind in Kind::ALL {
        assert!(rows.iter().any(|row| row.kind == kind), "{kind:?}");
    }
}

#[test]
fn names_say_how_many_are_worked_together() {
    let mut seen = 0;
    for row in all() {
        let usual = &row.forms[0];
        let Some((letter, rest)) = usual.split_once(|c: char| c.is_ascii_digit()) else { continue };
        if matches!(letter, "k" | "p") && rest.starts_with("tog") {
            let number = usual[1..2].parse().unwrap();
            assert_eq!((row.consumed, row.produced), (Some(Stitches::Fixed(number)), Some(Stitches::Fixed(1))));
            seen += 1;
        }
    }
    assert_eq!(seen, 6);
}

#[test]
fn abbreviations_that_designers_write() {
    let counts = |written: &str| find(written).map(|row| (row.consumed, row.produced));
    let fixed = |consumed, produced| Some((Some(Stitches::Fixed(consumed)), Some(Stitches::Fixed(produced))));
    for (written, consumed, produced) in [
        ("k", 1, 1),
        ("K2TOG", 2, 1),
        ("ssk", 2, 1),
        ("S2KP", 3, 1),
        ("sk2p", 3, 1),
        ("k1f&b", 1, 2),
        (" yo ", 0, 1),
        ("yf", 0, 1),
        ("m1l", 0, 1),
        ("w&t", 0, 0),
        ("CO", 0, 1),
        ("bo", 1, 0),
        ("(k1, p1, k1) in same st", 1, 3),
        ("RT", 2, 2),
    ] {
        assert_eq!(counts(written), fixed(consumed, produced), "{written}");
    }
    let crossed = Some((Some(Stitches::Crossed), Some(Stitches::Crossed)));
    for written in ["LC", "n/m LC", "2/3 LC", "2/2 rpc"] {
        assert_eq!(counts(written), crossed, "{written}");
    }
    for written in ["psso", "( )", "*", "sts", "st", "tbl", "m"] {
        assert_eq!(counts(written), Some((None, None)), "{written}");
    }
    assert_eq!(find("m").unwrap().meaning, "metre");
    for written in ["", "k3", "2/ LC", "a/b LC", "2/3 XC", "knitwise"] {
        assert_eq!(find(written), None, "{written}");
    }
}
