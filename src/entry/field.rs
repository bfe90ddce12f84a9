//! How a value of front matter becomes a typed field.

use super::schema::{Definitions, Schema};
use super::value::{RUN_TAKEN_APART, broken_run};
use super::yaml::{Node, Notes, Trail, Yaml};
use crate::finding::{Code, Severity, nearest};

/// A value of the wrong shape: a list where a text is wanted, a word where a number is.
pub static WRONG_TYPE: Code = Code {
    name: "wrong-type",
    severity: Severity::Error,
    what: "A value is not of the kind its key takes.",
    why: "The value cannot be used, so the page would lack it.",
    bad: "published: soon",
    good: "published: 2026-03-14",
};

/// A key that must be there and is not.
pub static MISSING: Code = Code {
    name: "missing-field",
    severity: Severity::Error,
    what: "A key that must be given is not there.",
    why: "The entry cannot be shown or linked without it.",
    bad: "(no title)",
    good: "title: Saltmarsh Yoke",
};

/// A key that means nothing here, mostly a misspelt one.
pub static UNKNOWN_KEY: Code = Code {
    name: "unknown-key",
    severity: Severity::Error,
    what: "A key is not one that this kind of entry has.",
    why: "What is written under it would quietly not be on the site.",
    bad: "guage: { stitches: 22, over: 10 cm }",
    good: "gauge: { stitches: 22, over: 10 cm }",
};

/// A type that can be read from front matter.
pub trait Field: Sized {
    /// What a value looks like, as it is said in messages: "a date like `2026-03-14`".
    const WHAT: &'static str;

    /// Whether the value must never reach the site.
    const PRIVATE: bool = false;

    /// Reads a value; where it is wrong, notes why and returns nothing.
    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self>;

    /// Returns what JSON Schema says of such a value, which must never refuse what `read` accepts.
    fn schema(definitions: &mut Definitions) -> Schema;

    /// Returns the value that stands for an absent key, or nothing if the key must be there.
    fn absent() -> Option<Self> {
        None
    }
}

/// One key of a record: its words, for messages, references and schemas.
#[derive(Clone, Copy, Debug)]
pub struct FieldInfo {
    /// The key as it is written.
    pub key: &'static str,
    /// What it means.
    pub doc: &'static str,
    /// What its value looks like.
    pub what: &'static str,
    /// Whether it never reaches the site.
    pub private: bool,
    /// An example of its own in YAML; if there is none, its value's will do.
    pub example: &'static [&'static str],
    /// Returns what JSON Schema says of its value.
    pub schema: fn(&mut Definitions) -> Schema,
    /// Returns whether it must be there.
    pub required: fn() -> bool,
}

/// Returns whether a key of this type must be there.
pub fn required<T: Field>() -> bool {
    T::absent().is_none()
}

/// A fixed set of keys, each with a field.
pub trait Record: Sized {
    /// What the record is, with its article: "a pattern".
    const NAME: &'static str;
    /// Its keys in the order they are documented.
    const FIELDS: &'static [FieldInfo];

    /// Reads the keys it knows and leaves others alone.
    fn read_known(keys: &Keys<'_>, notes: &mut Notes<'_>) -> Option<Self>;
}

/// The keys and values of one map.
#[derive(Clone, Copy, Debug)]
pub struct Keys<'a> {
    entries: &'a [(String, Yaml)],
    node: Node<'a>,
}

impl<'a> Keys<'a> {
    /// Returns a node's keys; a node that is no map is noted as the wrong type.
    pub fn of(node: &Node<'a>, what: &str, known: &[FieldInfo], notes: &mut Notes<'_>) -> Option<Self> {
        match node.value {
            Yaml::Map(entries) => {
                // The pieces of a run are no keys of their own; telling each of them would hide what happened.
                if let Some(run) = broken_run(entries) {
                    notes.value(&RUN_TAKEN_APART, node, "YAML has taken a size run apart at its commas", Some(run));
                    return None;
                }
                Some(Self { entries, node: *node })
            }
            Yaml::Null => Some(Self { entries: &[], node: *node }),
            _ => {
                let help = known.first().map(|field| format!("write its keys, such as `{{ {}: … }}`", field.key));
                wrong_type_with(node, what, help, notes);
                None
            }
        }
    }

    /// Reads one key as a field; a key that must be there and is not is noted.
    pub fn field<T: Field>(&self, record: &str, key: &'static str, notes: &mut Notes<'_>) -> Option<T> {
        match self.entries.iter().find(|(name, _)| name == key) {
            Some((name, value)) => T::read(&Node { value, trail: Trail::Key(&self.node.trail, name) }, notes),
            None => T::absent().or_else(|| {
                notes.key(
                    &MISSING,
                    &self.node,
                    format!("{record} needs `{key}`"),
                    Some(format!("add `{key}:`, {}", T::WHAT)),
                );
                None
            }),
        }
    }

    /// Notes every key that is in none of these lists of fields.
    pub fn check_known(&self, record: &str, known: &[&[FieldInfo]], notes: &mut Notes<'_>) {
        let names = || known.iter().flat_map(|fields| fields.iter()).map(|field| field.key);
        for (name, value) in self.entries {
            if names().any(|key| key == name) {
                continue;
            }
            let node = Node { value, trail: Trail::Key(&self.node.trail, name) };
            let help = match nearest(name, names()) {
                Some(near) => format!("did you mean `{near}`?"),
                None => format!("{record} takes {}", list(names())),
            };
            notes.key(&UNKNOWN_KEY, &node, format!("`{name}` is not a key of {record}"), Some(help));
        }
    }
}

fn list<'a>(names: impl Iterator<Item = &'a str>) -> String {
    names.map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ")
}

/// Reads a whole record from a node, keys it does not know included in what is noted.
pub fn read_record<T: Record>(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<T> {
    let keys = Keys::of(node, T::NAME, T::FIELDS, notes)?;
    keys.check_known(T::NAME, &[T::FIELDS], notes);
    T::read_known(&keys, notes)
}

/// Notes that a node's value is of the wrong type.
pub fn wrong_type(node: &Node<'_>, what: &str, notes: &mut Notes<'_>) {
    wrong_type_with(node, what, None, notes);
}

fn wrong_type_with(node: &Node<'_>, what: &str, help: Option<String>, notes: &mut Notes<'_>) {
    let key = node.trail.key();
    let found = match node.value {
        Yaml::Text(text) if text.chars().count() <= 40 => format!("`{text}`"),
        Yaml::Number(text) | Yaml::Fraction(text) => format!("`{text}`"),
        other => other.what().to_owned(),
    };
    notes.value(&WRONG_TYPE, node, format!("`{key}` takes {what}, not {found}"), help);
}

/// Defines a record: a struct, its keys with their documentation, and how it is read.
///
/// One list is thus the type, the names that near misses are offered from, the schema and the reference. Behind the type
/// may stand an example in YAML, `= "pullover"`, where that of the type says too little.
macro_rules! record {
    (
        $(#[doc = $doc:literal])*
        pub struct $name:ident: $what:literal {
            $( $(#[doc = $field_doc:literal])+ $key:literal => $field:ident: $type:ty $(= $example:literal)?, )*
        }
    ) => {
        $(#[doc = $doc])*
        #[derive(Clone, Debug)]
        pub struct $name {
            $( $(#[doc = $field_doc])+ pub $field: $type, )*
        }

        impl $crate::entry::field::Record for $name {
            const NAME: &'static str = $what;
            const FIELDS: &'static [$crate::entry::field::FieldInfo] = &[
                $( $crate::entry::field::FieldInfo {
                    key: $key,
                    doc: concat!($($field_doc),+),
                    what: <$type as $crate::entry::field::Field>::WHAT,
                    private: <$type as $crate::entry::field::Field>::PRIVATE,
                    example: &[$($example)?],
                    schema: <$type as $crate::entry::field::Field>::schema,
                    required: $crate::entry::field::required::<$type>,
                }, )*
            ];

            fn read_known(keys: &$crate::entry::field::Keys<'_>, notes: &mut $crate::entry::yaml::Notes<'_>) -> Option<Self> {
                let _ = (keys, &*notes); // a record may have no key
                $( let $field = keys.field::<$type>($what, $key, notes); )*
                Some(Self { $( $field: $field?, )* })
            }
        }

        impl $crate::entry::field::Field for $name {
            const WHAT: &'static str = $what;

            fn read(node: &$crate::entry::yaml::Node<'_>, notes: &mut $crate::entry::yaml::Notes<'_>) -> Option<Self> {
                $crate::entry::field::read_record(node, notes)
            }

            fn schema(definitions: &mut $crate::entry::schema::Definitions) -> $crate::entry::schema::Schema {
                $crate::entry::schema::of_record::<Self>(definitions)
            }
        }
    };
}
pub(crate) use record;
