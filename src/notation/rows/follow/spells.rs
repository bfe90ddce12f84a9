//! Spells of rows or of shaping that are worked again, in whichever reading of "times" fits.

use super::super::count::Needle;
use super::super::fault::Fault;
use super::super::statement::{Again, Every, Spell, Statement};
use super::super::tree::{Number, Span};
use super::knitter::{Id, Knitter, MOST_ROWS};
use super::markers::Markers;
use super::past::{History, Past};

/// What is worked again.
pub(super) enum What {
    /// These rows, which are named here.
    Rows(Vec<Past>, Span),
    /// So many stitches more at both ends together, below nothing for fewer.
    Ends(i64),
}

/// What is in mind before spells of which nobody knows yet how they are meant.
struct Kept {
    needle: Needle,
    markers: Markers,
    history: History,
    last_change: Option<i64>,
    lost_at: Option<(usize, Span)>,
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
            let told = self.told.split_off(before.told);
            let usual = Kept { told: 0, ..self.keep() };
            self.restore(&before);
            self.pass_spells(id, statement, spells, what, 1);
            let is_fit = self.told.len() == before.told;
            let as_usual = usual.needle.total == self.needle.total;
            if is_fit && says.is_some() && says == self.needle.total {
                if !either {
                    self.tell(id.0, number.at.clone(), Fault::InAll { times: number.of(self.size) });
                }
            } else {
                self.told.truncate(before.told);
                self.restore(&usual);
                self.told.extend(told);
                if either && says.is_none() && !as_usual {
                    self.lose(id.0, statement.at.clone(), false);
                }
            }
        }
        if either {
            self.history.push(Past::Unknown);
        }
        self.stated(id, statement, false);
    }

    fn keep(&self) -> Kept {
        Kept {
            needle: self.needle,
            markers: self.markers.clone(),
            history: self.history.clone(),
            last_change: self.last_change,
            lost_at: self.lost_at.clone(),
            told: self.told.len(),
        }
    }

    fn restore(&mut self, kept: &Kept) {
        self.needle = kept.needle;
        self.markers = kept.markers.clone();
        self.history = kept.history.clone();
        self.last_change = kept.last_change;
        self.lost_at.clone_from(&kept.lost_at);
    }

    /// Works spells one after another, those whose times are not clear so many times fewer.
    fn pass_spells(&mut self, id: Id, statement: &Statement, spells: &[Spell], what: &What, fewer: i64) {
        for spell in spells {
            match what {
                What::Rows(rows, at) => {
                    let rows = self.spaced(rows, spell);
                    self.pass_rows(id, statement, &spell.again, &rows, at, fewer);
                }
                What::Ends(by) => self.pass_ends(id, statement, &spell.again, *by, fewer),
            }
        }
    }

    /// Rows with the plain ones before them that make them every so manieth.
    fn spaced(&self, rows: &[Past], spell: &Spell) -> Vec<Past> {
        let mut all = match &spell.every {
            Every::Row => Vec::new(),
            Every::Rows(every) => {
                let every = usize::try_from(every.of(self.size)).unwrap_or(0);
                vec![Past::Even; every.saturating_sub(rows.len()).min(MOST_ROWS)]
            }
            Every::Length => vec![Past::Unknown],
        };
        all.extend(rows);
        all
    }

    /// How many times, fewer where it is not clear whether the first is among them.
    fn times(&self, again: &Again, number: &Number, fewer: i64) -> i64 {
        let fewer = if matches!(again, Again::More(_)) { 0 } else { fewer };
        number.of(self.size).saturating_sub(fewer).max(0)
    }

    fn pass_rows(&mut self, id: Id, statement: &Statement, again: &Again, rows: &[Past], at: &Span, fewer: i64) {
        match again {
            Again::More(number) | Again::Times(number) | Again::Either(number) => {
                let times = self.times(again, number, fewer);
                self.passes(id, at, rows, times);
                self.history.again(rows, times);
            }
            Again::UntilStitches(number) => {
                let times = self.until_stitches(id, rows, number);
                if times.is_none() {
                    self.history.push(Past::Unknown);
                }
                self.history.again(rows, times.unwrap_or(1));
            }
            Again::Unsaid => {
                let before = self.needle;
                self.passes(id, at, rows, 1);
                self.history.push(Past::Unknown);
                self.history.again(rows, 1);
                if self.needle.total != before.total {
                    self.needle = before;
                    self.lose(id.0, statement.at.clone(), false);
                }
            }
        }
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
