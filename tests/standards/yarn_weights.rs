//! Yarn weights.

use ballband::standards::yarn_weights::{CSV, NotAWeight, all, by_name, by_number, read};

#[test]
fn the_table_as_a_whole() {
    let rows = read(CSV).unwrap();
    assert_eq!(rows, all());
    assert_eq!(rows.len(), super::lines(CSV));
    for (index, row) in rows.iter().enumerate() {
        super::check_sources(row.provenance, &row.sources);
        assert_eq!(usize::from(row.number), index);
        assert!(row.stitches_min <= row.stitches_max);
        assert!(row.needle_max.is_none_or(|max| row.needle_min < max));
    }
    // Gauges run down and needles up without a gap. Only Fine (23-26) and Light (21-24) share gauges.
    for pair in rows.windows(2) {
        let apart = if pair[0].name == "Fine" { -1 } else { 1 };
        let (light, heavy) = (i64::from(pair[0].stitches_min), i64::from(pair[1].stitches_max));
        assert_eq!(light - heavy, apart, "{} and {}", pair[0].name, pair[1].name);
        assert_eq!(pair[0].needle_max, Some(pair[1].needle_min), "{} and {}", pair[0].name, pair[1].name);
    }
    assert_eq!(rows.last().unwrap().needle_max, None);
}

#[test]
fn every_name_in_the_table_is_settled() {
    for row in all() {
        assert_eq!(by_name(&row.name).unwrap().number, row.number);
        assert_eq!(by_name(&row.number.to_string()).unwrap().number, row.number);
        for printed in row.names_us.iter().chain(&row.names_uk_au) {
            // `UK 4 ply (heavier end) / 5 ply`, `AU 3 ply to 4 ply`: each name by itself.
            for name in printed.split(['(', ')', '/']).flat_map(|name| name.split(" to ")) {
                let name = name.trim().trim_start_matches("some charts:").trim();
                if name.is_empty() || name == "heavier end" {
                    continue;
                }
                assert!(!matches!(by_name(name), Err(NotAWeight::Unknown { .. })), "{name} of {printed}");
            }
        }
    }
}

#[test]
fn names_that_designers_write() {
    for (name, number) in [
        ("DK", 3),
        ("dk weight", 3),
        ("3", 3),
        ("#3", 3),
        ("category 3", 3),
        ("light", 3),
        ("Super-Bulky", 6),
        ("sport", 2),
        ("aran", 4),
        ("UK aran", 4),
        ("worsted", 4),
        ("4 ply", 1),
        ("4-ply", 1),
        ("4ply", 1),
        ("fingering", 1),
        ("AU 8 ply", 3),
        ("chunky", 5),
        ("jumbo", 7),
        ("lace", 0),
    ] {
        assert_eq!(by_name(name).map(|weight| weight.number), Ok(number), "{name}");
    }
    assert_eq!(by_number(8), None);
}

#[test]
fn a_name_that_two_claim_is_reported_with_both() {
    for (name, help) in
        [("baby", "write `1` (Super Fine) or `2` (Fine)"), ("Roving", "write `6` (Super Bulky) or `7` (Jumbo)")]
    {
        let problem = by_name(name).unwrap_err();
        assert!(matches!(problem, NotAWeight::Ambiguous { .. }), "{problem}");
        assert_eq!(problem.help(), help);
    }
}

#[test]
fn a_slip_gets_the_nearest_name() {
    assert_eq!(by_name("worstd").unwrap_err().help(), "write `worsted`");
    assert_eq!(by_name("fingring").unwrap_err().help(), "write `fingering`");
    assert_eq!(by_name("cotton").unwrap_err().to_string(), "`cotton` is not a standard yarn weight");
    assert_eq!(by_name("8").unwrap_err().to_string(), "`8` is not a standard yarn weight");
    assert_eq!(by_name("").unwrap_err().help(), "write a category's number or name, such as `3`, `Light` or `DK`");
}
