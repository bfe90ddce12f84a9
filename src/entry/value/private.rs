//! Values that never reach the site.

use crate::entry::field::Field;
use crate::entry::schema::{Definitions, Schema};
use crate::entry::yaml::{Node, Notes};
use std::fmt;

/// A value for the desk alone.
///
/// It has no `Serialize`, its `Debug` shows nothing, and its only way out is named so that a search finds every use:
/// a test checks that the stages which make the site never call it.
#[derive(Clone, Default)]
pub struct Private<T>(T);

impl<T> Private<T> {
    /// Returns the value, for the designer's own eyes.
    pub fn for_desk(&self) -> &T {
        &self.0
    }
}

impl<T> fmt::Debug for Private<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("private")
    }
}

impl<T: Field> Field for Private<T> {
    const WHAT: &'static str = T::WHAT;
    const PRIVATE: bool = true;

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let outer = std::mem::replace(&mut notes.in_private, true);
        let value = T::read(node, notes);
        notes.in_private = outer;
        value.map(Self)
    }

    fn absent() -> Option<Self> {
        T::absent().map(Self)
    }

    fn schema(definitions: &mut Definitions) -> Schema {
        T::schema(definitions)
    }
}
