//! The names of sizes.

use ballband::measure::{RunStyle, SizeNames};

fn names(text: &str) -> SizeNames {
    SizeNames::parse(text, RunStyle::default()).expect(text)
}

#[test]
fn every_notation() {
    let rows: &[(&str, &[&str])] = &[
        ("XS (S, M, L, XL, 2XL)", &["XS", "S", "M", "L", "XL", "2XL"]),
        ("XS (S, M) L (XL, 2XL)", &["XS", "S", "M", "L", "XL", "2XL"]),
        ("XS [S, M] {L}", &["XS", "S", "M", "L"]),
        ("XS (S; M)", &["XS", "S", "M"]),
        ("XS [S:M:L]", &["XS", "S", "M", "L"]),
        ("0–3 m (3–6 m, 6–12 m)", &["0–3 m", "3–6 m", "6–12 m"]),
        ("0-3 months (3-6 months)", &["0-3 months", "3-6 months"]),
        ("One size", &["One size"]),
        ("S/M (L/XL)", &["S/M", "L/XL"]),
        ("XS (S/M, L/XL)", &["XS", "S/M", "L/XL"]),
        ("S/M/L", &["S", "M", "L"]),
        ("36 (38, 40)", &["36", "38", "40"]),
        ("XS (S, M) L", &["XS", "S", "M", "L"]),
        ("  small   adult ( large  adult ) ", &["small adult", "large adult"]),
    ];
    for (text, labels) in rows {
        assert_eq!(names(text).labels(), *labels, "{text}");
        assert_eq!(names(text).unit(), None, "{text}");
    }
}

#[test]
fn a_unit_behind_numbers_is_no_size() {
    let sizes = names("36 (38, 40) cm");
    assert_eq!(sizes.labels(), ["36", "38", "40"]);
    assert_eq!(sizes.unit(), Some("cm"));
    assert_eq!(sizes.show(), "36 (38, 40) cm");
}

#[test]
fn a_name_finds_its_size() {
    let sizes = names("XS (S, M, L, XL, 2XL, 3XL)");
    assert_eq!(sizes.find("M"), Some(2));
    assert_eq!(sizes.find(" m "), Some(2));
    assert_eq!(sizes.find("XXL"), Some(5));
    assert_eq!(sizes.find("xxxl"), Some(6));
    assert_eq!(sizes.find("4XL"), None);
    assert_eq!(names("0–3 m (3–6 m)").find("3-6m"), Some(1));
    assert_eq!(names("One size").find("one size"), Some(0));
}

#[test]
fn every_name_keeps_its_place() {
    let text = "XS (S,  M) L";
    let places: Vec<&str> = names(text).ranges().iter().map(|at| &text[at.clone()]).collect();
    assert_eq!(places, ["XS", "S", "M", "L"]);
}
