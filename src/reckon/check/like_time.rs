//! What a heading begins with and was meant as a time of the video.

use crate::entry::value::VideoTime;

/// The beginning of a heading that looks like a time.
#[derive(Clone, Debug)]
pub struct LikeTime<'a> {
    /// It as it is written, brackets included.
    pub written: &'a str,
    /// Its numbers.
    parts: Vec<&'a str>,
}

/// What stands behind a number with a full stop that is a measurement: `3.25 mm needles`.
const UNITS: [&str; 18] = [
    "mm", "cm", "m", "km", "g", "kg", "oz", "lb", "in", "inch", "inches", "yd", "yds", "yards", "metres", "grams", "%",
    "\u{2033}",
];

impl<'a> LikeTime<'a> {
    /// Returns what a heading's words begin with, if it looks like a time: two or three numbers with colons between them, or
    /// with full stops where the last could be seconds and no unit follows.
    pub fn of(words: &'a str) -> Option<Self> {
        let words = words.trim_start();
        let inner = words.trim_start_matches(['(', '[', '{', '~', '@', '*']);
        let is_in = |c: char| c.is_ascii_digit() || is_between(c);
        let run = inner.split(|c: char| !is_in(c)).next()?.trim_end_matches(is_between);
        let rest = inner.get(run.len()..)?;
        let parts: Vec<&str> = run.split(is_between).collect();
        let is_short = |part: &&str| (1..=3).contains(&part.len());
        if !(2..=3).contains(&parts.len()) || !parts.iter().all(is_short) {
            return None;
        }
        if !run.contains([':', ';', '\u{ff1a}']) {
            let is_clock = parts.iter().skip(1).all(|part| part.len() == 2 && **part < *"60");
            let unit = rest.trim_start().split(|c: char| c.is_whitespace() || c == ',').next().unwrap_or_default();
            if !is_clock || UNITS.contains(&unit.to_lowercase().as_str()) {
                return None;
            }
        }
        let open = words.len() - inner.len();
        let closing = if open > 0 { rest.chars().take_while(|c| ")]}*".contains(*c)).count() } else { 0 };
        Some(Self { written: words.get(..open + run.len() + closing)?, parts })
    }

    /// Returns the times it can be meant as, in words: `5:12`, or `6:01` or `6:10`; nothing if it can be none.
    pub fn meant(&self) -> Option<String> {
        if let Some(time) = VideoTime::parse(&self.parts.join(":")) {
            return Some(format!("`{time}`"));
        }
        let (last, before) = self.parts.split_last()?;
        let both = [format!("0{last}"), format!("{last}0")].map(|last| [before, &[last.as_str()]].concat().join(":"));
        let [first, second] = both.map(|time| VideoTime::parse(&time));
        let first = first?;
        Some(second.map_or_else(|| format!("`{first}`"), |second| format!("`{first}` or `{second}`")))
    }
}

fn is_between(c: char) -> bool {
    matches!(c, ':' | '.' | ';' | '\u{ff1a}')
}
