//! Markers in a row: where they hang on the left needle, and where on the right one they come to hang.

use super::super::fault::Fault;
use super::super::lexicon::Counts;
use super::super::tree::{How, Item, Mark, Reach, Span, To, Until, Which};
use super::work::Work;

/// The markers of a row at work.
#[derive(Clone, Debug, Default)]
pub(super) struct Marks {
    /// Those on the left needle, in stitches from where the row began, ascending; `None` where that is not known.
    on: Option<Vec<i64>>,
    /// How many of them are on the right needle.
    passed: usize,
    /// Those on the right needle, in stitches from its end.
    placed: Vec<i64>,
    /// Whether the words have come to the next one: if they go on to a marker without a word, they mean the one behind it.
    arrived: bool,
    /// Where one was that the last stitches went past.
    past: Option<i64>,
    /// Whether there are some of which nobody knows where.
    pub(super) strange: bool,
}

/// Where words lead that go to a marker.
pub(super) enum Target {
    /// To so many stitches from where the row began.
    At(i64),
    /// There are fewer stitches up to the marker than are to be left.
    Near(i64),
    /// There is no marker on the needle.
    Missing,
    /// Nobody knows.
    Unknown,
}

impl Marks {
    pub(super) fn of(on: Option<&[i64]>) -> Self {
        Self { on: on.map(<[i64]>::to_vec), ..Self::default() }
    }

    /// From here on nobody knows where they are.
    pub(super) fn lose(&mut self) {
        self.on = None;
        self.strange = true;
    }

    pub(super) fn are_known(&self) -> bool {
        self.on.is_some()
    }

    fn next(&self) -> Option<i64> {
        self.on.as_ref()?.get(self.passed).copied()
    }

    /// Whether no marker is left on the left needle.
    pub(super) fn are_passed(&self) -> bool {
        self.next().is_none()
    }

    /// Whether one hangs between two places.
    pub(super) fn within(&self, from: i64, to: i64) -> bool {
        self.next().is_some_and(|next| next > from && next < to)
    }

    /// Takes those along that hang between the stitches of `times` times `unit`.
    pub(super) fn pass(&mut self, taken: i64, left: i64, unit: Counts, times: i64) {
        if unit.takes <= 0 || times <= 0 {
            if unit.takes < 0 && self.are_known() {
                self.lose();
            }
            return;
        }
        (self.arrived, self.past) = (false, None);
        let end = taken.saturating_add(unit.takes.saturating_mul(times));
        while let Some(next) = self.next().filter(|next| *next < end) {
            let offset = next.saturating_sub(taken);
            let units = offset.checked_div(unit.takes).unwrap_or(0).saturating_mul(unit.leaves);
            let out = if offset.checked_rem(unit.takes) == Some(0) {
                units
            } else if unit.takes == unit.leaves {
                offset
            } else {
                // In the midst of a decrease: before it or behind it.
                self.lose();
                return;
            };
            self.placed.push(left.saturating_add(out));
            self.passed += 1;
            self.past = Some(next);
        }
    }

    /// Passes the next one where it hangs.
    fn slip(&mut self, left: i64, keep: bool) {
        if keep {
            self.placed.push(left);
        }
        self.passed += 1;
        (self.arrived, self.past) = (false, None);
    }

    /// Those there are behind the row; `taken` and `left` are all its stitches.
    pub(super) fn end(mut self, taken: i64, left: i64) -> Option<Vec<i64>> {
        while self.next() == Some(taken) {
            self.slip(left, true);
        }
        let known = match &self.on {
            Some(on) => self.passed == on.len(),
            None => !self.placed.is_empty(),
        };
        (known && !self.strange).then_some(self.placed)
    }
}

impl Work {
    /// Whether all stitches up to here are known.
    pub(super) fn is_counted(&self) -> bool {
        self.floats == 0 && !self.absorbs && self.turns == 0
    }

    /// Puts a marker, slips it or takes it away.
    pub(super) fn mark(&mut self, mark: Mark, at: &Span) {
        if !self.is_counted() {
            self.marks.lose();
            return;
        }
        if mark == Mark::Place {
            self.marks.placed.push(self.left);
            return;
        }
        if !self.marks.are_known() {
            self.marks.strange = true;
            return;
        }
        // Where the round begins hangs one that nobody counts.
        let edge = self.round && (self.taken == 0 || Some(self.taken) == self.here);
        let fault = match (self.marks.next(), self.marks.past) {
            (Some(next), _) if next == self.taken => {
                self.marks.slip(self.left, mark == Mark::Slip);
                return;
            }
            (_, Some(past)) => Fault::MarkerPassed { by: self.taken.saturating_sub(past) },
            _ if edge => return,
            (Some(next), None) => Fault::MarkerAhead { left: next.saturating_sub(self.taken) },
            (None, None) => Fault::NoMarker,
        };
        self.break_at(fault, at);
    }

    /// Returns where words to a marker lead. Markers that they leave behind are passed.
    pub(super) fn target(&mut self, to: &To) -> Target {
        if !self.is_counted() {
            return Target::Unknown;
        }
        let by = to.by.of(self.size);
        loop {
            let Some(on) = &self.marks.on else { return Target::Unknown };
            let (marker, is_edge) = match to.which {
                Which::Unknown => return Target::Unknown,
                Which::Last => (on.last().filter(|last| **last >= self.taken).copied(), false),
                Which::Number(number) => match on.get(number.saturating_sub(1)) {
                    Some(marker) if *marker >= self.taken => (Some(*marker), false),
                    _ => return Target::Unknown,
                },
                Which::Next => match self.marks.next() {
                    None if self.round => (self.here, true),
                    next => (next, false),
                },
            };
            let Some(marker) = marker else { return Target::Missing };
            let stands_there = marker == self.taken && !is_edge && to.which == Which::Next;
            if stands_there && !to.past && (self.marks.arrived || by > 0) {
                self.marks.slip(self.left, true);
                continue;
            }
            let target = if to.past { marker.saturating_add(by) } else { marker.saturating_sub(by) };
            return if target < self.taken {
                Target::Near(marker.saturating_sub(self.taken))
            } else {
                Target::At(target)
            };
        }
    }

    /// Works as far as a marker, or tells why not; returns the stitches up to there, or nothing where they are not known.
    pub(super) fn room_to_marker(&mut self, to: &To, at: &Span) -> Option<i64> {
        match self.target(to) {
            Target::At(target) => Some(target.saturating_sub(self.taken)),
            Target::Near(left) => {
                self.break_at(Fault::MarkerNear { says: to.by.of(self.size), left }, at);
                None
            }
            Target::Missing => {
                self.break_at(Fault::NoMarker, at);
                None
            }
            Target::Unknown => {
                self.marks.lose();
                None
            }
        }
    }

    /// Notes that the words have come to a marker.
    pub(super) fn arrive(&mut self, to: &To) {
        self.marks.arrived = !to.past && to.by.of(self.size) == 0;
    }
}

/// Whether a stretch speaks of markers.
pub(super) fn has_marks(items: &[Item]) -> bool {
    items.iter().any(|item| match item {
        Item::Mark { .. } | Item::Even { until: Until::Marker(_), .. } => true,
        Item::Repeat { how: How::Until(Until::Marker(_)), .. }
        | Item::Chart { reach: Reach::Until(Until::Marker(_)), .. } => true,
        Item::Repeat { items, .. } => has_marks(items),
        _ => false,
    })
}
