//! The call for test knitters of a design: whether there is one, and whether it is open.

use super::{Catalogue, Eyes, Visibility};
use crate::entry::value::{Date, Stage};
use crate::entry::{Entry, Pattern, TestKnit};

/// A design's call for test knitters.
#[derive(Clone, Copy, Debug)]
pub struct Call<'a> {
    /// What it says.
    pub says: &'a TestKnit,
    /// Whether one can still answer it.
    pub state: CallState,
}

/// Whether a call can be answered on a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CallState {
    /// Its first day is still to come.
    Coming,
    /// It can be answered.
    Open,
    /// Its last day has passed.
    Closed,
}

impl Catalogue {
    /// Returns the call of a design if it has a page for whoever looks: at the stage of its test knit from the first day on,
    /// until it is published. The designer has the page before that day.
    pub fn call<'a>(&self, entry: &'a Entry, pattern: &'a Pattern) -> Option<Call<'a>> {
        self.call_on(entry, pattern, self.view.today)
    }

    /// Returns the same call as it is on another day.
    pub fn call_on<'a>(&self, entry: &'a Entry, pattern: &'a Pattern, day: Date) -> Option<Call<'a>> {
        let says = pattern.test_knit.as_ref().filter(|_| pattern.stage() == Stage::TestKnit)?;
        if self.for_readers_on(entry, day) != Visibility::OnTheWay {
            return None;
        }
        let opens = says.opens?;
        let state = if opens > day {
            CallState::Coming
        } else if says.closes.is_some_and(|closes| closes < day) {
            CallState::Closed
        } else {
            CallState::Open
        };
        (state != CallState::Coming || self.view.eyes == Eyes::Designer).then_some(Call { says, state })
    }

    /// Returns the designs whose call has a page, by key.
    pub fn calls(&self) -> impl Iterator<Item = (&Entry, &Pattern, Call<'_>)> {
        self.on_the_way().filter_map(|(entry, pattern)| Some((entry, pattern, self.call(entry, pattern)?)))
    }
}
