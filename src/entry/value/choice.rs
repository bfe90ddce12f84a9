//! Values that are one of a few fixed words.

use crate::entry::field::{Field, WRONG_TYPE, wrong_type};
use crate::entry::schema::{Definitions, Schema};
use crate::entry::yaml::{Node, Notes};
use crate::finding::nearest;
use crate::standards::levels::Level;

/// A type whose values are fixed words.
pub trait Choice: Sized + Copy + 'static {
    /// What the word says, with its article.
    const NAME: &'static str;
    /// Every value with its word, in order.
    const ALL: &'static [(&'static str, Self)];
    /// Every word with what it means.
    const MEANINGS: &'static [(&'static str, &'static str)];

    /// Returns the value's word.
    fn word(self) -> &'static str;
}

fn read_choice<T: Choice>(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<T> {
    let Some(text) = node.value.scalar() else {
        wrong_type(node, T::NAME, notes);
        return None;
    };
    if let Some((_, value)) = T::ALL.iter().find(|(word, _)| *word == text) {
        return Some(*value);
    }
    let words = || T::ALL.iter().map(|(word, _)| *word);
    let help = match nearest(text, words()) {
        Some(near) => format!("did you mean `{near}`?"),
        None => format!("write one of {}", words().map(|word| format!("`{word}`")).collect::<Vec<_>>().join(", ")),
    };
    notes.value(&WRONG_TYPE, node, format!("`{text}` is not {}", T::NAME), Some(help));
    None
}

macro_rules! choice {
    ($(#[doc = $doc:literal])* pub enum $name:ident: $what:literal { $( $(#[doc = $value_doc:literal])+ $value:ident = $word:literal, )* }) => {
        $(#[doc = $doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $( $(#[doc = $value_doc])+ $value, )* }

        impl Choice for $name {
            const NAME: &'static str = $what;
            const ALL: &'static [(&'static str, Self)] = &[$( ($word, Self::$value), )*];
            const MEANINGS: &'static [(&'static str, &'static str)] = &[$( ($word, concat!($($value_doc),+)), )*];

            fn word(self) -> &'static str {
                match self { $( Self::$value => $word, )* }
            }
        }

        impl Field for $name {
            const WHAT: &'static str = concat!("one of", $( " `", $word, "`", )*);

            fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
                read_choice(node, notes)
            }

            fn schema(_: &mut Definitions) -> Schema {
                Schema::words(Self::MEANINGS)
            }
        }
    };
}

choice! {
    /// How far a design has come.
    pub enum Stage: "a stage" {
        /// An idea, perhaps drawn.
        Sketch = "sketch",
        /// A piece of fabric to judge gauge and pattern by.
        Swatch = "swatch",
        /// The first whole piece is being made.
        Sample = "sample",
        /// The text is with a technical editor.
        TechEdit = "tech edit",
        /// Others are making it to prove the text.
        TestKnit = "test knit",
        /// It can be had.
        Published = "published",
        /// It can no longer be had.
        Retired = "retired",
    }
}

choice! {
    /// Whose standard body table applies.
    pub enum Wearer: "a wearer" {
        /// Women's sizes.
        Women = "women",
        /// Men's sizes.
        Men = "men",
        /// Youths' sizes.
        Youth = "youth",
        /// Children's sizes.
        Child = "child",
        /// Babies' sizes.
        Baby = "baby",
    }
}

choice! {
    /// The shape of a piece of fabric, laid flat.
    pub enum PieceShape: "a shape" {
        /// Straight sides: a back, a scarf.
        Rectangle = "rectangle",
        /// Shaped at both sides: a sleeve.
        Trapezium = "trapezium",
        /// In the round and as wide throughout: a body, a cowl.
        Tube = "tube",
        /// A shawl worked from the top down.
        Triangle = "triangle",
        /// Worked from its middle: a doily, a crown laid flat.
        Circle = "circle",
    }
}

choice! {
    /// How much a check weighs.
    pub enum Verdict: "how much a check weighs" {
        /// It is not made.
        Off = "off",
        /// What it finds is told.
        Warning = "warning",
        /// What it finds keeps the site from being made.
        Error = "error",
    }
}

choice! {
    /// What the length of a text is counted in.
    pub enum Counted: "a way to count" {
        /// Bytes of UTF-8, of which an accent or a dash takes two or three.
        Bytes = "bytes",
        /// Characters.
        Characters = "characters",
    }
}

choice! {
    /// How the designer came by a thing she mentions.
    pub enum How: "a way you came by it" {
        /// She made or owns the business.
        Own = "own",
        /// She paid for it.
        Bought = "bought",
        /// It was given to her.
        Gifted = "gifted",
        /// It goes back.
        Loaned = "loaned",
        /// She earns when a reader buys.
        Affiliate = "affiliate",
        /// She was paid to mention it.
        Paid = "paid",
        /// The people are her friends.
        Friend = "friend",
    }
}

impl Field for Level {
    const WHAT: &'static str = "one of `basic` `easy` `intermediate` `complex`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let Some(text) = node.value.scalar() else {
            wrong_type(node, Self::WHAT, notes);
            return None;
        };
        Self::parse(text).map_err(|why| notes.value(&WRONG_TYPE, node, why.to_string(), Some(why.help()))).ok()
    }

    fn schema(_: &mut Definitions) -> Schema {
        // What older patterns call a level is read too, in any capitals, so the words are offered and not insisted on.
        let words = Schema::of(&["string"], "intermediate").else_write(Self::WHAT).offering(Self::ALL.map(Self::name));
        Self::ALL.iter().fold(words, |words, level| words.saying(&format!("{}: {}", level.name(), level.meaning())))
    }
}

choice! {
    /// How a chart is worked.
    pub enum Fabric: "how a chart is worked" {
        /// To and fro.
        Flat = "flat",
        /// Round and round, always from the right side.
        Round = "in the round",
    }
}

choice! {
    /// A side of the fabric.
    pub enum Face: "a side" {
        /// The right side, which shows.
        Right = "RS",
        /// The wrong side.
        Wrong = "WS",
    }
}

choice! {
    /// Whether the stitch that is on the right needle after binding off is one of those that the next words count.
    pub enum AfterBindingOff: "a way to count the stitch after binding off" {
        /// It is the first of them: 10 stitches, `BO 5`, `k10` of 25.
        Counted = "counted",
        /// It stands by itself before them: 10 stitches, `BO 5`, `k9` of 25.
        NotCounted = "not counted",
    }
}

choice! {
    /// How much of the thing a chart shows.
    pub enum Covers: "how much a chart covers" {
        /// Every stitch is in it, repeats included: the yarn may be held against its colours.
        Everything = "everything",
        /// There is fabric besides.
        Part = "part",
    }
}
