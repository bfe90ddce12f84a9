//! Spells of rows or of shaping that are worked again, in whichever reading of "times" fits.

use super::super::count::Needle;
use super::super::fault::Fault;
use super::super::statement::{Again, Every, Spell, Statement};
use super::super::tree::{Number, Span};
use super::knitter::{Id, Knitter, MOST_ROWS};
use super::markers::Markers;
use super::pace::Pace;
use super::past::{Past, Place};
use super::pieces::Held;
use super::sides::Sides;

/// What is worked again.
pub(super) enum What {
    /// These rows, which are named here.
    Rows(Vec<Past>, Span),
    /// So many stitches more at both ends together, below nothing for fewer.
    Ends(i64),
}

/// The rows of the workings in a spell.
pub(super) struct Turns<'r> {
    /// What comes before those of the first, where fewer plain ones may be left to work.
    first: Before,
    /// What comes before those of each other one.
    rest: Before,
    rows: &'r [Past],
}

/// The rows of one working.
#[derive(Clone, Copy)]
pub(super) struct Turn<'r> {
    pub(super) before: Before,
    pub(super) rows: &'r [Past],
}

/// What is worked before the rows of a working.
#[derive(Clone, Copy)]
pub(super) enum Before {
    /// So many rows that change no count.
    Even(usize),
    /// Nobody knows how many.
    Unknown,
}

impl<'r> Turns<'r> {
    /// Rows with none before them.
    pub(super) fn each(rows: &'r [Past]) -> Self {
        Self { first: Before::Even(0), rest: Before::Even(0), rows }
    }

    /// A working, counted from 1.
    pub(super) fn of(&self, pass: i64) -> Turn<'r> {
        Turn { before: if pass <= 1 { self.first } else { self.rest }, rows: self.rows }
    }
}

impl Turn<'_> {
    /// How many rows it is; what nobody knows is one.
    pub(super) fn len(&self) -> usize {
        let before = match self.before {
            Before::Even(rows) => rows,
            Before::Unknown => 1,
        };
        self.rows.len().saturating_add(before)
    }
}

/// What is in mind before spells of which nobody knows yet how they are meant.
struct Kept {
    needle: Needle,
    markers: Markers,
    history: Place,
    pace: Pace,
    sides: Sides,
    lost_at: Option<(usize, Span)>,
    held: Held,
    told: usize,
}

impl Knitter<'_> {
    /// Works spells one after another, and holds the count against what is said behind them.
    pub(super) fn work_spells(&mut self, id: Id, statement: &Statement, spells: &[Spell], what: &What) {
        let often = |again: &Again| match again {
            Again::Times(number) | Again::Either(number) if number.of(self.size) > 0 => Some(number.clone()),
            _ => None,
        };
        let unclear = spells.iter().find_map(|spell| often(&spell.again));
        let either = spells.iter().any(|spell| matches!(spell.again, Again::Either(_)));
        let Some(number) = unclear else {
            self.pass_spells(id, statement, spells, what, 0);
            self.stated(id, statement, false);
            return;
        };
        let before = self.keep();
        let says = statement.stated.as_ref().and_then(|stated| stated.values.get(self.size).copied());
        self.pass_spells(id, statement, spells, what, 0);
        let wrong = self.told.len() > before.told || says.zip(self.needle.total).is_some_and(|(says, is)| says != is);
        if wrong || (either && says.is_none()) {
            let usual = self.needle.total;
            self.restore(&before);
            self.pass_spells(id, statement, spells, what, 1);
            let is_fit = self.told.len() == before.told;
            let as_usual = usual == self.needle.total;
            if is_fit && says.is_some() && says == self.needle.total {
                if !either {
                    self.tell(id.0, number.at.clone(), Fault::InAll { times: number.of(self.size) });
                }
            } else {
                self.restore(&before);
                self.pass_spells(id, statement, spells, what, 0);
                if either && says.is_none() && !as_usual {
                    self.lose(id.0, statement.at.clone(), false);
                }
            }
        }
        self.history.go_on();
        if either {
            self.history.push(Past::Unknown);
            self.sides.forget();
        }
        self.stated(id, statement, false);
    }

    fn keep(&mut self) -> Kept {
        Kept {
            needle: self.needle,
            markers: self.markers.clone(),
            history: self.history.place(),
            pace: self.pace,
            sides: self.sides,
            lost_at: self.lost_at.clone(),
            held: self.held.clone(),
            told: self.told.len(),
        }
    }

    fn restore(&mut self, kept: &Kept) {
        self.needle = kept.needle;
        self.markers = kept.markers.clone();
        self.history.come_back(kept.history);
        self.pace = kept.pace;
        self.sides = kept.sides;
        self.lost_at.clone_from(&kept.lost_at);
        self.held.clone_from(&kept.held);
        self.told.truncate(kept.told);
    }

    /// Works spells one after another, those whose times are not clear so many times fewer.
    fn pass_spells(&mut self, id: Id, statement: &Statement, spells: &[Spell], what: &What, fewer: i64) {
        for spell in spells {
            match what {
                What::Rows(rows, at) => {
                    let turns = self.spaced(rows, spell);
                    self.pass_rows(id, statement, &spell.again, &turns, at, fewer);
                }
                What::Ends(by) => self.pass_ends(id, statement, &spell.again, *by, fewer),
            }
        }
    }

    /// Rows with the plain ones before them that make them every so manieth; those worked already are counted.
    fn spaced<'r>(&self, rows: &'r [Past], spell: &Spell) -> Turns<'r> {
        let (first, rest) = match &spell.every {
            Every::Row => return Turns::each(rows),
            Every::Unsaid => (Before::Unknown, Before::Unknown),
            Every::Rows(every) => {
                let every = usize::try_from(every.of(self.size)).unwrap_or(0);
                let between = every.saturating_sub(rows.len()).min(MOST_ROWS);
                let since = match rows {
                    [Past::Row(id)] => self.history.since(*id),
                    _ => Some(0),
                };
                // Whether it comes now or after so many more, the words do not always tell.
                let first = since.and_then(|since| between.checked_sub(since)).map_or(Before::Unknown, Before::Even);
                (first, Before::Even(between))
            }
        };
        Turns { first, rest, rows }
    }

    /// How many times, fewer where it is not clear whether the first is among them.
    fn times(&self, again: &Again, number: &Number, fewer: i64) -> i64 {
        let fewer = if matches!(again, Again::More(_)) { 0 } else { fewer };
        number.of(self.size).saturating_sub(fewer).max(0)
    }

    fn pass_rows(&mut self, id: Id, statement: &Statement, again: &Again, turns: &Turns<'_>, at: &Span, fewer: i64) {
        match again {
            Again::More(number) | Again::Times(number) | Again::Either(number) => {
                let times = self.times(again, number, fewer);
                self.passes(id, at, turns, times);
                self.keep_turns(id, at, turns, times);
            }
            Again::UntilStitches(number) => {
                let times = self.until_stitches(id, turns, number);
                if times.is_none() {
                    self.history.push(Past::Unknown);
                }
                self.keep_turns(id, at, turns, times.unwrap_or(1));
                if times.is_none() {
                    self.sides.forget();
                }
            }
            Again::Unsaid => {
                let before = self.needle;
                self.passes(id, at, turns, 1);
                self.history.push(Past::Unknown);
                self.keep_turns(id, at, turns, 1);
                if !turns.of(2).len().is_multiple_of(2) {
                    self.sides.forget();
                }
                if self.needle.total != before.total {
                    self.needle = before;
                    self.lose(id.0, statement.at.clone(), false);
                }
            }
        }
    }

    /// Keeps rows that were worked so many times.
    pub(super) fn keep_turns(&mut self, id: Id, at: &Span, turns: &Turns<'_>, times: i64) {
        self.keep_again(id, at, turns.of(1), times.min(1));
        self.keep_again(id, at, turns.of(2), times.saturating_sub(1));
    }

    /// Works shaping at both ends, that changes the count by so much each time.
    fn pass_ends(&mut self, id: Id, statement: &Statement, again: &Again, by: i64, fewer: i64) {
        match (again, self.needle.total) {
            (Again::More(times) | Again::Times(times) | Again::Either(times), Some(total)) => {
                let after = total.saturating_add(by.saturating_mul(self.times(again, times, fewer)));
                if after < 0 {
                    let fault = Fault::Short { by: after.saturating_neg(), had: total };
                    self.tell(id.0, times.at.clone(), fault);
                }
                self.needle = if after < 0 { Needle::UNKNOWN } else { Needle::of(after) };
            }
            (Again::UntilStitches(number), Some(total)) => self.ends_until(id, number, by, total),
            (Again::UntilStitches(number), None) => {
                self.needle = Needle::of(number.of(self.size));
                self.lost_at = None;
            }
            _ => self.lose(id.0, statement.at.clone(), false),
        }
    }

    fn ends_until(&mut self, id: Id, number: &Number, by: i64, total: i64) {
        let wanted = number.of(self.size);
        let change = wanted.saturating_sub(total);
        let times = change.checked_div(by).unwrap_or(0);
        let is = total.saturating_add(by.saturating_mul(times.max(0)));
        if is == wanted {
            self.needle = Needle::of(wanted);
        } else {
            self.tell(id.0, number.at.clone(), Fault::Missed { wanted, is });
            self.needle = Needle::UNKNOWN;
        }
    }
}
