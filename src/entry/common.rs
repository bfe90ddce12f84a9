//! The keys every kind of entry has.

use super::field::record;
use super::value::Private;
use super::yaml::Yaml;

record! {
    /// What every entry can say of itself.
    pub struct Common: "an entry" {
        /// What it is called.
        "title" => title: String = "Saltmarsh Yoke",
        /// One sentence about it, for lists, feeds and search.
        "summary" => summary: Option<String> = "A yoke pullover with a band of reeds.",
        /// `false` keeps it off the site.
        "ready" => ready: Option<bool> = "false",
        /// The picture that stands for it, a path below the studio's folder.
        "picture" => picture: Option<String> = "photos/yoke.jpg",
        /// What the picture shows.
        "alt" => alt: Option<String> = "The pullover on a hook beside a window.",
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

    fn schema(_: &mut super::schema::Definitions) -> super::schema::Schema {
        super::schema::Schema::of(&[], "{ bought at: the wool fair }")
    }
}
