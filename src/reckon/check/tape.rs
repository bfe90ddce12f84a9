//! A measurement must be one that a tape shows.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::{Data, Entry, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::{FabricLength, SizeRun, System};

/// A measurement finer than a tape.
pub static UNMEASURABLE: Code = Code {
    name: "unmeasurable",
    severity: Severity::Warning,
    what: "A measurement in inches is no multiple of an eighth, or one in centimetres none of a millimetre.",
    why: "No tape shows it; mostly it was worked out and not rounded.",
    bad: "finished: { chest: 34.3 (36) in }",
    good: "finished: { chest: 34¼ (36) in }",
};

/// A millimetre, in nanometres.
const MILLIMETRE: i64 = 1_000_000;

/// Finds the measurements of a pattern that no tape shows, in either system.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    let inch = catalogue.studio.settings().inch.nanometres();
    for (field, map) in [("to fit", &pattern.to_fit), ("finished", &pattern.finished)] {
        for (name, run) in &map.0 {
            let other = run.other.as_ref().map(|other| (&other.values, other.system));
            let first = run.system.map(|system| (&run.values, system));
            for (values, system) in first.into_iter().chain(other) {
                let (step, unit) = match system {
                    System::Imperial => (inch / 8, "an eighth of an inch"),
                    System::Metric => (MILLIMETRE, "a millimetre"),
                };
                let fine = finer(values, step);
                let Some(at) = fine.first() else { continue };
                let way = place::way(&[field, name]);
                // The second run of two has no place of its own here.
                let place = if run.system == Some(system) {
                    place::value(entry, &way, run, *at, placing)
                } else {
                    entry.origin.value(&way, placing)
                };
                let message = format!("`{name}` is finer than {unit}{}", place::in_sizes(pattern, &fine));
                findings.push(
                    Finding::new(&UNMEASURABLE, place, message)
                        .help("round it to what a tape shows: a quarter inch or half a centimetre is usual"),
                );
            }
        }
    }
}

/// Returns the sizes whose lengths are no multiple of a step in nanometres; both inches of the trade have whole eighths.
fn finer(values: &SizeRun<FabricLength>, step: i64) -> Vec<usize> {
    let there = values.iter().enumerate().filter_map(|(size, length)| Some((size, (*length?).nanometres())));
    there.filter(|(_, length)| length.checked_rem(step) != Some(0)).map(|(size, _)| size).collect()
}
