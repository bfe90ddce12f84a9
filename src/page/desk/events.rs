//! The designer's own calendar: readers' days, and what only she may know.

use super::super::Shown;
use super::super::events::{self, Event, key};
use crate::catalogue::CallState;
use crate::entry::value::{Choice, Stage};
use crate::entry::{Kind, Reached};

/// Returns readers' days, and beside them days by which gifts must be there, planned stages of designs, and the opening and
/// check-ins of test knits; in the order of days, then of keys. What is finished has no deadline any more.
pub fn events(shown: &Shown<'_>) -> Vec<Event> {
    let catalogue = shown.catalogue;
    let today = catalogue.view.today;
    let mut all = events::events(shown);
    for entry in catalogue.of_kind(Kind::Pattern) {
        let Some(pattern) = entry.pattern() else { continue };
        let planned = pattern.reached.for_desk().iter().flat_map(Reached::days);
        for (stage, day) in planned.filter(|(stage, day)| *day > today && *stage != Stage::Published) {
            all.push(Event {
                day,
                key: key(entry, &format!("stage-{}", stage.word().replace(' ', "-"))),
                summary: format!("{}: {} planned", entry.common.title, stage.word()),
                url: None,
            });
        }
    }
    for (entry, _, call) in catalogue.calls().filter(|(_, _, call)| call.state != CallState::Closed) {
        for (at, day) in call.says.check_ins.iter().enumerate() {
            all.push(Event {
                summary: format!("Test knit of {}: check-in", entry.common.title),
                ..events::of_call(shown, entry, *day, &format!("check-in-{}", at + 1))
            });
        }
        let opens = call.says.opens.filter(|_| call.state == CallState::Coming);
        all.extend(opens.map(|day| events::of_call(shown, entry, day, "opens")));
    }
    for entry in catalogue.of_kind(Kind::Project) {
        let Some(project) = entry.project().filter(|project| project.finished_by(today).is_none()) else { continue };
        let Some(made_for) = project.made_for.for_desk() else { continue };
        let Some(day) = made_for.by else { continue };
        let who = made_for.who.as_deref().map(|who| format!(" for {who}")).unwrap_or_default();
        let summary = format!("{}{who} must be there", entry.common.title);
        all.push(Event { day, key: key(entry, "due"), summary, url: None });
    }
    all.sort();
    all
}
