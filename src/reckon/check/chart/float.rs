//! A yarn is not carried too far behind the others.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::value::Carry;
use crate::entry::{ChartBlock, Entry};
use crate::finding::{Code, Finding, Severity};
use crate::notation::chart::floats::floats;
use crate::reckon::chart::{float_length, gauge_of_charts};

/// A float longer than the studio lets stand.
pub static FLOAT_LONG: Code = Code {
    name: "float-long",
    severity: Severity::Warning,
    what: "In a row of a chart a colour is carried further than the studio's limit, which is 2.5 cm if it sets none.",
    why: "A long strand on the wrong side catches fingers and draws the fabric in.",
    bad: "rows: [x···········] in the round, at 22 stitches to 10 cm",
    good: "rows: [x····x······] with the strand caught, or `float: 6` in studio.yaml",
};

/// Finds the rows with a float past the limit. A limit in lengths is not asked of where there is no gauge.
pub fn check(catalogue: &Catalogue, entry: &Entry, block: &ChartBlock, findings: &mut Vec<Finding>) {
    let chart = &block.chart;
    let gauge = entry.pattern().and_then(gauge_of_charts);
    let limit = catalogue.studio.float.unwrap_or(Carry::USUAL);
    let inch = catalogue.studio.settings().inch;
    let system = catalogue.studio.units.unwrap_or_default();
    for (row, float) in floats(chart).into_iter().enumerate() {
        let Some(float) = float else { continue };
        let length = float_length(gauge, float.stitches);
        let (past, limit) = match limit {
            Carry::Stitches(most) => (float.stitches > most, format!("{most} stitches")),
            Carry::Length(most) => (length.is_some_and(|length| length > most), most.show_tenths(system, inch)),
        };
        if !past {
            continue;
        }
        let length = length.map(|length| format!(", {}", length.show_tenths(system, inch))).unwrap_or_default();
        let (number, colour) = (chart.number(row), &float.colour);
        let message = format!("in row {number} `{colour}` is carried over {} stitches{length}", float.stitches);
        let finding = Finding::new(&FLOAT_LONG, place(entry, block.row(row, &(0..chart.width))), message);
        findings.push(finding.help(format!(
            "put a stitch of `{colour}` in between, or catch the strand and say so; `float` in `studio.yaml` sets the limit, now {limit}"
        )));
    }
}
