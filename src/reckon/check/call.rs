//! A call for test knitters must say what they need to answer it.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::value::Stage;
use crate::entry::{Data, Entry, Placing};
use crate::finding::{Code, Finding, Severity};

/// A call that lacks what a tester must know.
pub static CALL_INCOMPLETE: Code = Code {
    name: "call-incomplete",
    severity: Severity::Warning,
    what: "The call of a design that is being test knitted lacks a day, the sizes wanted or where to apply.",
    why: "Nobody can answer it, or nobody knows which sizes are wanted and until when.",
    bad: "stage: test knit\ntest knit: { opens: 2026-11-13 }",
    good: "stage: test knit\ntest knit: { opens: 2026-11-13, closes: 2026-12-31, sizes wanted: '2 (3, 2)', apply: \"https://example.org/test\" }",
};

/// Finds what the call of a design lacks while others knit it; a call whose last day has passed lacks nothing.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    let Some(call) = pattern.test_knit.as_ref().filter(|_| pattern.stage() == Stage::TestKnit) else { return };
    // A value that could not be read was told of already.
    if entry.is_spoilt("test knit") || call.closes.is_some_and(|day| day < catalogue.view.today) {
        return;
    }
    let keys = [
        ("opens", call.opens.is_some()),
        ("closes", call.closes.is_some()),
        ("sizes wanted", call.sizes_wanted.is_some()),
        ("apply", call.apply.is_some()),
    ];
    let missing: Vec<String> = keys.iter().filter(|(_, there)| !there).map(|(key, _)| format!("`{key}`")).collect();
    if missing.is_empty() {
        return;
    }
    let list = missing.join(", ");
    let message = format!("the call for test knitters does not say {list}");
    let help = match call.opens {
        Some(_) => format!("add {list} under `test knit`"),
        None => format!("add {list} under `test knit`; without its first day the call is on no page"),
    };
    findings.push(Finding::new(&CALL_INCOMPLETE, place::key(entry, "test knit", placing), message).help(help));
}
