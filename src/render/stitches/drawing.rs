//! A chart as a drawing (SVG): its cells, the numbers of its rows and columns, and the box round its repeat.

use super::cells::{BARE_PAPER, Look, Paint};
use super::lines;
use crate::notation::chart::{Chart, Side};
use crate::page::ChartView;
use crate::reckon::chart::CELL_WIDTH;
use pulldown_cmark_escape::escape_html;
use std::fmt::Write as _;
use std::ops::Range;

/// Room for the numbers of rows at either side, and of columns below.
const SIDE: i64 = 420;
const FOOT: i64 = 260;
const EDGE: i64 = 30;

/// Draws a chart; `id` begins the ids of its title and description.
pub fn drawing(view: &ChartView<'_>, looks: &[Look], id: &str) -> String {
    let chart = view.chart;
    let height = view.cell_height;
    let count = |number: usize| i64::try_from(number).unwrap_or(0);
    let (across, up) = (count(chart.width) * CELL_WIDTH, count(chart.rows.len()) * height);
    let sides: Vec<Side> = (0..chart.rows.len()).map(|row| chart.side(row)).collect();
    let (left_numbers, right_numbers) = (sides.contains(&Side::Wrong), sides.contains(&Side::Right));
    let left = if left_numbers { SIDE } else { EDGE };
    let wide = left + across + if right_numbers { SIDE } else { EDGE };
    let high = EDGE + up + FOOT;
    let top = |row: usize| EDGE + up - (count(row) + 1) * height;
    let mut paint = Paint::new(height);
    for (at, row) in chart.rows.iter().enumerate() {
        let mut rest = row.as_slice();
        while let Some(first) = rest.first() {
            let run = rest.iter().take_while(|worked| worked.sign == first.sign).count();
            let (same, others) = rest.split_at_checked(run).unwrap_or((rest, &[]));
            if let Some(look) = looks.get(first.sign) {
                let place = |cell: usize| (left + count(cell) * CELL_WIDTH, top(at));
                paint.ground(look, place(first.cell), count(run));
                same.iter().for_each(|worked| paint.sign(look, place(worked.cell)));
            }
            rest = others;
        }
    }
    let mut out = format!(
        "<svg role=\"img\" aria-labelledby=\"{id}-name {id}-shows\" width=\"{}\" height=\"{}\" viewBox=\"0 0 {wide} {high}\">",
        wide / 10,
        high / 10
    );
    for (tag, end, text) in [("title", "name", &view.title), ("desc", "shows", &view.description)] {
        let _ = write!(out, "<{tag} id=\"{id}-{end}\">");
        let _ = escape_html(&mut out, text);
        let _ = write!(out, "</{tag}>");
    }
    let _ = write!(out, "<path {BARE_PAPER} d=\"M{left} {EDGE}h{across}v{up}h-{across}z\"/>");
    out.push_str(&paint.grounds());
    grid(&mut out, chart, (left, across, up, height));
    if let Some(path) = repeat_box(chart, left, EDGE + up, height) {
        for class in ["under", "repeat"] {
            let _ = write!(out, "<path {} d=\"{path}\"/>", lines(class));
        }
    }
    out.push_str(&paint.signs());
    for (row, side) in sides.iter().enumerate() {
        let (class, x) = match side {
            Side::Right => ("first", left + across + 90),
            Side::Wrong => ("last", left - 90),
        };
        let _ = write!(
            out,
            "<text class=\"{class}\" font-size=\"135\" x=\"{x}\" y=\"{}\">{}</text>",
            top(row) + height / 2 + 48,
            chart.number(row)
        );
    }
    for column in (1..=chart.width).filter(|column| *column == 1 || column % 5 == 0) {
        let x = left + across - count(column) * CELL_WIDTH + CELL_WIDTH / 2;
        let _ =
            write!(out, "<text class=\"mid\" font-size=\"135\" x=\"{x}\" y=\"{}\">{column}</text>", EDGE + up + 180);
    }
    out.push_str("</svg>");
    out
}

/// Draws the lines between cells twice, broad in the paper's colour and narrow in ink, so that they stand out from any
/// shade; every fifth from the right is stronger.
fn grid(out: &mut String, chart: &Chart, (left, across, up, height): (i64, i64, i64, i64)) {
    let (mut fine, mut strong) = (String::new(), String::new());
    for row in 0..=chart.rows.len() {
        let y = EDGE + up - i64::try_from(row).unwrap_or(0) * height;
        let path = if row % 5 == 0 || row == chart.rows.len() { &mut strong } else { &mut fine };
        let _ = write!(path, "M{left} {y}h{across}");
    }
    for column in 0..=chart.width {
        let x = left + across - i64::try_from(column).unwrap_or(0) * CELL_WIDTH;
        let path = if column % 5 == 0 || column == chart.width { &mut strong } else { &mut fine };
        let _ = write!(path, "M{x} {EDGE}v{up}");
    }
    for (class, path) in [("under", format!("{fine}{strong}")), ("fine", fine), ("strong", strong)] {
        let _ = write!(out, "<path {} d=\"{path}\"/>", lines(class));
    }
}

/// Returns the outline of what is repeated, from its foot round; a box that moves from row to row has steps.
fn repeat_box(chart: &Chart, left: i64, foot: i64, height: i64) -> Option<String> {
    let x = |cell: usize| left + i64::try_from(cell).unwrap_or(0) * CELL_WIDTH;
    let top = |row: usize| foot - i64::try_from(row).unwrap_or(0).saturating_add(1) * height;
    let boxes: Vec<Range<usize>> = (0..chart.rows.len()).filter_map(|row| chart.repeat_in(row).cloned()).collect();
    let first = boxes.first()?;
    let mut path = format!("M{} {foot}", x(first.start));
    // Up the left edge and down the right one; a step lies on the line between two rows.
    for (row, cells) in boxes.iter().enumerate() {
        let above = boxes.get(row.saturating_add(1));
        if above.is_none_or(|above| above.start != cells.start) {
            let _ = write!(path, "V{}", top(row));
            let _ = write!(path, "H{}", x(above.map_or(cells.end, |above| above.start)));
        }
    }
    for (row, cells) in boxes.iter().enumerate().rev() {
        let below = row.checked_sub(1).and_then(|below| boxes.get(below));
        if below.is_some_and(|below| below.end != cells.end) {
            let _ = write!(path, "V{}", top(row) + height);
            let _ = write!(path, "H{}", x(below.map_or(cells.end, |below| below.end)));
        }
    }
    let _ = write!(path, "V{foot}z");
    Some(path)
}
