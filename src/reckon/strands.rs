//! The strands that one line of a pattern is knitted with: its own yarn, perhaps several times, and what is held with it.

use crate::entry::{Held, Yarn, YarnUse};
use crate::measure::{Amount, Grist, Mass, PutUp, YarnLength};

/// The strands of one line.
#[derive(Clone, Debug)]
pub struct Strands {
    own: Option<PutUp>,
    times: u32,
    held: Vec<(Option<PutUp>, u32)>,
}

impl Strands {
    /// Returns the strands of a line; a yarn that `yarn` does not give has no put-up.
    pub fn of<'a, 'y>(line: &'a YarnUse, yarn: impl Fn(&'a YarnUse) -> Option<&'y Yarn>) -> Self {
        let put_up = |line: &'a YarnUse| yarn(line).and_then(|yarn| yarn.put_up);
        let times = |line: &YarnUse| line.strands.unwrap_or(1);
        let held = line.held_with.iter().map(|Held(held)| (put_up(held), times(held))).collect();
        Self { own: put_up(line), times: times(line), held }
    }

    /// Returns the same with the line's own yarn sold otherwise.
    pub fn with(self, own: Option<PutUp>) -> Self {
        Self { own, ..self }
    }

    /// Returns the length per mass of all strands together: 1 ÷ G = Σ 1 ÷ Gᵢ. Nothing where a put-up is not known.
    ///
    /// Strands of 400 m and of 200 m to 100 g are 133.3 m to 100 g (LBHandknits).
    pub fn grist(&self) -> Option<Grist> {
        let one = |(put_up, times): (Option<PutUp>, u32)| Grist::of(put_up?)?.held(times);
        let all = std::iter::once((self.own, self.times)).chain(self.held.iter().copied()).map(one);
        Grist::together(all.collect::<Option<Vec<_>>>()?)
    }

    /// Returns the length of the line's own yarn, all its strands, in fabric of a mass.
    ///
    /// Mass × grist of all strands together × strands of its own, the product rounded near and then up. Nothing where a
    /// put-up is not known or the length does not fit.
    pub fn length_of(&self, mass: Mass) -> Option<YarnLength> {
        if self.held.is_empty() {
            return self.own?.length_of(mass);
        }
        self.grist()?.length_of(mass)?.times_up(self.times.into(), 1)
    }

    /// Returns the length of the line's own yarn in an amount: a mass is of all strands, skeins and length are of its own.
    pub fn length(&self, amount: Amount) -> Option<YarnLength> {
        match amount {
            Amount::Mass(mass) => self.length_of(mass),
            Amount::Length(_) | Amount::Skeins(_) => amount.length(self.own),
        }
    }

    /// Returns the mass of all strands beside a length of the line's own yarn, rounded near; nothing as for
    /// [`Self::length_of`].
    pub fn mass_of(&self, length: YarnLength) -> Option<Mass> {
        if self.held.is_empty() {
            return self.own?.mass_of(length);
        }
        self.grist()?.mass_of(length.times_near(1, self.times.into())?)
    }
}
