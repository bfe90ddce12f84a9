//! The rows of a chart in words, which stand beside what is worked: they have stitches of their own, and the count goes on
//! behind them.

use super::super::count::Needle;
use super::super::tree::Span;
use super::knitter::Knitter;
use super::pace::Pace;
use super::past::Past;

/// What there was before the words of a chart.
pub(super) struct Apart {
    needle: Needle,
    pace: Pace,
    lost_at: Option<(usize, Span)>,
    /// Whether its rows add or take away stitches, or do not tell: then nobody knows whether they are worked here.
    changed: bool,
}

impl Knitter<'_> {
    /// Begins the words of a chart.
    pub(super) fn set_apart(&mut self) {
        let (needle, pace, lost_at) = (self.needle, self.pace, self.lost_at.take());
        self.apart = Some(Apart { needle, pace, lost_at, changed: false });
        self.needle = Needle::UNKNOWN;
    }

    /// Notes what a row of the chart adds.
    pub(super) fn changes(&mut self, by: Option<i64>) {
        if let Some(apart) = &mut self.apart {
            apart.changed |= by != Some(0);
        }
    }

    /// Goes on where the words of a chart began.
    pub(super) fn rejoin(&mut self) {
        let Some(apart) = self.apart.take() else { return };
        // Its rows are none of those that words behind it go back to.
        self.history.push(Past::Unknown);
        self.pace = apart.pace;
        self.lost_at = apart.lost_at;
        self.needle = if apart.changed { Needle::UNKNOWN } else { apart.needle };
    }
}
