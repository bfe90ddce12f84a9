//! Ease must not be above nothing in some sizes and below in others.

use super::place;
use crate::entry::{Data, Entry, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::FabricLength;
use crate::reckon::ease::{by_size, changes_sign};

/// Ease that changes its sign among the sizes.
pub static EASE_SIGN: Code = Code {
    name: "ease-sign",
    severity: Severity::Warning,
    what: "Some sizes are larger than the body and others smaller.",
    why: "It would be loose on one and tight on another, which is seldom meant.",
    bad: "to fit: { chest: 80 (90, 100) cm }\nfinished: { chest: 84 (94, 98) cm }",
    good: "to fit: { chest: 80 (90, 100) cm }\nfinished: { chest: 84 (94, 104) cm }",
};

/// Finds the finished measurements that are larger than the body in some sizes and smaller in others.
pub fn check(entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    for (name, finished) in &pattern.finished.0 {
        let Some(eases) = pattern.to_fit.get(name).and_then(|body| by_size(&body.values, &finished.values)) else {
            continue;
        };
        if !changes_sign(&eases) {
            continue;
        }
        let those = |keep: fn(FabricLength) -> bool| -> Vec<usize> {
            eases
                .iter()
                .enumerate()
                .filter(|(_, ease)| ease.is_some_and(|ease| keep(*ease)))
                .map(|(at, _)| at)
                .collect()
        };
        let larger = place::sizes(pattern, &those(|ease| ease > FabricLength::ZERO));
        let smaller = place::sizes(pattern, &those(|ease| ease < FabricLength::ZERO));
        let message = format!("`{name}` is larger than the body in {larger} and smaller in {smaller}");
        findings.push(
            Finding::new(&EASE_SIGN, entry.origin.field(&["finished", name], placing), message)
                .help("look for a slip in either row of figures")
                .also(entry.origin.field(&["to fit", name], placing), "the body"),
        );
    }
}
