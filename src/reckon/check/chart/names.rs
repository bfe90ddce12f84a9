//! A swatch finds its chart, and its chart has colours.

use super::place;
use crate::entry::{Entry, SwatchOf, Width};
use crate::finding::{Code, Finding, Severity, nearest};
use crate::reckon::chart::gauge_of_charts;

/// A swatch of a chart that is not in its text.
pub static CHART_MISSING: Code = Code {
    name: "chart-missing",
    severity: Severity::Error,
    what: "A swatch names a chart that is not in the same text.",
    why: "There is nothing to knit it from, so what is written would stand on the page as it is.",
    bad: "name: reeds … chart: reed",
    good: "name: reeds … chart: reeds",
};

/// Two charts of one text with one name.
pub static CHART_TWICE: Code = Code {
    name: "chart-twice",
    severity: Severity::Error,
    what: "Two charts of one text have the same name.",
    why: "A swatch could mean either.",
    bad: "name: reeds … name: reeds",
    good: "name: reeds … name: reeds for the cuff",
};

/// A swatch that cannot be drawn: of a chart without colours, or of a width that no gauge tells in stitches.
pub static SWATCH_UNKNOWN: Code = Code {
    name: "swatch-unknown",
    severity: Severity::Error,
    what: "A swatch is of a chart without colours, or is to be so wide in a text that has no gauge.",
    why: "A swatch shows stitches in their colours, as many as the gauge has.",
    bad: "key: { o: knit, y: yo } … chart: eyelets",
    good: "key: { o: MC, x: CC } … chart: reeds",
};

/// Finds names of charts that lead nowhere or to two, and swatches that cannot be drawn.
pub fn check(entry: &Entry, findings: &mut Vec<Finding>) {
    let prose = &entry.prose;
    for (at, chart) in prose.charts.iter().enumerate() {
        let Some(name) = &chart.name else { continue };
        let first = prose.charts.iter().take(at).find(|other| other.name.as_ref() == Some(name));
        if let Some(first) = first {
            let message = format!("there are two charts `{name}`");
            let finding = Finding::new(&CHART_TWICE, place(entry, chart.value("name")), message);
            findings.push(
                finding.help("give one of them another name").also(place(entry, first.value("name")), "the first one"),
            );
        }
    }
    for swatch in &prose.swatches {
        let Some(block) = prose.chart_of(swatch) else {
            let SwatchOf::Named(name) = &swatch.of else { continue };
            // A chart that could not be read was told of, and is no further mistake.
            if prose.unread_charts > 0 {
                continue;
            }
            let names = || prose.charts.iter().filter_map(|chart| chart.name.as_deref());
            let help = match nearest(name, names()) {
                Some(near) => format!("did you mean `{near}`?"),
                None if names().next().is_some() => {
                    format!("this text has {}", names().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", "))
                }
                None => "give a `chart` block of this text that `name`".to_owned(),
            };
            let message = format!("there is no chart `{name}` in this text");
            findings.push(Finding::new(&CHART_MISSING, place(entry, swatch.value("chart")), message).help(help));
            continue;
        };
        if !block.chart.is_coloured() {
            let at = if matches!(swatch.of, SwatchOf::Named(_)) { "chart" } else { "key" };
            let finding = Finding::new(&SWATCH_UNKNOWN, place(entry, swatch.value(at)), "the chart has no colours");
            findings
                .push(finding.help("name a chart whose key has colours; one of stitches alone is drawn by `chart`"));
        } else if matches!(swatch.width, Width::Over(_)) && entry.pattern().and_then(gauge_of_charts).is_none() {
            let finding = Finding::new(
                &SWATCH_UNKNOWN,
                place(entry, swatch.value("over")),
                "no gauge tells how many stitches that is",
            );
            findings.push(finding.help("give the pattern a `gauge`, or write how many `repeats` are shown"));
        }
    }
}
