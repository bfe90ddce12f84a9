//! What the days of its stages say of a design must agree with its stage.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::value::Choice;
use crate::entry::{Data, Entry, Placing};
use crate::finding::{Code, Finding, Severity};

/// A stage that the days contradict.
pub static STAGE_UNLIKE: Code = Code {
    name: "stage-unlike",
    severity: Severity::Warning,
    what: "A design is said to be at one stage, and the days under `reached` say another.",
    why: "What it owes before the next stage is told of the stage, and readers see it among the designs on the way.",
    bad: "stage: tech edit\nreached: { tech edit: 2026-09-01, test knit: 2026-10-15 }",
    good: "stage: test knit\nreached: { tech edit: 2026-09-01, test knit: 2026-10-15 }",
};

/// Finds a stage beyond the given one whose day has come, and a given one whose day is still to come.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    let Some(reached) = pattern.reached.for_desk() else { return };
    let today = catalogue.view.today;
    let stage = pattern.stage();
    let beyond = reached.days().filter(|(reached, day)| *reached > stage && *day <= today).last();
    let to_come = reached.day(stage).filter(|day| *day > today).map(|day| (stage, day));
    let (message, (at, _)) = match (beyond, to_come) {
        (Some((reached, day)), _) => (
            format!("it came to {} on {}, and its stage is {}", reached.word(), day.in_words(), stage.word()),
            (reached, day),
        ),
        (None, Some((reached, day))) => {
            (format!("its stage is {}, which it comes to on {}", reached.word(), day.in_words()), (reached, day))
        }
        (None, None) => return,
    };
    let place = entry.origin.value(&place::way(&["reached", at.word()]), placing);
    let help = format!("write `stage: {}`, or give the day as it is planned", at.word());
    let help = if beyond.is_some() { help } else { "give the day it came, or take the stage back".to_owned() };
    findings.push(Finding::new(&STAGE_UNLIKE, place, message).help(help));
}
