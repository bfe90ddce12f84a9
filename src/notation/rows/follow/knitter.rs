//! One who works through the rows in one size: what she has in mind, and what each sentence asks of her.

use super::super::count::Needle;
use super::super::fault::Fault;
use super::super::statement::{Doing, Every, NextSide, Statement, Written};
use super::super::tree::Span;
use super::apart::Apart;
use super::markers::Markers;
use super::pace::Pace;
use super::past::{History, Past};
use super::pieces::Held;
use super::sides::Sides;
use std::collections::{BTreeMap, BTreeSet};

/// A statement by its block and its place in it.
pub(super) type Id = (usize, usize);

/// The most rows that are worked, repeats included; beyond, the count is given up.
pub(super) const MOST_ROWS: usize = 20_000;

/// The most steps all rows together may take; nobody's pattern comes near.
pub(super) const MOST_STEPS: u64 = 2_000_000;

/// One who works through the rows in one size.
pub(super) struct Knitter<'a> {
    pub(super) blocks: &'a [Written],
    pub(super) size: usize,
    pub(super) needle: Needle,
    pub(super) markers: Markers,
    pub(super) sides: Sides,
    /// The stitches that are off the needle.
    pub(super) held: Held,
    /// How many wait that the sentence just before did not name; the next one may put them aside in words.
    pub(super) waits: Option<i64>,
    /// What the last heading says.
    pub(super) heading: Option<String>,
    /// The piece that is on the needle, by the heading under which it was cast on.
    pub(super) piece: Option<String>,
    /// Numbered rows since the numbers last began anew.
    pub(super) rows: BTreeMap<u32, Id>,
    /// Rows by the names they have, each the last of its name.
    pub(super) names: BTreeMap<&'a str, Id>,
    /// Rows that are worked where a sentence before them says, and only written where they stand.
    pub(super) written: BTreeSet<Id>,
    /// Those before these, which words go back to as long as no row 1 is among the new ones.
    pub(super) older: BTreeMap<u32, Id>,
    /// The row that stands for every other one, and its number.
    pub(super) others: Option<(u32, Id)>,
    /// Rows that are read and not yet worked: a label may name one that comes after the next.
    pub(super) waiting: Vec<(u32, Id)>,
    /// Whether a sentence among those rows may turn the work.
    pub(super) doubt: bool,
    /// The rows worked.
    pub(super) history: History,
    /// The last sentence that worked rows of a chart; nothing where rows in words have begun since.
    pub(super) worked_chart: Option<Id>,
    /// What the last rows added.
    pub(super) pace: Pace,
    /// Words that lost the count and have not been told of.
    pub(super) lost_at: Option<(usize, Span)>,
    /// What is in mind while the rows of a chart are told in words.
    pub(super) apart: Option<Apart>,
    pub(super) steps: u64,
    pub(super) told: Vec<(usize, Span, Fault)>,
    pub(super) after: BTreeMap<Id, Option<i64>>,
}

impl<'a> Knitter<'a> {
    pub(super) fn new(blocks: &'a [Written], size: usize) -> Self {
        Self {
            blocks,
            size,
            needle: Needle::UNKNOWN,
            markers: Markers::default(),
            sides: Sides::default(),
            held: Held::default(),
            waits: None,
            heading: None,
            piece: None,
            rows: BTreeMap::new(),
            older: BTreeMap::new(),
            names: BTreeMap::new(),
            written: BTreeSet::new(),
            others: None,
            waiting: Vec::new(),
            doubt: false,
            history: History::of(blocks),
            worked_chart: None,
            pace: Pace::default(),
            lost_at: None,
            apart: None,
            steps: 0,
            told: Vec::new(),
            after: BTreeMap::new(),
        }
    }

    pub(super) fn work(&mut self) {
        for (block, written) in self.blocks.iter().enumerate() {
            if written.marked {
                self.markers.forget();
            }
            self.sides.forget();
            if written.piece.is_some() {
                self.heading.clone_from(&written.piece);
            }
            for (at, statement) in written.statements.iter().enumerate() {
                self.statement((block, at), statement);
            }
            self.work_waiting();
            self.rejoin();
        }
    }

    pub(super) fn get(&self, id: Id) -> Option<&'a Statement> {
        self.blocks.get(id.0)?.statements.get(id.1)
    }

    pub(super) fn tell(&mut self, block: usize, at: Span, fault: Fault) {
        self.told.push((block, at, fault));
    }

    fn statement(&mut self, id: Id, statement: &'a Statement) {
        if !statement.is_for(self.size) {
            return;
        }
        if !matches!(statement.doing, Doing::PutAside(_) | Doing::Aside) {
            self.waits = None;
        }
        if let Doing::Row { label: Some(label), .. } = &statement.doing
            && let Some(name) = &label.name
        {
            self.names.insert(name.key(), id);
        }
        if self.written.remove(&id) {
            self.after.insert(id, self.needle.total);
            return;
        }
        if let Doing::Row { label: Some(label), .. } = &statement.doing
            && (!label.numbers.is_empty() || label.others.is_some())
        {
            self.worked_chart = None;
            let first = label.numbers.first().copied().unwrap_or(0);
            if first == 1 && self.rows.contains_key(&1) {
                self.work_waiting();
                self.begin_rows();
            }
            for number in &label.numbers {
                self.rows.entry(*number).or_insert(id);
                self.waiting.push((*number, id));
            }
            if let Some(number) = label.others {
                self.others = Some((number, id));
            }
            return;
        }
        if statement.doing != Doing::Aside {
            self.work_waiting();
        }
        if !matches!(
            statement.doing,
            Doing::Row { .. } | Doing::Chart(_) | Doing::Repeat(_) | Doing::Plain { rows: Some(_) } | Doing::Aside
        ) {
            self.sides.forget();
        }
        match &statement.doing {
            Doing::Row { items, label } => {
                if items.is_empty() && label.is_none() && statement.trouble.is_none() {
                    self.stated(id, statement, id.0 > 0 && id.1 == 0);
                } else {
                    self.unnumbered(id, statement, label.as_ref(), items);
                }
            }
            Doing::CastOn(number) => {
                self.begin(Needle::of(number.of(self.size)));
                self.stated(id, statement, false);
            }
            Doing::PickUp(number) => self.pick_up(id, statement, number),
            Doing::Alike { as_of, name } => self.alike(id, statement, as_of.as_deref(), name.as_deref()),
            Doing::PutAside(put) => self.put_aside(id, statement, put),
            Doing::Over(number) => self.over(id, statement, number),
            Doing::TakeUp(taken) => self.take_up(id, statement, taken),
            Doing::Shape(shaped) => self.shape(id, statement, shaped),
            Doing::Chart(charted) => self.chart(id, statement, charted),
            Doing::Repeat(repeated) => self.repeat(id, statement, repeated),
            Doing::Plain { rows } => {
                match rows {
                    Some(rows) => {
                        self.history.again(&[Past::Even], i64::from(*rows));
                        self.sides.go_on(i64::from(*rows));
                    }
                    None => self.history.push(Past::Unknown),
                }
                self.pace.plain(rows.map(i64::from));
                self.markers.go_on();
                self.needle.here = self.needle.total;
                self.stated(id, statement, false);
            }
            Doing::Established => {
                if !self.pace.is_even() {
                    self.lose(id.0, statement.at.clone(), statement.trouble.is_some());
                }
                self.markers.go_on();
                self.history.push(Past::Unknown);
                self.stated(id, statement, false);
            }
            Doing::Unsaid => self.lose_rows(id, statement),
            Doing::BindOff => {
                self.needle = Needle::UNKNOWN;
                self.lost_at = None;
                self.stated(id, statement, false);
            }
            Doing::Heading { chart, name } => {
                if !chart {
                    self.heading = Some(name.clone());
                }
                self.begin_rows();
                self.rejoin();
                if *chart {
                    self.set_apart();
                }
            }
            Doing::Aside => self.stated(id, statement, false),
        }
        if statement.marks {
            self.markers.forget();
        }
        match statement.next_side {
            NextSide::Other => {}
            // These rows come before the sentence, and perhaps others behind it with them.
            _ if !self.waiting.is_empty() => self.doubt = true,
            said => {
                // "Every 4th row twice more, ending with a WS row" has plain rows behind the last.
                let counted = match &statement.doing {
                    Doing::Plain { rows } => rows.is_some(),
                    Doing::Repeat(repeated) => repeated.spells.iter().all(|spell| spell.every == Every::Row),
                    _ => false,
                };
                if let Some(side) = self.sides.unlike(said).filter(|_| counted) {
                    self.tell(id.0, statement.at.clone(), Fault::Ends { side });
                }
                self.sides.hear(said);
            }
        }
        if statement.doing != Doing::Aside {
            self.after.insert(id, self.needle.total);
        }
    }

    /// Rows are numbered anew, or their numbers go on under another heading.
    pub(super) fn begin_rows(&mut self) {
        let rows = std::mem::take(&mut self.rows);
        if !rows.is_empty() {
            self.older = rows;
        }
        self.others = None;
        self.worked_chart = None;
    }

    /// The count is lost at some words; what was told of already is not told again.
    pub(super) fn lose(&mut self, block: usize, at: Span, told: bool) {
        if self.needle.total.is_some() && !told {
            self.lost_at = Some((block, at));
        }
        self.markers.forget();
        self.needle = Needle::UNKNOWN;
    }
}
