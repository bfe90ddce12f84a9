//! Texts, truth, whole numbers, lists and maps.

use crate::entry::field::{Field, WRONG_TYPE, wrong_type};
use crate::entry::schema::{Definitions, Schema};
use crate::entry::yaml::{Node, Notes, Trail, Yaml};

impl Field for String {
    const WHAT: &'static str = "a text";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        if let Yaml::Fraction(number) = node.value {
            let message =
                format!("`{}` is read as the number {number}, and may have been written otherwise", node.trail.key());
            notes.value(
                &WRONG_TYPE,
                node,
                message,
                Some("put it in quotes, so that it stays as you write it".to_owned()),
            );
            return None;
        }
        if let Some(control) = node
            .value
            .scalar()
            .and_then(|text| text.chars().find(|c| c.is_control() && !matches!(c, '\n' | '\r' | '\t')))
        {
            let message = format!(
                "the text of `{}` holds the invisible character U+{:04X}",
                node.trail.key(),
                u32::from(control)
            );
            notes.value(&WRONG_TYPE, node, message, Some("take it out".to_owned()));
            return None;
        }
        match node.value.scalar().map(str::trim) {
            Some(text) if !text.is_empty() => {
                notes.text(text, node);
                Some(text.to_owned())
            }
            Some(_) => {
                let help = "write its words, or take the key out".to_owned();
                notes.value(&WRONG_TYPE, node, format!("`{}` is empty", node.trail.key()), Some(help));
                None
            }
            _ => {
                wrong_type(node, Self::WHAT, notes);
                None
            }
        }
    }

    fn schema(_: &mut Definitions) -> Schema {
        Schema::of(&["string", "integer", "boolean"], "some words").with("minLength", 1).else_write(Self::WHAT)
    }
}

impl Field for bool {
    const WHAT: &'static str = "`true` or `false`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        if let Yaml::Bool(value) = node.value {
            return Some(*value);
        }
        wrong_type(node, Self::WHAT, notes);
        None
    }

    fn schema(_: &mut Definitions) -> Schema {
        Schema::of(&["boolean"], "true").else_write(Self::WHAT)
    }
}

impl Field for u32 {
    const WHAT: &'static str = "a whole number";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let number = node.value.scalar().and_then(|text| text.parse().ok());
        if number.is_none() {
            wrong_type(node, Self::WHAT, notes);
        }
        number
    }

    fn schema(_: &mut Definitions) -> Schema {
        let bounds = Schema::of(&["integer", "string"], "2").with("minimum", 0).with("maximum", u32::MAX);
        bounds.pattern("^\\+?[0-9]+$", Self::WHAT)
    }
}

/// A value that may be left out; one that is wrong is noted and counts as left out.
impl<T: Field> Field for Option<T> {
    const WHAT: &'static str = T::WHAT;
    const PRIVATE: bool = T::PRIVATE;

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        match node.value {
            Yaml::Null => Some(None),
            _ => Some(T::read(node, notes)),
        }
    }

    fn absent() -> Option<Self> {
        Some(None)
    }

    fn schema(definitions: &mut Definitions) -> Schema {
        T::schema(definitions).or_nothing()
    }
}

/// A list, which may be left out; a single value stands for a list of one. Items that are wrong are noted and left out.
impl<T: Field> Field for Vec<T> {
    const WHAT: &'static str = T::WHAT;
    const PRIVATE: bool = T::PRIVATE;

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        match node.value {
            Yaml::Null => Some(Self::new()),
            Yaml::List(items) => {
                // As long as it will be and no longer: it is kept.
                let mut all = Self::with_capacity(items.len());
                all.extend(items.iter().enumerate().filter_map(|(index, value)| {
                    T::read(&Node { value, trail: Trail::Item(&node.trail, index) }, notes)
                }));
                Some(all)
            }
            _ => Some(T::read(node, notes).into_iter().collect()),
        }
    }

    fn absent() -> Option<Self> {
        Some(Self::new())
    }

    fn schema(definitions: &mut Definitions) -> Schema {
        T::schema(definitions).or_list()
    }
}

/// Names of the writer's own choice with a value each, in her order; it may be left out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Map<T>(pub Vec<(String, T)>);

impl<T> Default for Map<T> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<T> Map<T> {
    /// Returns the value of a name.
    pub fn get(&self, name: &str) -> Option<&T> {
        self.0.iter().find(|(key, _)| key == name).map(|(_, value)| value)
    }
}

impl<T: Field> Field for Map<T> {
    const WHAT: &'static str = "names with a value each";
    const PRIVATE: bool = T::PRIVATE;

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        match node.value {
            Yaml::Null => Some(Self::default()),
            Yaml::Map(entries) => {
                if let Some(run) = super::broken_run(entries) {
                    notes.value(
                        &super::RUN_TAKEN_APART,
                        node,
                        "YAML has taken a size run apart at its commas",
                        Some(run),
                    );
                    return Some(Self::default());
                }
                let read = |(name, value): &(String, Yaml)| {
                    let node = Node { value, trail: Trail::Key(&node.trail, name) };
                    T::read(&node, notes).map(|value| (name.clone(), value))
                };
                Some(Self(entries.iter().filter_map(read).collect()))
            }
            _ => {
                wrong_type(node, Self::WHAT, notes);
                None
            }
        }
    }

    fn absent() -> Option<Self> {
        Some(Self::default())
    }

    fn schema(definitions: &mut Definitions) -> Schema {
        T::schema(definitions).named(T::WHAT)
    }
}
