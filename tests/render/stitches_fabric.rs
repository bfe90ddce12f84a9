//! A swatch of a chart whose repeat moves: every stitch of the fabric, told from the rows alone.

use crate::support::{page, site};
use std::collections::BTreeMap;

/// From the bottom up. The box moves to the left by a stitch in row 2 and to the right in row 4.
const ROWS: [&str; 4] = [".|xx.a|a.", "|.xa.|xa.", ".|a.xx|.a", "xa|..ax|."];
const SHADES: [(char, &str); 3] = [('.', "#2f4a35"), ('x', "#f3efe4"), ('a', "#8a2f24")];

/// The stitches of a row in fabric so many wide, from the right: the right edge, as many repeats as there is room for beside
/// the left edge of the chart, and that edge.
fn unrolled(row: &str, wide: usize) -> Vec<char> {
    let parts: Vec<&str> = row.split('|').collect();
    let backwards = |text: &str| text.chars().rev().collect::<Vec<char>>();
    let (left, again, right) = (backwards(parts[0]), backwards(parts[1]), backwards(parts[2]));
    let mut all = right;
    while all.len() + left.len() < wide {
        all.extend(&again);
    }
    all.extend(&left);
    assert_eq!(all.len(), wide, "{row}");
    all
}

/// The shade of each stitch that a group of shapes draws, by its column from the group's corner and its row from the top.
fn stitches(group: &str, height: i64) -> BTreeMap<(i64, i64), String> {
    let mut all = BTreeMap::new();
    for path in group.split("<path fill=\"").skip(1) {
        let (fill, rest) = path.split_once('"').unwrap();
        let d = rest.split("d=\"").nth(1).unwrap().split('"').next().unwrap();
        for shape in d.split('M').skip(1) {
            let (corner, edge) = shape.split_at(shape.find('l').unwrap());
            let (x, y) = corner.split_once(' ').unwrap();
            let (x, y): (i64, i64) = (x.parse().unwrap(), y.parse().unwrap());
            // Each stitch goes down to its middle and up again.
            let run = edge.split('v').next().unwrap().matches('l').count();
            for at in 0..i64::try_from(run).unwrap() {
                assert_eq!(all.insert((x / 200 + at, y / height), fill.to_owned()), None, "drawn twice");
            }
        }
    }
    all
}

/// Without a gauge a row is 133 high and a stitch 200 wide.
#[test]
fn every_stitch_of_a_moving_repeat_is_drawn_once() {
    let rows: String = ROWS.iter().map(|row| format!("  {row}\n")).collect();
    let text = format!(
        "---\ntitle: Yoke\npublished: 2026-03-14\nyarn:\n  - {{ colour: MC, yarn: heron, shade: reed }}\n  - {{ colour: CC, yarn: heron, shade: chalk }}\n  - {{ colour: CC2, yarn: heron, shade: madder }}\n---\n\n```swatch\nkey: {{ \".\": MC, x: CC, a: CC2 }}\nworked: in the round\nrows: |\n{rows}repeats: 3\n```\n"
    );
    let shades = SHADES.map(|(_, shade)| format!("\"{shade}\""));
    let yarns = format!(
        "heron:\n  title: Heron\n  shades: {{ reed: {}, chalk: {}, madder: {} }}\n",
        shades[0], shades[1], shades[2]
    );
    let made = site(&[("patterns/yoke.md", &text), ("yarns.yaml", &yarns)]);
    let html = page(&made, "patterns/yoke/index.html");
    let svg = html.split("<svg role=\"img\"").nth(1).unwrap().split("</svg>").next().unwrap();
    let (chart, boxed, wide, height) = (7_usize, 4_usize, 7 + 2 * 4, 133_i64);
    assert!(svg.contains(&format!("{wide} stitches wide and 4 rows high")), "{svg}");
    assert_eq!(chart - boxed, 3);
    let mut fabric: BTreeMap<(i64, i64), String> = BTreeMap::new();
    for used in svg.split("<use href=\"#").skip(1) {
        let id = used.split('"').next().unwrap();
        let x: i64 = used.split(" x=\"").nth(1).unwrap().split('"').next().unwrap().parse().unwrap();
        let group = svg.split(&format!("<g id=\"{id}\">")).nth(1).unwrap().split("</g>").next().unwrap();
        for ((column, row), fill) in stitches(group, height) {
            assert_eq!(fabric.insert((x / 200 + column, row), fill), None, "drawn twice at {column} in {id}");
        }
    }
    for (at, row) in ROWS.iter().enumerate() {
        let from_top = i64::try_from(ROWS.len() - 1 - at).unwrap();
        for (from_right, sign) in unrolled(row, wide).into_iter().enumerate() {
            let column = i64::try_from(wide - 1 - from_right).unwrap();
            let shade = SHADES.iter().find(|(known, _)| *known == sign).unwrap().1;
            assert_eq!(fabric.remove(&(column, from_top)).as_deref(), Some(shade), "row {at}, stitch {from_right}");
        }
    }
    assert_eq!(fabric, BTreeMap::new(), "nothing else is drawn");
}
