//! Stitches put aside: those a row puts there, those the next sentence does, and those a row works from where they wait.

use super::super::count::{Needle, Outcome, Reading, once};
use super::super::fault::Fault;
use super::super::statement::{Doing, Statement};
use super::super::tree::{How, Item, Number};
use super::knitter::{Id, Knitter};
use super::usual::unfit;

/// The most groups of stitches put aside whose sums are looked at.
const MOST: usize = 8;

impl<'a> Knitter<'a> {
    /// Keeps what a row puts aside, and holds what it works from there against what was.
    pub(super) fn hold(&mut self, id: Id, items: &[Item]) {
        for number in from_hold(items) {
            self.comes_back(id, number);
        }
        self.held.extend(held(items, self.size));
        self.held_unsaid |= is_unsaid(items);
    }

    /// Holds stitches that come back to the needle against those put aside.
    pub(super) fn comes_back(&mut self, id: Id, number: &Number) {
        let says = number.of(self.size);
        let known = !self.held_unsaid && !self.held.is_empty() && self.held.len() <= MOST;
        if known && !sums(&self.held).contains(&says) {
            let had = self.held.iter().copied().min_by_key(|group| group.abs_diff(says)).unwrap_or(0);
            self.tell(id.0, number.at.clone(), Fault::Held { says, had });
        }
    }

    /// Puts stitches aside that a sentence of its own is for.
    pub(super) fn put_aside(&mut self, id: Id, statement: &Statement, number: Option<&Number>, rest: bool) {
        let total = self.needle.total;
        // Where the last row did not come to its end those that remain are what it left.
        let unworked = total.zip(self.needle.here).map(|(total, here)| total.saturating_sub(here));
        let there = unworked.filter(|there| rest && *there > 0);
        let says = number.map(|number| number.of(self.size)).or(there).or(total);
        match says {
            Some(says) => self.held.push(says),
            None => self.held_unsaid = true,
        }
        if let (Some(total), Some(says)) = (total, says) {
            let after = total.saturating_sub(says);
            let at = number.map_or_else(|| statement.at.clone(), |number| number.at.clone());
            if after < 0 {
                self.tell(id.0, statement.at.clone(), Fault::Short { by: after.saturating_neg(), had: total });
            } else if let Some(fault) = there.and_then(|there| remains(there, says, total)) {
                self.tell(id.0, at, fault);
            }
            self.needle = if after < 0 { Needle::UNKNOWN } else { Needle::of(after) };
        }
        self.stated(id, statement, false);
    }

    /// Works a row, and if it ends before its stitches do because the next sentence puts the others aside, that is no fault.
    pub(super) fn outcome_before_hold(&mut self, id: Id, statement: &'a Statement, items: &[Item]) -> Outcome {
        let markers = self.markers.clone();
        let outcome = self.outcome(statement, items);
        let [(Fault::LeftOver { left, .. }, at)] = outcome.faults.as_slice() else { return outcome };
        let Some((number, rest)) = self.put_aside_next(id) else { return outcome };
        if !rest && number.is_none_or(|number| number.of(self.size) != *left) {
            return outcome;
        }
        let (left, at) = (*left, at.end..at.end);
        let mut items = items.to_vec();
        items.push(Item::Hold { number: None, rest: true, at });
        self.markers = markers;
        let mut outcome = self.outcome(statement, &items);
        // They are on the needle, unworked, until that sentence takes them off.
        outcome.change = outcome.change.map(|change| change.saturating_add(left));
        outcome.after.total = outcome.after.total.map(|total| total.saturating_add(left));
        outcome
    }

    /// How many stitches the next sentence that this size works puts aside, if it does, and whether those are all that remain.
    fn put_aside_next(&self, id: Id) -> Option<(Option<&'a Number>, bool)> {
        let statements = self.blocks.get(id.0)?.statements.iter().skip(id.1.saturating_add(1));
        let works = |statement: &&Statement| statement.is_for(self.size) && statement.doing != Doing::Aside;
        match &statements.into_iter().find(works)?.doing {
            Doing::PutAside { number, rest } => Some((number.as_ref(), *rest)),
            _ => None,
        }
    }

    /// Works a row with stitches that were put aside in whichever way fits: they come to the needle, or a sentence before
    /// has brought them there, or the row begins with them and what was on the needle is another matter.
    pub(super) fn outcome_from_hold(&mut self, statement: &'a Statement, items: &[Item]) -> Outcome {
        let (markers, needle) = (self.markers.clone(), self.needle);
        let usual = self.outcome(statement, items);
        let kept = self.markers.clone();
        let fits = |outcome: &Outcome| !outcome.faults.iter().any(|(fault, _)| unfit(*fault));
        if fits(&usual) && needle.total.is_some() {
            return usual;
        }
        if !fits(&usual) {
            self.markers.clone_from(&markers);
            let there = self.outcome(statement, &on_needle(items));
            if fits(&there) {
                return there;
            }
        }
        let begins = once(items, self.size, Reading::More).is_some_and(|counts| counts.takes == 0);
        if begins {
            self.markers = markers;
            self.needle = Needle::of(0);
            let mut alone = self.outcome(statement, items);
            self.needle = needle;
            if fits(&alone) {
                // Whether what was on the needle stays there, the words do not tell.
                if needle.total.is_some_and(|total| total > 0) {
                    alone.after = Needle::UNKNOWN;
                    self.markers.forget();
                }
                return alone;
            }
        }
        self.markers = kept;
        usual
    }
}

/// What is wrong where so many are said to remain and others do.
fn remains(there: i64, says: i64, had: i64) -> Option<Fault> {
    let over = there.saturating_sub(says);
    match over {
        0 => None,
        1.. => Some(Fault::LeftOver { left: over, had }),
        _ => Some(Fault::Short { by: over.saturating_neg(), had: there }),
    }
}

/// The groups of stitches that a row puts aside, and not many more than are looked at.
fn held(items: &[Item], size: usize) -> Vec<i64> {
    let mut groups = Vec::new();
    for item in items {
        match item {
            Item::Hold { number: Some(number), .. } => groups.push(number.of(size)),
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

/// Whether a row puts stitches aside without saying how many.
fn is_unsaid(items: &[Item]) -> bool {
    items.iter().any(|item| match item {
        Item::Hold { number, .. } => number.is_none(),
        Item::Repeat { items, .. } => is_unsaid(items),
        _ => false,
    })
}

/// The stitches that a row works from where they wait.
pub(super) fn from_hold(items: &[Item]) -> Vec<&Number> {
    let each = items.iter().flat_map(|item| match item {
        Item::FromHold { number, .. } => vec![number],
        Item::Repeat { items, .. } => from_hold(items),
        _ => Vec::new(),
    });
    each.collect()
}

/// The same row where its held stitches are on the needle already.
fn on_needle(items: &[Item]) -> Vec<Item> {
    let one = |item: &Item| match item {
        Item::FromHold { number, at } => {
            Item::Work { takes: 1, leaves: 1, times: number.clone(), binds: false, at: at.clone() }
        }
        Item::Repeat { items, how, at } => Item::Repeat { items: on_needle(items), how: how.clone(), at: at.clone() },
        other => other.clone(),
    };
    items.iter().map(one).collect()
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
