//! Rows under heads, for the terminal.

use std::fmt::Write as _;

/// Sets rows under heads, the first column to the left and all others to the right.
pub fn table(heads: &[&str], rows: &[Vec<String>]) -> String {
    let width = |column: usize| {
        let cells = rows.iter().filter_map(|row| row.get(column)).map(|cell| cell.chars().count());
        cells.chain(heads.get(column).map(|head| head.chars().count())).max().unwrap_or(0)
    };
    let widths: Vec<usize> = (0..heads.len()).map(width).collect();
    let mut out = String::new();
    let heads: Vec<String> = heads.iter().map(|head| (*head).to_owned()).collect();
    for row in std::iter::once(&heads).chain(rows) {
        let mut line = String::from(" ");
        for (column, (cell, width)) in row.iter().zip(&widths).enumerate() {
            let _ = if column == 0 { write!(line, " {cell:<width$}") } else { write!(line, "  {cell:>width$}") };
        }
        out.push_str(line.trim_end());
        out.push('\n');
    }
    out
}
