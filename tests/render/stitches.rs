//! Charts and swatches as they are drawn.

use super::rows::text_of;
use crate::support::{page, site};
use std::collections::BTreeSet;
use std::fmt::Write as _;

const FRONT: &str = "---\ntitle: Yoke\npublished: 2026-03-14\ngauge: { stitches: 22, rows: 30, over: 10 cm }\nyarn:\n  - { colour: MC, yarn: heron-dk, shade: reedbed }\n  - { colour: CC, yarn: heron-dk, shade: chalk }\n---\n\n";
const YARNS: (&str, &str) =
    ("yarns.yaml", "heron-dk:\n  title: Heron DK\n  shades: { reedbed: \"#2f4a35\", chalk: \"#f3efe4\" }\n");

const REEDS: &str = "```chart\nname: reeds & <rushes>\nworked: in the round\nkey: { \".\": MC, x: CC }\nrepeat: { from: 1, to: 4 }\nrows: |\n  ..x.x\n  .xxx.\n```\n\n";

fn pattern(blocks: &str) -> String {
    let text = format!("{FRONT}{blocks}");
    let made = site(&[("patterns/yoke.md", &text), YARNS]);
    page(&made, "patterns/yoke/index.html").to_owned()
}

/// Reads all drawings of a page as XML, which a browser does not ask for and other programs do.
fn drawings(html: &str) -> Vec<String> {
    let starts: Vec<usize> = html.match_indices("<svg").map(|(at, _)| at).collect();
    let each = starts.into_iter().map(|at| html[at..at + html[at..].find("</svg>").unwrap() + 6].to_owned());
    let drawings: Vec<String> = each.collect();
    for svg in &drawings {
        let mut reader = quick_xml::Reader::from_str(svg);
        let mut depth = 0_i32;
        loop {
            match reader.read_event().unwrap() {
                quick_xml::events::Event::Start(_) => depth += 1,
                quick_xml::events::Event::End(_) => depth -= 1,
                quick_xml::events::Event::Eof => break,
                _ => {}
            }
        }
        assert_eq!(depth, 0, "{svg}");
    }
    drawings
}

#[test]
fn a_chart_has_a_name_a_description_a_key_and_its_rows_in_words() {
    let html = pattern(REEDS);
    let drawings = drawings(&html);
    assert_eq!(drawings.len(), 3, "the chart and two signs of its key");
    let svg = &drawings[0];
    assert!(
        svg.starts_with("<svg role=\"img\" aria-labelledby=\"leaflet-block-1-name leaflet-block-1-shows\""),
        "{svg}"
    );
    assert!(svg.contains("<title id=\"leaflet-block-1-name\">Chart: reeds &amp; &lt;rushes&gt;</title>"), "{svg}");
    assert!(svg.contains("<desc id=\"leaflet-block-1-shows\">5 stitches across and 2 rounds up"), "{svg}");
    assert!(drawings[1..].iter().all(|sign| sign.contains("aria-hidden=\"true\"")));
    for words in ["<b>MC</b> reedbed", "<b>CC</b> chalk", "<summary>In words</summary>"] {
        assert!(html.contains(words), "{words}\n{html}");
    }
    let words = "Round 1: *k1 CC, k1 MC, k1 CC, k1 MC; rep from * to last st, k1 MC.";
    assert!(text_of(&html).contains(words), "{html}");
    assert!(
        html.contains("<div class=\"scroller\" tabindex=\"0\" role=\"region\" aria-labelledby=\"leaflet-block-1\">")
    );
}

/// At 22 stitches and 30 rows a cell is 22/30 as high as wide: 147 to 200. Without a gauge it is 2 to 3 (common practice).
#[test]
fn cells_have_the_proportion_of_the_gauge() {
    let html = pattern(REEDS);
    assert!(html.contains("M630 177h200v147h-200z"), "{html}");
    let plain = site(&[(
        "techniques/lace.md",
        "---\ntitle: Lace\n---\n\n```chart\nkey: { k: knit, p: purl }\nrows: [kp, pk]\n```\n",
    )]);
    let html = page(&plain, "techniques/lace/index.html");
    assert!(html.contains("v133h-200z") || html.contains("v266h-400z"), "{html}");
}

/// A sign stands in each cell whose colour is not the first of the key, in black or white, whichever stands out more; no
/// two colours have one sign.
#[test]
fn no_cell_is_told_by_its_colour_alone() {
    let html = pattern(REEDS);
    let svg = &drawings(&html)[0];
    let crosses = svg
        .split("class=\"sign black\" fill=\"none\" stroke=\"#000\" stroke-width=\"16\" d=\"")
        .nth(1)
        .unwrap()
        .split('"')
        .next()
        .unwrap();
    assert_eq!(crosses.matches('M').count(), 5 * 2, "two strokes in each of five cells: {svg}");
    // Seventeen colours: all that can be told apart.
    let (mut yarn, mut key, mut row) = (String::new(), String::new(), String::new());
    for (at, sign) in ('a'..='q').enumerate() {
        let _ = writeln!(yarn, "  - {{ colour: C{at} }}");
        let _ = writeln!(key, "  {sign}: C{at}");
        row.push(sign);
    }
    let text = format!(
        "---\ntitle: Many\npublished: 2026-03-14\nyarn:\n{yarn}---\n\n```chart\nkey:\n{key}rows: [{row}]\n```\n"
    );
    let made = site(&[("patterns/many.md", &text)]);
    let html = page(&made, "patterns/many/index.html");
    let ink = |sign: &String| {
        let marks: Vec<&str> = sign
            .split("<path ")
            .filter(|path| path.starts_with("class=\"sign") || path.starts_with("class=\"full"))
            .collect();
        marks.concat().replace("black", "").replace("white", "")
    };
    let signs: Vec<String> = drawings(html)[1..].to_vec();
    assert_eq!(signs.len(), 17);
    assert_eq!(signs.iter().map(ink).collect::<BTreeSet<_>>().len(), 17, "{signs:#?}");
}

/// The side a row begins on has its number: right-side rows at the right, wrong-side rows at the left.
#[test]
fn row_numbers_stand_where_the_row_begins() {
    let made = site(&[(
        "techniques/moss.md",
        "---\ntitle: Moss\n---\n\n```chart\nkey: { k: knit, p: purl }\nrows: [kpk, pkp, kpk]\n```\n",
    )]);
    let html = page(&made, "techniques/moss/index.html");
    let numbers = |class: &str| -> Vec<String> {
        let cut = format!("<text class=\"{class}\"");
        html.split(&cut)
            .skip(1)
            .map(|rest| rest.split('>').nth(1).unwrap().split('<').next().unwrap().to_owned())
            .collect()
    };
    assert_eq!(numbers("first"), ["1", "3"]);
    assert_eq!(numbers("last"), ["2"]);
    assert!(html.contains("knit; on the wrong side purl") || html.contains("on the wrong side purl"), "{html}");
}

#[test]
fn ids_are_each_of_one_block() {
    let html = pattern(&format!("{REEDS}{REEDS}```swatch\nchart: reeds & <rushes>\nrepeats: 3\n```\n").replacen(
        "name: reeds & <rushes>",
        "name: other",
        1,
    ));
    let ids: Vec<&str> = html.split(" id=\"").skip(1).map(|rest| rest.split('"').next().unwrap()).collect();
    assert_eq!(ids.iter().collect::<BTreeSet<_>>().len(), ids.len(), "{ids:?}");
    let uses: BTreeSet<&str> = html.split("href=\"#").skip(1).map(|rest| rest.split('"').next().unwrap()).collect();
    assert!(uses.iter().filter(|id| id.starts_with("leaflet-block")).all(|id| ids.contains(id)), "{uses:?}");
}

/// 10 cm at 22 stitches are 22; the chart is five wide with one at its edge, so five repeats and a part fill them.
#[test]
fn a_swatch_is_as_wide_as_it_is_asked_to_be() {
    let swatch = |size: &str| pattern(&format!("{REEDS}```swatch\nchart: reeds & <rushes>\n{size}\n```\n"));
    let html = swatch("over: 10 cm");
    assert!(html.contains("22 stitches wide and 2 rows high"), "{html}");
    assert!(html.contains("viewBox=\"0 66 4400 228\""), "{html}");
    let html = swatch("repeats: 3\nup: 2");
    assert!(html.contains("13 stitches wide and 4 rows high"), "{html}");
    assert_eq!(html.matches("href=\"#leaflet-block-2-again\"").count(), 6);
    assert_eq!(html.matches("href=\"#leaflet-block-2-left\"").count(), 2);
}

/// The size that is promised: a repeat of 60 × 80, compressed as a host would, under 60 KB, and quickly drawn.
#[test]
fn a_large_swatch_is_small() {
    let mut rows = String::new();
    let mut seed = 7_u32;
    for _ in 0..80 {
        rows.push_str("  ");
        for _ in 0..60 {
            seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            rows.push(if seed >> 30 == 0 { 'x' } else { '.' });
        }
        rows.push('\n');
    }
    let html = pattern(&format!(
        "```swatch\nkey: {{ \".\": MC, x: CC }}\nworked: in the round\nrows: |\n{rows}repeats: 3\n```\n"
    ));
    let svg = &drawings(&html)[0];
    let packed = deflated(svg.as_bytes());
    assert!(packed < 60_000, "{packed} bytes of {}", svg.len());
    println!("a swatch of 60 x 80: {} bytes, {packed} compressed", svg.len());
}

/// Compresses as gzip does, with the program of that name, which is part of every system these tests run on.
fn deflated(bytes: &[u8]) -> usize {
    use std::io::Write as _;
    use std::process::{Command, Stdio};
    let mut gzip =
        Command::new("gzip").args(["-9", "-c"]).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().unwrap();
    let mut input = gzip.stdin.take().unwrap();
    let bytes = bytes.to_vec();
    let writing = std::thread::spawn(move || input.write_all(&bytes).unwrap());
    let packed = gzip.wait_with_output().unwrap().stdout.len();
    writing.join().unwrap();
    packed
}
