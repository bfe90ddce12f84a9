//! A row of a chart within a row: its edges once, its repeat as often as it goes.

use super::super::charts::{ChartRows, RowKind, Stretches};
use super::super::fault::Fault;
use super::super::lexicon::Counts;
use super::super::tree::{Item, Number, Reach, Span, Until};
use super::Reading;
use super::once::{once, times_over};
use super::work::Work;
use crate::measure::SizeRun;

/// What a row of a chart takes and leaves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Shape {
    /// What stands before the repeat and behind it, together.
    edges: Counts,
    /// One repeat.
    again: Counts,
    /// Whether the chart marks what is repeated.
    marked: bool,
}

impl Shape {
    fn of(row: &Stretches) -> Option<Self> {
        let sum = |items: &[Item]| once(items, 0, Reading::More);
        let (before, again, after) = (sum(&row.before)?, sum(&row.again)?, sum(&row.after)?);
        let edges = Counts::new(before.takes + after.takes, before.leaves + after.leaves);
        Some(Self { edges, again, marked: row.marked })
    }

    fn is_neutral(self) -> bool {
        self.edges.takes == self.edges.leaves && self.again.takes == self.again.leaves
    }

    fn times(self, times: i64) -> Counts {
        let again = times_over(self.again, times);
        Counts::new(self.edges.takes.saturating_add(again.takes), self.edges.leaves.saturating_add(again.leaves))
    }
}

/// The row that is meant: that of the number, or any of several that are alike.
enum Meant<'a> {
    Row(&'a Stretches, Shape),
    Even,
    Unknown,
    Missing(u32),
}

fn meant<'a>(chart: &'a ChartRows, rows: &[u32]) -> Meant<'a> {
    if let Some(missing) = rows.iter().find(|row| chart.row(**row).is_none()) {
        return Meant::Missing(*missing);
    }
    let mut all = rows.iter().filter_map(|row| chart.row(*row));
    let Some(first) = all.next() else { return Meant::Unknown };
    let shape = |kind: &RowKind| match kind {
        RowKind::Worked(row) => Shape::of(row),
        RowKind::Even | RowKind::Unknown => None,
    };
    match first {
        RowKind::Unknown => Meant::Unknown,
        RowKind::Even if all.all(|other| *other == RowKind::Even) => Meant::Even,
        RowKind::Even => Meant::Unknown,
        RowKind::Worked(row) => match shape(first) {
            Some(own) if all.all(|other| shape(other) == Some(own)) => Meant::Row(row, own),
            _ => Meant::Unknown,
        },
    }
}

/// What a row of a chart takes and leaves whatever the needle holds; nothing where that cannot be said.
pub(super) fn fixed(chart: &ChartRows, rows: &[u32], reach: &Reach, size: usize) -> Option<Counts> {
    match (meant(chart, rows), reach) {
        (Meant::Row(_, shape), Reach::Times(times)) => Some(shape.times(times.of(size))),
        (Meant::Row(_, shape), Reach::Over(number)) => {
            let room = number.of(size).checked_sub(shape.edges.takes).filter(|room| *room >= 0)?;
            let times = room.checked_div(shape.again.takes)?;
            (room.checked_rem(shape.again.takes) == Some(0)).then(|| shape.times(times))
        }
        (Meant::Even, Reach::Over(number)) => Some(times_over(Counts::new(1, 1), number.of(size))),
        _ => None,
    }
}

/// Whether a row of a chart leaves as many as it takes, however often its repeat is worked.
pub(super) fn is_neutral(chart: &ChartRows, rows: &[u32]) -> bool {
    match meant(chart, rows) {
        Meant::Row(_, shape) => shape.is_neutral(),
        Meant::Even => true,
        Meant::Unknown | Meant::Missing(_) => false,
    }
}

impl Work {
    /// Works a row of a chart; `behind` is what follows it in the row.
    pub(super) fn chart(&mut self, chart: &ChartRows, rows: &[u32], reach: &Reach, behind: &[Item], at: &Span) {
        let row = match meant(chart, rows) {
            Meant::Row(row, shape) => Some((row, shape)),
            Meant::Even => None,
            Meant::Unknown => return self.lose(at),
            Meant::Missing(row) => {
                let fault = Fault::NoChartRow { row, last: chart.last(), chart: chart.place };
                return self.break_at(fault, at);
            }
        };
        match reach {
            Reach::Times(times) => match row {
                Some((row, _)) => self.chart_times(row, times.of(self.size), at),
                None => self.lose(at),
            },
            Reach::Over(number) => {
                let room = number.of(self.size);
                self.chart_over(row, room, room, at);
            }
            Reach::Until(until) => self.chart_until(row, until, at),
            Reach::Rest => match (once(behind, self.size, self.reading), row) {
                (Some(counts), _) => {
                    let last = Number { values: SizeRun::one(counts.takes), at: at.clone() };
                    self.chart_until(row, &Until::Last(last), at);
                }
                (None, Some((row, shape))) if !shape.marked => self.chart_times(row, 1, at),
                _ => self.lose(at),
            },
        }
    }

    fn chart_times(&mut self, row: &Stretches, times: i64, at: &Span) {
        self.items(&row.before);
        self.repeat(&row.again, times, at);
        self.items(&row.after);
    }

    fn chart_until(&mut self, row: Option<(&Stretches, Shape)>, until: &Until, at: &Span) {
        let neutral = row.is_none_or(|(_, shape)| shape.is_neutral());
        let afloat = self.floats > 0;
        if let Until::Marker(to) = until {
            match self.room_to_marker(to, at) {
                Some(room) => {
                    self.chart_over(row, room, room, at);
                    self.arrive(to);
                }
                None if self.broken => {}
                None => self.float(neutral, at),
            }
            return;
        }
        match self.room(until, at) {
            Some(room) if !afloat => self.chart_over(row, room, self.had, at),
            Some(room) if neutral => {
                self.marks.lose();
                self.take(Counts::new(1, 1), room);
            }
            None if neutral || self.broken => {}
            _ => self.lose(at),
        }
        self.tail(until, at);
    }

    /// Works so many stitches as a chart shows them, all of them; `had` are those that are told of where they are too few.
    fn chart_over(&mut self, row: Option<(&Stretches, Shape)>, room: i64, had: i64, at: &Span) {
        let Some((row, shape)) = row else {
            self.take(Counts::new(1, 1), room);
            return;
        };
        let within = room.saturating_sub(shape.edges.takes);
        // Where nothing is marked to be repeated, the row is worked once or oftener.
        let least = if shape.marked { 0 } else { shape.again.takes };
        if within < least {
            self.break_at(Fault::Short { by: least.saturating_sub(within), had }, at);
            return;
        }
        self.items(&row.before);
        self.repeat_over(&row.again, shape.again, within, at);
        if !self.broken {
            self.items(&row.after);
        }
    }
}
