//! Where an entry stands, and where things in it do.

use super::yaml::{On, Places, Step, Steps};
use crate::source::{FilePath, Place, Texts};
use std::collections::HashMap;
use std::ops::Range;
use std::sync::{Arc, Mutex, PoisonError};

/// The texts of a studio, with the places of each YAML text read once, when the first thing in it is asked for.
#[derive(Debug)]
pub struct Placing<'a> {
    texts: &'a Texts,
    read: Mutex<HashMap<(FilePath, usize), Arc<Places>>>,
}

impl<'a> Placing<'a> {
    /// Returns the places of a studio's texts.
    pub fn new(texts: &'a Texts) -> Self {
        Self { texts, read: Mutex::new(HashMap::new()) }
    }

    /// Returns the texts.
    pub fn texts(&self) -> &'a Texts {
        self.texts
    }

    fn places(&self, origin: &Origin, text: &str) -> Arc<Places> {
        let key = (origin.file.clone(), origin.yaml.start);
        // A thread that stopped inside left at worst a place unread.
        let mut read = self.read.lock().unwrap_or_else(PoisonError::into_inner);
        Arc::clone(read.entry(key).or_insert_with(|| Arc::new(Places::of(text))))
    }
}

/// The file an entry stands in, and the way to it inside that file.
#[derive(Clone, Debug)]
pub struct Origin {
    /// The file.
    pub file: FilePath,
    /// The YAML in it, in bytes.
    pub yaml: Range<usize>,
    /// The way from the YAML's root to the entry: empty for a file of its own, its key in a register.
    pub root: Steps,
}

/// Where something is said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum At {
    /// In the front matter, by the way from the YAML's root.
    Field(Steps),
    /// In the text, in bytes of the file.
    Prose(Range<usize>),
}

impl Origin {
    /// Returns where the studio's own keys stand.
    pub fn studio(placing: &Placing<'_>) -> Self {
        let file = FilePath::studio();
        let yaml = 0..placing.texts.of(&file).len();
        Self { file, yaml, root: Box::new([]) }
    }

    /// Returns the place of something said in this entry.
    pub fn place(&self, at: &At, placing: &Placing<'_>) -> Place {
        match at {
            At::Field(steps) => self.locate(steps, On::Value, None, placing),
            At::Prose(span) => Place { file: self.file.clone(), span: span.clone() },
        }
    }

    /// Returns the place of the value of keys below the entry: `["finished", "chest"]`.
    pub fn field(&self, keys: &[&str], placing: &Placing<'_>) -> Place {
        let way: Vec<Step> = keys.iter().map(|key| Step::Key(Box::from(*key))).collect();
        self.value(&way, placing)
    }

    /// Returns the place of a value at the end of a way below the entry.
    pub fn value(&self, way: &[Step], placing: &Placing<'_>) -> Place {
        let steps: Vec<Step> = self.root.iter().chain(way).cloned().collect();
        self.locate(&steps, On::Value, None, placing)
    }

    /// Returns the place of the entry itself: the line that opens its front matter, or its key in a register.
    pub fn start(&self, placing: &Placing<'_>) -> Place {
        self.locate(&self.root, On::Key, None, placing)
    }

    /// Returns the place of a key or value, or of a part of the value's text.
    pub fn locate(&self, steps: &[Step], on: On, within: Option<&Range<usize>>, placing: &Placing<'_>) -> Place {
        let text = placing.texts.of(&self.file).get(self.yaml.clone()).unwrap_or_default();
        place_in(&placing.places(self, text), text, self, steps, on, within)
    }
}

/// Returns the place of a key or value among places already read from the entry's YAML `text`.
pub(super) fn place_in(
    places: &Places,
    text: &str,
    origin: &Origin,
    steps: &[Step],
    on: On,
    within: Option<&Range<usize>>,
) -> Place {
    let file = origin.file.clone();
    if steps.is_empty() {
        // The whole front matter is meant: the line of dashes above it, or the register's first line.
        let span = if origin.yaml.start >= 4 { 0..3 } else { 0..text.lines().next().map_or(0, str::len) };
        return Place { file, span };
    }
    let mut span = places.find(steps, on);
    let block = within.and_then(|within| part_of_block(text, &span, within));
    if let Some(part) = block {
        span = part;
    } else if let Some(within) = within {
        let quoted = text.get(span.clone()).is_some_and(|raw| raw.starts_with(['"', '\'']));
        let start = span.start + usize::from(quoted) + within.start;
        let part = start..start + within.len();
        // A text folded over lines or holding escapes has no simple part; then the whole value is shown.
        if !within.is_empty() && part.end <= span.end && text.get(part.clone()).is_some_and(|raw| !raw.contains('\n')) {
            span = part;
        }
    } else if let Some(raw) = text.get(span.clone()) {
        span.end = span.start + raw.lines().next().map_or(0, str::len);
    }
    Place { file, span: span.start + origin.yaml.start..span.end + origin.yaml.start }
}

/// Returns where a part of the value of a literal block (`|`) stands in the text, as far as its first line goes; nothing for a
/// value written otherwise.
fn part_of_block(text: &str, span: &Range<usize>, within: &Range<usize>) -> Option<Range<usize>> {
    let before = text.get(..span.start)?;
    let head = before.trim_end();
    if !head.rsplit(char::is_whitespace).next()?.starts_with('|') || !before.get(head.len()..)?.contains('\n') {
        return None;
    }
    // Blank lines above the first are no part of a text that is read without space around it.
    let begin = before.rfind('\n').map_or(0, |end| end + 1);
    let lines = text.get(begin..span.end)?.split_inclusive('\n');
    let is_blank = |line: &&str| line.trim().is_empty();
    let mut written = begin + lines.clone().take_while(is_blank).map(str::len).sum::<usize>();
    let mut lines = lines.skip_while(is_blank).peekable();
    let indent = lines.peek().map(|line| line.len() - line.trim_start_matches(' ').len())?;
    let mut read = 0;
    for line in lines {
        // A blank line may be shorter than the others are indented, and YAML reads every line end as one byte.
        let taken = indent.min(line.trim_end_matches(['\r', '\n']).len());
        let content = line.len() - taken - usize::from(line.ends_with("\r\n"));
        if within.start < read + content {
            let start = written + taken + (within.start - read);
            let end = (start + within.len()).min(written + line.trim_end().len());
            return (start < end).then_some(start..end);
        }
        written += line.len();
        read += content;
    }
    None
}
