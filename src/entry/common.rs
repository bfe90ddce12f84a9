//! The keys every kind of entry has.

use super::field::record;
use super::value::Private;
use super::yaml::Yaml;

record! {
    /// What every entry can say of itself.
    pub struct Common: "an entry" {
        /// What it is called.
        "title" => title: String,
        /// One sentence about it, for lists, feeds and search.
        "summary" => summary: Option<String>,
        /// `false` keeps it off the site.
        "ready" => ready: Option<bool>,
        /// The picture that stands for it, a path below the studio's folder.
        "picture" => picture: Option<String>,
        /// What the picture shows.
        "alt" => alt: Option<String>,
        /// Anything that must never reach the site.
        "private" => private: Option<Private<Anything>>,
    }
}

/// Whatever a writer keeps for herself; it is not looked into.
#[derive(Clone, Debug, Default)]
pub struct Anything;

impl super::field::Field for Anything {
    const WHAT: &'static str = "anything";

    fn read(node: &super::yaml::Node<'_>, _: &mut super::yaml::Notes<'_>) -> Option<Self> {
        (*node.value != Yaml::Null).then_some(Self)
    }
}
