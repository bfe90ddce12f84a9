//! A piece is begun: cast on, picked up, taken up from where it waits, or worked as another.

use super::super::count::Needle;
use super::super::statement::{Statement, TakenUp};
use super::super::tree::Number;
use super::knitter::{Id, Knitter};
use super::markers::Markers;

impl Knitter<'_> {
    /// Begins anew with so many stitches.
    pub(super) fn begin(&mut self, needle: Needle) {
        self.begin_piece();
        self.apart = None;
        self.markers = Markers::default();
        self.needle = needle;
        self.begin_rows();
        self.history.begin();
        self.pace.lose();
        self.lost_at = None;
    }

    /// Picks up stitches. What is on the needle may stay there or be another matter: what is said of the count tells.
    pub(super) fn pick_up(&mut self, id: Id, statement: &Statement, number: &Number) {
        let picked = number.of(self.size);
        let live = self.needle.total.filter(|live| *live > 0);
        let says = statement.stated.as_ref().and_then(|stated| stated.values.get(self.size).copied());
        let piece = self.piece.clone();
        self.begin(match (live, says) {
            (None, _) => Needle::of(picked),
            (Some(_), None) => Needle::UNKNOWN,
            (Some(_), Some(says)) if says == picked => Needle::of(picked),
            (Some(live), Some(_)) => Needle::of(live.saturating_add(picked)),
        });
        if live.is_some() {
            // It may be the same piece.
            self.piece = self.piece.take().or(piece);
            self.markers.forget();
        }
        self.stated(id, statement, false);
    }

    /// Works a piece as another one: it comes to as many stitches.
    pub(super) fn alike(&mut self, id: Id, statement: &Statement, as_of: Option<&str>, name: Option<&str>) {
        let name = name.map(str::to_owned).or_else(|| self.heading.clone());
        let stitches = match as_of {
            Some(as_of) => self.whole_of(as_of),
            None => self.needle.total.filter(|total| *total > 0),
        };
        self.begin(stitches.map_or(Needle::UNKNOWN, Needle::of));
        self.piece = name;
        self.markers.forget();
        self.stated(id, statement, false);
    }

    /// Takes up stitches that were put aside.
    pub(super) fn take_up(&mut self, id: Id, statement: &Statement, taken: &TakenUp) {
        let number = match &taken.number {
            Some(number) => {
                let only = taken.of.first().filter(|_| taken.of.len() == 1);
                self.comes_back(id, number, only.map(String::as_str));
                Some(number.of(self.size))
            }
            None if taken.of.is_empty() => self.held.only(),
            None => taken.of.iter().map(|piece| self.stitches_of(piece)).sum(),
        };
        self.begin_piece();
        self.held.back = true;
        // Whether what was on the needle stays there, the words do not tell, if they do not name it.
        let named = taken.number.is_none() && taken.of.len() > 1;
        let more = taken.more.as_ref().map_or(0, |more| more.of(self.size));
        let empty = self.needle.total.is_none_or(|total| total == 0);
        let all = number.filter(|_| named || empty);
        self.needle = all.map_or(Needle::UNKNOWN, |all| Needle::of(all.saturating_add(more)));
        self.pace.lose();
        self.lost_at = None;
        self.markers.forget();
        self.stated(id, statement, false);
    }
}
