//! A needle's number in brackets must be that of its thickness.

use super::place;
use crate::entry::yaml::Step;
use crate::entry::{Data, Entry, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::{Needle, NeedleSize};
use crate::standards::needles::{row, rows};

/// A US or UK number that is not that of the needle.
pub static NEEDLE_SIZES: Code = Code {
    name: "needle-sizes",
    severity: Severity::Warning,
    what: "A needle's US or UK number is not that of its millimetres.",
    why: "Half of the readers go by the number, and knit to another gauge.",
    bad: "needles: 4 mm (US 7) circular",
    good: "needles: 4 mm (US 6) circular",
};

/// Finds the needles of a pattern or yarn whose numbers are not those of the table.
///
/// Where charts disagree about a thickness nothing is said.
pub fn check(entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let mut look =
        |needle: &Needle, way: Vec<Step>| {
            findings.extend(wrong(needle).map(|(message, help)| {
                Finding::new(&NEEDLE_SIZES, entry.origin.value(&way, placing), message).help(help)
            }));
        };
    match &entry.data {
        Data::Pattern(pattern) => {
            for (at, needle) in pattern.needles.iter().enumerate() {
                look(needle, place::item("needles", at, &[]));
            }
            for (at, gauge) in pattern.gauge.iter().enumerate() {
                if let Some(needle) = &gauge.needle {
                    look(needle, place::item("gauge", at, &["needle"]));
                }
            }
        }
        Data::Yarn(yarn) => {
            if let Some(needle) = yarn.gauge.as_ref().and_then(|gauge| gauge.needle.as_ref()) {
                look(needle, place::way(&["gauge", "needle"]));
            }
        }
        _ => {}
    }
}

fn wrong(needle: &Needle) -> Option<(String, String)> {
    let NeedleSize::Metric(metric) = needle.size else { return None };
    let known = row(metric)?;
    if known.disagreement.is_some() {
        return None;
    }
    let words: Vec<&str> = needle.words.split(' ').map(|word| word.trim_matches(['(', ')', '[', ']'])).collect();
    words.windows(2).find_map(|pair| {
        let [system, number] = pair else { return None };
        let size = NeedleSize::parse(&format!("{system} {number}")).ok()?;
        let right = match &size {
            NeedleSize::Us(_) => ("US", &known.us),
            NeedleSize::Uk(_) => ("UK", &known.uk),
            NeedleSize::Metric(_) => return None,
        };
        if rows(&size).iter().any(|row| row.metric == metric) {
            return None;
        }
        let help = match right {
            (system, Some(number)) => format!("{} is {system} {number}", metric.show_mm()),
            (system, None) => format!("{} has no {system} number", metric.show_mm()),
        };
        Some((format!("{} is not {}", metric.show_mm(), size.show()), help))
    })
}
