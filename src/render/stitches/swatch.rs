//! A chart as knitted fabric (SVG): every stitch a V in its colour.
//!
//! A V is two leaning strips as high as a row, which fit into those of the row below like tiles. Stitches of one colour
//! beside each other are one shape, the repeat is drawn once and used again, and the strands' edges are one pattern.

use super::cells::Look;
use crate::notation::chart::{Chart, Stretch, Worked};
use crate::page::ChartView;
use crate::reckon::chart::CELL_WIDTH;
use pulldown_cmark_escape::escape_html;
use std::fmt::Write as _;

/// Draws fabric `stitches` wide, with the chart `up` times one above the other; `id` begins the ids of its parts.
///
/// What does not fit beside the edges of the chart in whole repeats is cut off at the left, as a swatch has its edge
/// anywhere. Cells without a stitch are left open.
pub fn swatch(view: &ChartView<'_>, looks: &[Look], stitches: u32, up: u32, id: &str) -> String {
    let chart = view.chart;
    let height = view.cell_height;
    let count = |number: usize| i64::try_from(number).unwrap_or(0);
    let rows = count(chart.rows.len());
    let repeat = chart.repeat.clone().unwrap_or(0..chart.width);
    let wide = i64::from(stitches) * CELL_WIDTH;
    let drop = height * 9 / 20;
    let tall = rows * height * i64::from(up);
    // The notches of the topmost row are cut off, so that the edge is straight.
    let high = tall - drop;
    let mut out = format!(
        "<svg role=\"img\" aria-labelledby=\"{id}-name {id}-shows\" width=\"{}\" height=\"{}\" viewBox=\"0 {drop} {wide} {high}\">",
        wide / 20,
        high / 20
    );
    let title = view.title.replacen("Chart", "Swatch", 1);
    let words =
        format!("The chart as knitted fabric, {stitches} stitches wide and {} rows high.", rows * i64::from(up));
    for (tag, end, text) in [("title", "name", &title), ("desc", "shows", &words)] {
        let _ = write!(out, "<{tag} id=\"{id}-{end}\">");
        let _ = escape_html(&mut out, text);
        let _ = write!(out, "</{tag}>");
    }
    let stretches = [
        ("right", Stretch::Right, repeat.end..chart.width),
        ("again", Stretch::Repeat, repeat.clone()),
        ("left", Stretch::Left, 0..repeat.start),
    ];
    // Where the repeat moves, a row may have stitches beside it where most have none.
    let has = |stretch: Stretch| chart.rows.iter().flatten().any(|worked| worked.stretch == stretch);
    out.push_str("<defs>");
    for (name, stretch, cells) in stretches.iter().filter(|(_, stretch, _)| has(*stretch)) {
        let _ = write!(out, "<g id=\"{id}-{name}\">{}</g>", fabric(chart, looks, *stretch, cells.start, height, drop));
    }
    let (half, edge) = (CELL_WIDTH / 2, CELL_WIDTH);
    let _ = write!(
        out,
        "<pattern id=\"{id}-strands\" width=\"{edge}\" height=\"{height}\" patternUnits=\"userSpaceOnUse\"><path class=\"strand\" fill=\"none\" stroke=\"#000\" stroke-opacity=\".35\" stroke-width=\"9\" d=\"M0 0l{half} {drop}l{half}-{drop}M0 0v{height}M{half} 0v{height}M{edge} 0v{height}\"/></pattern></defs>"
    );
    let mut x = wide;
    let mut place = |name: &str, cells: usize| {
        x -= count(cells) * CELL_WIDTH;
        for storey in 0..i64::from(up) {
            let _ = write!(out, "<use href=\"#{id}-{name}\" x=\"{x}\" y=\"{}\"/>", storey * rows * height);
        }
        x
    };
    let [(_, _, right), (_, _, again), (_, _, left)] = &stretches;
    if has(Stretch::Right) {
        place("right", right.len());
    }
    let room = left.len();
    while place("again", again.len()) > count(room) * CELL_WIDTH {}
    if has(Stretch::Left) {
        place("left", left.len());
    }
    let _ = write!(out, "<path fill=\"url(#{id}-strands)\" d=\"M0 0h{wide}v{tall}h-{wide}z\"/></svg>");
    out
}

/// Draws a stretch of every row, a shape for each run of one look; the corner at the top left is that of cell `origin`.
fn fabric(chart: &Chart, looks: &[Look], stretch: Stretch, origin: usize, height: i64, drop: i64) -> String {
    let count = |number: usize| i64::try_from(number).unwrap_or(0);
    let half = CELL_WIDTH / 2;
    let mut paths: Vec<(&str, String)> = Vec::new();
    for (at, row) in chart.rows.iter().rev().enumerate() {
        let within: Vec<&Worked> = row.iter().filter(|worked| worked.stretch == stretch).collect();
        let ground = |worked: &Worked| looks.get(worked.sign).and_then(|look| look.ground.as_deref());
        let mut rest = within.as_slice();
        while let Some(first) = rest.first() {
            let run = rest.iter().take_while(|worked| ground(worked) == ground(first)).count();
            rest = rest.get(run..).unwrap_or_default();
            let Some(fill) = ground(first) else { continue };
            let path = match paths.iter_mut().position(|(known, _)| *known == fill) {
                Some(known) => known,
                None => {
                    paths.push((fill, String::new()));
                    paths.len().saturating_sub(1)
                }
            };
            let Some((_, path)) = paths.get_mut(path) else { continue };
            let x = count(first.cell).saturating_sub(count(origin)) * CELL_WIDTH;
            let _ = write!(path, "M{x} {}", count(at) * height);
            path.push_str(&format!("l{half} {drop} {half}-{drop}").repeat(run));
            let _ = write!(path, "v{height}");
            path.push_str(&format!("l-{half} {drop}-{half}-{drop}").repeat(run));
            path.push('z');
        }
    }
    let element = |(fill, path): (&str, String)| format!("<path fill=\"{fill}\" d=\"{path}\"/>");
    paths.into_iter().map(element).collect()
}
