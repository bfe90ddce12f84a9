//! The box round what a chart repeats, where it moves from row to row.

use super::rows::text_of;
use crate::support::{page, site};

/// The rows from the bottom up; what stands between two `|` is repeated.
const ROWS: [&str; 5] = ["|o/..|...", "|....|...", "..|o/..|.", "...|o/..|", ".|....|.."];

fn made(round: &str) -> String {
    let rows: String = ROWS.iter().map(|row| format!("  {row}\n")).collect();
    let text = format!(
        "---\ntitle: Lace\n---\n\n```chart\n{round}key: {{ \".\": knit, o: yo, \"/\": k2tog }}\nrows: |\n{rows}```\n"
    );
    page(&site(&[("techniques/lace.md", &text)]), "techniques/lace/index.html").to_owned()
}

/// Reads the corners of a path of `M`, `H`, `V` and `z`.
fn corners(path: &str) -> Vec<(i64, i64)> {
    let mut corners: Vec<(i64, i64)> = Vec::new();
    let path = path.trim_end_matches('z');
    let starts: Vec<usize> = path.match_indices(['M', 'H', 'V']).map(|(at, _)| at).collect();
    for (start, end) in starts.iter().zip(starts.iter().skip(1).copied().chain([path.len()])) {
        let (command, figures) = path[*start..end].split_at(1);
        let last = corners.last().copied().unwrap_or_default();
        corners.push(match command {
            "H" => (figures.parse().unwrap(), last.1),
            "V" => (last.0, figures.parse().unwrap()),
            _ => figures.split_once(' ').map(|(x, y)| (x.parse().unwrap(), y.parse().unwrap())).unwrap(),
        });
    }
    corners
}

/// Whether a point lies inside an outline: whether a line from it to the left crosses an odd number of upright edges.
fn is_inside(corners: &[(i64, i64)], (x, y): (i64, i64)) -> bool {
    let edges = corners.iter().zip(corners.iter().cycle().skip(1));
    let crossed =
        edges.filter(|(from, to)| from.0 == to.0 && from.0 < x && from.1.min(to.1) < y && y < from.1.max(to.1));
    crossed.count() % 2 == 1
}

/// Without a gauge cells are 200 wide and 133 high; the foot lies at 30 and five rows, the left edge at 420 for the numbers.
#[test]
fn the_box_holds_what_is_repeated_in_every_row() {
    let html = made("");
    let path = html.split("class=\"repeat\"").nth(1).unwrap().split(" d=\"").nth(1).unwrap().split('"').next().unwrap();
    let corners = corners(path);
    for (row, written) in ROWS.iter().enumerate() {
        let mut inside = false;
        let mut cell = 0;
        for character in written.chars() {
            if character == '|' {
                inside = !inside;
                continue;
            }
            let row = i64::try_from(row).unwrap();
            let middle = (420 + cell * 200 + 100, 30 + 5 * 133 - row * 133 - 66);
            assert_eq!(is_inside(&corners, middle), inside, "row {row}, cell {cell}: {path}");
            cell += 1;
        }
    }
}

#[test]
fn a_reader_is_told_where_the_box_stands() {
    let html = made("");
    // The wrong-side rows are not alike, so each is told.
    for words in [
        "A box marks what is repeated: columns 4 to 7, counted from the right; in row 3 columns 2 to 5; in row 4 columns 1 to 4; in row 5 columns 3 to 6.",
        "The box steps aside where the stitches of a repeat do",
        "Row 3 (RS): K1, *k2, k2tog, yo; rep from * to last 2 sts, k2.",
        "Row 4 (WS): P3, *yo, p2tog, p2; rep from * to end.",
    ] {
        assert!(text_of(&html).contains(words), "{words}\n{html}");
    }
    assert!(made("worked: in the round\n").contains("; in round 3 columns 2 to 5"));
}

/// A square without a stitch is left out of the words and of the counts, so the reader is told to pass over it. What is
/// worked on the right side only is not explained for the other.
#[test]
fn a_square_without_a_stitch_is_passed_over() {
    let text = "---\ntitle: Lace\n---\n\n```chart\nkey: { \".\": knit, o: yo, \"/\": k2tog, x: no stitch }\nrows: [./x., ..x., .o..]\n```\n";
    let made = site(&[("techniques/lace.md", text)]);
    let html = page(&made, "techniques/lace/index.html");
    for words in [
        "4 columns across and 3 rows up",
        "Pass over a square without a stitch as if it were not there.",
        "Row 1 (RS): K1, k2tog, k1. 3 stitches",
        "k2tog knit two together\n",
        "no stitch there is nothing to work here",
    ] {
        assert!(text_of(html).contains(words), "{words}\n{html}");
    }
}

/// Twelve lines of "purl" help nobody find the next row that is worked otherwise.
#[test]
fn rows_of_the_second_side_that_are_alike_stand_on_one_line() {
    let lines = |head: &str, rows: &str| -> Vec<String> {
        let text = format!(
            "---\ntitle: Lace\n---\n\n```chart\n{head}key: {{ \".\": knit, o: yo, \"/\": k2tog }}\nrows: {rows}\n```\n"
        );
        let made = site(&[("techniques/lace.md", &text)]);
        let html = page(&made, "techniques/lace/index.html");
        let lines =
            html.split("<li><b>").skip(1).map(|line| text_of(line.split(" <span class=\"beside\">").next().unwrap()));
        let lines = lines.map(|line| line.lines().next().unwrap_or_default().to_owned());
        lines.filter(|line| line.starts_with("Ro")).collect()
    };
    assert_eq!(
        lines("", "[./o., ...., .o/., ...., ./o.]"),
        [
            "Row 1 (RS): K1, yo, k2tog, k1.",
            "Row 2 and every other WS row: Purl.",
            "Row 3 (RS): K1, k2tog, yo, k1.",
            "Row 5 (RS): K1, yo, k2tog, k1."
        ]
    );
    let behind = lines("begins: WS\n", "[...., ./o., ...., ./o.]");
    assert_eq!(behind[1], "Row 2 and every other RS row: K1, yo, k2tog, k1.");
    // Not all alike, or only one of them.
    assert_eq!(lines("", "[./o., ...., .o/., .o/.]").len(), 4);
    assert_eq!(lines("", "[./o., ...., .o/.]")[1], "Row 2 (WS): Purl.");
}
