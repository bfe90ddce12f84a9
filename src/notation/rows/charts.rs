//! The charts of a text as words go back to them: by name, each row as the stitches it takes and leaves.

use super::tree::{Item, Number};
use crate::measure::SizeRun;
use crate::notation::chart::{self, Chart, Parts, Worked};
use std::sync::Arc;

/// A chart that rows may be worked from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ChartRows {
    /// What it is called.
    pub name: Option<String>,
    /// Its place among the charts of the text, counted from 0.
    pub place: usize,
    /// Whether it is worked in the round.
    pub round: bool,
    rows: Vec<Row>,
}

#[derive(Clone, Debug, PartialEq, Eq)]
struct Row {
    side: chart::Side,
    kind: RowKind,
}

/// How a row is worked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RowKind {
    /// Stitch by stitch.
    Worked(Stretches),
    /// As many stitches as there are.
    Even,
    /// Nobody knows.
    Unknown,
}

/// The stitches of a row in the order they are worked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stretches {
    /// What comes before the repeat.
    pub before: Vec<Item>,
    /// What is repeated; everything where no repeat is marked.
    pub again: Vec<Item>,
    /// What comes behind the repeat.
    pub after: Vec<Item>,
    /// Whether the chart marks what is repeated.
    pub marked: bool,
}

impl ChartRows {
    /// Returns the rows of a chart; `even` tells whether the rows between those that it shows, if it shows every other row
    /// only, change no count.
    pub fn of(name: Option<&str>, place: usize, chart: &Chart, even: bool) -> Self {
        let mut rows = Vec::new();
        for (at, worked) in chart.rows.iter().enumerate() {
            let side = chart.side(at);
            rows.push(Row { side, kind: kind(chart, worked, side) });
            if chart.between.is_some() {
                let side = if chart.round { side } else { side.other() };
                rows.push(Row { side, kind: if even { RowKind::Even } else { RowKind::Unknown } });
            }
        }
        Self { name: name.map(str::to_owned), place, round: chart.round, rows }
    }

    /// Returns the number of the last row.
    pub fn last(&self) -> u32 {
        u32::try_from(self.rows.len()).unwrap_or(u32::MAX)
    }

    /// Returns how a row is worked, by its number; nothing where the chart has none of it.
    pub fn row(&self, number: u32) -> Option<&RowKind> {
        self.get(number).map(|row| &row.kind)
    }

    /// Returns the side that a row is worked from, by its number.
    pub fn side(&self, number: u32) -> Option<chart::Side> {
        self.get(number).map(|row| row.side)
    }

    /// Returns whether none of these rows changes how many stitches there are.
    pub fn is_even(&self, rows: &[u32]) -> bool {
        let even = |items: &[Item]| {
            let change = items.iter().map(|item| match item {
                Item::Work { takes, leaves, times, .. } => (leaves - takes).saturating_mul(times.of(0)),
                _ => 0,
            });
            change.sum::<i64>() == 0
        };
        rows.iter().all(|row| match self.row(*row) {
            Some(RowKind::Worked(row)) => {
                even(&row.again) && even(&[row.before.as_slice(), row.after.as_slice()].concat())
            }
            Some(RowKind::Even) => true,
            Some(RowKind::Unknown) | None => false,
        })
    }

    fn get(&self, number: u32) -> Option<&Row> {
        self.rows.get(usize::try_from(number.checked_sub(1)?).ok()?)
    }
}

/// The stitches of a row as they are worked from a side.
fn kind(chart: &Chart, row: &[Worked], side: chart::Side) -> RowKind {
    let Parts { left, repeat, right } = chart.parts(row);
    let (first, last) = if side == chart::Side::Right { (right, left) } else { (left, right) };
    let again = chart::counts::sum(chart, repeat).consumed;
    if again == 0 {
        return RowKind::Unknown;
    }
    let items = |stretch: &[Worked]| items(chart, stretch, side);
    RowKind::Worked(Stretches {
        before: items(first),
        again: items(repeat),
        after: items(last),
        marked: chart.repeat.is_some(),
    })
}

/// A stretch as items, alike stitches beside each other as one.
fn items(chart: &Chart, stretch: &[Worked], side: chart::Side) -> Vec<Item> {
    let mut runs: Vec<(i64, i64, i64)> = Vec::new();
    let mut add = |worked: &Worked| {
        let Some(sign) = chart.sign(*worked).filter(|sign| !sign.is_nothing()) else { return };
        let (takes, leaves) = (i64::from(sign.stitch.consumed), i64::from(sign.stitch.produced));
        match runs.last_mut() {
            Some((taken, left, times)) if (*taken, *left) == (takes, leaves) => *times = times.saturating_add(1),
            _ => runs.push((takes, leaves, 1)),
        }
    };
    match side {
        chart::Side::Right => stretch.iter().rev().for_each(&mut add),
        chart::Side::Wrong => stretch.iter().for_each(&mut add),
    }
    let item = |(takes, leaves, times)| {
        let times = Number { values: SizeRun::one(times), at: 0..0 };
        Item::Work { takes, leaves, times, binds: false, at: 0..0 }
    };
    runs.into_iter().map(item).collect()
}

/// The charts of a text.
#[derive(Clone, Debug, Default)]
pub(super) struct Charts {
    all: Vec<Arc<ChartRows>>,
    /// Whether the text has others that could not be read.
    pub(super) others: bool,
}

impl Charts {
    pub(super) fn add(&mut self, chart: ChartRows) {
        self.all.push(Arc::new(chart));
    }

    pub(super) fn is_empty(&self) -> bool {
        self.all.is_empty()
    }

    /// The only chart of the text; nothing where there are others.
    pub(super) fn only(&self) -> Option<&Arc<ChartRows>> {
        match self.all.as_slice() {
            [only] if !self.others => Some(only),
            _ => None,
        }
    }

    /// The chart whose name a text begins with and the length of the name, the longest that stands there. Capitals and spaces
    /// count for nothing, unless two are alike without; then nobody knows which is meant, if neither is named to the letter.
    pub(super) fn at(&self, text: &str) -> Option<(usize, &Arc<ChartRows>)> {
        let named = |chart: &Arc<ChartRows>| begins(text, chart.name.as_deref()?);
        let longest = self.all.iter().filter_map(named).max()?;
        let mut found = self.all.iter().filter(|chart| named(chart) == Some(longest));
        let (first, more) = (found.next()?, found.count() > 0);
        if !more {
            return Some((longest, first));
        }
        let written = text.get(..longest)?;
        let mut exact = self.all.iter().filter(|chart| chart.name.as_deref() == Some(written));
        let chart = exact.next().filter(|_| exact.next().is_none())?;
        Some((longest, chart))
    }
}

/// How long the name is that a text begins with, capitals and spaces aside; nothing where it begins otherwise or goes on as
/// the same word.
fn begins(text: &str, name: &str) -> Option<usize> {
    let name = name.trim();
    // "Chart A" is named so whether or not the word is part of its name.
    let own = name.get(.."chart ".len()).filter(|first| first.eq_ignore_ascii_case("chart "));
    let name = own.map_or(name, |first| name.get(first.len()..).unwrap_or(name));
    let mut wanted = name.chars().filter(|c| !c.is_whitespace()).flat_map(char::to_lowercase).peekable();
    wanted.peek()?;
    for (at, c) in text.char_indices() {
        if wanted.peek().is_none() {
            return (!c.is_alphanumeric()).then_some(at);
        }
        if !c.is_whitespace() && !c.to_lowercase().all(|c| wanted.next() == Some(c)) {
            return None;
        }
    }
    wanted.peek().is_none().then_some(text.len())
}
