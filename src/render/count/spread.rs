//! Increases or decreases spread over a row, as a knitter reads them.

use super::{Frame, json};
use crate::reckon::spread::{Change, Edges, Gap};
use serde::Serialize;

/// Changes spread evenly, size by size.
#[derive(Clone, Debug)]
pub struct Spread {
    /// For which sizes.
    pub frame: Frame,
    /// What is spread.
    pub change: Change,
    /// How the row ends.
    pub edges: Edges,
    /// Each size; nothing for one without.
    pub sizes: Vec<Option<SpreadSize>>,
}

/// One size.
#[derive(Clone, Debug)]
pub struct SpreadSize {
    /// The stitches there are.
    pub stitches: i64,
    /// How many changes.
    pub changes: i64,
    /// The plain stitches between them, in working order.
    pub gaps: Vec<Gap>,
}

#[derive(Serialize)]
struct Json {
    change: &'static str,
    edges: &'static str,
    sizes: Vec<JsonSize>,
}

#[derive(Serialize)]
struct JsonSize {
    size: Option<String>,
    stitches: Option<i64>,
    changes: Option<i64>,
    after: Option<i64>,
    gaps: Vec<JsonGap>,
    words: Option<String>,
}

#[derive(Serialize)]
struct JsonGap {
    stitches: i64,
    times: i64,
}

impl Spread {
    /// Returns it in words for people, one line a size.
    pub fn to_text(&self) -> String {
        let edges = match self.edges {
            Edges::Round => "in the round",
            Edges::Halves => "flat, with half a gap at each edge",
            Edges::Wholes => "flat, with a whole gap at each edge",
        };
        let head = match self.change {
            Change::Increase => format!("Increases spread {edges}; each is made between two stitches"),
            Change::Decrease => format!("Decreases spread {edges}; each is k2tog, or another that makes one of two"),
        };
        let line = |one: &Option<SpreadSize>| {
            let one = one.as_ref()?;
            Some(format!("{} to {} stitches: {}", one.stitches, self.after(one), self.in_words(one)))
        };
        self.frame.lines(&head, self.sizes.iter().map(line))
    }

    /// Returns it as JSON: `gaps` are the plain stitches between changes, `after` the stitches there are then, `words`
    /// what a knitter reads; null or empty for a size
    /// without. `size` is null where a sum is for no size in particular.
    pub fn to_json(&self) -> String {
        let one = |(size, one): (usize, &Option<SpreadSize>)| {
            let one = one.as_ref();
            let gaps = one.map_or(&[][..], |one| &one.gaps);
            JsonSize {
                size: self.frame.named(size, self.sizes.len()),
                stitches: one.map(|one| one.stitches),
                changes: one.map(|one| one.changes),
                after: one.map(|one| self.after(one)),
                gaps: gaps.iter().map(|gap| JsonGap { stitches: gap.stitches, times: gap.times }).collect(),
                words: one.map(|one| self.in_words(one)),
            }
        };
        json::pretty(&Json {
            change: match self.change {
                Change::Increase => "increase",
                Change::Decrease => "decrease",
            },
            edges: match self.edges {
                Edges::Round => "round",
                Edges::Halves => "halves",
                Edges::Wholes => "wholes",
            },
            sizes: self.sizes.iter().enumerate().map(one).collect(),
        })
    }

    /// Returns the stitches that there are in the end.
    fn after(&self, one: &SpreadSize) -> i64 {
        match self.change {
            Change::Increase => one.stitches.saturating_add(one.changes),
            // Each takes two and leaves one.
            Change::Decrease => one.stitches.saturating_sub(one.changes),
        }
    }

    /// Returns the row in words: `k6, increase; (k13, increase) 3 times; k6`.
    fn in_words(&self, one: &SpreadSize) -> String {
        let change = match self.change {
            Change::Increase => "increase",
            Change::Decrease => "k2tog",
        };
        let mut groups = one.gaps.clone();
        // Flat, nothing follows the last gap; in the round each gap has its change behind it.
        let last = match (self.edges, groups.last_mut()) {
            (Edges::Halves | Edges::Wholes, Some(last)) => {
                last.times -= 1;
                Some(last.stitches)
            }
            _ => None,
        };
        let mut parts: Vec<String> = groups.iter().filter_map(|gap| group(*gap, change)).collect();
        parts.extend(last.filter(|stitches| *stitches > 0).map(|stitches| format!("k{stitches}")));
        parts.join("; ")
    }
}

/// Returns a gap and the change behind it, as often as they follow each other; nothing for no times.
fn group(Gap { stitches, times }: Gap, change: &str) -> Option<String> {
    let again = match times {
        ..=0 => return None,
        1 => String::new(),
        2 => " twice".to_owned(),
        _ => format!(" {times} times"),
    };
    Some(match (stitches, times) {
        (0, _) => format!("{change}{again}"),
        (_, 1) => format!("k{stitches}, {change}"),
        _ => format!("(k{stitches}, {change}){again}"),
    })
}
