//! The rows worked so far, for words that go back to them: "Rep last 4 rows".

use super::super::statement::{Doing, Repeated, Rows, Written};
use super::knitter::{Id, MOST_ROWS};
use super::spells::{Before, Turn};
use std::collections::BTreeMap;

/// A row that was worked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Past {
    /// One with words of its own.
    Row(Id),
    /// One of a chart: the sentence that works it, and its number in the chart.
    Chart(Id, u32),
    /// One that changes no count.
    Even,
    /// One that is told together with the next one.
    Part,
    /// Nobody knows how many, or what they add.
    Unknown,
}

/// What the last so many rows are.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Last {
    /// These.
    Rows(Vec<Past>),
    /// There are not so many, only these.
    Few(usize),
    /// Nobody knows.
    Unknown,
}

/// The rows worked, the last one last, and no more of them than may be asked for.
#[derive(Clone, Debug, Default)]
pub(super) struct History {
    rows: Vec<Past>,
    most: usize,
    /// Whether it is certain how many rows there were since a beginning.
    whole: bool,
    /// How many rows there were since it was last not certain.
    count: usize,
    /// Which of those each row was when it was last worked.
    seen: BTreeMap<Id, usize>,
    /// How many of those there were when it was last not certain how many others there are.
    doubt: usize,
    /// What `seen` had before, while one may come back to that.
    changed: Option<Vec<(Id, Option<usize>)>>,
}

/// A place in the history to which one may come back.
#[derive(Clone, Copy, Debug)]
pub(super) struct Place {
    rows: usize,
    whole: bool,
    count: usize,
    doubt: usize,
}

impl History {
    pub(super) fn of(blocks: &[Written]) -> Self {
        let asked = blocks.iter().flat_map(|block| &block.statements).filter_map(|statement| match &statement.doing {
            Doing::Repeat(Repeated { rows: Rows::Last(number), .. }) => usize::try_from(*number).ok(),
            _ => None,
        });
        Self { most: asked.max().unwrap_or(0).min(MOST_ROWS), ..Self::default() }
    }

    /// Begins anew, where stitches are cast on.
    pub(super) fn begin(&mut self) {
        self.rows.clear();
        self.whole = true;
        self.doubt = self.count;
    }

    /// Says where one may come back to, until it is said that one does not; the rows behind it are all kept till then.
    pub(super) fn place(&mut self) -> Place {
        self.changed = Some(Vec::new());
        Place { rows: self.rows.len(), whole: self.whole, count: self.count, doubt: self.doubt }
    }

    /// Comes back to a place.
    pub(super) fn come_back(&mut self, place: Place) {
        self.rows.truncate(place.rows);
        (self.whole, self.count, self.doubt) = (place.whole, place.count, place.doubt);
        while let Some((row, seen)) = self.changed.as_mut().and_then(Vec::pop) {
            match seen {
                Some(seen) => drop(self.seen.insert(row, seen)),
                None => drop(self.seen.remove(&row)),
            }
        }
    }

    /// Goes on for good.
    pub(super) fn go_on(&mut self) {
        self.changed = None;
    }

    /// How many rows were worked since a row was; nothing where that is not certain.
    pub(super) fn since(&self, row: Id) -> Option<usize> {
        self.seen.get(&row).filter(|seen| **seen > self.doubt).map(|seen| self.count.saturating_sub(*seen))
    }

    pub(super) fn push(&mut self, row: Past) {
        self.count = self.count.saturating_add(1);
        match row {
            Past::Row(id) => {
                let seen = self.seen.insert(id, self.count);
                if let Some(changed) = &mut self.changed {
                    changed.push((id, seen));
                }
            }
            Past::Unknown => self.doubt = self.count,
            Past::Chart(..) | Past::Even | Past::Part => {}
        }
        self.rows.push(row);
        // The one before those asked for tells whether the first of them is whole.
        let spare = self.rows.len().saturating_sub(self.most.saturating_add(1));
        if spare > self.most && self.changed.is_none() {
            self.rows.drain(..spare);
        }
    }

    /// Adds what a sentence or label without numbers works: `rows` rows where it says so, else perhaps more than one.
    pub(super) fn push_unnumbered(&mut self, row: Past, rows: Option<i64>) {
        self.whole &= rows.is_some();
        if rows.is_none() {
            self.doubt = self.count;
        }
        self.again(&[Past::Part], rows.unwrap_or(1).saturating_sub(1));
        self.push(row);
    }

    /// Adds rows that are worked so many times.
    pub(super) fn again(&mut self, rows: &[Past], times: i64) {
        let most = self.most.checked_div(rows.len()).unwrap_or(0).saturating_add(1);
        let all = usize::try_from(times).unwrap_or(0);
        let times = all.min(most);
        // Those before the ones that are kept are counted all the same.
        self.count = self.count.saturating_add(rows.len().saturating_mul(all - times));
        for row in rows.iter().cycle().take(rows.len().saturating_mul(times)) {
            self.push(*row);
        }
    }

    /// Adds the rows of a working in a spell, that is worked so many times.
    pub(super) fn turns(&mut self, turn: Turn<'_>, times: i64) {
        let most = self.most.checked_div(turn.len()).unwrap_or(0).saturating_add(1);
        let all = usize::try_from(times).unwrap_or(0);
        let times = all.min(most);
        self.count = self.count.saturating_add(turn.len().saturating_mul(all - times));
        for _ in 0..times {
            match turn.before {
                Before::Even(rows) => self.again(&[Past::Even], i64::try_from(rows).unwrap_or(i64::MAX)),
                Before::Unknown => self.push(Past::Unknown),
            }
            for row in turn.rows {
                self.push(*row);
            }
        }
    }

    pub(super) fn last(&self, number: u32) -> Last {
        let number = usize::try_from(number).unwrap_or(usize::MAX);
        if number > self.most {
            return Last::Unknown;
        }
        let start = self.rows.len().saturating_sub(number);
        let rows = self.rows.get(start..).unwrap_or_default();
        let in_midst = start.checked_sub(1).and_then(|before| self.rows.get(before)) == Some(&Past::Part);
        if rows.contains(&Past::Unknown) || in_midst {
            Last::Unknown
        } else if rows.len() == number {
            Last::Rows(rows.to_vec())
        } else if self.whole {
            Last::Few(rows.len())
        } else {
            Last::Unknown
        }
    }
}
