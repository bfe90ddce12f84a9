//! A value on its way from the root of the front matter.

use super::Yaml;

/// One step from a value to one inside it.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Step {
    /// To the value of a key.
    Key(Box<str>),
    /// To an item of a list, from zero.
    Item(usize),
}

/// The way from the root of a YAML document to a value.
pub type Steps = Box<[Step]>;

/// The same way while walking: each step knows the one before it, on the stack.
#[derive(Clone, Copy, Debug)]
pub enum Trail<'a> {
    /// The document itself.
    Root,
    /// The value of a key.
    Key(&'a Trail<'a>, &'a str),
    /// An item of a list.
    Item(&'a Trail<'a>, usize),
}

impl Trail<'_> {
    /// Returns the way as a value that can be kept.
    pub fn steps(&self) -> Steps {
        let mut steps = Vec::new();
        let mut here = self;
        loop {
            here = match here {
                Self::Root => break,
                Self::Key(before, key) => {
                    steps.push(Step::Key(Box::from(*key)));
                    before
                }
                Self::Item(before, index) => {
                    steps.push(Step::Item(*index));
                    before
                }
            };
        }
        steps.reverse();
        steps.into_boxed_slice()
    }

    /// Returns the name of the nearest key above, empty at the root.
    pub fn key(&self) -> &str {
        match self {
            Self::Root => "",
            Self::Key(_, key) => key,
            Self::Item(before, _) => before.key(),
        }
    }
}

/// A value and the way to it.
#[derive(Clone, Copy, Debug)]
pub struct Node<'a> {
    /// The value.
    pub value: &'a Yaml,
    /// The way from the root.
    pub trail: Trail<'a>,
}
