//! A row as it is worked for the first time, held against what it says of itself.

use super::super::count::{Hand, Needle, Outcome};
use super::super::fault::Fault;
use super::super::statement::{Doing, Statement};
use super::super::tree::Item;
use super::knitter::{Id, Knitter, MOST_STEPS};
use super::usual::{outcome, unfit};

impl<'a> Knitter<'a> {
    /// Works the numbered rows that were read, in the order of their numbers.
    pub(super) fn work_waiting(&mut self) {
        let mut rows = std::mem::take(&mut self.waiting);
        if let Some((number, id)) = self.others {
            let from = rows.iter().map(|(row, _)| *row).min().unwrap_or(0);
            let to = rows.iter().map(|(row, _)| *row).max().unwrap_or(0);
            for row in (from..=to).filter(|row| row % 2 == number % 2) {
                if !rows.iter().any(|(other, _)| *other == row) {
                    rows.push((row, id));
                }
            }
        }
        rows.sort_by_key(|(number, _)| *number);
        for at in 0..rows.len() {
            let Some((_, id)) = rows.get(at).copied() else { return };
            let last = !rows.iter().skip(at + 1).any(|(_, other)| *other == id);
            if let Some(statement) = self.get(id) {
                self.row(id, statement, last);
                self.after.insert(id, self.needle.total);
            }
        }
    }

    /// The items of a row, those of another where it says so.
    pub(super) fn items(&mut self, id: Id, statement: &'a Statement, depth: usize) -> Option<&'a [Item]> {
        let Doing::Row { items, .. } = &statement.doing else { return None };
        let [Item::SameAs { row, at }] = items.as_slice() else { return Some(items) };
        match self.numbered(*row).filter(|other| *other != id).and_then(|other| Some((other, self.get(other)?))) {
            Some((other, named)) if depth < 8 => self.items(other, named, depth + 1),
            _ => {
                self.tell(id.0, at.clone(), Fault::NoRow { row: *row });
                None
            }
        }
    }

    pub(super) fn numbered(&self, row: u32) -> Option<Id> {
        let others = || self.others.filter(|(number, _)| number % 2 == row % 2).map(|(_, id)| id);
        self.rows.get(&row).copied().or_else(others)
    }

    /// Works one row, and holds it against what it says of itself if it is worked for the last time.
    pub(super) fn row(&mut self, id: Id, statement: &'a Statement, last: bool) {
        self.history.push(Some(id));
        if let Some((block, at)) = self.lost_at.take() {
            self.tell(block, at, Fault::Unknown);
        }
        if statement.trouble.is_some() {
            self.needle = Needle::UNKNOWN;
            self.last_change = None;
            self.stated(id, statement, false);
            return;
        }
        let Some(items) = self.items(id, statement, 0) else {
            self.needle = Needle::UNKNOWN;
            return;
        };
        if let [Item::Unsaid { as_before, .. }] = items {
            // As the rows before: none the more if they add none.
            if !as_before || self.last_change != Some(0) {
                self.lose(id.0, statement.at.clone(), false);
            }
            self.stated(id, statement, false);
            return;
        }
        self.hold(items);
        let outcome = self.outcome(statement, items);
        let unfit = outcome.faults.iter().any(|(fault, _)| unfit(*fault));
        for (fault, at) in outcome.faults {
            self.tell(id.0, at, fault);
        }
        if let (Some(says), Some(is), false) = (change(statement, self.size), outcome.change, unfit) {
            let rows = match &statement.doing {
                Doing::Row { label: Some(label), .. } => label.numbers.len(),
                _ => 1,
            };
            // A note on several rows may be of each or of all.
            let all = i64::try_from(rows).ok().map(|rows| is.saturating_mul(rows));
            if last && says != is && all != Some(says) {
                let at = statement.change.as_ref().map_or_else(|| statement.at.clone(), |change| change.by.at.clone());
                self.tell(id.0, at, Fault::Change { says, is });
            }
        }
        if let (Some(at), None) = (outcome.unsaid, &statement.stated) {
            self.lose(id.0, at, false);
        }
        self.needle = outcome.after;
        self.last_change = outcome.change;
        if last {
            self.stated(id, statement, false);
        }
    }

    /// Works items on what is on the needle; a pattern that takes for ever is given up.
    pub(super) fn outcome(&mut self, statement: &Statement, items: &[Item]) -> Outcome {
        if self.steps > MOST_STEPS {
            return Outcome::default();
        }
        let label = match &statement.doing {
            Doing::Row { label, .. } => label.as_ref(),
            _ => None,
        };
        let apart = self.blocks.first().is_some_and(|block| block.apart);
        let hand = Hand { apart, ..self.markers.hand(label, self.needle) };
        let outcome = outcome(items, &hand, self.size);
        self.markers.keep(&outcome);
        self.steps += u64::from(outcome.steps);
        self.changes(outcome.change);
        outcome
    }

    /// Holds the count against what is said of it; an unknown one is then known.
    pub(super) fn stated(&mut self, id: Id, statement: &Statement, section: bool) {
        let Some(says) = statement.stated.as_ref().and_then(|stated| stated.values.get(self.size).copied()) else {
            return;
        };
        match self.needle.total {
            Some(is) if is != says => {
                let at = statement.stated.as_ref().map_or_else(|| statement.at.clone(), |stated| stated.at.clone());
                let fault = if section { Fault::Section { says, is } } else { Fault::Stated { says, is } };
                self.tell(id.0, at, fault);
                // Which of the two is right nobody knows, so nothing that follows is held against either.
                self.needle = Needle::UNKNOWN;
            }
            Some(_) => {}
            None => {
                self.needle = Needle::of(says);
                self.lost_at = None;
            }
        }
    }
}

/// What a row is said to add.
fn change(statement: &Statement, size: usize) -> Option<i64> {
    let change = statement.change.as_ref()?;
    let by = change.by.values.get(size).copied()?;
    Some(if change.less { -by } else { by })
}
