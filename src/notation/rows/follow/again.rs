//! Rows that are worked again, so many times or until so many stitches are left.

use super::super::count::Needle;
use super::super::fault::Fault;
use super::super::statement::{Again, Repeated, Rows, Statement};
use super::super::tree::{Item, Number};
use super::knitter::{Id, Knitter, MOST_ROWS, MOST_STEPS};
use super::past::{Last, Past};
use super::usual::unfit;

impl<'a> Knitter<'a> {
    pub(super) fn repeat(&mut self, id: Id, statement: &'a Statement, repeated: &Repeated) {
        let rows = match self.repeated_rows(repeated) {
            Ok(rows) => rows,
            Err(fault) => {
                self.lose(id.0, repeated.at.clone(), fault.is_some());
                self.history.push(Past::Unknown);
                self.sides.forget();
                if let Some(fault) = fault {
                    self.tell(id.0, repeated.at.clone(), fault);
                }
                self.stated(id, statement, false);
                return;
            }
        };
        let (before, marked) = (self.needle, self.markers.clone());
        let already = self.told.len();
        match &repeated.again {
            Again::More(number) => {
                let times = number.of(self.size);
                self.passes(id, repeated, &rows, times);
                self.keep_again(id, repeated, &rows, times);
            }
            Again::Times(number) => {
                let mut times = number.of(self.size);
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
                        times -= 1;
                    } else {
                        self.told.truncate(told);
                        self.told.extend(kept);
                        (self.needle, self.markers) = (needle, markers);
                    }
                }
                self.keep_again(id, repeated, &rows, times);
            }
            Again::UntilStitches(number) => {
                let times = self.until_stitches(id, &rows, number);
                if times.is_none() {
                    self.history.push(Past::Unknown);
                }
                self.keep_again(id, repeated, &rows, times.unwrap_or(1));
                if times.is_none() {
                    self.sides.forget();
                }
            }
            Again::Unsaid => {
                self.passes(id, repeated, &rows, 1);
                self.history.push(Past::Unknown);
                self.keep_again(id, repeated, &rows, 1);
                if !rows.len().is_multiple_of(2) {
                    self.sides.forget();
                }
                if self.needle.total != before.total {
                    self.needle = before;
                    self.lose(id.0, statement.at.clone(), false);
                }
            }
        }
        let unread = |row: &Past| match row {
            Past::Row(row) => self.get(*row).is_some_and(|statement| statement.trouble.is_some()),
            Past::Even | Past::Part | Past::Unknown => false,
        };
        let lost = before.total.is_some() && self.needle.total.is_none() && self.lost_at.is_none();
        if lost && self.told.len() == already && !rows.iter().any(unread) {
            self.lost_at = Some((id.0, repeated.at.clone()));
        }
        self.stated(id, statement, false);
    }

    /// The rows that are worked again; where one of them is not there, what is told, or nothing where they are not known.
    fn repeated_rows(&self, repeated: &Repeated) -> Result<Vec<Past>, Option<Fault>> {
        match &repeated.rows {
            Rows::Last(number) => match self.history.last(*number) {
                Last::Rows(rows) => Ok(rows),
                Last::Few(had) => Err(Some(Fault::FewRows { says: *number, had })),
                Last::Unknown => Err(None),
            },
            Rows::Numbered(numbers) => {
                let row =
                    |number: &u32| self.numbered(*number).map(Past::Row).ok_or(Some(Fault::NoRow { row: *number }));
                numbers.iter().map(row).collect()
            }
        }
    }

    /// Works rows once more; returns what was on the needle before the first that does not fit.
    fn pass(&mut self, rows: &[Past]) -> Result<(), i64> {
        for row in rows {
            let Past::Row(id) = *row else {
                if *row == Past::Even {
                    self.markers.go_on();
                    self.last_change = Some(0);
                }
                continue;
            };
            let Some(statement) = self.get(id) else { continue };
            let told = self.told.len();
            let items = if statement.trouble.is_some() { None } else { self.items(id, statement) };
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

    fn passes(&mut self, id: Id, repeated: &Repeated, rows: &[Past], times: i64) {
        // A first working that does not fit was told of where it stands.
        let mut worked = 0;
        for pass in 1..=times {
            let (before, marked) = (self.needle, self.markers.clone());
            if before == Needle::UNKNOWN {
                break;
            }
            worked += rows.len();
            if worked > MOST_ROWS || self.steps > MOST_STEPS {
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
    }

    /// Works rows until there are so many stitches; returns how many times, where that is known.
    fn until_stitches(&mut self, id: Id, rows: &[Past], number: &Number) -> Option<i64> {
        let wanted = number.of(self.size);
        let Some(first) = self.needle.total else {
            self.needle = Needle::of(wanted);
            self.lost_at = None;
            return None;
        };
        let falls = first > wanted;
        let mut worked = 0;
        let mut times = 0;
        while let Some(total) = self.needle.total {
            if total == wanted {
                return Some(times);
            }
            times += 1;
            worked += rows.len().max(1);
            let passed = if falls { total < wanted } else { total > wanted };
            let before = self.needle;
            if passed || self.pass(rows).is_err() || self.needle == before || worked > MOST_ROWS {
                self.tell(id.0, number.at.clone(), Fault::Missed { wanted, is: total });
                self.needle = Needle::UNKNOWN;
            }
        }
        None
    }
}
