//! Written rows as pages show them: which part is what, and that the text stays as it is.

use crate::support::{page, site};
use ballband::render::rows::highlight::{CLASSES, parts};

/// The trade's example rows, the same whose counts are tested (`tests/notation/rows.txt`).
const ROWS: &str = include_str!("../notation/rows.txt");

/// Returns the parts of a row as words with their class.
fn seen(row: &str) -> Vec<(&'static str, &str)> {
    parts(row).iter().map(|part| (part.class, &row[part.at.clone()])).collect()
}

/// Returns the text of HTML, without the stitches that are worked out and stand beside a line.
pub fn text_of(html: &str) -> String {
    let mut text = String::new();
    let mut rest = html;
    while let Some(at) = rest.find('<') {
        text.push_str(&rest[..at]);
        rest = &rest[at..];
        if rest.starts_with("<span class=\"after\">") {
            rest = &rest[rest.find("</li>").unwrap()..];
        }
        rest = &rest[rest.find('>').unwrap() + 1..];
    }
    text.push_str(rest);
    text.replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"").replace("&amp;", "&")
}

#[test]
fn a_run_of_lengths_is_one_number_and_no_repeat() {
    assert_eq!(seen("Work 15.5 (17.5, 19) cm."), [("number", "15.5 (17.5, 19)")]);
    assert_eq!(seen("Repeat it every 8th (6th, 5th) rnd."), [("number", "8th (6th, 5th)")]);
    assert_eq!(seen("Work 6½ (7, 7½) in."), [("number", "6½ (7, 7½)")]);
}

#[test]
fn each_part_of_a_row_has_its_class() {
    assert_eq!(
        seen(
            "Row 1 (RS): *K2, p10 (12, 14), k2tog, C6F; rep from * to last 3 sts, sm, [yo, k1] 2 times. [63 (71) sts]"
        ),
        [
            ("label", "Row 1 (RS):"),
            ("side", "(RS)"),
            ("repeat", "*"),
            ("stitch", "K"),
            ("number", "2"),
            ("stitch", "p"),
            ("number", "10 (12, 14)"),
            ("stitch", "k2tog"),
            ("cable", "C6F"),
            ("repeat", "rep from *"),
            ("repeat", "to last"),
            ("number", "3"),
            ("marker", "sm"),
            ("repeat", "["),
            ("stitch", "yo"),
            ("stitch", "k"),
            ("number", "1"),
            ("repeat", "]"),
            ("number", "2"),
            ("repeat", "times"),
            ("count", "[63 (71) sts]"),
            ("number", "63 (71)"),
        ]
    );
    assert_eq!(
        seen("Next row: 2/2 LPC, sl1 wyif, k3 tbl. (2 sts inc'd)"),
        [
            ("label", "Next row:"),
            ("cable", "2/2 LPC"),
            ("stitch", "sl"),
            ("number", "1"),
            ("stitch", "wyif"),
            ("stitch", "k"),
            ("number", "3"),
            ("stitch", "tbl"),
            ("count", "(2 sts inc'd)"),
            ("number", "2"),
        ]
    );
    // Colons and words that are no labels; a line that goes on below is one row.
    assert_eq!(seen("Crown:"), []);
    assert_eq!(seen("Change to 4.5 mm needle."), [("number", "4.5")]);
    assert_eq!(seen("Row 2:\n  k4"), [("label", "Row 2:"), ("stitch", "k"), ("number", "4")]);
}

#[test]
fn labels_are_written_in_several_ways() {
    let label = |row: &str| {
        let parts = parts(row);
        assert!(parts.iter().all(|part| part.class != "label" || part.at.start == 0), "{row}");
        parts.iter().find(|part| part.class == "label").map(|part| row[part.at.clone()].to_owned())
    };
    for (row, wanted) in [
        ("R1: K2.", Some("R1:")),
        ("R 12 (RS): K2.", Some("R 12 (RS):")),
        ("Row 1 - K2.", Some("Row 1 -")),
        ("Rows 1 - 4 (WS) – p2, k3.", Some("Rows 1 - 4 (WS) –")),
        ("Rnds 1 and 3 — k2.", Some("Rnds 1 and 3 —")),
        ("Dec rnd A: K2.", Some("Dec rnd A:")),
        ("Rows 1 - 4: K2.", Some("Rows 1 - 4:")),
        ("Repeat rows 1 - 4 – or more.", None),
        ("Rib 2 - k2.", None),
    ] {
        assert_eq!(label(row).as_deref(), wanted, "{row}");
    }
    let sided = seen("Row 3 (WS) - P2.");
    assert_eq!(sided[..2], [("label", "Row 3 (WS) -"), ("side", "(WS)")]);
    // A row that is worked again by its name is like one by its number.
    assert_eq!(
        seen("Repeat dec rnd every 8th (7th) rnd 5 (6) times more."),
        [("number", "8th (7th)"), ("number", "5 (6)"), ("repeat", "times more")]
    );
    assert_eq!(
        seen("Repeat rnd 3 every 8th (7th) rnd 5 (6) times more."),
        [("number", "3"), ("number", "8th (7th)"), ("number", "5 (6)"), ("repeat", "times more")]
    );
    assert_eq!(
        seen("Rep rnds 1-4 3 more times."),
        [("number", "1"), ("number", "4"), ("number", "3"), ("repeat", "more times")]
    );
}

#[test]
fn every_example_row_is_read_from_end_to_end() {
    let mut rows = 0;
    for line in ROWS.lines().filter(|line| !line.starts_with('#')) {
        let row = line.split(" | ").nth(1).unwrap();
        let parts = parts(row);
        assert!(parts.len() > 1, "{row}");
        let mut end = 0;
        for part in parts.iter() {
            assert!(CLASSES.contains(&part.class) && !row[part.at.clone()].is_empty(), "{row}");
            assert!(part.at.start >= end || part.at.end <= end, "{row}: {part:?} crosses another");
            end = end.max(part.at.end);
        }
        // Letters outside of any part are words of plain English, never a stitch.
        let bare = |at: usize| !parts.iter().any(|part| part.at.contains(&at));
        let left: String = row.char_indices().map(|(at, c)| if bare(at) { c } else { ' ' }).collect();
        let words = ["to", "from", "st", "sts", "in", "next", "times", "before", "turn", "into", "end"];
        for word in left.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()) {
            assert!(words.contains(&word.to_lowercase().as_str()) || word == "MB", "`{word}` of `{row}`");
        }
        rows += 1;
    }
    assert!(rows > 30, "{rows}");
}

/// Odd text stays what it is, however its parts overlap.
#[test]
fn the_text_of_a_block_is_that_of_the_file() {
    let block = "Cast on 72 (84, 96) sts.\nRow 1 (RS): K2, *p10 (12, 14), k2tog; rep from * to last 2 sts, k2. [63 (71, 80) sts]\nRow 2: <b>K2</b> & \"p2\" [[( 3 (4, 5 k– (–, 4) ssk,\n    C4F (k2, p2) to end: 2/2 RC*\nCrown – again:\nCrown:\n\nMB, ½ é k２ 12345678901234567890 (1, 2)\n* ** ] ) } [4 sts\n";
    let made = site(&[(
        "patterns/hat.md",
        &format!("---\ntitle: Hat\npublished: 2026-03-14\nsizes: S (M, L)\n---\n\n```rows\n{block}```\n"),
    )]);
    let html = page(&made, "patterns/hat/index.html");
    let shown: String =
        html.split("<div class=\"block rows\">").nth(1).unwrap().split("</div>").next().unwrap().to_owned();
    let text: Vec<String> =
        text_of(&shown).lines().map(|line| line.trim_end().to_owned()).filter(|line| !line.is_empty()).collect();
    let written: Vec<&str> = block.lines().filter(|line| !line.is_empty()).collect();
    assert_eq!(text, written);
}

#[test]
fn the_theme_styles_no_class_that_is_not_there() {
    let style = include_str!("../../themes/leaflet/assets/style.css");
    for class in ["label", "side", "repeat", "count", "marker"] {
        assert!(CLASSES.contains(&class) && style.contains(&format!(".{class}")), "{class}");
    }
}
