//! Days must follow each other.

use super::place;
use crate::entry::value::{Choice, Date, Stage};
use crate::entry::yaml::Step;
use crate::entry::{Data, Entry, Pattern, Placing};
use crate::finding::{Code, Finding, Severity};
use std::borrow::Cow;

/// A day that is before one it must follow.
pub static DATE_ORDER: Code = Code {
    name: "date-order",
    severity: Severity::Warning,
    what: "A day is before another that must come first.",
    why: "One of the two is mistyped, and lists by date are out of order.",
    bad: "started: 2026-10-01\nfinished: 2026-09-01",
    good: "started: 2026-09-01\nfinished: 2026-10-01",
};

/// A day, the way to it and what it is.
type Named = (Option<Date>, Vec<Step>, Cow<'static, str>);

/// Returns the days of a pattern's stages, each with the one that must not be before it.
fn stages(pattern: &Pattern, published: impl Fn() -> Named) -> Vec<[Named; 2]> {
    // A finding is for the designer's eyes, so what is private may be looked at.
    let Some(reached) = pattern.reached.for_desk() else { return Vec::new() };
    let named = |(stage, day): (Stage, Date)| -> Named {
        (Some(day), place::way(&["reached", stage.word()]), format!("the day of `{}`", stage.word()).into())
    };
    let days: Vec<(Stage, Date)> = reached.days().collect();
    let mut pairs: Vec<[Named; 2]> =
        days.iter().zip(days.iter().skip(1)).map(|(first, then)| [named(*first), named(*then)]).collect();
    let before = days.iter().rev().find(|(stage, _)| *stage < Stage::Published);
    match reached.published {
        // Two days of one publication must be one, so neither may be before the other.
        Some(day) => {
            let own = || named((Stage::Published, day));
            pairs.extend([[own(), published()], [published(), own()]]);
        }
        None => pairs.extend(before.map(|before| [named(*before), published()])),
    }
    pairs
}

/// Finds days of a pattern or project that are out of order.
pub fn check(entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let mut pairs: Vec<[Named; 2]> = Vec::new();
    match &entry.data {
        Data::Pattern(pattern) => {
            let published = || (pattern.published, place::way(&["published"]), "the publication".into());
            if let Some(test) = &pattern.test_knit {
                let closes = || (test.closes, place::way(&["test knit", "closes"]), "the end of the test knit".into());
                let opens =
                    || (test.opens, place::way(&["test knit", "opens"]), "the beginning of the test knit".into());
                // Who has enough testers may publish before the last day; a day that is only planned is a slip.
                let must_come_first = if pattern.stage() >= Stage::Published { opens() } else { closes() };
                pairs.push([must_come_first, published()]);
                pairs.push([opens(), closes()]);
                for (at, day) in test.check_ins.iter().enumerate() {
                    let mut way = place::way(&["test knit", "check-ins"]);
                    way.push(Step::Item(at));
                    let day = || (Some(*day), way.clone(), "the check-in".into());
                    pairs.extend([[opens(), day()], [day(), closes()]]);
                }
            }
            pairs.extend(stages(pattern, published));
            for (at, erratum) in pattern.errata.iter().enumerate() {
                let day = (Some(erratum.date), place::item("errata", at, &["date"]), "the correction".into());
                pairs.push([published(), day]);
            }
        }
        Data::Project(project) => pairs.push([
            (project.started, place::way(&["started"]), "the beginning".into()),
            (project.finished, place::way(&["finished"]), "the end".into()),
        ]),
        _ => {}
    }
    for [(first, first_way, first_name), (then, then_way, then_name)] in pairs {
        let (Some(first), Some(then)) = (first, then) else { continue };
        if then < first {
            let message = format!("{then_name} ({then}) is before {first_name} ({first})");
            findings.push(
                Finding::new(&DATE_ORDER, entry.origin.value(&then_way, placing), message)
                    .help("look for a slip in either day")
                    .also(entry.origin.value(&first_way, placing), first_name),
            );
        }
    }
}
