//! Each row of a chart takes what the one below leaves.

use super::place;
use crate::entry::{ChartBlock, Entry};
use crate::finding::{Code, Finding, Severity};
use crate::notation::chart::counts::{RowCount, counts};

/// A row that does not fit the one below it, or the count that the chart states.
pub static CHART_COUNT: Code = Code {
    name: "chart-count",
    severity: Severity::Warning,
    what: "A row of a chart takes more or fewer stitches than the row below leaves, or leaves another number than the chart states.",
    why: "A wrong stitch count is the commonest mistake of all in patterns: the knitter has stitches left over, or too few.",
    bad: "key: { o: knit, y: yo, d: k2tog }\nstitches: 4\nrows: [oooo, oyoo]",
    good: "key: { o: knit, y: yo, d: k2tog }\nstitches: 4\nrows: [oooo, oydo]",
};

/// Finds rows that do not fit. Of several, each is told against the row just below it.
pub fn check(entry: &Entry, block: &ChartBlock, findings: &mut Vec<Finding>) {
    let chart = &block.chart;
    let counted = counts(chart);
    let mut before: Option<&RowCount> = None;
    for (row, count) in counted.iter().enumerate() {
        let number = chart.number(row);
        if let Some(told) = before.and_then(|before| unlike(before, count)) {
            let below = chart.number(row.saturating_sub(1));
            let (takes, leaves, of) = told;
            let message = format!("row {number} takes {}{of}, and row {below} leaves {leaves}", stitches(takes));
            let finding = Finding::new(&CHART_COUNT, place(entry, block.row(row, &(0..chart.width))), message);
            findings.push(
                finding
                    .help("count the increases and decreases of both rows; `no stitch` fills a gap")
                    .also(place(entry, block.row(row.saturating_sub(1), &(0..chart.width))), "the row below"),
            );
        } else if let Some(stated) = block.stitches.filter(|stated| count.all.produced != *stated) {
            let message = format!("row {number} leaves {}, and the chart says {stated}", stitches(count.all.produced));
            let finding = Finding::new(&CHART_COUNT, place(entry, block.row(row, &(0..chart.width))), message);
            findings.push(
                finding
                    .help("mend the row, or take `stitches` away where rows have different counts")
                    .also(place(entry, block.value("stitches")), "what the chart says"),
            );
        }
        before = Some(count);
    }
}

/// Returns what a row takes and the one below leaves where they differ, of the repeat or else of the whole row.
fn unlike(below: &RowCount, row: &RowCount) -> Option<(u32, u32, &'static str)> {
    if row.all.consumed != below.all.produced {
        return Some((row.all.consumed, below.all.produced, ""));
    }
    let (takes, leaves) = (row.repeat.consumed, below.repeat.produced);
    (takes != leaves).then_some((takes, leaves, " in the repeat"))
}

fn stitches(count: u32) -> String {
    if count == 1 { "1 stitch".to_owned() } else { format!("{count} stitches") }
}
