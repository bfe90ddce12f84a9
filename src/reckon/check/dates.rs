//! Days must follow each other.

use super::place;
use crate::entry::value::Date;
use crate::entry::yaml::Step;
use crate::entry::{Data, Entry, Placing};
use crate::finding::{Code, Finding, Severity};

/// A day that is before one it must follow.
pub static DATE_ORDER: Code = Code {
    name: "date-order",
    severity: Severity::Warning,
    what: "A day is before another that must come first.",
    why: "One of the two is mistyped, and lists by date are out of order.",
    bad: "started: 2026-10-01\nfinished: 2026-09-01",
    good: "started: 2026-09-01\nfinished: 2026-10-01",
};

/// A day, the way to it and what it is.
type Named = (Option<Date>, Vec<Step>, &'static str);

/// Finds days of a pattern or project that are out of order.
pub fn check(entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let mut pairs: Vec<[Named; 2]> = Vec::new();
    match &entry.data {
        Data::Pattern(pattern) => {
            let published = || (pattern.published, place::way(&["published"]), "the publication");
            if let Some(test) = &pattern.test_knit {
                let closes = || (test.closes, place::way(&["test knit", "closes"]), "the end of the test knit");
                let opens = (test.opens, place::way(&["test knit", "opens"]), "the beginning of the test knit");
                pairs.push([closes(), published()]);
                pairs.push([opens, closes()]);
            }
            for (at, erratum) in pattern.errata.iter().enumerate() {
                let day = (Some(erratum.date), place::item("errata", at, &["date"]), "the correction");
                pairs.push([published(), day]);
            }
        }
        Data::Project(project) => pairs.push([
            (project.started, place::way(&["started"]), "the beginning"),
            (project.finished, place::way(&["finished"]), "the end"),
        ]),
        _ => {}
    }
    for [(first, first_way, first_name), (then, then_way, then_name)] in pairs {
        let (Some(first), Some(then)) = (first, then) else { continue };
        if then < first {
            let message = format!("{then_name} ({then}) is before {first_name} ({first})");
            findings.push(
                Finding::new(&DATE_ORDER, entry.origin.value(&then_way, placing), message)
                    .help("look for a slip in either day")
                    .also(entry.origin.value(&first_way, placing), first_name),
            );
        }
    }
}
