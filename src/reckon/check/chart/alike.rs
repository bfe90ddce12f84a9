//! The colours of a chart can be told apart.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::{ChartBlock, Entry, Pattern, YarnUse};
use crate::finding::{Code, Finding, Severity};
use std::collections::BTreeSet;

/// Two colours of a chart that are of the same shade.
pub static CHART_COLOURS_ALIKE: Code = Code {
    name: "chart-colours-alike",
    severity: Severity::Warning,
    what: "Two colours of a chart are of the same shade in the pattern's list of yarns.",
    why: "The chart and its swatch show one colour, and a knitter sees no pattern.",
    bad: "yarn: [ { colour: MC, yarn: heron-dk, shade: reedbed }, { colour: CC, yarn: heron-dk, shade: reedbed } ]\nkey: { o: MC, x: CC }",
    good: "yarn: [ { colour: MC, yarn: heron-dk, shade: reedbed }, { colour: CC, yarn: heron-dk, shade: chalk } ]\nkey: { o: MC, x: CC }",
};

/// Finds colours that a chart has and that are the same: one shade of one yarn, or two with the very same colour. A yarn held
/// with others is not asked.
pub fn check(catalogue: &Catalogue, entry: &Entry, block: &ChartBlock, findings: &mut Vec<Finding>) {
    let Some(pattern) = entry.pattern() else { return };
    let used: BTreeSet<usize> = block.chart.rows.iter().flatten().map(|worked| worked.sign).collect();
    // The first sign of each colour.
    let mut seen: Vec<(usize, &str, &YarnUse)> = Vec::new();
    for (at, sign) in block.chart.key.iter().enumerate().filter(|(at, _)| used.contains(at)) {
        let Some(label) = sign.colour.as_deref() else { continue };
        let Some(line) = line(pattern, label) else { continue };
        if seen.iter().any(|(_, known, _)| *known == label) {
            continue;
        }
        if let Some((first, other, _)) = seen.iter().find(|(.., known)| are_alike(catalogue, known, line)) {
            let message = format!("`{label}` has the same shade as `{other}`");
            let finding = Finding::new(&CHART_COLOURS_ALIKE, place(entry, block.sign(at)), message);
            let help =
                "give one of the two another `shade` in the pattern's `yarn`, or the same character in the chart";
            findings.push(finding.help(help).also(place(entry, block.sign(*first)), "the other one"));
        }
        seen.push((at, label, line));
    }
}

fn line<'a>(pattern: &'a Pattern, label: &str) -> Option<&'a YarnUse> {
    let line = pattern.yarn.iter().find(|line| line.colour.as_deref() == Some(label))?;
    (!line.has_several_strands()).then_some(line)
}

fn are_alike(catalogue: &Catalogue, one: &YarnUse, other: &YarnUse) -> bool {
    let of = |line: &YarnUse| Some((line.yarn.as_ref()?.reference(), line.shade.clone()?));
    let (Some(one), Some(other)) = (of(one), of(other)) else { return false };
    let colour = |(yarn, shade): &(_, String)| catalogue.yarn(yarn)?.shades.get(shade).copied();
    one == other || colour(&one).is_some_and(|colour_of_one| colour(&other) == Some(colour_of_one))
}
