//! References in front matter.

use crate::entry::field::{Field, wrong_type};
use crate::entry::kind::{Key, Kind, Reference};
use crate::entry::schema::{Definitions, Schema};
use crate::entry::yaml::{Node, Notes};
use crate::finding::{Code, Severity};
use std::marker::PhantomData;

/// A reference that is no key, or is of another kind than its field takes.
pub static BAD_REFERENCE: Code = Code {
    name: "bad-reference",
    severity: Severity::Error,
    what: "A reference is no key, or names another kind than the field takes.",
    why: "It cannot be linked.",
    bad: "maker: Tidewater Mill",
    good: "maker: tidewater-mill",
};

/// A kind as a type, so that a field says in its own type what it refers to.
pub trait Wanted: Clone + std::fmt::Debug + 'static {
    /// The kind.
    const KIND: Kind;
    /// How a value looks, for messages.
    const WHAT: &'static str;
    /// A key, for schemas.
    const EXAMPLE: &'static str;
}

macro_rules! wanted {
    ($($name:ident = $what:literal, $example:literal;)*) => { $(
        #[doc = concat!("Marks a reference to ", $what, ".")]
        #[derive(Clone, Copy, Debug)]
        pub struct $name;

        impl Wanted for $name {
            const KIND: Kind = Kind::$name;
            const WHAT: &'static str = $what;
            const EXAMPLE: &'static str = $example;
        }
    )* };
}

wanted! {
    Pattern = "a pattern's key", "saltmarsh-yoke";
    Project = "a project's key", "storm-lantern";
    Yarn = "a yarn's key", "heron-dk";
    Technique = "a technique's key", "short-rows";
    Person = "a person's key", "tidewater-mill";
}

/// A reference to an entry of one kind, written as its key or in full.
#[derive(Clone, Debug)]
pub struct Ref<K> {
    /// The key within the kind.
    pub key: Key,
    kind: PhantomData<K>,
}

impl<K: Wanted> Ref<K> {
    /// Returns the reference in full.
    pub fn reference(&self) -> Reference {
        Reference { kind: K::KIND, key: self.key.clone() }
    }
}

impl<K: Wanted> Field for Ref<K> {
    const WHAT: &'static str = K::WHAT;

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let reference = read_reference(node, K::WHAT, K::KIND, notes)?;
        if reference.kind != K::KIND {
            let message = format!("`{}` takes {}, not {reference}", node.trail.key(), K::WHAT);
            notes.value(&BAD_REFERENCE, node, message, None);
            return None;
        }
        notes.refer(&reference, node);
        Some(Self { key: reference.key, kind: PhantomData })
    }

    fn schema(_: &mut Definitions) -> Schema {
        // YAML makes a number of a key like `2026`.
        let key = Schema::of(&["string", "integer", "boolean"], K::EXAMPLE);
        key.pattern(&format!("^({}:)?[a-z0-9-]+$", K::KIND.word()), K::WHAT)
    }
}

/// A reference to an entry of any kind; a bare key is a person's.
#[derive(Clone, Debug)]
pub struct AnyRef(pub Reference);

impl Field for AnyRef {
    const WHAT: &'static str = "a reference like `pattern:saltmarsh-yoke`, or a person's key";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let reference = read_reference(node, Self::WHAT, Kind::Person, notes)?;
        notes.refer(&reference, node);
        Some(Self(reference))
    }

    fn schema(_: &mut Definitions) -> Schema {
        let kinds = Kind::ALL.map(Kind::word).join("|");
        let key = Schema::of(&["string", "integer", "boolean"], "pattern:saltmarsh-yoke");
        key.pattern(&format!("^(({kinds}):)?[a-z0-9-]+$"), Self::WHAT)
    }
}

/// A reference, a person's key, or plain words; which of the last two is settled when all entries are known.
#[derive(Clone, Debug)]
pub enum Words {
    /// A reference in full.
    Reference(Reference),
    /// A person's key if there is such a person, else words.
    Plain(String),
}

impl Field for Words {
    const WHAT: &'static str = "a reference, a person's key or words";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let text = String::read(node, notes)?;
        if Reference::split(&text).is_none() {
            if let Some(key) = Key::new(&text) {
                notes.perhaps_refer(&Reference { kind: Kind::Person, key }, node);
            }
            return Some(Self::Plain(text));
        }
        AnyRef::read(node, notes).map(|reference| Self::Reference(reference.0))
    }

    fn schema(definitions: &mut Definitions) -> Schema {
        String::schema(definitions)
    }
}

fn read_reference(node: &Node<'_>, what: &str, bare: Kind, notes: &mut Notes<'_>) -> Option<Reference> {
    let Some(text) = node.value.scalar() else {
        wrong_type(node, what, notes);
        return None;
    };
    let (kind, key) = Reference::split(text).unwrap_or((bare, text));
    let Some(key) = Key::new(key) else {
        let like = Key::like(key);
        let help = if like.is_empty() {
            format!("write {what}")
        } else {
            format!("a key is lower-case letters, digits and hyphens: `{like}`")
        };
        notes.value(&BAD_REFERENCE, node, format!("`{text}` is not a key"), Some(help));
        return None;
    };
    Some(Reference { kind, key })
}
