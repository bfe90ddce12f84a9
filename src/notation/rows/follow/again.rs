//! Rows that are worked again, so many times or until so many stitches are left.

use super::super::count::{Needle, Outcome};
use super::super::fault::Fault;
use super::super::name::RowName;
use super::super::statement::{Every, NextSide, Repeated, Rows, Statement};
use super::super::tree::{Item, Number, Span};
use super::knitter::{Id, Knitter, MOST_ROWS, MOST_STEPS};
use super::past::{Last, Past};
use super::spells::{Before, Turn, Turns, What};
use super::usual::unfit;

impl<'a> Knitter<'a> {
    pub(super) fn repeat(&mut self, id: Id, statement: &'a Statement, repeated: &Repeated) {
        let rows = match self.repeated_rows(id, repeated) {
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
        let (before, already) = (self.needle, self.told.len());
        let what = What::Rows(rows, repeated.at.clone());
        self.work_spells(id, statement, &repeated.spells, &what);
        let spaced = repeated.spells.iter().any(|spell| spell.every != Every::Row);
        if spaced && matches!(statement.next_side, NextSide::Is(_)) {
            // "Ending with a WS row": perhaps there is one behind the last that was told.
            self.history.push(Past::Unknown);
        }
        let unread = |row: &Past| match row {
            Past::Row(row) => self.get(*row).is_some_and(|statement| statement.trouble.is_some()),
            Past::Chart(..) | Past::Even | Past::Part | Past::Unknown => false,
        };
        let lost = before.total.is_some() && self.needle.total.is_none() && self.lost_at.is_none();
        let is_read = matches!(&what, What::Rows(rows, _) if !rows.iter().any(unread));
        if lost && self.told.len() == already && is_read {
            self.lost_at = Some((id.0, repeated.at.clone()));
        }
    }

    /// The rows that are worked again; where one of them is not there, what is told, or nothing where they are not known.
    fn repeated_rows(&mut self, id: Id, repeated: &Repeated) -> Result<Vec<Past>, Option<Fault>> {
        match &repeated.rows {
            Rows::Last(number) => match self.history.last(*number) {
                Last::Rows(rows) => Ok(rows),
                Last::Few(had) => Err(Some(Fault::FewRows { says: *number, had })),
                Last::Unknown => Err(None),
            },
            Rows::Named(name) => match self.named(name) {
                Ok(row) => Ok(vec![Past::Row(row)]),
                // "Work purl row" needs none of that name.
                Err(_) if name.is_plain() => Ok(vec![Past::Even]),
                Err(fault) => self.ahead(id, name).map(|row| vec![Past::Row(row)]).ok_or(fault),
            },
            Rows::Numbered(numbers) => {
                let row = |number: &u32| {
                    let row = self.in_chart(*number).or_else(|| self.numbered(*number).map(Past::Row));
                    row.ok_or(Some(Fault::NoRow { row: *number }))
                };
                numbers.iter().map(row).collect()
            }
        }
    }

    /// The row of a name; where there is none, what is told, or nothing where it may be that of a chart: "Work lace row 3".
    pub(super) fn named(&self, name: &RowName) -> Result<Id, Option<Fault>> {
        let is_own = |base: &str| self.names.keys().any(|known| known.starts_with(base));
        let unsure = name.before_number().is_some_and(|base| !is_own(base));
        self.names.get(name.key()).copied().ok_or(if unsure { None } else { Some(Fault::NoName) })
    }

    /// Works rows once more; returns what was on the needle before the first that does not fit.
    fn pass(&mut self, turn: Turn<'_>) -> Result<(), i64> {
        match turn.before {
            Before::Even(rows) => self.plain_rows(rows),
            Before::Unknown => self.some_rows(),
        }
        for row in turn.rows {
            let Past::Row(id) = *row else {
                match row {
                    Past::Chart(id, number) => {
                        let before = self.needle;
                        let Some(outcome) = self.charted(*id).map(|charted| self.chart_row(charted, *number)) else {
                            continue;
                        };
                        self.go_through(&outcome, before)?;
                    }
                    Past::Even => self.plain_rows(1),
                    Past::Unknown => self.some_rows(),
                    _ => {}
                }
                continue;
            };
            let Some(statement) = self.get(id) else { continue };
            let told = self.told.len();
            let items = if statement.trouble.is_some() { None } else { self.items(id, statement) };
            self.told.truncate(told);
            let before = self.needle;
            match items {
                Some([Item::Unsaid { as_before: true, .. }]) if self.pace.is_even() => {}
                Some(items) => {
                    self.put_held(items);
                    let outcome = self.outcome(statement, items);
                    self.go_through(&outcome, before)?;
                }
                None => self.needle = Needle::UNKNOWN,
            }
        }
        Ok(())
    }

    /// Goes on with what a row leaves; returns what was on the needle before it where it does not fit.
    fn go_through(&mut self, outcome: &Outcome, before: Needle) -> Result<(), i64> {
        self.needle = outcome.after;
        self.pace.row(outcome.change);
        let is_unfit = outcome.faults.iter().any(|(fault, _)| unfit(*fault));
        if is_unfit { Err(before.here.unwrap_or(0)) } else { Ok(()) }
    }

    /// Works so many rows that change no count.
    fn plain_rows(&mut self, rows: usize) {
        if rows == 0 {
            return;
        }
        // Behind two rows the work faces as it did before them.
        for _ in 0..rows.min(2 - rows % 2) {
            self.markers.plain_row();
        }
        self.pace.plain(i64::try_from(rows).ok());
        self.needle.here = self.needle.total;
        self.steps += 1;
    }

    /// Works rows that change no count, nobody knows how many.
    fn some_rows(&mut self) {
        self.markers.go_on();
        self.needle.here = self.needle.total;
    }

    /// Works rows so many times, which are named in a place.
    pub(super) fn passes(&mut self, id: Id, at: &Span, turns: &Turns<'_>, times: i64) {
        // A first working that does not fit was told of where it stands.
        let mut worked = 0;
        for pass in 1..=times {
            let (before, marked, turn) = (self.needle, self.markers.clone(), turns.of(pass));
            if before == Needle::UNKNOWN {
                break;
            }
            worked += turn.len();
            if worked > MOST_ROWS || self.steps > MOST_STEPS {
                self.needle = Needle::UNKNOWN;
                break;
            }
            if let Err(had) = self.pass(turn) {
                self.tell(id.0, at.clone(), Fault::Again { pass, had });
                self.needle = Needle::UNKNOWN;
                break;
            }
            if self.needle == before && self.markers == marked {
                break;
            }
        }
    }

    /// Works rows until there are so many stitches; returns how many times, where that is known.
    pub(super) fn until_stitches(&mut self, id: Id, turns: &Turns<'_>, number: &Number) -> Option<i64> {
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
            let turn = turns.of(times);
            worked += turn.len().max(1);
            let passed = if falls { total < wanted } else { total > wanted };
            let before = self.needle;
            if passed || self.pass(turn).is_err() || self.needle == before || worked > MOST_ROWS {
                self.tell(id.0, number.at.clone(), Fault::Missed { wanted, is: total });
                self.needle = Needle::UNKNOWN;
            }
        }
        None
    }
}
