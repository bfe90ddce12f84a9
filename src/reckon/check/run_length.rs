//! A size run must have a value for each size.

use crate::entry::Placing;
use crate::entry::yaml::Step;
use crate::entry::{Data, Dimension, Entry, Pattern};
use crate::finding::{Code, Finding, Severity};
use crate::measure::{Run, Value};

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
pub fn check(entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    if entry.is_spoilt("sizes") {
        return;
    }
    let sizes = pattern.size_count();
    for run in runs(pattern) {
        let values = run.values;
        if values == 1 || values == sizes {
            continue;
        }
        let place = entry.origin.value(&run.way, placing);
        let plural = if sizes == 1 { "" } else { "s" };
        let message = format!("`{}` has {values} values and the pattern {sizes} size{plural}", run.name());
        let finding = Finding::new(&RUN_LENGTH, place, message);
        findings.push(if pattern.sizes.is_some() {
            finding
                .help("give one value for each size, `-` for a size without one, or one value for all")
                .also(entry.origin.field(&["sizes"], placing), "the sizes")
        } else {
            finding.help("name the sizes: `sizes: S (M, L)`")
        });
    }
}

/// One run of a pattern, as checks see it.
pub struct FoundRun {
    /// The way to it from the entry.
    pub way: Vec<Step>,
    /// How many values it has.
    pub values: usize,
    /// The sizes whose values in the two systems disagree, where both are written.
    pub apart: Vec<usize>,
}

impl FoundRun {
    fn new<T: Value>(way: &[&str], item: Option<usize>, run: &Run<T>, slack: i64) -> Self {
        let mut way: Vec<Step> = way.iter().map(|key| Step::Key(Box::from(*key))).collect();
        if let Some(item) = item {
            way.insert(1, Step::Item(item));
        }
        Self { way, values: run.values.len(), apart: run.apart(slack) }
    }

    /// Returns the key it stands under.
    pub fn name(&self) -> &str {
        let key = self.way.iter().rev().find_map(|step| match step {
            Step::Key(key) => Some(&**key),
            Step::Item(_) => None,
        });
        key.unwrap_or_default()
    }
}

/// Half a centimetre and what a quarter inch is rounded by, in nanometres.
const FABRIC_SLACK: i64 = 8_200_000;

/// A metre, in micrometres.
const YARN_SLACK: i64 = 1_000_000;

/// Returns every run of a pattern.
pub fn runs(pattern: &Pattern) -> Vec<FoundRun> {
    let mut runs = Vec::new();
    for (field, map) in [("to fit", &pattern.to_fit), ("finished", &pattern.finished)] {
        runs.extend(map.0.iter().map(|(name, run)| FoundRun::new(&[field, name], None, run, FABRIC_SLACK)));
    }
    for (at, use_of) in pattern.yarn.iter().enumerate() {
        let needs = use_of.needs.as_ref();
        runs.extend(needs.map(|run| FoundRun::new(&["yarn", "needs"], Some(at), run, YARN_SLACK)));
    }
    for (at, use_of) in pattern.yarn.iter().enumerate() {
        for (key, run) in [("stitches", &use_of.stitches), ("skeins", &use_of.skeins)] {
            runs.extend(run.iter().map(|run| FoundRun::new(&["yarn", key], Some(at), run, 0)));
        }
    }
    for (field, map) in [("stitch counts", &pattern.stitch_counts), ("row counts", &pattern.row_counts)] {
        runs.extend(map.0.iter().map(|(name, run)| FoundRun::new(&[field, name], None, run, 0)));
    }
    for (at, piece) in pattern.pieces.iter().enumerate() {
        for (key, side) in piece.sides() {
            if let Dimension::Own(run) = side {
                runs.push(FoundRun::new(&["pieces", key], Some(at), run, FABRIC_SLACK));
            }
        }
    }
    let wanted = pattern.test_knit.as_ref().and_then(|test| test.sizes_wanted.as_ref());
    runs.extend(wanted.map(|run| FoundRun::new(&["test knit", "sizes wanted"], None, run, 0)));
    runs
}
