//! Stitches put aside: those a row puts there, those the next sentence does, and those a row works from where they wait.

use super::super::count::{Needle, Outcome, Reading, once};
use super::super::fault::Fault;
use super::super::statement::{Doing, PutAside, Statement};
use super::super::tree::{How, Item, Number};
use super::knitter::{Id, Knitter};
use super::pieces::MOST;
use super::usual::unfit;

impl<'a> Knitter<'a> {
    /// Keeps what a row puts aside, and holds what it works from there against what was.
    pub(super) fn hold(&mut self, id: Id, items: &[Item]) {
        for (number, of) in from_hold(items) {
            self.comes_back(id, number, of);
        }
        for (of, stitches) in held(items, self.size) {
            self.held.put(of.or(self.piece.as_deref()), stitches);
        }
    }

    /// Holds stitches that come back to the needle against those put aside; `of` is what they are said to be of.
    pub(super) fn comes_back(&mut self, id: Id, number: &Number, of: Option<&str>) {
        let says = number.of(self.size);
        if let Some(had) = self.held.unlike(says, of) {
            self.tell(id.0, number.at.clone(), Fault::Held { says, had });
        }
    }

    /// Puts stitches aside that a sentence of its own is for.
    pub(super) fn put_aside(&mut self, id: Id, statement: &Statement, put: &PutAside) {
        // Behind a turn those that remain are on the other needle.
        let there = self.needle.total.zip(self.needle.here).map(|(total, here)| total.saturating_sub(here));
        let there = there.filter(|there| put.rest && *there > 0);
        let says = put.number.as_ref().map(|number| number.of(self.size)).or(there).or(self.needle.total);
        let Some(says) = says else {
            self.stated(id, statement, false);
            return;
        };
        self.held.put(put.of.as_deref().or(self.piece.as_deref()), says);
        if let Some(total) = self.needle.total {
            let after = total.saturating_sub(says);
            if after < 0 {
                self.tell(id.0, statement.at.clone(), Fault::Short { by: after.saturating_neg(), had: total });
            } else if let Some((fault, number)) =
                there.and_then(|there| remains(there, says, total)).zip(put.number.as_ref())
            {
                self.tell(id.0, number.at.clone(), fault);
            }
            self.needle = if after < 0 { Needle::UNKNOWN } else { Needle::of(after) };
        }
        self.stated(id, statement, false);
    }

    /// Works a row, and if it ends before its stitches do because the next sentence puts the others aside, that is no fault.
    pub(super) fn outcome_before_hold(&mut self, id: Id, statement: &'a Statement, items: &[Item]) -> Outcome {
        let markers = self.markers.clone();
        let outcome = self.outcome(statement, items);
        let [(Fault::LeftOver { left, had }, at)] = outcome.faults.as_slice() else { return outcome };
        let Some((next, put)) = self.put_aside_next(id) else { return outcome };
        if let Some(number) = &put.number {
            let says = number.of(self.size);
            if !put.rest && says != *left {
                return outcome;
            }
            if let Some(fault) = remains(*left, says, *had) {
                self.tell(next.0, number.at.clone(), fault);
            }
        } else if !put.rest {
            return outcome;
        }
        let all = Number { values: crate::measure::SizeRun::one(*left), at: at.end..at.end };
        let mut items = items.to_vec();
        items.push(Item::Hold { number: all, rest: true, of: None, at: at.end..at.end });
        self.markers = markers;
        let left = *left;
        let mut outcome = self.outcome(statement, &items);
        // They are on the needle until that sentence takes them off.
        outcome.change = outcome.change.map(|change| change.saturating_add(left));
        outcome.after = outcome.after.total.map_or(Needle::UNKNOWN, |total| Needle::of(total.saturating_add(left)));
        outcome
    }

    /// The next sentence that this size works, if it puts stitches aside.
    fn put_aside_next(&self, id: Id) -> Option<(Id, &'a PutAside)> {
        let statements = self.blocks.get(id.0)?.statements.iter().enumerate().skip(id.1.saturating_add(1));
        let works = |statement: &Statement| statement.is_for(self.size) && statement.doing != Doing::Aside;
        let (at, next) = statements.into_iter().find(|(_, statement)| works(statement))?;
        match &next.doing {
            Doing::PutAside(put) => Some(((id.0, at), put)),
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
                if needle.total.is_some() {
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
fn held(items: &[Item], size: usize) -> Vec<(Option<&str>, i64)> {
    let mut groups = Vec::new();
    for item in items {
        match item {
            Item::Hold { number, of, .. } => groups.push((of.as_deref(), number.of(size))),
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

/// The stitches that a row works from where they wait.
pub(super) fn from_hold(items: &[Item]) -> Vec<(&Number, Option<&str>)> {
    let each = items.iter().flat_map(|item| match item {
        Item::FromHold { number, of, .. } => vec![(number, of.as_deref())],
        Item::Repeat { items, .. } => from_hold(items),
        _ => Vec::new(),
    });
    each.collect()
}

/// The same row where its held stitches are on the needle already.
fn on_needle(items: &[Item]) -> Vec<Item> {
    let one = |item: &Item| match item {
        Item::FromHold { number, at, .. } => {
            Item::Work { takes: 1, leaves: 1, times: number.clone(), binds: false, at: at.clone() }
        }
        Item::Repeat { items, how, at } => Item::Repeat { items: on_needle(items), how: how.clone(), at: at.clone() },
        other => other.clone(),
    };
    items.iter().map(one).collect()
}
