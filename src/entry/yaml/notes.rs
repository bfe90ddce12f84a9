//! What was noticed while reading one document, before places are known.

use super::{Node, Steps};
use crate::entry::Settings;
use crate::entry::kind::Reference;
use crate::finding::Code;
use std::ops::Range;

/// Which part of a key and its value is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum On {
    /// The key.
    Key,
    /// The value.
    Value,
}

/// Something wrong at a value, with the way to it instead of a place.
#[derive(Clone, Debug)]
pub struct Note {
    /// Which mistake.
    pub code: &'static Code,
    /// The way to the value.
    pub steps: Steps,
    /// Whether the key or the value is guilty.
    pub on: On,
    /// The guilty bytes within the value's text, if only a part is.
    pub within: Option<Range<usize>>,
    /// The message.
    pub message: String,
    /// The advice.
    pub help: Option<String>,
}

/// A reference met while a document is read.
#[derive(Clone, Debug)]
pub struct Met {
    /// The entry referred to.
    pub to: Reference,
    /// The way to it.
    pub steps: Steps,
    /// Whether it stands in a private field.
    pub private: bool,
    /// Whether it may be no reference but a word.
    pub perhaps: bool,
}

/// Collects notes while a document is read, and carries the studio's settings to those who read.
#[derive(Debug)]
pub struct Notes<'a> {
    /// How this studio writes numbers.
    pub settings: &'a Settings,
    /// What was noticed so far.
    pub notes: Vec<Note>,
    /// The references met so far.
    pub references: Vec<Met>,
    /// The addresses on the web met so far, each with the way to it.
    pub addresses: Vec<(String, Steps)>,
    /// The texts met so far that readers may see and that have two words or more, each with the way to it.
    pub texts: Vec<(Steps, String)>,
    /// Whether the field being read is private.
    pub in_private: bool,
}

impl<'a> Notes<'a> {
    /// Returns an empty collection.
    pub fn new(settings: &'a Settings) -> Self {
        Self {
            settings,
            notes: Vec::new(),
            references: Vec::new(),
            addresses: Vec::new(),
            texts: Vec::new(),
            in_private: false,
        }
    }

    /// Notes a mistake in a node's value.
    pub fn value(&mut self, code: &'static Code, node: &Node<'_>, message: impl Into<String>, help: Option<String>) {
        self.add(code, node, On::Value, None, message.into(), help);
    }

    /// Notes a mistake in a node's key.
    pub fn key(&mut self, code: &'static Code, node: &Node<'_>, message: impl Into<String>, help: Option<String>) {
        self.add(code, node, On::Key, None, message.into(), help);
    }

    /// Notes a mistake in a part of a node's text.
    pub fn part(
        &mut self,
        code: &'static Code,
        node: &Node<'_>,
        within: Range<usize>,
        message: impl Into<String>,
        help: Option<String>,
    ) {
        self.add(code, node, On::Value, Some(within), message.into(), help);
    }

    /// Keeps a reference for the joining of all entries.
    pub fn refer(&mut self, reference: &Reference, node: &Node<'_>) {
        self.meet(reference, node, false);
    }

    /// Keeps a word that is a reference if there is such an entry, and a word otherwise.
    pub fn perhaps_refer(&mut self, reference: &Reference, node: &Node<'_>) {
        self.meet(reference, node, true);
    }

    /// Keeps an address on the web, so that it can be asked whether it is still there.
    pub fn address(&mut self, url: &str, node: &Node<'_>) {
        self.addresses.push((url.to_owned(), node.trail.steps()));
    }

    /// Keeps a text that readers may see, so that it can be searched; one word alone says too little to search it.
    pub fn text(&mut self, text: &str, node: &Node<'_>) {
        if !self.in_private && text.contains(|c: char| c == '-' || c.is_whitespace()) {
            self.texts.push((node.trail.steps(), text.to_owned()));
        }
    }

    fn meet(&mut self, reference: &Reference, node: &Node<'_>, perhaps: bool) {
        self.references.push(Met {
            to: reference.clone(),
            steps: node.trail.steps(),
            private: self.in_private,
            perhaps,
        });
    }

    fn add(
        &mut self,
        code: &'static Code,
        node: &Node<'_>,
        on: On,
        within: Option<Range<usize>>,
        message: String,
        help: Option<String>,
    ) {
        self.notes.push(Note { code, steps: node.trail.steps(), on, within, message, help });
    }
}
