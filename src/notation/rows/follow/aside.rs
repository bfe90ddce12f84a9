//! Stitches put aside and taken up again, and shaping that a sentence tells.

use super::super::count::Needle;
use super::super::fault::Fault;
use super::super::statement::{Shaped, Statement, TakenUp};
use super::super::tree::{How, Item};
use super::knitter::{Id, Knitter};
use super::past::Past;
use super::spells::What;

/// The most groups of stitches put aside whose sums are looked at.
const MOST: usize = 8;

impl Knitter<'_> {
    /// Keeps what a row puts aside.
    pub(super) fn hold(&mut self, items: &[Item]) {
        self.held.extend(held(items, self.size));
    }

    /// Takes up stitches that were put aside.
    pub(super) fn take_up(&mut self, id: Id, statement: &Statement, taken: &TakenUp) {
        let number = taken.number.of(self.size);
        if !self.held.is_empty() && self.held.len() <= MOST && !sums(&self.held).contains(&number) {
            let had = self.held.iter().copied().min_by_key(|group| group.abs_diff(number)).unwrap_or(0);
            self.tell(id.0, taken.number.at.clone(), Fault::Held { says: number, had });
        }
        let all = number.saturating_add(taken.more.as_ref().map_or(0, |more| more.of(self.size)));
        // Whether what was on the needle stays there, the words do not tell.
        self.needle = if self.needle.total.is_none() { Needle::of(all) } else { Needle::UNKNOWN };
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

/// The groups of stitches that a row puts aside, and not many more than are looked at.
fn held(items: &[Item], size: usize) -> Vec<i64> {
    let mut groups = Vec::new();
    for item in items {
        match item {
            // Without a number it is a stitch that is dropped, or the like.
            Item::Work { takes: 1, leaves: 0, binds: false, times, .. } if !times.at.is_empty() => {
                groups.push(times.of(size));
            }
            Item::Repeat { items, how: How::Times(times), .. } => {
                let each = held(items, size);
                let times = if each.is_empty() { 0 } else { usize::try_from(times.of(size)).unwrap_or(0) };
                groups.extend(each.iter().copied().cycle().take(each.len().saturating_mul(times).min(MOST + 1)));
            }
            _ => {}
        }
    }
    groups
}

/// What any of several groups come to together.
fn sums(groups: &[i64]) -> Vec<i64> {
    let mut sums = vec![0];
    for group in groups {
        let more: Vec<i64> = sums.iter().map(|sum: &i64| sum.saturating_add(*group)).collect();
        sums.extend(more);
    }
    sums
}
