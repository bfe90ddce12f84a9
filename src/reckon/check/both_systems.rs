//! A run that is written in both systems must say the same in both.

use super::place;
use super::run_length::runs;
use crate::entry::{Data, Entry, Placing};
use crate::finding::{Code, Finding, Severity};

/// A run whose halves in metric and imperial are further apart than rounding explains.
pub static SYSTEMS_DISAGREE: Code = Code {
    name: "systems-disagree",
    severity: Severity::Warning,
    what: "A run is written in metric and imperial, and a value of the one is not that of the other.",
    why: "A knitter follows the half she is used to, and makes another size than meant.",
    bad: "chest: 34 (36, 38) in / 85 (90, 99) cm",
    good: "chest: 34 (36, 38) in / 85 (90, 95) cm",
};

/// Finds the runs of a pattern that say two things. Half a centimetre, or a metre of yarn, is rounding (common practice:
/// garments are printed to the half centimetre and the quarter inch, yarn to the whole metre and yard).
pub fn check(entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    for run in runs(pattern).into_iter().filter(|run| !run.apart.is_empty()) {
        let sizes = place::sizes(pattern, &run.apart);
        let message = format!("`{}` says two things in {}", run.name(), sizes);
        let finding = Finding::new(&SYSTEMS_DISAGREE, entry.origin.value(&run.way, placing), message);
        findings.push(
            finding.help("work the one out from the other again, by the studio's inch, or leave one of them out"),
        );
    }
}
