//! Stitches that come back to the needle, and shaping that a sentence tells.

use super::super::count::Needle;
use super::super::statement::{Shaped, Statement, TakenUp};
use super::knitter::{Id, Knitter};
use super::past::Past;
use super::spells::What;

impl Knitter<'_> {
    /// Takes up stitches that were put aside.
    pub(super) fn take_up(&mut self, id: Id, statement: &Statement, taken: &TakenUp) {
        let number = match &taken.number {
            Some(number) => {
                let only = taken.of.first().filter(|_| taken.of.len() == 1);
                self.comes_back(id, number, only.map(String::as_str));
                Some(number.of(self.size))
            }
            None => taken.of.iter().map(|piece| self.stitches_of(piece)).sum(),
        };
        self.begin_piece();
        self.held.back = true;
        // Whether what was on the needle stays there, the words do not tell, if they do not name it.
        let named = taken.number.is_none() && taken.of.len() > 1;
        let more = taken.more.as_ref().map_or(0, |more| more.of(self.size));
        let all = number.filter(|_| named || self.needle.total.is_none());
        self.needle = all.map_or(Needle::UNKNOWN, |all| Needle::of(all.saturating_add(more)));
        self.last_change = None;
        self.lost_at = None;
        self.markers.forget();
        self.stated(id, statement, false);
    }

    /// Works shaping that a sentence tells, two at a time.
    pub(super) fn shape(&mut self, id: Id, statement: &Statement, shaped: &Shaped) {
        let each = shaped.by.of(self.size).saturating_mul(2);
        self.history.push(Past::Unknown);
        self.last_change = None;
        self.markers.forget();
        let by = if shaped.less { each.saturating_neg() } else { each };
        self.work_spells(id, statement, &shaped.spells, &What::Ends(by));
    }
}
