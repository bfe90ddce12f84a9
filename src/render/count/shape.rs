//! Shaping at both sides over so many rows, as a knitter reads it.

use super::{Frame, json};
use crate::reckon::shaping::{Every, Shaping, Worked};
use serde::Serialize;

/// Shaping in pairs, size by size.
#[derive(Clone, Debug)]
pub struct Shaped {
    /// For which sizes.
    pub frame: Frame,
    /// On which rows it may fall.
    pub worked: Worked,
    /// Each size; nothing for one without.
    pub sizes: Vec<Option<ShapedSize>>,
}

/// One size.
#[derive(Clone, Copy, Debug)]
pub struct ShapedSize {
    /// The stitches to begin with.
    pub from: i64,
    /// The stitches to come to.
    pub to: i64,
    /// The rows there are.
    pub rows: i64,
    /// How to come there.
    pub shaping: Shaping,
}

#[derive(Serialize)]
struct Json {
    worked: &'static str,
    sizes: Vec<JsonSize>,
}

#[derive(Serialize)]
struct JsonSize {
    size: Option<String>,
    from: Option<i64>,
    to: Option<i64>,
    rows: Option<i64>,
    every: Vec<JsonEvery>,
    plain: Option<i64>,
    words: Option<String>,
}

#[derive(Serialize)]
struct JsonEvery {
    rows: i64,
    times: i64,
}

impl Shaped {
    /// Returns it in words for people, one line a size.
    pub fn to_text(&self) -> String {
        let head = match self.worked {
            Worked::Round => "Shaping at both sides, in the round",
            Worked::Flat => "Shaping at both sides, flat and on right-side rows only",
        };
        let line = |one: &Option<ShapedSize>| {
            let one = (*one)?;
            let rows = self.rows(one.rows);
            Some(format!("{} to {} stitches in {rows}: {}", one.from, one.to, self.in_words(one)))
        };
        self.frame.lines(head, self.sizes.iter().map(line))
    }

    /// Returns it as JSON: `every` says after how many rows a shaping row comes and how often, `plain` the rows that are
    /// left, `words` what a knitter reads; null or empty for a size
    /// without. `size` is null where a sum is for no size in particular.
    pub fn to_json(&self) -> String {
        let one = |(size, one): (usize, &Option<ShapedSize>)| JsonSize {
            size: self.frame.named(size, self.sizes.len()),
            from: one.map(|one| one.from),
            to: one.map(|one| one.to),
            rows: one.map(|one| one.rows),
            every: one.map_or_else(Vec::new, |one| {
                steps(one.shaping).map(|every| JsonEvery { rows: every.rows, times: every.times }).collect()
            }),
            plain: one.map(|one| one.shaping.plain),
            words: one.map(|one| self.in_words(one)),
        };
        json::pretty(&Json {
            worked: match self.worked {
                Worked::Round => "round",
                Worked::Flat => "flat",
            },
            sizes: self.sizes.iter().enumerate().map(one).collect(),
        })
    }

    fn in_words(&self, one: ShapedSize) -> String {
        let change = if one.to > one.from { "increase" } else { "decrease" };
        let step = |every: Every| {
            let times = match every.times {
                1 => "once".to_owned(),
                2 => "twice".to_owned(),
                times => format!("{times} times"),
            };
            format!("every {} {times}", self.nth(every.rows))
        };
        let steps: Vec<String> = steps(one.shaping).map(step).collect();
        let plain = format!("{} plain", self.rows(one.shaping.plain));
        if steps.is_empty() { plain } else { format!("{change} 1 at each side {}; {plain}", steps.join(", then ")) }
    }

    /// Returns a number of rows: `80 rounds`, `1 row`.
    fn rows(&self, rows: i64) -> String {
        format!("{rows} {}{}", self.row(), if rows == 1 { "" } else { "s" })
    }

    /// Returns which row: `7th round`, or `row` for the first.
    fn nth(&self, number: i64) -> String {
        let end = match (number % 10, number % 100) {
            (_, 11..=13) => "th",
            (1, _) => "st",
            (2, _) => "nd",
            (3, _) => "rd",
            _ => "th",
        };
        if number == 1 { self.row().to_owned() } else { format!("{number}{end} {}", self.row()) }
    }

    const fn row(&self) -> &'static str {
        match self.worked {
            Worked::Round => "round",
            Worked::Flat => "row",
        }
    }
}

/// Returns the steps of shaping that are worked at all, in order.
fn steps(shaping: Shaping) -> impl Iterator<Item = Every> {
    [shaping.first, shaping.then].into_iter().filter(|every| every.times > 0)
}
