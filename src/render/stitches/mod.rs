//! Charts and swatches as HTML: the drawing, its key, and everything it says in words.

mod cells;
mod drawing;
mod swatch;
mod symbols;

use super::rows;
use crate::page::ChartView;
use cells::{BARE_PAPER, Look, Paint};
use pulldown_cmark_escape::escape_html;
use std::fmt::Write as _;

/// Returns a chart with its key, how it is read, and its rows in words; `id` is one that nothing else on the page has.
pub fn chart(view: &ChartView<'_>, id: &str) -> String {
    let looks = Look::all(&view.chart.key, &view.colours);
    let mut out = format!("<div class=\"block knitting\">\n<p class=\"block-title\" id=\"{id}\">");
    text(&mut out, &view.title);
    out.push_str("</p>\n");
    scroller(&mut out, id, &drawing::drawing(view, &looks, id));
    key(&mut out, view, &looks);
    for line in std::iter::once(&view.reading).chain(&view.facts) {
        out.push_str("<p class=\"note\">");
        text(&mut out, line);
        out.push_str("</p>\n");
    }
    in_words(&mut out, view);
    out.push_str("</div>\n");
    out
}

/// Returns a chart as fabric, `stitches` wide and `up` times one above the other.
pub fn swatch(view: &ChartView<'_>, stitches: u32, up: u32, id: &str) -> String {
    let looks = Look::all(&view.chart.key, &view.colours);
    let mut out = format!("<div class=\"block knitting\">\n<p class=\"block-title\" id=\"{id}\">");
    text(&mut out, &view.title.replacen("Chart", "Swatch", 1));
    out.push_str("</p>\n");
    scroller(&mut out, id, &swatch::swatch(view, &looks, stitches, up, id));
    out.push_str("</div>\n");
    out
}

/// Puts a drawing into a box that scrolls by itself, as tables have.
fn scroller(out: &mut String, id: &str, drawing: &str) {
    let _ = writeln!(
        out,
        "<div class=\"scroller\" tabindex=\"0\" role=\"region\" aria-labelledby=\"{id}\">{drawing}</div>"
    );
}

/// Writes what each sign means, each with its own small drawing.
fn key(out: &mut String, view: &ChartView<'_>, looks: &[Look]) {
    out.push_str("<ul class=\"chart-key\">\n");
    for (look, meant) in looks.iter().zip(&view.key) {
        let mut paint = Paint::new(view.cell_height);
        // Inside by the width of the line round it.
        paint.ground(look, (10, 10), 1);
        paint.sign(look, (10, 10));
        let (wide, high) = (look.width(), view.cell_height);
        let frame = format!("M10 10h{wide}v{high}h-{wide}z");
        let (whole, tall) = (wide + 20, high + 20);
        let _ = write!(
            out,
            "<li><svg aria-hidden=\"true\" width=\"{}\" height=\"{}\" viewBox=\"0 0 {whole} {tall}\"><path {BARE_PAPER} d=\"{frame}\"/>{}<path {} d=\"{frame}\"/>{}</svg><span><b>",
            whole / 10,
            tall / 10,
            paint.grounds(),
            lines("strong"),
            paint.signs()
        );
        text(out, &meant.name);
        out.push_str("</b>");
        if !meant.words.is_empty() {
            out.push(' ');
            text(out, &meant.words);
        }
        out.push_str("</span></li>\n");
    }
    out.push_str("</ul>\n");
}

/// Writes the rows in words, folded.
fn in_words(out: &mut String, view: &ChartView<'_>) {
    out.push_str("<details><summary>In words</summary>\n<ul class=\"written\">\n");
    let mut met = vec![false; view.abbreviations.len()];
    for row in &view.rows {
        out.push_str("<li><b>");
        text(out, &row.label);
        out.push_str(":</b> ");
        out.push_str(&rows::marked(&row.words, &[], &[], &row.uses, &view.abbreviations, &mut met));
        out.push('.');
        if !row.beside.is_empty() {
            out.push_str(" <span class=\"beside\">");
            text(out, &row.beside);
            out.push_str("</span>");
        }
        out.push_str("</li>\n");
    }
    out.push_str("</ul>\n</details>\n");
}

/// Returns the attributes of lines: the style sheet's class, and how they look where it is not read.
fn lines(class: &str) -> String {
    let (stroke, width) = match class {
        "under" => ("#fff", 22),
        "fine" => ("#000", 7),
        "strong" => ("#000", 14),
        _ => ("#7f2a20", 26),
    };
    format!("class=\"{class}\" fill=\"none\" stroke=\"{stroke}\" stroke-width=\"{width}\"")
}

fn text(out: &mut String, text: &str) {
    // Writing to a text cannot fail.
    let _ = escape_html(&mut *out, text);
}
