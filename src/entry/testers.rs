//! Those who knitted a design before publication, and what of them may be shown.

use super::field::{Field, record};
use super::schema::{Definitions, Schema};
use super::value::{Map, Private, Ref, to};
use super::yaml::{Node, Notes};
use crate::measure::Amount;

record! {
    /// One who knitted a design before publication.
    pub struct Tester: "a tester" {
        /// Their name.
        "name" => name: String = "Ines",
        /// The size they made.
        "size" => size: Option<String> = "M",
        /// The yarn they used.
        "yarn" => yarn: Option<Ref<to::Yarn>>,
        /// What they used of each colour.
        "used" => used: Map<Amount> = "{ MC: 905 m }",
        /// Whether yarn, size and length may be shown, without the name.
        "share" => share: Option<bool> = "true",
    }
}

/// The testers of a design, parted when they are read: what they let be shown, and all else.
///
/// Only [`Private`] holds a name, so no stage that makes the site can come by one.
#[derive(Clone, Debug)]
pub struct Testers {
    /// All of them, with their names.
    pub all: Private<Vec<Tester>>,
    /// The size of each that says one, in the order they are written: whether a place in a test knit is taken.
    pub sizes: Vec<String>,
    /// What those used who share it, without their names.
    pub shared: Vec<Shared>,
}

/// What one tester used, who lets it be shown.
#[derive(Clone, Debug)]
pub struct Shared {
    /// The size they made.
    pub size: Option<String>,
    /// The yarn they used.
    pub yarn: Option<Ref<to::Yarn>>,
    /// What they used of each colour, by its label.
    pub used: Map<Amount>,
}

impl Testers {
    fn of(all: Private<Vec<Tester>>) -> Self {
        let testers = all.for_desk();
        let shared = testers.iter().filter(|tester| tester.share == Some(true)).map(|tester| Shared {
            size: tester.size.clone(),
            yarn: tester.yarn.clone(),
            used: tester.used.clone(),
        });
        Self { sizes: testers.iter().filter_map(|tester| tester.size.clone()).collect(), shared: shared.collect(), all }
    }
}

impl Field for Testers {
    const WHAT: &'static str = <Private<Vec<Tester>> as Field>::WHAT;

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        Private::read(node, notes).map(Self::of)
    }

    fn absent() -> Option<Self> {
        Private::absent().map(Self::of)
    }

    fn schema(definitions: &mut Definitions) -> Schema {
        Private::<Vec<Tester>>::schema(definitions)
    }
}
