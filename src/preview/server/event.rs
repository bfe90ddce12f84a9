//! What an open page is told.

use std::fmt::Write;

/// What changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EventKind {
    /// The page itself.
    Page,
    /// A style sheet.
    Style,
    /// The strip of findings above a page.
    Strip,
    /// Unknown: the listener missed what is no longer kept, and must look again.
    Look,
}

impl EventKind {
    /// Returns the name a script listens for.
    pub fn name(self) -> &'static str {
        match self {
            Self::Page => "page",
            Self::Style => "style",
            Self::Strip => "strip",
            Self::Look => "look",
        }
    }
}

/// One thing told to open pages.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Event {
    /// What changed.
    pub kind: EventKind,
    /// What the script gets with it; line ends arrive as `\n`.
    pub data: String,
}

impl Event {
    /// Returns the event as it is sent.
    pub(super) fn text(&self, id: &str) -> String {
        let mut text = format!("id: {id}\nevent: {}\n", self.kind.name());
        // A line end of any kind would end the field; an empty `data` line keeps an event without data from being dropped.
        for line in self.data.replace("\r\n", "\n").replace('\r', "\n").split('\n') {
            let _ = writeln!(text, "data: {line}");
        }
        text.push('\n');
        text
    }
}
