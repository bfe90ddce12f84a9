//! From which side a row is worked, as far as the words tell it for certain.

use super::super::fault::Fault;
use super::super::statement::{Doing, Label, NextSide, Side, Statement};
use super::super::tree::{Item, Span};
use super::knitter::{Id, Knitter};
use super::past::Past;
use super::row::next_rows;
use super::spells::{Before, Turn};

/// The side of the last row.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Sides {
    /// Nothing where the words do not tell it, or where the work is round.
    last: Option<Side>,
    /// Whether the last row has a number: how sides go with numbers is looked at elsewhere.
    numbered: bool,
}

impl Sides {
    /// From here on nobody knows.
    pub(super) fn forget(&mut self) {
        *self = Self::default();
    }

    /// Takes in what a sentence says of the side that comes next.
    pub(super) fn hear(&mut self, said: NextSide) {
        match said {
            NextSide::Other => {}
            NextSide::Is(side) => *self = Self { last: Some(side.other()), numbered: false },
            NextSide::Unknown => self.forget(),
        }
    }

    /// The side of the last row, where a sentence of rows says that it is the other one.
    pub(super) fn unlike(&self, said: NextSide) -> Option<Side> {
        match said {
            NextSide::Is(next) => self.last.filter(|last| *last == next),
            NextSide::Other | NextSide::Unknown => None,
        }
    }

    /// So many rows are worked, one from each side in turn.
    pub(super) fn go_on(&mut self, rows: i64) {
        self.numbered = false;
        if rows % 2 != 0 {
            self.last = self.last.map(Side::other);
        }
    }

    /// A row with this label is worked; returns whether it is said to be on the side of the last one.
    fn row(&mut self, label: &Label) -> bool {
        let numbered = !label.numbers.is_empty() || label.others.is_some();
        let same = label.side.is_some() && self.last == label.side;
        let wrong = same && !(numbered && self.numbered);
        let last = if label.round { None } else { label.side.or(self.last.map(Side::other)) };
        *self = Self { last, numbered };
        wrong
    }
}

impl Knitter<'_> {
    /// Holds the side that a row is said to be on against that of the row before it.
    pub(super) fn turn(&mut self, id: Id, statement: &Statement, items: &[Item]) {
        if let Some(side) = self.turned(statement, items)
            && let Doing::Row { label: Some(label), .. } = &statement.doing
        {
            self.tell(id.0, label.at.clone(), Fault::Side { side, again: false });
        }
    }

    /// Works a row; returns its side where that is said to be the one of the row before it.
    fn turned(&mut self, statement: &Statement, items: &[Item]) -> Option<Side> {
        let Doing::Row { label: Some(label), .. } = &statement.doing else {
            match next_rows(items, self.size) {
                Some(rows) => self.sides.go_on(rows),
                None => self.sides.forget(),
            }
            return None;
        };
        let wrong = self.sides.row(label);
        if !is_turned_once(items) {
            self.sides.forget();
        }
        label.side.filter(|_| wrong)
    }

    /// Keeps rows that are worked so many times more, each behind the other.
    pub(super) fn keep_again(&mut self, id: Id, at: &Span, turn: Turn<'_>, times: i64) {
        self.history.turns(turn, times);
        if turn.len() == 1 && self.pace.was_plain() {
            // "Row 1 (RS): Knit. Repeat row 1": the same from both sides, the label says where it begins.
            self.sides.go_on(times);
            return;
        }
        // In a third working the sides are as in the first.
        for _ in 0..times.min(2) {
            match turn.before {
                Before::Even(0) => {}
                Before::Even(rows) => self.sides.go_on(i64::try_from(rows).unwrap_or(i64::MAX)),
                Before::Unknown => self.sides.forget(),
            }
            for row in turn.rows {
                if let Some(side) = self.turned_again(*row) {
                    self.tell(id.0, at.clone(), Fault::Side { side, again: true });
                    self.sides.forget();
                    return;
                }
            }
        }
        if times > 2 && !turn.len().is_multiple_of(2) {
            self.sides.go_on(times);
        }
    }

    fn turned_again(&mut self, row: Past) -> Option<Side> {
        self.sides.numbered = false;
        let Past::Row(id) = row else {
            match row {
                Past::Unknown => self.sides.forget(),
                _ => self.sides.go_on(1),
            }
            return None;
        };
        let statement = self.get(id)?;
        let told = self.told.len();
        let items = self.items(id, statement).unwrap_or_default();
        self.told.truncate(told);
        if matches!(&statement.doing, Doing::Row { label: None, .. }) && next_rows(items, self.size).is_some() {
            // The rows before the last of its rows stand for themselves.
            self.sides.go_on(1);
            return None;
        }
        self.turned(statement, items)
    }
}

/// Whether the work is turned at the row's end and nowhere before it.
fn is_turned_once(items: &[Item]) -> bool {
    let Some((last, before)) = items.split_last() else { return true };
    // "Slide the stitches" and "do not turn" take no stitch.
    let slid = matches!(last, Item::Work { takes: 0, leaves: 0, .. });
    !slid && !before.iter().any(turns) && (matches!(last, Item::Turn { .. }) || !turns(last))
}

fn turns(item: &Item) -> bool {
    match item {
        Item::Turn { .. } => true,
        Item::Repeat { items, .. } => items.iter().any(turns),
        _ => false,
    }
}
