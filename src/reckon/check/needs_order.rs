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
        let Some((before, size)) = fall(&lengths) else { continue };
        any = true;
        let [larger, smaller] = [size, before].map(|size| place::size(pattern, size));
        let message = format!("{} takes less in {larger} than in {smaller}", place::line(pattern, at));
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
    if let Some((before, size)) = fall(&total(&needs, pattern.size_count())).filter(|_| !any) {
        let [larger, smaller] = [size, before].map(|size| place::size(pattern, size));
        let message = format!("all yarns together are less in {larger} than in {smaller}");
        let finding = Finding::new(&NEEDS_ORDER, place::key(entry, "yarn", placing), message);
        findings.push(finding.help("look at the yarns that one of these sizes does not use"));
    }
}

/// Returns the first size that takes less than the one known before it, that one first.
fn fall(lengths: &[Option<YarnLength>]) -> Option<(usize, usize)> {
    let there: Vec<(usize, YarnLength)> =
        lengths.iter().enumerate().filter_map(|(size, length)| Some((size, (*length)?))).collect();
    there.windows(2).find_map(|pair| match pair {
        [(before, small), (size, large)] if large < small => Some((*before, *size)),
        _ => None,
    })
}
