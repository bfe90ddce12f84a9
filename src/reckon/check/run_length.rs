//! A size run must have a value for each size.

use crate::entry::yaml::Step;
use crate::entry::{Data, Entry, Pattern};
use crate::finding::{Code, Finding, Severity};
use crate::source::Texts;

/// A run with more or fewer values than the pattern has sizes.
pub static RUN_LENGTH: Code = Code {
    name: "run-length",
    severity: Severity::Error,
    what: "A size run has neither one value nor one for each size of the pattern.",
    why: "Every value behind the gap would be read for the wrong size, and yarn bought for it.",
    bad: "sizes: S (M, L)\nneeds: 820 (905) m",
    good: "sizes: S (M, L)\nneeds: 820 (905, 990) m",
};

/// Finds the runs of a pattern that do not fit its sizes.
pub fn check(entry: &Entry, texts: &Texts, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    if entry.is_spoilt("sizes") {
        return;
    }
    let sizes = pattern.size_count();
    for (way, values) in runs(pattern) {
        if values == 1 || values == sizes {
            continue;
        }
        let name = way.iter().rev().find_map(|step| match step {
            Step::Key(key) => Some(&**key),
            Step::Item(_) => None,
        });
        let place = entry.origin.value(&way, texts);
        let plural = if sizes == 1 { "" } else { "s" };
        let message =
            format!("`{}` has {values} values and the pattern {sizes} size{plural}", name.unwrap_or_default());
        let finding = Finding::new(&RUN_LENGTH, place, message);
        findings.push(if pattern.sizes.is_some() {
            finding
                .help("give one value for each size, `-` for a size without one, or one value for all")
                .also(entry.origin.field(&["sizes"], texts), "the sizes")
        } else {
            finding.help("name the sizes: `sizes: S (M, L)`")
        });
    }
}

/// Returns every run of a pattern: the way to it and how many values it has.
fn runs(pattern: &Pattern) -> Vec<(Vec<Step>, usize)> {
    let key = |key: &str| Step::Key(Box::from(key));
    let mut runs = Vec::new();
    for (field, map) in [("to fit", &pattern.to_fit), ("finished", &pattern.finished)] {
        runs.extend(map.0.iter().map(|(name, run)| (vec![key(field), key(name)], run.values.len())));
    }
    for (at, use_of) in pattern.yarn.iter().enumerate() {
        runs.extend(
            use_of.needs.as_ref().map(|run| (vec![key("yarn"), Step::Item(at), key("needs")], run.values.len())),
        );
    }
    let wanted = pattern.test_knit.as_ref().and_then(|test| test.sizes_wanted.as_ref());
    runs.extend(wanted.map(|run| (vec![key("test knit"), key("sizes wanted")], run.values.len())));
    runs
}
