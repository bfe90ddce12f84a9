//! A larger size must not take less yarn.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::{Data, Entry, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::YarnLength;
use crate::reckon::total;

/// Needs that fall from one size to the next.
pub static NEEDS_ORDER: Code = Code {
    name: "needs-order",
    severity: Severity::Warning,
    what: "A larger size is said to take less yarn than a smaller one.",
    why: "Somebody will run out of yarn before the last sleeve.",
    bad: "sizes: S (M, L)\nneeds: 820 (950, 905) m",
    good: "sizes: S (M, L)\nneeds: 820 (905, 950) m",
};

/// Finds a line whose needs fall; where none do, all lines together.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    let Some(needs) = place::needs(catalogue, pattern) else { return };
    let mut any = false;
    for (at, (line, told)) in pattern.yarn.iter().zip(&needs).enumerate() {
        let lengths: Vec<Option<YarnLength>> = told.iter().map(|told| told.need().map(|need| need.length)).collect();
        let Some(Fall { before, small, size, large }) = fall(&lengths) else { continue };
        any = true;
        let [larger, smaller] = [size, before].map(|size| place::size(pattern, size));
        let system = line.needs.as_ref().and_then(|run| run.system).unwrap_or_default();
        let [least, most] = [large, small].map(|length| length.show(system));
        let message =
            format!("{} takes {least} in {larger}, less than the {most} of {smaller}", place::line(pattern, at));
        findings.push(match &line.needs {
            Some(run) => {
                let way = place::item("yarn", at, &["needs"]);
                Finding::new(&NEEDS_ORDER, place::value(entry, &way, run, size, placing), message)
                    .help("look for a slip in either figure")
                    .also(place::value(entry, &way, run, before, placing), format!("that of {smaller}"))
            }
            None => {
                let place = entry.origin.value(&place::item("yarn", at, &[]), placing);
                Finding::new(&NEEDS_ORDER, place, message).help("look at what it is worked out from")
            }
        });
    }
    // All lines together fall where one of them does, and where a size leaves one out.
    if let Some(Fall { before, small, size, large }) = fall(&total(&needs, pattern.size_count())).filter(|_| !any) {
        let [larger, smaller] = [size, before].map(|size| place::size(pattern, size));
        let system = pattern.yarn.iter().find_map(|line| line.needs.as_ref()?.system).unwrap_or_default();
        let [least, most] = [large, small].map(|length| length.show(system));
        let message = format!("all yarns together are {least} in {larger}, less than the {most} of {smaller}");
        let finding = Finding::new(&NEEDS_ORDER, place::key(entry, "yarn", placing), message);
        findings.push(finding.help("look at the yarns that one of these sizes does not use"));
    }
}

/// A size that takes less than the one known before it.
struct Fall {
    before: usize,
    small: YarnLength,
    size: usize,
    large: YarnLength,
}

/// Returns the first size that takes less than the one known before it.
fn fall(lengths: &[Option<YarnLength>]) -> Option<Fall> {
    let there: Vec<(usize, YarnLength)> =
        lengths.iter().enumerate().filter_map(|(size, length)| Some((size, (*length)?))).collect();
    there.windows(2).find_map(|pair| match pair {
        [(before, small), (size, large)] if large < small => {
            Some(Fall { before: *before, small: *small, size: *size, large: *large })
        }
        _ => None,
    })
}
