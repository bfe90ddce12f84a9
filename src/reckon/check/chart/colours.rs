//! The colours of a chart are those of its pattern's yarn.

use super::super::place as places;
use super::place;
use crate::entry::{ChartBlock, Entry, Placing};
use crate::finding::{Code, Finding, Severity, nearest};
use crate::standards::chart_symbols;

/// A colour of a chart that no yarn of its pattern has.
pub static CHART_COLOUR: Code = Code {
    name: "chart-colour",
    severity: Severity::Warning,
    what: "A chart's key names something that is neither a stitch nor a colour in the pattern's list of yarns.",
    why: "The cell has no shade, and a knitter looks for a yarn that is not on the list.",
    bad: "yarn: [ { colour: MC } ]\nkey: { x: CC }",
    good: "yarn: [ { colour: MC }, { colour: CC } ]\nkey: { x: CC }",
};

/// Finds colours that the pattern's yarns do not have; a chart in another entry has no list to be held against.
pub fn check(entry: &Entry, block: &ChartBlock, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Some(pattern) = entry.pattern() else { return };
    let known = || pattern.yarn.iter().filter_map(|line| line.colour.as_deref());
    for (at, sign) in block.chart.key.iter().enumerate() {
        let Some(colour) = sign.colour.as_deref() else { continue };
        if known().any(|label| label == colour) {
            continue;
        }
        let near = || nearest(colour, known().chain(chart_symbols::names().map(|name: &str| name)));
        let help = match (chart_symbols::instead(colour), near()) {
            (Some(sign), _) => format!("charts have the sign of `{sign}` for it: write that"),
            (None, Some(near)) => format!("did you mean `{near}`?"),
            (None, None) => "give a line of `yarn` that `colour`, or write the name of a stitch".to_owned(),
        };
        let message = format!("`{colour}` is neither a stitch nor a colour of the pattern's yarn");
        let finding = Finding::new(&CHART_COLOUR, place(entry, block.sign(at)), message);
        findings.push(finding.help(help).also(places::key(entry, "yarn", placing), "the yarns"));
    }
}
