//! Days as a calendar that other programs read (iCalendar, RFC 5545).

use crate::entry::value::Date;
use crate::page::{Event, Shown};

/// Where the calendar is.
pub const CALENDAR: &str = "calendar.ics";

/// The longest line in octets, without its end (RFC 5545, 3.1).
const LONGEST: usize = 75;

/// Returns events as a calendar with a name; nothing where there is no event, since a calendar must hold one.
///
/// Each event is of a whole day. It is stamped with its own day and not with the clock, so that two makes give the same
/// bytes.
pub fn calendar(shown: &Shown<'_>, name: &str, events: &[Event]) -> Option<Vec<u8>> {
    if events.is_empty() {
        return None;
    }
    let address = shown.catalogue.studio.address();
    let host = address.split_once("://").map_or(address, |(_, rest)| rest).split('/').next().unwrap_or_default();
    let mut out = String::new();
    for (property, value) in [("BEGIN", "VCALENDAR"), ("VERSION", "2.0"), ("CALSCALE", "GREGORIAN")] {
        line(&mut out, property, value);
    }
    line(&mut out, "PRODID", &text(&format!("-//{host}//ballband//EN")));
    line(&mut out, "NAME", &text(name));
    line(&mut out, "X-WR-CALNAME", &text(name));
    for event in events {
        line(&mut out, "BEGIN", "VEVENT");
        line(&mut out, "UID", &text(&format!("{}@{host}", event.key)));
        line(&mut out, "DTSTAMP", &format!("{}T000000Z", digits(event.day)));
        line(&mut out, "DTSTART;VALUE=DATE", &digits(event.day));
        line(&mut out, "SUMMARY", &text(&event.summary));
        if let Some(url) = &event.url {
            line(&mut out, "URL", url);
        }
        // A day to know of keeps nobody busy.
        line(&mut out, "TRANSP", "TRANSPARENT");
        line(&mut out, "END", "VEVENT");
    }
    line(&mut out, "END", "VCALENDAR");
    Some(out.into_bytes())
}

fn digits(day: Date) -> String {
    day.to_string().replace('-', "")
}

/// Escapes a value of type TEXT (RFC 5545, 3.3.11).
fn text(value: &str) -> String {
    let plain = value.replace("\r\n", "\n").replace('\r', "\n");
    plain.replace('\\', "\\\\").replace(';', "\\;").replace(',', "\\,").replace('\n', "\\n")
}

/// Writes one property, folded where it is longer than a line may be, never within a character.
fn line(out: &mut String, property: &str, value: &str) {
    let mut length = 0;
    for c in property.chars().chain([':']).chain(value.chars()) {
        if length + c.len_utf8() > LONGEST {
            out.push_str("\r\n ");
            length = 1;
        }
        out.push(c);
        length += c.len_utf8();
    }
    out.push_str("\r\n");
}
