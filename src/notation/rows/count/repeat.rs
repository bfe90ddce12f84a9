//! Repeats in a row: so many times, as far as there are stitches, or by markers.

use super::super::fault::Fault;
use super::super::lexicon::Counts;
use super::super::tree::{Item, Span, Until};
use super::marks::has_marks;
use super::once::{binds, is_neutral, once, parts, times_over};
use super::work::Work;

/// The most often that a repeat is walked through which cannot be multiplied, since it turns or goes by markers.
const MOST_WALKED: i64 = 500;

impl Work {
    /// Works something several times.
    pub(super) fn repeat(&mut self, items: &[Item], times: i64, at: &Span) {
        // All of it is looked at before it is worked.
        self.step(parts(items), at);
        let unit = once(items, self.size, self.reading);
        let walks = match unit {
            None => true,
            Some(unit) => {
                let end = self.taken.saturating_add(times_over(unit, times).takes);
                has_marks(items) || (self.apart && binds(items) > 0) || self.marks.within(self.taken, end)
            }
        };
        match unit {
            Some(unit) if !walks => self.take(unit, times),
            // Too often to walk through: the markers are lost, and the stitches where they cannot be multiplied.
            Some(unit) if times > MOST_WALKED => {
                self.marks.lose();
                self.take(unit, times);
            }
            _ if times > MOST_WALKED => self.lose(at),
            _ => {
                for _ in 0..times {
                    if self.broken || self.lost.is_some() {
                        return;
                    }
                    self.items(items);
                }
            }
        }
    }

    pub(super) fn repeat_until(&mut self, items: &[Item], until: &Until, at: &Span) {
        self.step(parts(items), at);
        let mut unit = once(items, self.size, self.reading);
        if let Some(unit) = unit.as_mut().filter(|_| self.apart) {
            let more = binds(items);
            *unit = Counts::new(unit.takes.saturating_add(more), unit.leaves.saturating_add(more));
        }
        let neutral = match unit {
            Some(unit) => unit.takes == unit.leaves,
            None => is_neutral(items, self.size, self.reading),
        };
        if unit.is_some_and(|unit| unit.takes <= 0) {
            self.break_at(Fault::RepeatEmpty, at);
            return;
        }
        if let Until::There(_) = until {
            self.lose(at);
            return;
        }
        if let Until::Marker(to) = until {
            match (self.room_to_marker(to, at), unit) {
                (None, _) if self.broken => {}
                (Some(room), Some(unit)) => {
                    self.repeat_over(items, unit, room, at);
                    self.arrive(to);
                }
                _ => self.float(neutral, at),
            }
            return;
        }
        let afloat = self.floats > 0;
        let room = self.room(until, at);
        match (unit, room) {
            (Some(unit), Some(room)) if !afloat => self.repeat_over(items, unit, room, at),
            (None, Some(room)) if !afloat && self.marks.are_known() && has_marks(items) => {
                self.repeat_by_marks(items, room, at);
            }
            (_, Some(room)) if neutral => {
                self.marks.lose();
                self.take(Counts::new(1, 1), room);
            }
            (_, None) if neutral => {}
            _ if self.broken => {}
            _ => self.lose(at),
        }
        self.tail(until, at);
    }

    /// Works to a marker of which nobody knows where it hangs; only what leaves as many as it takes keeps the count.
    pub(super) fn float(&mut self, neutral: bool, at: &Span) {
        self.marks.lose();
        self.floats += 1;
        self.fresh = false;
        if !neutral {
            self.lose(at);
        }
    }

    /// Works so many stitches in repeats that each take as many.
    pub(super) fn repeat_over(&mut self, items: &[Item], unit: Counts, room: i64, at: &Span) {
        let over = room.checked_rem(unit.takes).unwrap_or(0);
        if over > 0 {
            self.break_at(Fault::RepeatLeft { left: over, of: unit.takes, room }, at);
            return;
        }
        self.repeat(items, room.checked_div(unit.takes).unwrap_or(0), at);
    }

    /// Works so many stitches in repeats that go by markers; what is left behind the last marker is worked even.
    fn repeat_by_marks(&mut self, items: &[Item], room: i64, at: &Span) {
        let end = self.taken.saturating_add(room);
        for _ in 0..MOST_WALKED {
            let begun = self.taken;
            if begun >= end || (self.marks.are_passed() && !self.round) {
                break;
            }
            self.items(items);
            if self.broken || self.lost.is_some() || self.taken == begun {
                break;
            }
            if self.taken > end {
                let (left, of) = (end.saturating_sub(begun), self.taken.saturating_sub(begun));
                self.break_at(Fault::RepeatLeft { left, of, room }, at);
            }
        }
        if !self.broken && self.lost.is_none() && self.taken < end {
            self.take(Counts::new(1, 1), end.saturating_sub(self.taken));
        }
    }
}
