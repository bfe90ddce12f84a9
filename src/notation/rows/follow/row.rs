//! A row as it is worked for the first time, held against what it says of itself.

use super::super::count::{Hand, Needle, Outcome};
use super::super::fault::Fault;
use super::super::statement::{Doing, Label, Statement};
use super::super::tree::{How, Item, Span, Until};
use super::knitter::{Id, Knitter, MOST_STEPS};
use super::past::Past;
use super::usual::{outcome, unfit};
use std::collections::{BTreeMap, BTreeSet};

impl<'a> Knitter<'a> {
    /// Works the numbered rows that were read, in the order of their numbers.
    pub(super) fn work_waiting(&mut self) {
        let mut rows = std::mem::take(&mut self.waiting);
        if let Some((number, id)) = self.others {
            let read: BTreeSet<u32> = rows.iter().map(|(row, _)| *row).collect();
            let from = read.first().copied().unwrap_or(0);
            let to = read.last().copied().unwrap_or(0);
            let others = (from..=to).filter(|row| row % 2 == number % 2 && !read.contains(row));
            rows.extend(others.map(|row| (row, id)));
        }
        rows.sort_by_key(|(number, _)| *number);
        let last: BTreeMap<Id, usize> = rows.iter().enumerate().map(|(at, (_, id))| (*id, at)).collect();
        for (at, (_, id)) in rows.into_iter().enumerate() {
            if self.steps > MOST_STEPS {
                self.needle = Needle::UNKNOWN;
                break;
            }
            if let Some(statement) = self.get(id) {
                self.row(id, statement, true, last.get(&id) == Some(&at));
                self.after.insert(id, self.needle.total);
            }
        }
        if std::mem::take(&mut self.doubt) {
            self.sides.forget();
        }
    }

    /// The items of a row, those of another where it says so.
    pub(super) fn items(&mut self, id: Id, statement: &'a Statement) -> Option<&'a [Item]> {
        let (mut here, mut statement) = (id, statement);
        let mut seen = BTreeSet::from([id]);
        let mut path = Vec::new();
        loop {
            let Doing::Row { items, .. } = &statement.doing else { return None };
            let found = match items.as_slice() {
                [Item::SameAs { row, .. }] => self.numbered(*row).ok_or(Some(Fault::NoRow { row: *row })),
                [Item::SameNamed { name, .. }] => self.named(name),
                items => return Some(items),
            };
            let at = items.first().map_or(0..0, |item| item.at().clone());
            self.steps += 1;
            let other = match found {
                Ok(other) => other,
                Err(Some(fault)) => {
                    self.tell(here.0, at, fault);
                    return None;
                }
                Err(None) => return None,
            };
            path.push((here, items, at));
            let named = self.get(other)?;
            if !seen.insert(other) {
                // The circle is closed by the one of its rows that is written last.
                let circle = path.into_iter().skip_while(|(row, ..)| *row != other);
                if let Some((last, items, at)) = circle.max_by_key(|(row, ..)| *row) {
                    let fault = match items.as_slice() {
                        [Item::SameAs { row, .. }] => Fault::Circle { row: *row },
                        _ => Fault::NamedCircle,
                    };
                    self.tell(last.0, at, fault);
                }
                return None;
            }
            if self.steps > MOST_STEPS {
                return None;
            }
            (here, statement) = (other, named);
        }
    }

    pub(super) fn numbered(&self, row: u32) -> Option<Id> {
        let others = || self.others.filter(|(number, _)| number % 2 == row % 2).map(|(_, id)| id);
        let older = || self.older.get(&row).copied().filter(|_| !self.rows.contains_key(&1));
        self.rows.get(&row).copied().or_else(others).or_else(older)
    }

    /// Keeps a row for words that go back to it.
    fn remember(&mut self, id: Id, statement: &Statement) {
        match &statement.doing {
            Doing::Row { label: Some(label), .. } if !label.numbers.is_empty() || label.others.is_some() => {
                self.history.push(Past::Row(id));
            }
            Doing::Row { label: None, items } => match items.as_slice() {
                // "Work as established": nobody knows how long.
                [Item::Unsaid { .. }] => self.history.push(Past::Unknown),
                items => self.history.push_unnumbered(Past::Row(id), next_rows(items, self.size)),
            },
            Doing::Row { label: Some(label), items } => {
                let rows = next_rows(items, self.size).or(label.rows.as_ref().map(|_| 1));
                self.history.push_unnumbered(Past::Row(id), rows);
            }
            _ => self.history.push_unnumbered(Past::Row(id), None),
        }
    }

    /// Works what a sentence or a label without numbers is, several rows where it says so: "Next 4 rows".
    pub(super) fn unnumbered(&mut self, id: Id, statement: &'a Statement, label: Option<&Label>, items: &[Item]) {
        if label.is_some_and(|label| label.rows.is_none()) {
            // "Every row:" is nobody knows how many.
            self.row(id, statement, true, false);
            if !self.pace.was_plain() {
                self.lose(id.0, statement.at.clone(), self.lost_at.is_some());
            }
            self.stated(id, statement, false);
            return;
        }
        let said = label.and_then(|label| label.rows.as_ref()).map_or(1, |rows| rows.of(self.size));
        // "Next 2 rows: BO 3 sts at beg of next 2 rows" says it twice.
        let twice = next_rows(items, self.size).is_some_and(|rows| rows > 1);
        let rows = if twice { said.min(1) } else { said };
        for row in 1..=rows {
            self.row(id, statement, row == 1, row == rows);
            if self.steps > MOST_STEPS {
                break;
            }
        }
        if rows == 0 {
            self.stated(id, statement, false);
        }
    }

    /// Works one row, and holds it against what it says of itself: of its side the first time, of its stitches the last time.
    pub(super) fn row(&mut self, id: Id, statement: &'a Statement, first: bool, last: bool) {
        self.remember(id, statement);
        if let Some((block, at)) = self.lost_at.take() {
            self.tell(block, at, Fault::Unknown);
        }
        if statement.trouble.is_some() {
            self.needle = Needle::UNKNOWN;
            self.pace.lose();
            self.sides.forget();
            self.stated(id, statement, false);
            return;
        }
        let told = self.told.len();
        let Some(items) = self.items(id, statement) else {
            self.lose(id.0, statement.at.clone(), self.told.len() > told);
            return;
        };
        if first {
            self.turn(id, statement, items);
        } else {
            self.sides.go_on(1);
        }
        if let [Item::Unsaid { as_before, .. }] = items {
            // As the rows before: none the more if they add none.
            if !as_before || !self.pace.is_even() {
                self.lose(id.0, statement.at.clone(), false);
            }
            self.stated(id, statement, false);
            return;
        }
        let outcome = self.outcome_with_pieces(id, statement, items, last);
        let unfit = outcome.faults.iter().any(|(fault, _)| unfit(*fault));
        for (fault, at) in outcome.faults {
            self.tell(id.0, at, fault);
        }
        if let (Some(says), Some(is), false) = (change(statement, self.size), outcome.change, unfit) {
            let rows = match &statement.doing {
                Doing::Row { label: Some(label), .. } => {
                    let several = label.rows.as_ref().map(|rows| rows.of(self.size));
                    several.or(i64::try_from(label.numbers.len()).ok()).unwrap_or(1)
                }
                _ => 1,
            };
            // A note on several rows may be of each or of all.
            if last && says != is && says != is.saturating_mul(rows) {
                let at = statement.change.as_ref().map_or_else(|| statement.at.clone(), |change| change.by.at.clone());
                self.tell(id.0, at, Fault::Change { says, is });
            }
        }
        if let (Some(at), None) = (outcome.lost, &statement.stated) {
            self.lose(id.0, at, false);
        }
        self.needle = outcome.after;
        self.pace.row(outcome.change);
        if last {
            self.stated(id, statement, false);
        }
    }

    /// Works items on what is on the needle; a pattern that takes for ever is given up.
    pub(super) fn outcome(&mut self, statement: &Statement, items: &[Item]) -> Outcome {
        let label = match &statement.doing {
            Doing::Row { label, .. } => label.as_ref(),
            _ => None,
        };
        self.outcome_under(label, items, &statement.at)
    }

    /// Works items that stand in a place under a label.
    pub(super) fn outcome_under(&mut self, label: Option<&Label>, items: &[Item], at: &Span) -> Outcome {
        if self.steps > MOST_STEPS {
            return Outcome { lost: Some(at.clone()), ..Outcome::default() };
        }
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

/// How many rows "BO 3 sts at beg of next 2 rows, then 2 sts at beg of next 4 rows" are; nothing for another row.
pub(super) fn next_rows(items: &[Item], size: usize) -> Option<i64> {
    let [Item::Repeat { items, how: How::Times(_), at }] = items else { return None };
    let (Item::Even { until: Until::End, at: rest, .. }, edges) = items.split_last()? else { return None };
    let rows = edges.iter().map(|edge| match edge {
        // What is said of both ends has no number of rows.
        Item::Repeat { how: How::Times(rows), .. } if rows.at.is_empty() => Some(1),
        Item::Repeat { how: How::Times(rows), .. } => Some(rows.of(size)),
        _ => None,
    });
    rows.sum::<Option<i64>>().filter(|_| rest == at)
}
