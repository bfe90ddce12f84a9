//! Every character of a chart's key is in the chart.

use super::place;
use crate::entry::{ChartBlock, Entry};
use crate::finding::{Code, Finding, Severity};

/// A character of a key that no row has.
pub static CHART_KEY_UNUSED: Code = Code {
    name: "chart-key-unused",
    severity: Severity::Warning,
    what: "The key of a chart explains a character that no row has.",
    why: "A knitter looks for a stitch or a colour that never comes, or a row has lost one.",
    bad: "key: { o: MC, x: CC, b: bobble }\nrows: [oxo]",
    good: "key: { o: MC, x: CC }\nrows: [oxo]",
};

/// Finds the characters that no row has.
pub fn check(entry: &Entry, block: &ChartBlock, findings: &mut Vec<Finding>) {
    let mut used = vec![false; block.chart.key.len()];
    for worked in block.chart.rows.iter().flatten() {
        if let Some(used) = used.get_mut(worked.sign) {
            *used = true;
        }
    }
    for (at, sign) in block.chart.key.iter().enumerate().filter(|(at, _)| used.get(*at) == Some(&false)) {
        let message = format!("no row of the chart has `{}`", sign.character);
        let finding = Finding::new(&CHART_KEY_UNUSED, place(entry, block.sign(at)), message);
        findings.push(finding.help("take it out of the key, or look for the row that lost it"));
    }
}
