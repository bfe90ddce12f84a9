//! A thing on the needles or finished.

use super::field::{Field, record, wrong_type};
use super::schema::{Definitions, Schema};
use super::value::{Date, Map, Private, Ref, Web, to};
use super::yaml::{Node, Notes, Yaml};
use crate::measure::Amount;

record! {
    /// A thing on the needles or finished, of any craft.
    pub struct Project: "a project" {
        /// The craft; knitting if it is not given.
        "craft" => craft: Option<String> = "knitting",
        /// What it is made from.
        "pattern" => pattern: Option<MadeFrom>,
        /// The size made.
        "size" => size: Option<String> = "M",
        /// The day it was begun.
        "started" => started: Option<Date>,
        /// The day before which nothing of it is on the site, for a surprise.
        "reveal" => reveal: Option<Date> = "2026-12-25",
        /// The day it was done; without it the thing is on the needles.
        "finished" => finished: Option<Date>,
        /// The yarns in it.
        "yarn" => yarn: Vec<Used> = "[ { yarn: heron-dk, shade: reedbed, used: 412 g } ]",
        /// What was made otherwise than the pattern says.
        "changes" => changes: Option<String> = "The brim is four rounds deeper.",
        /// What is still to be done, and what of it was done when.
        "left to do" => left_to_do: Vec<LeftToDo> = "[second sleeve, { what: neckband, done: 2026-11-20 }]",
        /// What it takes beside yarn.
        "materials" => materials: Vec<String> = "[a leather tab]",
        /// What sets this one apart from others of its design.
        "variant" => variant: Private<Map<String>> = "{ brim: folded }",
        /// For whom it is.
        "made for" => made_for: Private<Option<MadeFor>> = "{ who: Wyn, by: 2026-12-24 }",
    }
}

/// What a project is made from.
#[derive(Clone, Debug)]
pub enum MadeFrom {
    /// A pattern of the studio.
    Own(Ref<to::Pattern>),
    /// Somebody else's pattern.
    Other(OtherPattern),
}

record! {
    /// Somebody else's pattern.
    pub struct OtherPattern: "somebody else's pattern" {
        /// What it is called.
        "title" => title: String = "Plain Gansey",
        /// Whose it is.
        "by" => by: Option<Ref<to::Person>> = "otha-plimsett",
        /// Its page.
        "url" => url: Option<Web>,
    }
}

impl Field for MadeFrom {
    const WHAT: &'static str = "a pattern's key, or `{ title, by, url }` for somebody else's pattern";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        match node.value {
            Yaml::Map(_) => OtherPattern::read(node, notes).map(Self::Other),
            Yaml::Text(_) | Yaml::Number(_) | Yaml::Fraction(_) => Ref::read(node, notes).map(Self::Own),
            _ => {
                wrong_type(node, Self::WHAT, notes);
                None
            }
        }
    }

    fn schema(definitions: &mut Definitions) -> Schema {
        Ref::<to::Pattern>::schema(definitions).or(OtherPattern::schema(definitions))
    }
}

record! {
    /// Something to do, and the day it was done.
    pub struct ToDo: "something left to do" {
        /// What it is.
        "what" => what: String = "second sleeve",
        /// The day it was done; without it, it still is to be.
        "done" => done: Option<Date>,
    }
}

/// Something to do: its words alone, or with the day it was done.
#[derive(Clone, Debug)]
pub struct LeftToDo(pub ToDo);

impl Field for LeftToDo {
    const WHAT: &'static str = "some words, or `{ what: WORDS, done: DATE }`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        match node.value {
            Yaml::Map(_) => ToDo::read(node, notes).map(Self),
            _ => Some(Self(ToDo { what: String::read(node, notes)?, done: None })),
        }
    }

    fn schema(definitions: &mut Definitions) -> Schema {
        String::schema(definitions).or(ToDo::schema(definitions))
    }
}

record! {
    /// One yarn in a project.
    pub struct Used: "a yarn of a project" {
        /// The colour of the pattern it is used for, by its label; for where colours were changed about.
        "colour" => colour: Option<String> = "MC",
        /// The yarn.
        "yarn" => yarn: Option<Ref<to::Yarn>>,
        /// Its shade.
        "shade" => shade: Option<String> = "reedbed",
        /// How much went into it so far.
        "used" => used: Option<Amount>,
    }
}

record! {
    /// For whom a thing is made.
    pub struct MadeFor: "whom it is for" {
        /// The person.
        "who" => who: Option<String> = "Wyn",
        /// Those who live together.
        "household" => household: Option<String> = "hill-farm",
        /// The day it must be there.
        "by" => by: Option<Date>,
    }
}

impl Project {
    /// Returns the craft.
    pub fn craft(&self) -> &str {
        self.craft.as_deref().unwrap_or("knitting")
    }

    /// Returns what is still to be done, in the order it is written.
    pub fn to_do(&self) -> impl Iterator<Item = &str> {
        self.left_to_do.iter().filter(|one| one.0.done.is_none()).map(|one| one.0.what.as_str())
    }

    /// Returns the names that no reader may learn: whole names of those it is for, and a household's of two words or more.
    ///
    /// Several people in one line are parted at commas, `&` and `and`. A first name alone is left out, since it is borne by
    /// many. Who works the site out may look for these names in what it shows, and must not show them.
    pub fn secret_names(&self) -> impl Iterator<Item = &str> {
        let made_for = self.made_for.for_desk().as_ref();
        let who = made_for.and_then(|made_for| made_for.who.as_deref()).unwrap_or_default();
        let people = who.split([',', ';', '&']).flat_map(|some| some.split(" and "));
        let household = made_for.and_then(|made_for| made_for.household.as_deref());
        let of_words = |name: &&str| name.contains(|c: char| c == '-' || c.is_whitespace());
        people.chain(household).map(str::trim).filter(of_words)
    }

    /// Returns the day it was done, if that is not after `today`.
    pub fn finished_by(&self, today: Date) -> Option<Date> {
        self.finished.filter(|day| *day <= today)
    }
}
