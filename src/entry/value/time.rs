//! Moments and lengths of a video.

use crate::entry::field::{Field, WRONG_TYPE, wrong_type};
use crate::entry::schema::{Definitions, Schema};
use crate::entry::yaml::{Node, Notes};
use std::fmt;

/// A whole number of seconds, written `m:ss`, or `h:mm:ss` past the hour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct VideoTime {
    /// The seconds.
    pub seconds: u32,
}

impl VideoTime {
    /// Returns the time of `m:ss` or `h:mm:ss`; minutes before seconds may be any number without hours, else below 60.
    pub fn parse(text: &str) -> Option<Self> {
        let parts: Option<Vec<u32>> =
            text.split(':').map(|part| part.bytes().all(|b| b.is_ascii_digit()).then(|| part.parse().ok())?).collect();
        let two_digits = text.split(':').skip(1).all(|part| part.len() == 2);
        let seconds = match *parts?.as_slice() {
            [minutes, seconds] if seconds < 60 => minutes.checked_mul(60)?.checked_add(seconds)?,
            [hours, minutes, seconds] if minutes < 60 && seconds < 60 => {
                hours.checked_mul(3600)?.checked_add(minutes * 60 + seconds)?
            }
            _ => return None,
        };
        two_digits.then_some(Self { seconds })
    }

    /// Splits a heading into the time it begins with and the rest, or returns nothing if it begins with none.
    pub fn leading(text: &str) -> Option<(Self, &str)> {
        if !text.starts_with(|first: char| first.is_ascii_digit()) {
            return None;
        }
        let (first, rest) = text.split_once(char::is_whitespace).unwrap_or((text, ""));
        Some((Self::parse(first)?, rest.trim_start()))
    }
}

impl fmt::Display for VideoTime {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (hours, minutes, seconds) = (self.seconds / 3600, self.seconds / 60 % 60, self.seconds % 60);
        if hours > 0 { write!(f, "{hours}:{minutes:02}:{seconds:02}") } else { write!(f, "{minutes}:{seconds:02}") }
    }
}

impl Field for VideoTime {
    const WHAT: &'static str = "a time like \"25:12\"";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let Some(text) = node.value.scalar() else {
            wrong_type(node, Self::WHAT, notes);
            return None;
        };
        let time = Self::parse(text);
        if time.is_none() {
            notes.value(
                &WRONG_TYPE,
                node,
                format!("`{text}` is not a time"),
                Some("write minutes and seconds, `\"25:12\"`, or `\"1:02:30\"` past the hour".to_owned()),
            );
        }
        time
    }

    fn schema(_: &mut Definitions) -> Schema {
        let time = "^[0-9]+(:[0-5][0-9]){1,2}$";
        Schema::of(&["string"], "\"25:12\"")
            .pattern(time, Self::WHAT)
            .saying("Minutes and seconds, or hours before them.")
    }
}
