//! What a studio and a pattern say of checks: not made, a warning, or an error.

use crate::catalogue::Catalogue;
use crate::entry::value::Verdict;
use crate::entry::{Data, Entry, Origin, Placing};
use crate::finding::{Code, Finding, Severity, nearest};
use crate::source::Place;

/// A setting for a check that there is not.
pub static UNKNOWN_CHECK: Code = Code {
    name: "unknown-check",
    severity: Severity::Warning,
    what: "Under `checks` stands a name that is not that of a check which may be set.",
    why: "The check you meant is made as before.",
    bad: "checks: { need-order: off }",
    good: "checks: { needs-order: off }",
};

/// Weighs what the checks found of an entry as its pattern says, or else the studio.
pub fn weigh(catalogue: &Catalogue, entry: &Entry, findings: Vec<Finding>, codes: &[&'static Code]) -> Vec<Finding> {
    let weighed = |mut finding: Finding| {
        // An error of itself is no matter of judgement.
        if finding.severity == Severity::Error || !codes.iter().any(|code| code.name == finding.code.name) {
            return Some(finding);
        }
        match verdict(catalogue, entry, finding.code.name) {
            Some(Verdict::Off) => return None,
            Some(Verdict::Error) => finding.severity = Severity::Error,
            Some(Verdict::Warning) | None => {}
        }
        Some(finding)
    };
    findings.into_iter().filter_map(weighed).collect()
}

fn verdict(catalogue: &Catalogue, entry: &Entry, name: &str) -> Option<Verdict> {
    let own = match &entry.data {
        Data::Pattern(pattern) => pattern.checks.get(name).map(|ruling| ruling.is),
        _ => None,
    };
    own.or_else(|| catalogue.studio.checks.get(name).copied())
}

/// Finds settings of a pattern for checks that there are not.
pub fn check(entry: &Entry, placing: &Placing<'_>, codes: &[&'static Code], findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    for (name, _) in &pattern.checks.0 {
        findings.extend(unknown(name, codes, || entry.origin.field(&["checks", name], placing)));
    }
}

/// Finds settings of the studio for checks that there are not.
pub fn check_studio(
    catalogue: &Catalogue,
    placing: &Placing<'_>,
    codes: &[&'static Code],
    findings: &mut Vec<Finding>,
) {
    for (name, _) in &catalogue.studio.checks.0 {
        findings.extend(unknown(name, codes, || Origin::studio(placing).field(&["checks", name], placing)));
    }
}

fn unknown(name: &str, codes: &[&'static Code], place: impl Fn() -> Place) -> Option<Finding> {
    let names = || codes.iter().map(|code| code.name);
    if names().any(|known| known == name) {
        return None;
    }
    let help = match nearest(name, names()) {
        Some(near) => format!("did you mean `{near}`?"),
        None => format!("it may be {}", names().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ")),
    };
    Some(Finding::new(&UNKNOWN_CHECK, place(), format!("there is no check `{name}` that may be set")).help(help))
}
