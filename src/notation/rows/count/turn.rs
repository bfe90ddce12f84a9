//! A row that goes on otherwise than to its end: it is turned, and stitches are put aside.

use super::super::fault::Fault;
use super::super::lexicon::Counts;
use super::super::tree::Span;
use super::work::Work;

impl Work {
    /// Puts so many stitches aside, or all that remain. After a turn those that remain are on the other needle.
    pub(super) fn hold(&mut self, number: Option<i64>, rest: bool, at: &Span) {
        if !(rest && self.turns > 0 && self.fresh) {
            let room = self.here.map(|here| here.saturating_sub(self.taken).max(0)).filter(|_| self.floats == 0);
            match number.or(room) {
                Some(number) => self.take(Counts::new(1, 0), number),
                None => self.lose(at),
            }
            return;
        }
        let there = self.total.zip(self.here).map(|(total, here)| total.saturating_sub(here));
        let Some(number) = number.or(there) else {
            self.lose(at);
            return;
        };
        if let (Some(total), Some(there)) = (self.total, there) {
            let over = there.saturating_sub(number);
            if over > 0 {
                self.break_at(Fault::LeftOver { left: over, had: total }, at);
            } else if over < 0 {
                self.break_at(Fault::Short { by: over.saturating_neg(), had: there }, at);
            }
        }
        self.total = self.total.map(|total| total.saturating_sub(number));
        self.change = self.change.saturating_sub(number);
    }

    pub(super) fn turn(&mut self) {
        self.marks.lose();
        self.turns += 1;
        self.binding = false;
        let change = self.left.saturating_sub(self.taken);
        let known = self.floats == 0 && !self.absorbs;
        self.here = match (self.total, self.here) {
            (Some(total), Some(here)) if known => {
                if self.taken > here {
                    let by = self.taken.saturating_sub(here);
                    self.faults.push((Fault::Short { by, had: self.had }, 0..0));
                    self.broken = true;
                }
                Some(total.saturating_sub(here).saturating_add(self.left))
            }
            _ => None,
        };
        self.had = self.here.unwrap_or(0);
        self.total = self.total.map(|total| total.saturating_add(change));
        self.change = self.change.saturating_add(change);
        (self.taken, self.left, self.floats, self.absorbs, self.tail) = (0, 0, 0, false, None);
        self.fresh = true;
        self.bound = 0;
    }
}
