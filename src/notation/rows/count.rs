//! One row on so many stitches: what it takes, what it leaves, and whether it comes out.

use super::lexicon::Counts;
use super::tree::{How, Item, Span, Until};

/// The stitches on the needle before or after a row.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Needle {
    /// All of them; `None` where that is not known.
    pub total: Option<i64>,
    /// Those on the needle that is about to be worked, which after a turn are not all.
    pub here: Option<i64>,
}

impl Needle {
    /// Returns a needle with so many stitches, all to be worked.
    pub const fn of(stitches: i64) -> Self {
        Self { total: Some(stitches), here: Some(stitches) }
    }

    /// A needle of which nothing is known.
    pub const UNKNOWN: Self = Self { total: None, here: None };
}

/// What "rep from * 3 times" means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reading {
    /// Three times after the first.
    More,
    /// Three times in all.
    InAll,
}

/// Where stitches do not come out, with the figures of one size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Stitches stay unworked at the end of a row.
    LeftOver {
        /// How many.
        left: i64,
        /// How many there were before the row.
        had: i64,
    },
    /// A row needs more stitches than there are.
    Short {
        /// How many more.
        by: i64,
        /// How many there were before the row.
        had: i64,
    },
    /// The stitches for a repeat are no multiple of it.
    RepeatLeft {
        /// How many are over.
        left: i64,
        /// The stitches of one repeat.
        of: i64,
        /// The stitches there are for repeats.
        room: i64,
    },
    /// A repeat takes no stitch, so it never comes to an end.
    RepeatEmpty,
    /// What follows "to last 3 sts" takes another number.
    Tail {
        /// What the words say.
        says: i64,
        /// What follows takes.
        takes: i64,
    },
    /// The stitches are not as many as is said.
    Stated {
        /// What is said.
        says: i64,
        /// What there are.
        is: i64,
    },
    /// A part begins with other stitches than the last one ended with.
    Section {
        /// What is said.
        says: i64,
        /// What there are.
        is: i64,
    },
    /// A row adds or takes away another number than is said.
    Change {
        /// What is said, below nothing for a decrease.
        says: i64,
        /// What it does.
        is: i64,
    },
    /// A repeat fits only if its times are meant in all.
    InAll {
        /// How many times.
        times: i64,
    },
    /// A row fits only if the stitch left from binding off counts as the next one.
    BoundOff {
        /// How many such stitches.
        stitches: i64,
    },
    /// A row does not fit when it is worked again.
    Again {
        /// Which time, 1 for the first repeat.
        pass: i64,
        /// The stitches before the row.
        had: i64,
    },
    /// Rows worked until so many stitches are left never come to just as many.
    Missed {
        /// How many are wanted.
        wanted: i64,
        /// The nearest there are.
        is: i64,
    },
    /// No row has the number.
    NoRow {
        /// The number.
        row: u32,
    },
    /// How many stitches there are cannot be told from here on.
    Unknown,
}

/// What a row does to a needle.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Outcome {
    /// The stitches afterwards; unknown where the row does not fit.
    pub after: Needle,
    /// What the row adds, below nothing for a decrease; `None` where that depends on what is not known.
    pub change: Option<i64>,
    /// What does not come out.
    pub faults: Vec<(Fault, Span)>,
    /// The first words that do not tell their stitches.
    pub unsaid: Option<Span>,
    /// In how many places of its middle it binds off.
    pub bound: i64,
    /// How many steps it took to work out.
    pub steps: u32,
}

/// Works a row on a needle, in a size counted from 0.
pub fn count(items: &[Item], needle: Needle, size: usize, reading: Reading) -> Outcome {
    let whole = items.first().zip(items.last()).map_or(0..0, |(first, last)| first.at().start..last.at().end);
    let mut work = Work::begin(needle, size, reading);
    work.items(items);
    work.end(whole)
}

/// Returns what a stretch of a row takes and leaves whatever the needle holds; nothing where that cannot be said.
pub fn once(items: &[Item], size: usize, reading: Reading) -> Option<Counts> {
    let mut sum = Counts::default();
    for item in items {
        let counts = match item {
            Item::Work { takes, leaves, times, .. } => times_over(Counts::new(*takes, *leaves), times.of(size)),
            Item::Repeat { items, how, .. } => {
                let times = match how {
                    How::Times(number) => number.of(size),
                    How::More(number) => number.of(size) + 1,
                    How::Again(number) => number.of(size) + i64::from(reading == Reading::More),
                    How::Until(_) => return None,
                };
                times_over(once(items, size, reading)?, times)
            }
            Item::Into { items, of, .. } => Counts::new(of.of(size), once(items, size, reading)?.leaves),
            Item::Even { .. } | Item::Turn { .. } | Item::SameAs { .. } | Item::Unsaid { .. } => return None,
        };
        sum = plus(sum, counts);
    }
    Some(sum)
}

/// Returns what a stretch with turns takes and leaves, as a bobble does that is worked back and forth; nothing where it ends
/// on the other side or cannot be counted.
pub fn net(items: &[Item]) -> Option<Counts> {
    const MANY: i64 = 1_000_000;
    let mut work = Work::begin(Needle::of(MANY), 0, Reading::More);
    work.items(items);
    let known = !work.broken && !work.lost && !work.absorbs && work.floats == 0 && work.turns.is_multiple_of(2);
    let (total, here) = (work.total?, work.here?);
    let remain = here.saturating_sub(work.taken);
    let all = total.saturating_add(work.left).saturating_sub(work.taken);
    known.then(|| Counts::new(MANY.saturating_sub(remain), all.saturating_sub(remain)))
}

fn times_over(counts: Counts, times: i64) -> Counts {
    Counts::new(counts.takes.saturating_mul(times), counts.leaves.saturating_mul(times))
}

fn plus(one: Counts, two: Counts) -> Counts {
    Counts::new(one.takes.saturating_add(two.takes), one.leaves.saturating_add(two.leaves))
}

/// The most often that a repeat is walked through which cannot be multiplied, since it turns or goes by markers.
const MOST_WALKED: i64 = 500;

/// A row at work.
struct Work {
    size: usize,
    reading: Reading,
    total: Option<i64>,
    /// On the left needle since the row began or was last turned.
    here: Option<i64>,
    had: i64,
    taken: i64,
    left: i64,
    change: i64,
    turns: u32,
    /// Stretches of unknown length that were worked one by one, to markers.
    floats: u32,
    /// Whether a stretch took whatever was there, where nobody knows how much.
    absorbs: bool,
    /// Whether the count is lost.
    lost: bool,
    broken: bool,
    fresh: bool,
    tail: Option<(i64, i64, Span)>,
    faults: Vec<(Fault, Span)>,
    unsaid: Option<Span>,
    bound: i64,
    /// Whether the last thing done was binding off.
    binding: bool,
    steps: u32,
}

/// The most items one row is worked through, repeats included.
const MOST_STEPS: u32 = 200_000;

impl Work {
    fn begin(needle: Needle, size: usize, reading: Reading) -> Self {
        Self {
            size,
            reading,
            total: needle.total,
            here: needle.here,
            had: needle.here.unwrap_or(0),
            taken: 0,
            left: 0,
            change: 0,
            turns: 0,
            floats: 0,
            absorbs: false,
            lost: false,
            broken: false,
            fresh: false,
            tail: None,
            faults: Vec::new(),
            unsaid: None,
            bound: 0,
            binding: false,
            steps: 0,
        }
    }

    fn items(&mut self, items: &[Item]) {
        for item in items {
            self.steps += 1;
            if self.steps > MOST_STEPS {
                self.lost = true;
            }
            if self.broken || self.lost {
                return;
            }
            self.item(item);
        }
    }

    fn item(&mut self, item: &Item) {
        if self.binding && !matches!(item, Item::Turn { .. }) {
            self.bound += 1;
            self.binding = false;
        }
        match item {
            Item::Work { takes, leaves, times, binds, .. } => {
                let counts = times_over(Counts::new(*takes, *leaves), times.of(self.size));
                self.take(counts);
                self.binding = *binds && counts.takes > 0;
            }
            Item::Into { of, .. } => match once(std::slice::from_ref(item), self.size, self.reading) {
                Some(counts) if of.of(self.size) >= 0 => self.take(counts),
                _ => self.lost = true,
            },
            Item::Repeat { items, how: How::Until(until), at } => self.repeat_until(items, until, at),
            Item::Repeat { items, how, .. } => match once(std::slice::from_ref(item), self.size, self.reading) {
                Some(counts) => self.take(counts),
                None => {
                    let times = match how {
                        How::Times(number) => number.of(self.size),
                        How::More(number) => number.of(self.size) + 1,
                        How::Again(number) => number.of(self.size) + i64::from(self.reading == Reading::More),
                        How::Until(_) => 0,
                    };
                    if times > MOST_WALKED {
                        self.lost = true;
                    }
                    for _ in 0..times.min(MOST_WALKED) {
                        self.items(items);
                    }
                }
            },
            Item::Even { until: Until::Marker, binds, .. } => {
                self.floats += 1;
                self.fresh = false;
                self.lost |= *binds;
            }
            Item::Even { until, binds, at } => {
                if let Some(room) = self.room(until, at) {
                    self.take(Counts::new(room, if *binds { 0 } else { room }));
                } else {
                    self.lost |= *binds;
                }
                self.tail(until, at);
            }
            Item::Turn { .. } => self.turn(),
            Item::SameAs { at, .. } | Item::Unsaid { at, .. } => {
                self.unsaid = Some(at.clone());
                self.lost = true;
            }
        }
    }

    fn take(&mut self, counts: Counts) {
        self.taken = self.taken.saturating_add(counts.takes);
        self.left = self.left.saturating_add(counts.leaves);
        self.fresh &= counts == Counts::default();
    }

    /// Returns the stitches there are up to an end; nothing where they are not known, or not there.
    fn room(&mut self, until: &Until, at: &Span) -> Option<i64> {
        let last = self.last(until);
        let Some(here) = self.here else {
            self.absorbs = true;
            return None;
        };
        let room = here.saturating_sub(self.taken).saturating_sub(last);
        if room < 0 {
            self.faults.push((Fault::Short { by: room.saturating_neg(), had: self.had }, at.clone()));
            self.broken = true;
            return None;
        }
        self.floats = 0;
        Some(room)
    }

    fn last(&self, until: &Until) -> i64 {
        match until {
            Until::Last(number) => number.of(self.size),
            Until::End | Until::Marker => 0,
        }
    }

    /// Keeps what has to follow now.
    fn tail(&mut self, until: &Until, at: &Span) {
        self.fresh = false;
        if !self.broken {
            self.tail = Some((self.last(until), self.taken, at.clone()));
        }
    }

    fn repeat_until(&mut self, items: &[Item], until: &Until, at: &Span) {
        let unit = once(items, self.size, self.reading);
        let neutral = match unit {
            Some(unit) => unit.takes == unit.leaves,
            None => is_neutral(items, self.size, self.reading),
        };
        if unit.is_some_and(|unit| unit.takes <= 0) {
            self.faults.push((Fault::RepeatEmpty, at.clone()));
            self.broken = true;
            return;
        }
        if *until == Until::Marker {
            self.floats += 1;
            self.fresh = false;
            self.lost |= !neutral;
            return;
        }
        let afloat = self.floats > 0;
        let room = self.room(until, at);
        match (unit, room) {
            (Some(unit), Some(room)) if !afloat => {
                let over = room.checked_rem(unit.takes).unwrap_or(0);
                if over > 0 {
                    self.faults.push((Fault::RepeatLeft { left: over, of: unit.takes, room }, at.clone()));
                    self.broken = true;
                    return;
                }
                self.take(times_over(unit, room.checked_div(unit.takes).unwrap_or(0)));
            }
            (_, Some(room)) if neutral => self.take(Counts::new(room, room)),
            (_, None) if neutral => {}
            _ => self.lost = true,
        }
        self.tail(until, at);
    }

    fn turn(&mut self) {
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
    }

    fn end(mut self, whole: Span) -> Outcome {
        if !self.broken && !self.lost && !self.fresh {
            self.settle(&whole);
        }
        for (_, at) in &mut self.faults {
            if at.start == at.end {
                *at = whole.clone();
            }
        }
        let row = self.left.saturating_sub(self.taken);
        let change = (!self.lost && !self.broken).then(|| self.change.saturating_add(row));
        let after = if self.lost || self.broken {
            Needle::UNKNOWN
        } else {
            let total = self.total.map(|total| total.saturating_add(row));
            Needle { total, here: if self.fresh { self.here } else { total } }
        };
        Outcome { after, change, faults: self.faults, unsaid: self.unsaid, bound: self.bound, steps: self.steps }
    }

    /// Sees whether the row comes out.
    fn settle(&mut self, whole: &Span) {
        if let Some((says, base, at)) = self.tail.take()
            && self.floats == 0
        {
            let takes = self.taken.saturating_sub(base);
            if takes != says {
                self.faults.push((Fault::Tail { says, takes }, at));
                self.broken = true;
                return;
            }
        }
        let Some(here) = self.here else { return };
        let over = here.saturating_sub(self.taken);
        if over < 0 {
            self.faults.push((Fault::Short { by: over.saturating_neg(), had: self.had }, whole.clone()));
        } else if over > 0 && self.floats == 0 && !self.absorbs {
            self.faults.push((Fault::LeftOver { left: over, had: self.had }, whole.clone()));
        } else if over > 0 {
            // Stretches to markers took the rest, stitch for stitch.
            self.take(Counts::new(over, over));
        }
        self.broken = !self.faults.is_empty();
    }
}

/// Whether a stretch that goes by markers leaves as many as it takes.
fn is_neutral(items: &[Item], size: usize, reading: Reading) -> bool {
    let mut sum = 0_i64;
    for item in items {
        match item {
            Item::Even { binds: false, .. } => {}
            other => match once(std::slice::from_ref(other), size, reading) {
                Some(counts) => sum = sum.saturating_add(counts.leaves.saturating_sub(counts.takes)),
                None => return false,
            },
        }
    }
    sum == 0
}
