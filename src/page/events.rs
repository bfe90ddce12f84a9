//! The days that readers may put into their calendars.

use super::{Shown, page_path, test_knit};
use crate::catalogue::{CallState, Visibility};
use crate::entry::Entry;
use crate::entry::value::Date;

/// One day of a calendar.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Event {
    /// The day.
    pub day: Date,
    /// A name that no other event of the studio has and that stays when the day is moved: `pattern-shoal-mittens-planned`.
    pub key: String,
    /// What happens, in a few words.
    pub summary: String,
    /// The whole address of a page about it.
    pub url: Option<String>,
}

/// How many days back published designs are kept in the calendar.
const KEPT: i64 = 366;

/// Returns the days that readers may know: designs of the last year, planned publications, calls for test knitters.
///
/// Whoever looks at the pages, these are readers' days alone. They are in the order of days, then of keys.
pub fn events(shown: &Shown<'_>) -> Vec<Event> {
    let catalogue = shown.catalogue;
    let today = catalogue.view.today;
    let mut events = Vec::new();
    for (entry, pattern) in catalogue.patterns() {
        let day = pattern.published.filter(|day| *day <= today && day.days_to(today) <= KEPT);
        if let Some(day) = day.filter(|_| catalogue.for_readers(entry) == Visibility::Public) {
            let url = shown.addresses.whole(&page_path(&entry.id));
            events.push(Event {
                day,
                key: key(entry, "published"),
                summary: format!("{} is published", entry.common.title),
                url: Some(url),
            });
        }
    }
    for (entry, pattern) in catalogue.on_the_way() {
        if let Some(day) = pattern.published.filter(|day| *day > today) {
            events.push(Event {
                day,
                key: key(entry, "published"),
                summary: format!("{} is planned to be published", entry.common.title),
                url: Some(shown.whole_url(&shown.address_on_the_way(entry))),
            });
        }
    }
    for (entry, _, call) in catalogue.calls().filter(|(_, _, call)| call.state != CallState::Coming) {
        let days = [(call.says.opens, "opens"), (call.says.closes, "closes")];
        events.extend(days.into_iter().filter_map(|(day, what)| Some(of_call(shown, entry, day?, what))));
    }
    events.sort();
    events
}

/// Returns a day of a design's call; `what` happens, such as `opens`.
pub fn of_call(shown: &Shown<'_>, entry: &Entry, day: Date, what: &str) -> Event {
    Event {
        day,
        key: key(entry, &format!("test-knit-{what}")),
        summary: format!("Test knit of {} {what}", entry.common.title),
        url: Some(shown.addresses.whole(&test_knit::path(entry))),
    }
}

/// Returns a name for what happens to an entry.
pub fn key(entry: &Entry, what: &str) -> String {
    format!("{}-{}-{what}", entry.id.kind.word(), entry.id.key)
}
