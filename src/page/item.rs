//! Lines of lists that stand on many pages, made once.

use super::view::{NoteItem, PatternItem, ProjectItem};
use super::{Shown, lists, note, project};
use crate::entry::{Entry, Note, Pattern, Project};
use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde::{Serialize, Serializer};
use std::borrow::Cow;
use std::marker::PhantomData;
use std::sync::OnceLock;

/// A line of a list as templates see it. Cheap to clone: every page that shows it shares it.
#[derive(Clone, Debug)]
pub struct Item<T> {
    made: tera::Value,
    of: PhantomData<T>,
}

impl<T> Serialize for Item<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.made.serialize(serializer)
    }
}

impl<T: JsonSchema> JsonSchema for Item<T> {
    fn inline_schema() -> bool {
        T::inline_schema()
    }

    fn schema_name() -> Cow<'static, str> {
        T::schema_name()
    }

    fn schema_id() -> Cow<'static, str> {
        T::schema_id()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        T::json_schema(generator)
    }
}

/// The lines of a studio's entries, each made when it is first asked for.
#[derive(Debug)]
pub struct Items {
    made: Vec<OnceLock<tera::Value>>,
}

impl Items {
    /// Returns room for the line of each of so many entries; without room, each line is made whenever it is asked for.
    pub fn of(entries: usize) -> Self {
        Self { made: std::iter::repeat_with(OnceLock::new).take(entries).collect() }
    }
}

impl Shown<'_> {
    /// Returns a pattern as a line of a list.
    pub fn pattern_item(&self, entry: &Entry, pattern: &Pattern) -> Item<PatternItem> {
        self.item(entry, || lists::pattern_item(self, entry, pattern))
    }

    /// Returns a project as a line of a list.
    pub fn project_item(&self, entry: &Entry, project: &Project) -> Item<ProjectItem> {
        self.item(entry, || project::item(self, entry, project))
    }

    /// Returns a note as a line of a list.
    pub fn note_item(&self, entry: &Entry, note: &Note) -> Item<NoteItem> {
        self.item(entry, || note::item(self, entry, note))
    }

    fn item<T: Serialize>(&self, entry: &Entry, make: impl Fn() -> T) -> Item<T> {
        let make = || tera::Value::from_serializable(&make());
        let kept = self.catalogue.place(&entry.id).and_then(|place| self.items.made.get(place));
        Item { made: kept.map_or_else(make, |kept| kept.get_or_init(make).clone()), of: PhantomData }
    }
}
