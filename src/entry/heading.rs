//! The headings of a text: their words, the ids they have on the page, and the moments of a video they begin with.

use super::kind::{Key, Reference, slug};
use super::value::VideoTime;
use pulldown_cmark::{Event, HeadingLevel, LinkType, Tag, TagEnd};
use std::collections::BTreeSet;
use std::ops::Range;

/// A part of a run of words, as far as they are known before all entries are read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Wording {
    /// Words as they are written.
    Words(String),
    /// The title of an entry, which stands where a reference has no words of its own.
    Title(Reference),
}

/// A heading, with the id it has on the page.
#[derive(Clone, Debug)]
pub struct Heading {
    /// The level, 1 to 6, as written.
    pub level: u8,
    /// All its words, the time included; an entry's key stands for its title.
    pub words: String,
    /// What readers are shown of it in a list: its words behind the time; may be empty.
    pub title: Vec<Wording>,
    /// The id, unique within the text.
    pub id: String,
    /// The moment of the video it begins with.
    pub chapter: Option<VideoTime>,
    /// Where it stands, in bytes of the file.
    pub at: Range<usize>,
}

/// Returns the entry whose title stands for an address: that of a reference without words of its own, `<yarn:heron-dk>`.
pub fn titled_by(link_type: LinkType, address: &str) -> Option<Reference> {
    if link_type != LinkType::Autolink {
        return None;
    }
    let (kind, rest) = Reference::split(address)?;
    Some(Reference { kind, key: Key::new(rest.split('#').next().unwrap_or(rest))? })
}

/// Gathers the words of a heading, alike for whoever reads the text and whoever shows it.
#[derive(Debug, Default)]
pub struct HeadingWords {
    wording: Vec<Wording>,
    /// Whether the words that come are an address, for which a title stands.
    is_titled: bool,
}

impl HeadingWords {
    /// Takes the next event inside the heading.
    pub fn push(&mut self, event: &Event<'_>) {
        match event {
            Event::Start(Tag::Link { link_type, dest_url, .. }) => {
                let entry = titled_by(*link_type, dest_url);
                self.is_titled = entry.is_some();
                self.wording.extend(entry.map(Wording::Title));
            }
            Event::End(TagEnd::Link) => self.is_titled = false,
            Event::Text(words) | Event::Code(words) if !self.is_titled => self.push_words(words),
            Event::SoftBreak | Event::HardBreak => self.push_words(" "),
            _ => {}
        }
    }

    fn push_words(&mut self, words: &str) {
        match self.wording.last_mut() {
            Some(Wording::Words(last)) => last.push_str(words),
            _ => self.wording.push(Wording::Words(words.to_owned())),
        }
    }

    /// Returns all words, with an entry's key for its title, which is not known yet.
    pub fn words(&self) -> String {
        let words = |part: &Wording| match part {
            Wording::Words(words) => words.clone(),
            Wording::Title(id) => id.key.to_string(),
        };
        self.wording.iter().map(words).collect()
    }

    /// Splits off the moment that the heading begins with, if it begins with one.
    pub fn split_time(mut self) -> (Option<VideoTime>, Vec<Wording>) {
        let all = self.words();
        let Some(Wording::Words(first)) = self.wording.first_mut() else { return (None, self.wording) };
        // A title that follows without a space is no part of a time.
        let leading = VideoTime::leading(first).filter(|_| VideoTime::leading(&all).is_some());
        let Some((time, rest)) = leading else { return (None, self.wording) };
        *first = rest.to_owned();
        if first.is_empty() {
            self.wording.remove(0);
        }
        (Some(time), self.wording)
    }
}

/// Returns a heading level as a number.
pub fn level_number(level: HeadingLevel) -> u8 {
    match level {
        HeadingLevel::H1 => 1,
        HeadingLevel::H2 => 2,
        HeadingLevel::H3 => 3,
        HeadingLevel::H4 => 4,
        HeadingLevel::H5 => 5,
        HeadingLevel::H6 => 6,
    }
}

/// Gives each heading of a text an id that no other has.
#[derive(Debug, Default)]
pub struct Ids {
    taken: BTreeSet<String>,
}

impl Ids {
    /// Returns the id of the next heading: her own if she gave one, else made from the words.
    pub fn take(&mut self, own: Option<&str>, words: &str) -> String {
        let words = VideoTime::leading(words).map_or(words, |(_, rest)| rest);
        let made = slug(words);
        let wanted = own.map_or(if made.is_empty() { "part".to_owned() } else { made }, str::to_owned);
        // A prefix keeps her headings apart from the ids of the page around them.
        let wanted = if own.is_some() { wanted } else { format!("on-{wanted}") };
        let mut id = wanted.clone();
        let mut count = 1;
        while !self.taken.insert(id.clone()) {
            count += 1;
            id = format!("{wanted}-{count}");
        }
        id
    }
}
