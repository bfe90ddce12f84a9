//! Shaping at the ends of rows that a sentence tells.

use super::super::statement::{Shaped, Statement};
use super::knitter::{Id, Knitter};
use super::past::Past;
use super::spells::What;

impl Knitter<'_> {
    /// Works shaping that a sentence tells.
    pub(super) fn shape(&mut self, id: Id, statement: &Statement, shaped: &Shaped) {
        let each = shaped.by.of(self.size).saturating_mul(shaped.edges);
        self.history.push(Past::Unknown);
        self.pace.lose();
        self.markers.forget();
        let by = if shaped.less { each.saturating_neg() } else { each };
        self.work_spells(id, statement, &shaped.spells, &What::Ends(by));
    }
}
