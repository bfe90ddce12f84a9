//! Markers from row to row: where they hang, seen from the right side, and which way the work faces.

use super::super::count::{Hand, Needle, Outcome};
use super::super::statement::{Label, Side};

/// Which way the last row was worked.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Facing {
    /// There was none.
    #[default]
    Start,
    /// Round and round.
    Round,
    /// From the right side.
    Right,
    /// From the wrong side.
    Wrong,
    /// The words do not tell.
    Unknown,
}

/// The markers on the needle.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Markers {
    /// All stitches, and how many of them are before each marker where the right side faces; `None` where that is not known.
    on: Option<(i64, Vec<i64>)>,
    facing: Facing,
    /// Whether there are some that nobody knows of, so that what is placed later is not all.
    strange: bool,
}

impl Markers {
    /// From here on nobody knows where they are.
    pub(super) fn forget(&mut self) {
        (self.on, self.strange) = (None, true);
    }

    /// Whether the last row was a round.
    pub(super) fn is_round(&self) -> bool {
        self.facing == Facing::Round
    }

    /// Rows whose number is not told leave them where they are, and nobody knows on which side.
    pub(super) fn go_on(&mut self) {
        if self.facing != Facing::Round {
            self.facing = Facing::Unknown;
        }
    }

    /// One row that changes nothing is worked, and turned behind.
    pub(super) fn plain_row(&mut self) {
        self.facing = match self.facing {
            Facing::Start | Facing::Wrong => Facing::Right,
            Facing::Right => Facing::Wrong,
            Facing::Round => Facing::Round,
            Facing::Unknown => Facing::Unknown,
        };
    }

    /// Returns what is in hand for a row with this label.
    pub(super) fn hand(&mut self, label: Option<&Label>, needle: Needle) -> Hand {
        self.facing = match (label, self.facing) {
            (Some(label), _) if label.round => Facing::Round,
            (Some(Label { side: Some(Side::Right), .. }), _) => Facing::Right,
            (Some(Label { side: Some(Side::Wrong), .. }), _) => Facing::Wrong,
            (Some(_), Facing::Start | Facing::Round | Facing::Wrong) => Facing::Right,
            (Some(_), Facing::Right) => Facing::Wrong,
            (None, Facing::Round) => Facing::Round,
            _ => Facing::Unknown,
        };
        let valid = self.on.as_ref().is_some_and(|(total, on)| {
            let even = self.facing != Facing::Unknown || *on == mirrored(on, *total);
            even && needle.total == Some(*total) && needle.here == Some(*total)
        });
        if self.on.is_some() && !valid {
            self.forget();
        }
        let marks = self.on.as_ref().map(|(total, on)| self.seen(on, *total));
        Hand { needle, marks, round: self.facing == Facing::Round, apart: false }
    }

    /// Keeps what a row leaves.
    pub(super) fn keep(&mut self, outcome: &Outcome) {
        self.strange |= outcome.strange;
        match (&outcome.marks, outcome.after.total) {
            (Some(marks), Some(total)) if !self.strange => {
                let symmetric = *marks == mirrored(marks, total);
                if self.facing == Facing::Unknown && !symmetric {
                    self.forget();
                } else {
                    self.on = Some((total, self.seen(marks, total)));
                }
            }
            _ if self.on.is_some() => self.forget(),
            _ => {}
        }
    }

    /// Places as the row is worked, or back as the right side has them.
    fn seen(&self, on: &[i64], total: i64) -> Vec<i64> {
        if self.facing == Facing::Wrong { mirrored(on, total) } else { on.to_vec() }
    }
}

fn mirrored(on: &[i64], total: i64) -> Vec<i64> {
    on.iter().rev().map(|place| total.saturating_sub(*place)).collect()
}
