//! How far a thing had come, drawn as a small picture (SVG).
//!
//! Lines and letters take their colours from the style sheet by their classes, so that the drawing is right by day, by night
//! and on paper. What it shows is said in words beside it as well.

use pulldown_cmark_escape::escape_html;
use std::fmt::Write as _;

/// One point: the days since the first, and how much was done, in whole percent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Point {
    /// The days since the first point.
    pub days: i64,
    /// How much was done, from 0 to 100.
    pub percent: i64,
}

/// The drawing's size and the edges of its field, in its own units: room for words at the left and below.
const WIDTH: i64 = 360;
const HEIGHT: i64 = 190;
const LEFT: i64 = 52;
const RIGHT: i64 = 350;
const TOP: i64 = 12;
const BOTTOM: i64 = 152;

/// Draws points in the order of their days; nothing of fewer than two. `first` and `last` stand below the ends, `title` and
/// `words` tell a reader who cannot see it what it shows.
///
/// Points outside 0 to 100 % are drawn at the edge. Where all are of one day they stand at the left.
pub fn chart(points: &[Point], title: &str, words: &str, first: &str, last: &str) -> String {
    let [start, .., end] = points else { return String::new() };
    let span = end.days.saturating_sub(start.days).max(1);
    // In tenths of a unit: finer than any screen shows.
    let across = |point: &Point| {
        let gone = point.days.saturating_sub(start.days).clamp(0, span);
        tenths(i128::from(LEFT) * 10 + i128::from(gone) * i128::from((RIGHT - LEFT) * 10) / i128::from(span))
    };
    let up = |point: &Point| tenths(i128::from(BOTTOM * 10 - point.percent.clamp(0, 100) * (BOTTOM - TOP) / 10));
    let mut out = format!(
        "<svg class=\"chart\" role=\"img\" aria-labelledby=\"leaflet-chart-title leaflet-chart-words\" viewBox=\"0 0 {WIDTH} {HEIGHT}\">"
    );
    for (tag, id, text) in [("title", "leaflet-chart-title", title), ("desc", "leaflet-chart-words", words)] {
        let _ = write!(out, "<{tag} id=\"{id}\">");
        let _ = escape_html(&mut out, text);
        let _ = write!(out, "</{tag}>");
    }
    for percent in [0, 50, 100] {
        let y = BOTTOM - percent * (BOTTOM - TOP) / 100;
        let _ = write!(out, "<path class=\"rule\" d=\"M{LEFT} {y}H{RIGHT}\"/>");
        let _ = write!(out, "<text class=\"left\" x=\"{}\" y=\"{}\">{percent}%</text>", LEFT - 8, y + 5);
    }
    for (class, x, day) in [("first", LEFT, first), ("last", RIGHT, last)] {
        let _ = write!(out, "<text class=\"{class}\" x=\"{x}\" y=\"{}\">", BOTTOM + 26);
        let _ = escape_html(&mut out, day);
        out.push_str("</text>");
    }
    let line: Vec<String> = points.iter().map(|point| format!("{} {}", across(point), up(point))).collect();
    let _ = write!(out, "<path class=\"line\" d=\"M{}\"/>", line.join("L"));
    for point in points {
        let _ = write!(out, "<circle class=\"point\" cx=\"{}\" cy=\"{}\" r=\"4\"/>", across(point), up(point));
    }
    out.push_str("</svg>");
    out
}

/// Writes tenths as a decimal: `52.5`, and `52` where nothing follows.
fn tenths(tenths: i128) -> String {
    match (tenths / 10, tenths % 10) {
        (whole, 0) => whole.to_string(),
        (whole, part) => format!("{whole}.{part}"),
    }
}
