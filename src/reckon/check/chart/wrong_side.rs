//! What is worked on right-side rows only stands on no other.

use super::place;
use crate::entry::{ChartBlock, Entry};
use crate::finding::{Code, Finding, Severity};
use crate::notation::chart::Side;

/// A stitch on a wrong-side row that is worked from the right side.
pub static CHART_WRONG_SIDE: Code = Code {
    name: "chart-wrong-side",
    severity: Severity::Warning,
    what: "A wrong-side row of a chart has a stitch that is worked on right-side rows, as cables are.",
    why: "Worked from behind it would come out otherwise than it is drawn, and nobody can look it up.",
    bad: "key: { c: 2/2 LC, p: purl }\nrows: [pppp, cccc]",
    good: "key: { c: 2/2 LC, p: purl }\nrows: [cccc, pppp]",
};

/// Finds the first such stitch of each row.
pub fn check(entry: &Entry, block: &ChartBlock, findings: &mut Vec<Finding>) {
    let chart = &block.chart;
    for (row, stitches) in chart.rows.iter().enumerate().filter(|(row, _)| chart.side(*row) == Side::Wrong) {
        let only = stitches.iter().find_map(|worked| {
            let stitch = &chart.sign(*worked)?.stitch;
            stitch.ws_short.is_none().then_some((worked.cell, stitch))
        });
        let Some((cell, stitch)) = only else { continue };
        let cells = cell..cell.saturating_add(usize::try_from(stitch.cells).unwrap_or(1));
        let message = format!(
            "row {} is a wrong-side row, and `{}` is worked from the right side",
            chart.number(row),
            stitch.name
        );
        let finding = Finding::new(&CHART_WRONG_SIDE, place(entry, block.row(row, &cells)), message);
        findings.push(finding.help("move it to the row above or below, or say which side row 1 is with `begins`"));
    }
}
