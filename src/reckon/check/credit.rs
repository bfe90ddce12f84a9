//! Somebody else's pattern is somebody's.

use crate::entry::{Data, Entry, MadeFrom, Placing};
use crate::finding::{Code, Finding, Severity};

/// Somebody else's pattern without its designer.
pub static CREDIT_MISSING: Code = Code {
    name: "credit-missing",
    severity: Severity::Warning,
    what: "A project is made from somebody else's pattern, and whose it is is not said.",
    why: "Whoever designed it goes without credit, and readers cannot find their other patterns.",
    bad: "pattern: { title: Plain Socks, url: \"https://example.com/plain-socks\" }",
    good: "pattern: { title: Plain Socks, by: otha-plimsett, url: \"https://example.com/plain-socks\" }",
};

/// Finds a project that does not say whose pattern it is made from.
pub fn check(entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Project(project) = &entry.data else { return };
    let Some(MadeFrom::Other(other)) = project.pattern.as_ref().filter(|_| !entry.is_spoilt("pattern")) else { return };
    if other.by.is_none() {
        let message = format!("whose pattern `{}` is, is not said", other.title);
        findings.push(
            Finding::new(&CREDIT_MISSING, entry.origin.field(&["pattern"], placing), message)
                .help("add the designer to `people.yaml`, and `by:` with their key here"),
        );
    }
}
