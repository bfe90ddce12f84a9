//! A row at work: the stitches taken and left so far.

use super::super::fault::Fault;
use super::super::lexicon::Counts;
use super::super::tree::{How, Item, Span, Until};
use super::marks::Marks;
use super::once::{once, parts, times_over};
use super::{Hand, Needle, Outcome, Reading};

/// A row at work.
pub(super) struct Work {
    pub(super) size: usize,
    pub(super) round: bool,
    pub(super) marks: Marks,
    pub(super) apart: bool,
    pub(super) reading: Reading,
    pub(super) total: Option<i64>,
    /// On the left needle since the row began or was last turned.
    pub(super) here: Option<i64>,
    pub(super) had: i64,
    pub(super) taken: i64,
    pub(super) left: i64,
    pub(super) change: i64,
    pub(super) turns: u32,
    /// Stitches cast on between the last two turns, which may be at hand or worked.
    pub(super) gap: i64,
    /// Stretches of unknown length that were worked one by one, to markers.
    pub(super) floats: u32,
    /// Whether a stretch took whatever was there, where nobody knows how much.
    pub(super) absorbs: bool,
    /// Where the count was lost.
    pub(super) lost: Option<Span>,
    pub(super) broken: bool,
    pub(super) fresh: bool,
    pub(super) tail: Option<(i64, i64, Span)>,
    pub(super) faults: Vec<(Fault, Span)>,
    /// Whether the last thing done was binding off.
    pub(super) binding: bool,
    /// The stitches on the right needle when the last were bound off.
    pub(super) bound: i64,
    steps: u32,
}

/// The most items one row is worked through, repeats included.
const MOST_STEPS: u32 = 200_000;

impl Work {
    pub(super) fn begin(hand: &Hand, size: usize, reading: Reading) -> Self {
        let needle = hand.needle;
        // After a turn the markers on the other needle are out of reach.
        let marks = hand.marks.as_deref().filter(|_| needle.here.is_some() && needle.here == needle.total);
        Self {
            size,
            round: hand.round,
            apart: hand.apart,
            marks: Marks::of(marks),
            reading,
            total: needle.total,
            here: needle.here,
            had: needle.here.unwrap_or(0),
            taken: 0,
            left: 0,
            change: 0,
            turns: 0,
            gap: 0,
            floats: 0,
            absorbs: false,
            lost: None,
            broken: false,
            fresh: false,
            tail: None,
            faults: Vec::new(),
            binding: false,
            bound: 0,
            steps: 0,
        }
    }

    pub(super) fn items(&mut self, items: &[Item]) {
        for (at, item) in items.iter().enumerate() {
            if self.broken || self.lost.is_some() {
                return;
            }
            self.step(1, item.at());
            let behind = items.get(at.saturating_add(1)..).unwrap_or_default();
            self.item(item, behind);
        }
    }

    /// Counts steps; a row that takes too many is given up.
    pub(super) fn step(&mut self, steps: u32, at: &Span) {
        self.steps = self.steps.saturating_add(steps);
        if self.steps > MOST_STEPS {
            self.lose(at);
        }
    }

    /// From here on nobody knows how many stitches there are.
    pub(super) fn lose(&mut self, at: &Span) {
        self.lost.get_or_insert_with(|| at.clone());
    }

    /// Works an item; `behind` is what follows it.
    fn item(&mut self, item: &Item, behind: &[Item]) {
        if self.binding && !matches!(item, Item::Turn { .. } | Item::Mark { .. } | Item::Colour { .. }) {
            self.binding = false;
            if self.apart && !matches!(item, Item::Work { binds: true, .. }) {
                self.take(Counts::new(1, 1), 1);
            }
        }
        match item {
            // Stitches bound off past the end of a round are the first of the next one.
            Item::Work { binds: true, times, at, .. }
                if self.round
                    && self.tail.is_some()
                    && self.here.is_some_and(|here| self.taken.saturating_add(times.of(self.size)) > here) =>
            {
                self.lose(at);
            }
            Item::Work { takes, leaves, times, binds, .. } => {
                let (unit, times) = (Counts::new(*takes, *leaves), times.of(self.size));
                self.take(unit, times);
                self.binding = *binds && times_over(unit, times).takes > 0;
                if *binds {
                    self.bound = self.left;
                }
            }
            Item::Into { of, at, .. } => {
                self.step(parts(std::slice::from_ref(item)), at);
                match once(std::slice::from_ref(item), self.size, self.reading) {
                    Some(counts) if of.of(self.size) >= 0 => self.take(counts, 1),
                    _ => self.lose(at),
                }
            }
            Item::Repeat { items, how: How::Until(until), at } => self.repeat_until(items, until, at),
            Item::Repeat { items, how, at } => {
                let times = match how {
                    How::Times(number) => number.of(self.size),
                    How::More(number) => number.of(self.size) + 1,
                    How::Again(number) => number.of(self.size) + i64::from(self.reading == Reading::More),
                    How::Until(_) => 0,
                };
                self.repeat(items, times, at);
            }
            Item::Mark { mark, at } => self.mark(*mark, at),
            Item::Even { until: Until::There(number), binds: false, at } if self.is_counted() => {
                let there = self.left.saturating_sub(self.bound);
                let more = number.of(self.size).saturating_sub(there);
                if more < 0 {
                    self.lose(at);
                } else {
                    self.take(Counts::new(1, 1), more);
                }
            }
            Item::Even { until: Until::There(_), at, .. } => self.lose(at),
            Item::Even { until: Until::Marker(to), binds, at } => match self.room_to_marker(to, at) {
                Some(room) => {
                    self.take(Counts::new(1, i64::from(!*binds)), room);
                    self.fresh = false;
                    self.arrive(to);
                }
                None if self.broken => {}
                None => {
                    self.floats += 1;
                    self.fresh = false;
                    if *binds {
                        self.lose(at);
                    }
                }
            },
            Item::Even { until, binds, at } => {
                if let Some(room) = self.room(until, at) {
                    self.take(Counts::new(1, i64::from(!*binds)), room);
                } else if *binds && !self.broken {
                    self.lose(at);
                }
                self.tail(until, at);
            }
            Item::Hold { number, rest, at, .. } => {
                self.hold(number.as_ref().map(|number| number.of(self.size)), *rest, at);
            }
            Item::FromHold { number, .. } => self.take(Counts::new(0, 1), number.of(self.size)),
            Item::Piece { number: Some(number), .. } => self.take(Counts::new(1, 1), number.of(self.size)),
            Item::Piece { number: None, at, .. } => self.lose(at),
            Item::Chart { chart, rows, reach, at } => self.chart(chart, rows, reach, behind, at),
            Item::Colour { .. } => {}
            Item::Turn { .. } => self.turn(),
            Item::SameAs { at, .. } | Item::SameNamed { at, .. } | Item::Unsaid { at, .. } => self.lose(at),
        }
    }

    pub(super) fn take(&mut self, unit: Counts, times: i64) {
        self.marks.pass(self.taken, self.left, unit, times);
        let counts = times_over(unit, times);
        self.taken = self.taken.saturating_add(counts.takes);
        self.left = self.left.saturating_add(counts.leaves);
        self.fresh &= counts == Counts::default();
    }

    /// Tells a fault with which the row cannot go on.
    pub(super) fn break_at(&mut self, fault: Fault, at: &Span) {
        self.faults.push((fault, at.clone()));
        self.broken = true;
    }

    /// Returns the stitches there are up to an end; nothing where they are not known, or not there.
    pub(super) fn room(&mut self, until: &Until, at: &Span) -> Option<i64> {
        let last = self.last(until);
        let Some(here) = self.here else {
            self.absorbs = true;
            return None;
        };
        let mut room = here.saturating_sub(self.taken).saturating_sub(last);
        if room < 0 && room.saturating_add(self.gap) >= 0 {
            self.here = Some(here.saturating_add(std::mem::take(&mut self.gap)));
            room = self.here.unwrap_or(here).saturating_sub(self.taken).saturating_sub(last);
        }
        if room < 0 {
            self.break_at(Fault::Short { by: room.saturating_neg(), had: self.had }, at);
            return None;
        }
        self.floats = 0;
        Some(room)
    }

    fn last(&self, until: &Until) -> i64 {
        match until {
            Until::Last(number) => number.of(self.size),
            Until::End | Until::Marker(_) | Until::There(_) => 0,
        }
    }

    /// Keeps what has to follow now.
    pub(super) fn tail(&mut self, until: &Until, at: &Span) {
        self.fresh = false;
        if !self.broken {
            self.tail = Some((self.last(until), self.taken, at.clone()));
        }
    }

    pub(super) fn end(mut self, whole: Span) -> Outcome {
        if !self.broken && self.lost.is_none() && !self.fresh {
            self.settle(&whole);
        }
        for (_, at) in &mut self.faults {
            if at.start == at.end {
                *at = whole.clone();
            }
        }
        let row = self.left.saturating_sub(self.taken);
        let is_known = self.lost.is_none() && !self.broken;
        let change = is_known.then(|| self.change.saturating_add(row));
        let after = if is_known {
            let total = self.total.map(|total| total.saturating_add(row));
            Needle { total, here: if self.fresh { self.here } else { total } }
        } else {
            Needle::UNKNOWN
        };
        let counted = is_known && self.floats == 0 && !self.absorbs && self.turns == 0;
        let strange = self.marks.strange;
        let marks = if counted { self.marks.end(self.taken, self.left) } else { None };
        let lost = self.lost.filter(|_| !self.broken);
        Outcome { after, change, marks, strange, faults: self.faults, lost, steps: self.steps }
    }

    /// Sees whether the row comes out.
    fn settle(&mut self, whole: &Span) {
        if let Some((says, base, at)) = self.tail.take()
            && self.floats == 0
        {
            let takes = self.taken.saturating_sub(base);
            if takes != says {
                self.break_at(Fault::Tail { says, takes }, &at);
                return;
            }
        }
        let Some(here) = self.here else { return };
        let over = here.saturating_sub(self.taken);
        if over < 0 && over.saturating_add(self.gap) == 0 {
            self.broken = !self.faults.is_empty();
        } else if over < 0 {
            self.faults.push((Fault::Short { by: over.saturating_neg(), had: self.had }, whole.clone()));
        } else if over > 0 && self.floats == 0 && !self.absorbs {
            self.faults.push((Fault::LeftOver { left: over, had: self.had }, whole.clone()));
        } else if over > 0 {
            // Stretches to markers took the rest, stitch for stitch.
            self.take(Counts::new(1, 1), over);
        }
        self.broken = !self.faults.is_empty();
    }
}
