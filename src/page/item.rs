//! What stands on many pages, made once.

use super::view::{Link, NoteItem, PatternItem, ProjectItem};
use super::{Shown, lists, note, page_path, project};
use crate::catalogue::Visibility;
use crate::entry::{Entry, Note, Pattern, Project};
use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde::{Serialize, Serializer};
use std::borrow::Cow;
use std::ops::Deref;
use std::sync::{Arc, OnceLock};

/// Something together with what templates see of it. Cheap to clone: every page that shows it shares it.
#[derive(Debug)]
pub struct Item<T>(Arc<Made<T>>);

#[derive(Debug)]
struct Made<T> {
    is: T,
    seen: tera::Value,
}

impl<T> Clone for Item<T> {
    fn clone(&self) -> Self {
        Self(Arc::clone(&self.0))
    }
}

impl<T: Serialize> From<T> for Item<T> {
    fn from(is: T) -> Self {
        Self(Arc::new(Made { seen: tera::Value::from_serializable(&is), is }))
    }
}

impl<T> Deref for Item<T> {
    type Target = T;

    fn deref(&self) -> &T {
        &self.0.is
    }
}

impl<T: PartialEq> PartialEq for Item<T> {
    fn eq(&self, other: &Self) -> bool {
        self.0.is == other.0.is
    }
}

impl<T: Eq> Eq for Item<T> {}

impl<T> Serialize for Item<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.0.seen.serialize(serializer)
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

/// What is shown of each entry of a studio wherever it is named or listed, made when it is first asked for.
#[derive(Debug)]
pub struct Items {
    links: Vec<OnceLock<Item<Link>>>,
    patterns: Vec<OnceLock<Item<PatternItem>>>,
    projects: Vec<OnceLock<Item<ProjectItem>>>,
    notes: Vec<OnceLock<Item<NoteItem>>>,
}

impl Items {
    /// Returns room for what is shown of so many entries; without room, each is made whenever it is asked for.
    pub fn of(entries: usize) -> Self {
        Self { links: room(entries), patterns: room(entries), projects: room(entries), notes: room(entries) }
    }
}

fn room<T>(entries: usize) -> Vec<OnceLock<T>> {
    std::iter::repeat_with(OnceLock::new).take(entries).collect()
}

impl Shown<'_> {
    /// Returns a pattern as a line of a list.
    pub fn pattern_item(&self, entry: &Entry, pattern: &Pattern) -> Item<PatternItem> {
        self.once(entry, &self.items.patterns, || lists::pattern_item(self, entry, pattern))
    }

    /// Returns a project as a line of a list.
    pub fn project_item(&self, entry: &Entry, project: &Project) -> Item<ProjectItem> {
        self.once(entry, &self.items.projects, || project::item(self, entry, project))
    }

    /// Returns a note as a line of a list.
    pub fn note_item(&self, entry: &Entry, note: &Note) -> Item<NoteItem> {
        self.once(entry, &self.items.notes, || note::item(self, entry, note))
    }

    /// Returns a link to an entry; plain words if it has no public page.
    pub fn own_link(&self, entry: &Entry) -> Item<Link> {
        self.once(entry, &self.items.links, || {
            let url = match self.catalogue.visibility(entry) {
                Visibility::Public => Some(self.addresses.local(&page_path(&entry.id))),
                Visibility::OnTheWay => Some(self.address_on_the_way(entry)),
                Visibility::Hidden => None,
            };
            Link { title: entry.common.title.clone(), url }
        })
    }

    fn once<T: Serialize>(&self, entry: &Entry, made: &[OnceLock<Item<T>>], make: impl Fn() -> T) -> Item<T> {
        let kept = self.catalogue.place(&entry.id).and_then(|place| made.get(place));
        kept.map_or_else(|| Item::from(make()), |kept| kept.get_or_init(|| Item::from(make())).clone())
    }
}
