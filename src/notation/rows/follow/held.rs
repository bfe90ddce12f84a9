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
        self.put_held(items);
    }

    /// Keeps what a row puts aside.
    pub(super) fn put_held(&mut self, items: &[Item]) {
        for (of, stitches) in held(items, self.size) {
            self.held.put(of.or(self.piece.as_deref()), stitches, of.is_some());
        }
        if is_unsaid(items) {
            self.held.put_unsaid();
        }
    }

    /// Holds stitches that come back to the needle against those put aside; `of` is what they are said to be of.
    pub(super) fn comes_back(&mut self, id: Id, number: &Number, of: Option<&str>) {
        let says = number.of(self.size);
        if let Some(had) = self.held.unlike(says, of) {
            self.tell(id.0, number.at.clone(), Fault::Held { says, had });
        }
    }

    /// Goes on with some stitches alone.
    pub(super) fn over(&mut self, id: Id, statement: &Statement, number: &Number) {
        let says = number.of(self.size);
        self.markers.forget();
        match self.needle.total.map(|total| total.saturating_sub(says)) {
            Some(rest @ 1..) => {
                self.held.put(None, rest, false);
                self.waits = Some(rest);
                self.needle = Needle::of(says);
            }
            Some(rest) if rest < 0 => {
                let had = self.needle.total.unwrap_or(0);
                self.tell(id.0, number.at.clone(), Fault::Short { by: rest.saturating_neg(), had });
                self.needle = Needle::UNKNOWN;
            }
            Some(_) => {}
            None => {
                self.needle = Needle::of(says);
                self.lost_at = None;
            }
        }
        self.stated(id, statement, false);
    }

    /// Puts stitches aside that a sentence of its own is for.
    pub(super) fn put_aside(&mut self, id: Id, statement: &Statement, put: &PutAside) {
        // Behind a turn those that remain are on the other needle.
        let there = self.needle.total.zip(self.needle.here).map(|(total, here)| total.saturating_sub(here));
        let there = there.filter(|there| put.rest && *there > 0);
        // Behind a count all that remain are as many.
        let counted = self.needle.total.filter(|_| put.rest && self.is_counted_before(id));
        if let Some(waits) = self.waits.take()
            && put.number.as_ref().is_none_or(|number| number.of(self.size) == waits)
        {
            // Said of those that the sentence before left aside.
            self.held.name_last(put.of.as_deref());
            self.stated(id, statement, false);
            return;
        }
        let says = put.number.as_ref().map(|number| number.of(self.size)).or(there).or(self.needle.total);
        let Some(says) = says.filter(|_| !put.bare || self.needle.here == self.needle.total) else {
            self.held.put_unsaid();
            if put.bare {
                self.needle = Needle::UNKNOWN;
                self.markers.forget();
            }
            self.stated(id, statement, false);
            return;
        };
        let whole = self.needle.total == Some(says);
        self.held.put(put.of.as_deref().or(self.piece.as_deref()), says, whole || put.of.is_some());
        if let Some(total) = self.needle.total {
            let after = total.saturating_sub(says);
            if after < 0 {
                self.tell(id.0, statement.at.clone(), Fault::Short { by: after.saturating_neg(), had: total });
            } else if let Some((fault, number)) =
                there.or(counted).and_then(|there| remains(there, says, total)).zip(put.number.as_ref())
            {
                self.tell(id.0, number.at.clone(), fault);
            }
            self.needle = if after < 0 { Needle::UNKNOWN } else { Needle::of(after) };
        }
        self.stated(id, statement, false);
    }

    /// Whether the sentence before says how many stitches there are.
    fn is_counted_before(&self, id: Id) -> bool {
        let before = id.1.checked_sub(1).and_then(|before| self.get((id.0, before)));
        before.is_some_and(|before| before.is_for(self.size) && before.stated.is_some())
    }

    /// Works a row, and if it ends before its stitches do because the next sentence puts the others aside, that is no fault.
    pub(super) fn outcome_before_hold(&mut self, id: Id, statement: &'a Statement, items: &[Item]) -> Outcome {
        let Some(put) = self.put_aside_next(id) else { return self.outcome_from_hold(statement, items) };
        let markers = self.markers.clone();
        let outcome = self.outcome(statement, items);
        self.markers = markers;
        let [(Fault::LeftOver { left, .. }, at)] = outcome.faults.as_slice() else {
            return self.outcome_from_hold(statement, items);
        };
        if put.bare {
            // Which of them, the words do not tell.
            self.markers.forget();
            return Outcome::default();
        }
        // "Place these 22 sts on a holder" are those that were worked.
        let worked = self.needle.total.map(|total| total.saturating_sub(*left));
        let put_there = |number: i64| number == *left || Some(number) == worked;
        if !put.rest && !put.number.as_ref().is_some_and(|number| put_there(number.of(self.size))) {
            return self.outcome_from_hold(statement, items);
        }
        let (left, at) = (*left, at.end..at.end);
        let mut items = items.to_vec();
        items.push(Item::Hold { number: None, rest: true, of: None, at });
        let mut outcome = self.outcome(statement, &items);
        // They are on the needle, unworked, until that sentence takes them off.
        outcome.change = outcome.change.map(|change| change.saturating_add(left));
        outcome.after.total = outcome.after.total.map(|total| total.saturating_add(left));
        outcome
    }

    /// The next sentence that this size works, if it puts stitches aside.
    fn put_aside_next(&self, id: Id) -> Option<&'a PutAside> {
        let statements = self.blocks.get(id.0)?.statements.iter().skip(id.1.saturating_add(1));
        let works = |statement: &&Statement| statement.is_for(self.size) && statement.doing != Doing::Aside;
        match &statements.into_iter().find(works)?.doing {
            Doing::PutAside(put) => Some(put),
            _ => None,
        }
    }

    /// Works a row with stitches that were put aside in whichever way fits: they come to the needle, or a sentence before
    /// has brought them there, or the row begins with them and what was on the needle is another matter.
    pub(super) fn outcome_from_hold(&mut self, statement: &'a Statement, items: &[Item]) -> Outcome {
        if from_hold(items).is_empty() {
            return self.outcome(statement, items);
        }
        let (markers, needle) = (self.markers.clone(), self.needle);
        let usual = self.outcome(statement, items);
        let kept = self.markers.clone();
        let fits = |outcome: &Outcome| !outcome.faults.iter().any(|(fault, _)| unfit(*fault));
        if fits(&usual) && needle.total.is_some() {
            return usual;
        }
        if !fits(&usual) && self.held.back {
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
fn held(items: &[Item], size: usize) -> Vec<(Option<&str>, i64)> {
    let mut groups = Vec::new();
    for item in items {
        match item {
            Item::Hold { number: Some(number), of, .. } => groups.push((of.as_deref(), number.of(size))),
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
fn from_hold(items: &[Item]) -> Vec<(&Number, Option<&str>)> {
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
