//! Rows that a sentence goes to by their name before they are written: "Work inc row every 4th row", and "Inc row: …" behind it.

use super::super::name::RowName;
use super::super::statement::{Doing, Repeated, Rows, Statement};
use super::knitter::{Id, Knitter};

/// How many sentences a row may stand behind the one that goes to it.
const FARTHEST: usize = 100;

impl Knitter<'_> {
    /// The row of a name that is written in the same part behind a sentence. Where no other rows come between, it is only written
    /// there, and worked where the sentence says.
    pub(super) fn ahead(&mut self, id: Id, name: &RowName) -> Option<Id> {
        let statements = &self.blocks.get(id.0)?.statements;
        let mut only_written = true;
        for (at, statement) in statements.iter().enumerate().skip(id.1.saturating_add(1)).take(FARTHEST) {
            match &statement.doing {
                Doing::Heading { .. } | Doing::CastOn(_) => return None,
                _ if !statement.is_for(self.size) => {}
                _ if named(statement) == Some(name.key()) => {
                    if only_written {
                        self.written.insert((id.0, at));
                    }
                    return Some((id.0, at));
                }
                // Of several such sentences each has its row behind them all.
                Doing::Aside | Doing::Repeat(Repeated { rows: Rows::Named(_), .. }) => {}
                _ => only_written &= named(statement).is_some(),
            }
        }
        None
    }
}

/// The name of a row that has no number.
fn named(statement: &Statement) -> Option<&str> {
    match &statement.doing {
        Doing::Row { label: Some(label), .. } if label.numbers.is_empty() => label.name.as_ref().map(RowName::key),
        _ => None,
    }
}
