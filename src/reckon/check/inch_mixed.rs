//! One pattern goes by one inch.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::yaml::Step;
use crate::entry::{Data, Entry, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::{FabricLength, Inch, Run, System};

/// Measurements in both systems that go by two inches.
pub static INCH_MIXED: Code = Code {
    name: "inch-mixed",
    severity: Severity::Warning,
    what: "Some measurements in both systems are worked out at 2.5 cm to the inch, others at 2.54.",
    why: "Parts that must be of one size are not, for readers of one system.",
    bad: "finished: { chest: 60 in / 150 cm, hip: 60 in / 152.5 cm }",
    good: "finished: { chest: 60 in / 150 cm, hip: 60 in / 150 cm }",
};

/// What rounding to half a centimetre and to a quarter inch comes to, in nanometres.
const ROUNDING: u128 = 5_700_000;

/// Finds a pattern some of whose measurements fit only the one inch, and some only the other.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    let inch = catalogue.studio.settings().inch;
    let mut found: [Option<(Vec<Step>, &str)>; 2] = [None, None];
    for (field, map) in [("to fit", &pattern.to_fit), ("finished", &pattern.finished)] {
        for (name, run) in &map.0 {
            for (only, seen) in only(run, inch).into_iter().zip(&mut found) {
                if only && seen.is_none() {
                    *seen = Some((place::way(&[field, name]), name));
                }
            }
        }
    }
    let [Some((trade, by_trade)), Some((exact, by_exact))] = found else { return };
    let message = format!("`{by_exact}` goes by 2.54 cm to the inch and `{by_trade}` by 2.5");
    findings.push(
        Finding::new(&INCH_MIXED, entry.origin.value(&exact, placing), message)
            .help("work out all of them by one inch, the studio's")
            .also(entry.origin.value(&trade, placing), "by the other inch"),
    );
}

/// Returns whether a run has sizes that fit only the trade's inch, and sizes that fit only the exact one.
fn only(run: &Run<FabricLength>, inch: Inch) -> [bool; 2] {
    let Some(other) = &run.other else { return [false; 2] };
    let (metric, imperial) =
        if other.system == System::Imperial { (&run.values, &other.values) } else { (&other.values, &run.values) };
    let pairs = metric.iter().zip(imperial.iter()).filter_map(|(metric, imperial)| Some((metric?, imperial?)));
    let (mut trade, mut exact) = (false, false);
    for (metric, imperial) in pairs {
        let fits = [Inch::TRADE, Inch::EXACT].map(|by| {
            // The inches were made a length by the studio's inch, which is taken out again.
            imperial
                .times_near(by.nanometres(), inch.nanometres())
                .is_some_and(|length| i128::from(length.nanometres()).abs_diff(metric.nanometres().into()) <= ROUNDING)
        });
        match fits {
            [true, false] => trade = true,
            [false, true] => exact = true,
            _ => {}
        }
    }
    [trade, exact]
}
