//! Rows that are worked again, so many times or until so many stitches are left.

use super::super::count::Needle;
use super::super::fault::Fault;
use super::super::statement::{Again, Repeated, Rows, Statement};
use super::super::tree::{Item, Number};
use super::knitter::{Id, Knitter, MOST_ROWS, MOST_STEPS};
use super::usual::unfit;

impl<'a> Knitter<'a> {
    pub(super) fn repeat(&mut self, id: Id, statement: &'a Statement, repeated: &Repeated) {
        let Some(rows) = self.repeated_rows(id, repeated) else {
            self.lose(id.0, statement.at.clone(), true);
            self.stated(id, statement, false);
            return;
        };
        let (before, marked) = (self.needle, self.markers.clone());
        match &repeated.again {
            Again::More(number) => self.passes(id, repeated, &rows, number.of(self.size)),
            Again::Times(number) => {
                let times = number.of(self.size);
                let told = self.told.len();
                self.passes(id, repeated, &rows, times);
                let says = statement.stated.as_ref().and_then(|stated| stated.values.get(self.size).copied());
                let wrong = self.told.len() > told || says.zip(self.needle.total).is_some_and(|(says, is)| says != is);
                if wrong && times > 0 {
                    let (kept, needle) = (self.told.split_off(told), self.needle);
                    let markers = std::mem::replace(&mut self.markers, marked);
                    self.needle = before;
                    self.passes(id, repeated, &rows, times - 1);
                    let fits = self.told.len() == told && says.is_some() && says == self.needle.total;
                    if fits {
                        self.tell(id.0, number.at.clone(), Fault::InAll { times });
                    } else {
                        self.told.truncate(told);
                        self.told.extend(kept);
                        (self.needle, self.markers) = (needle, markers);
                    }
                }
            }
            Again::UntilStitches(number) => self.until_stitches(id, &rows, number),
            Again::Unsaid => {
                self.passes(id, repeated, &rows, 1);
                if self.needle.total != before.total {
                    self.needle = before;
                    self.lose(id.0, statement.at.clone(), false);
                }
            }
        }
        self.stated(id, statement, false);
    }

    /// The rows that are worked again; nothing, and told, where one of them is not there.
    fn repeated_rows(&mut self, id: Id, repeated: &Repeated) -> Option<Vec<Option<Id>>> {
        match &repeated.rows {
            Rows::Last(number) => {
                let start = self.history.len().checked_sub(usize::try_from(*number).ok()?)?;
                Some(self.history.get(start..)?.to_vec())
            }
            Rows::Numbered(numbers) => {
                let mut all = Vec::new();
                for number in numbers {
                    match self.numbered(*number) {
                        Some(row) => all.push(Some(row)),
                        None => {
                            self.tell(id.0, repeated.at.clone(), Fault::NoRow { row: *number });
                            return None;
                        }
                    }
                }
                Some(all)
            }
        }
    }

    /// Works rows once more; returns what was on the needle before the first that does not fit.
    fn pass(&mut self, rows: &[Option<Id>]) -> Result<(), i64> {
        for row in rows {
            let Some(id) = *row else { continue };
            let Some(statement) = self.get(id) else { continue };
            let told = self.told.len();
            let items = if statement.trouble.is_some() { None } else { self.items(id, statement, 0) };
            self.told.truncate(told);
            let before = self.needle;
            match items {
                Some([Item::Unsaid { as_before: true, .. }]) if self.last_change == Some(0) => {}
                Some(items) => {
                    let outcome = self.outcome(statement, items);
                    self.needle = outcome.after;
                    self.last_change = outcome.change;
                    if outcome.faults.iter().any(|(fault, _)| unfit(*fault)) {
                        return Err(before.here.unwrap_or(0));
                    }
                }
                None => self.needle = Needle::UNKNOWN,
            }
        }
        Ok(())
    }

    fn passes(&mut self, id: Id, repeated: &Repeated, rows: &[Option<Id>], times: i64) {
        // A first working that does not fit was told of where it stands.
        let mut worked = 0;
        for pass in 1..=times {
            let (before, marked) = (self.needle, self.markers.clone());
            if before == Needle::UNKNOWN {
                break;
            }
            worked += rows.len();
            if worked > MOST_ROWS || self.steps > MOST_STEPS {
                self.lost_at = Some((id.0, repeated.at.clone()));
                self.needle = Needle::UNKNOWN;
                break;
            }
            if let Err(had) = self.pass(rows) {
                self.tell(id.0, repeated.at.clone(), Fault::Again { pass, had });
                self.needle = Needle::UNKNOWN;
                break;
            }
            if self.needle == before && self.markers == marked {
                break;
            }
        }
        self.history.extend(rows.iter().copied());
    }

    fn until_stitches(&mut self, id: Id, rows: &[Option<Id>], number: &Number) {
        let wanted = number.of(self.size);
        let Some(first) = self.needle.total else {
            self.needle = Needle::of(wanted);
            return;
        };
        let falls = first > wanted;
        let mut worked = 0;
        while let Some(total) = self.needle.total {
            if total == wanted {
                return;
            }
            worked += rows.len().max(1);
            let passed = if falls { total < wanted } else { total > wanted };
            let before = self.needle;
            if passed || self.pass(rows).is_err() || self.needle == before || worked > MOST_ROWS {
                self.tell(id.0, number.at.clone(), Fault::Missed { wanted, is: total });
                self.needle = Needle::UNKNOWN;
            }
        }
    }
}
