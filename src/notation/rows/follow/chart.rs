//! Rows of a chart that a sentence works, one after another.

use super::super::charts::RowKind;
use super::super::count::Outcome;
use super::super::fault::Fault;
use super::super::statement::{Charted, Doing, Label, Side, Statement};
use super::super::tree::Item;
use super::knitter::{Id, Knitter, MOST_STEPS};
use super::past::Past;
use super::spells::Turns;
use super::usual::unfit;
use crate::notation::chart;

impl<'a> Knitter<'a> {
    /// Works rows of a chart as often as is said.
    pub(super) fn chart(&mut self, id: Id, statement: &'a Statement, charted: &'a Charted) {
        let often = charted.times.as_ref().map(|times| times.of(self.size));
        if often == Some(0) {
            self.stated(id, statement, false);
            return;
        }
        if charted.rows.iter().any(|row| charted.chart.row(*row) == Some(&RowKind::Unknown)) {
            self.lose_rows(id, statement);
            return;
        }
        if let Some((block, at)) = self.lost_at.take() {
            self.tell(block, at, Fault::Unknown);
        }
        let mut even = true;
        for (turn, row) in charted.rows.iter().enumerate() {
            self.history.push(Past::Chart(id, *row));
            let outcome = self.chart_row(charted, *row);
            let is_unfit = outcome.faults.iter().any(|(fault, _)| unfit(*fault));
            for (fault, at) in outcome.faults {
                self.tell(id.0, at, if turn == 0 { fault } else { fault.in_chart(*row) });
            }
            if let (Some(at), None) = (outcome.lost, &statement.stated) {
                self.lose(id.0, at, false);
            }
            self.needle = outcome.after;
            self.pace.row(outcome.change);
            self.chart_turn(charted);
            even &= outcome.change == Some(0);
            if is_unfit || self.steps > MOST_STEPS {
                self.history.push(Past::Unknown);
                self.sides.forget();
                self.stated(id, statement, false);
                return;
            }
        }
        match often {
            Some(often) => {
                let rows: Vec<Past> = charted.rows.iter().map(|row| Past::Chart(id, *row)).collect();
                let turns = Turns::each(&rows);
                self.passes(id, &charted.at, &turns, often.saturating_sub(1));
                self.keep_turns(id, &charted.at, &turns, often.saturating_sub(1));
            }
            None => {
                // Nobody knows with which row it ends.
                self.history.push(Past::Unknown);
                self.sides.forget();
                if !even {
                    self.lose(id.0, statement.at.clone(), false);
                }
            }
        }
        self.worked_chart = Some(id);
        self.stated(id, statement, false);
    }

    /// Rows that nobody knows are worked.
    pub(super) fn lose_rows(&mut self, id: Id, statement: &Statement) {
        self.lose(id.0, statement.at.clone(), statement.trouble.is_some());
        self.history.push(Past::Unknown);
        self.pace.lose();
        self.sides.forget();
        self.stated(id, statement, false);
    }

    /// Works one row of a chart on what is on the needle.
    pub(super) fn chart_row(&mut self, charted: &Charted, row: u32) -> Outcome {
        let side = charted.chart.side(row).map(|side| match side {
            chart::Side::Right => Side::Right,
            chart::Side::Wrong => Side::Wrong,
        });
        let round = charted.chart.round || self.markers.is_round();
        let label = Label {
            numbers: Vec::new(),
            others: None,
            side: side.filter(|_| !round),
            round,
            name: None,
            rows: None,
            at: charted.at.clone(),
        };
        let item = Item::Chart {
            chart: charted.chart.clone(),
            rows: vec![row],
            reach: charted.reach.clone(),
            at: charted.at.clone(),
        };
        self.outcome_under(Some(&label), &[item], &charted.at)
    }

    fn chart_turn(&mut self, charted: &Charted) {
        if charted.chart.round {
            self.sides.forget();
        } else {
            self.sides.go_on(1);
        }
    }

    /// The sentence that worked rows of a chart, by its place.
    pub(super) fn charted(&self, id: Id) -> Option<&'a Charted> {
        match &self.get(id)?.doing {
            Doing::Chart(charted) => Some(charted),
            _ => None,
        }
    }

    /// The row of a number in the chart that was worked last, where no row in words has it or has begun since.
    pub(super) fn in_chart(&self, number: u32) -> Option<Past> {
        let id = self.worked_chart.filter(|_| !self.rows.contains_key(&number))?;
        self.charted(id)?.chart.row(number).map(|_| Past::Chart(id, number))
    }
}
