//! A calendar date.

use crate::entry::field::{Field, WRONG_TYPE, wrong_type};
use crate::entry::schema::{Definitions, Schema};
use crate::entry::yaml::{Node, Notes};
use std::fmt;

/// A day of the Gregorian calendar, written `2026-03-14` (ISO 8601).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Date(jiff::civil::Date);

impl Date {
    /// Returns the date of `YYYY-MM-DD`, or nothing if there is no such day or the text is anything else.
    pub fn parse(text: &str) -> Option<Self> {
        let shape = text.len() == 10
            && text
                .bytes()
                .enumerate()
                .all(|(at, byte)| if at == 4 || at == 7 { byte == b'-' } else { byte.is_ascii_digit() });
        if !shape {
            return None;
        }
        text.parse().ok().map(Self)
    }

    /// Returns the date that a text begins with, if it does.
    pub fn leading(text: &str) -> Option<Self> {
        text.get(..10).and_then(Self::parse)
    }

    /// Returns the year.
    pub fn year(self) -> i16 {
        self.0.year()
    }

    /// Returns the date in words: `14 March 2026`.
    pub fn in_words(self) -> String {
        format!("{} {} {}", self.0.day(), self.month(), self.0.year())
    }

    /// Returns month and year in words: `March 2026`.
    pub fn month_in_words(self) -> String {
        format!("{} {}", self.month(), self.0.year())
    }

    /// Returns the day's first moment in universal time, as RFC 3339 writes it: the moment that feeds give for a date.
    pub fn moment(self) -> String {
        format!("{}T00:00:00Z", self.0)
    }

    /// Returns how many days come between this day and another: one to the day after, below nothing to a day before.
    pub fn days_to(self, other: Self) -> i64 {
        self.0.duration_until(other.0).as_hours() / 24
    }

    fn month(self) -> &'static str {
        const MONTHS: [&str; 12] = [
            "January",
            "February",
            "March",
            "April",
            "May",
            "June",
            "July",
            "August",
            "September",
            "October",
            "November",
            "December",
        ];
        usize::try_from(self.0.month() - 1).ok().and_then(|index| MONTHS.get(index)).copied().unwrap_or_default()
    }
}

impl fmt::Display for Date {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(&self.0, f)
    }
}

impl From<jiff::civil::Date> for Date {
    fn from(date: jiff::civil::Date) -> Self {
        Self(date)
    }
}

impl Field for Date {
    const WHAT: &'static str = "a date like `2026-03-14`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let Some(text) = node.value.scalar() else {
            wrong_type(node, Self::WHAT, notes);
            return None;
        };
        let date = Self::parse(text);
        if date.is_none() {
            let message = format!("`{text}` is not a date");
            notes.value(&WRONG_TYPE, node, message, Some("write year, month and day: `2026-03-14`".to_owned()));
        }
        date
    }

    fn schema(_: &mut Definitions) -> Schema {
        let day = "^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$";
        Schema::of(&["string"], "2026-03-14").pattern(day, Self::WHAT)
    }
}
