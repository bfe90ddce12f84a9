//! A size that is said to be tested must have a tester.

use crate::entry::{Data, Entry, Placing};
use crate::finding::{Code, Finding, Severity};

/// A size that is said to be tested and no tester made.
pub static UNTESTED_CLAIM: Code = Code {
    name: "untested-claim",
    severity: Severity::Warning,
    what: "Under `tested in` stands a size that none of the testers made.",
    why: "Readers trust the sizes that are said to be tested.",
    bad: "testers: [ { name: Ines, size: S } ]\ntested in: S (M)",
    good: "testers: [ { name: Ines, size: S }, { name: Maud, size: M } ]\ntested in: S (M)",
};

/// Finds the sizes under `tested in` that no tester made.
pub fn check(entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    let Some(claimed) = &pattern.tested_in else { return };
    // A finding is for the designer's eyes, so what is private may be looked at; only the size is named.
    let testers = pattern.testers.all.for_desk();
    let was_made = |at: &usize| {
        testers.iter().filter_map(|tester| tester.size.as_ref()).any(|size| claimed.find(size) == Some(*at))
    };
    let untested: Vec<String> = (0..claimed.len())
        .filter(|at| !was_made(at))
        .filter_map(|at| Some(format!("`{}`", claimed.get(at)?)))
        .collect();
    if untested.is_empty() {
        return;
    }
    let message = format!("no tester made {}", untested.join(", "));
    let finding = Finding::new(&UNTESTED_CLAIM, entry.origin.field(&["tested in"], placing), message);
    findings.push(finding.help("leave out the size, or write the tester's size under `testers`"));
}
