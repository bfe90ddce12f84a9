//! The words of a Markdown text as a reader meets them, without signs, addresses and comments between them.

use super::block::Block;
use super::kind::Reference;
use pulldown_cmark::{CodeBlockKind, Event, LinkType, Tag, TagEnd};
use std::ops::Range;

/// The runs of words that readers see, in the order of the text; links, headings, code and what is said of pictures included.
#[derive(Clone, Debug, Default)]
pub struct Seen {
    runs: Vec<Run>,
}

/// One run of words, in bytes of the file; it may go on over several lines.
#[derive(Clone, Debug)]
struct Run {
    at: Range<usize>,
    follows: Follows,
}

/// How a run of words follows the one before.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Follows {
    /// In another paragraph, item or cell.
    #[default]
    Apart,
    /// On the next line.
    Below,
    /// At once, with at most a sign such as that of emphasis between.
    Close,
}

/// Gathers what readers see from the events of a text.
#[derive(Debug, Default)]
pub struct Gathering {
    seen: Seen,
    next: Follows,
    /// Whether what comes is shown as something else: a title for its address, a table for its key.
    is_replaced: bool,
    in_comment: bool,
}

impl Gathering {
    /// Takes the next event, which stands at these bytes of the file.
    pub fn take(&mut self, event: &Event<'_>, at: &Range<usize>) {
        match event {
            Event::Start(Tag::Link { link_type, dest_url, .. }) => {
                self.is_replaced = *link_type == LinkType::Autolink && Reference::split(dest_url).is_some();
            }
            Event::End(TagEnd::Link) => self.is_replaced = false,
            Event::Start(Tag::Emphasis | Tag::Strong | Tag::Image { .. })
            | Event::End(TagEnd::Emphasis | TagEnd::Strong | TagEnd::Image) => {}
            Event::Start(tag) => {
                self.next = Follows::Apart;
                if let Tag::CodeBlock(CodeBlockKind::Fenced(info)) = tag {
                    self.is_replaced = Block::of(info).is_some();
                }
            }
            Event::End(_) => {
                self.next = Follows::Apart;
                self.is_replaced = false;
                self.in_comment = false;
            }
            Event::SoftBreak | Event::HardBreak => self.next = Follows::Below,
            Event::Text(_) | Event::Code(_) if !self.is_replaced => self.add(at.clone()),
            Event::Html(html) | Event::InlineHtml(html) => self.html(html, at.start),
            _ => {}
        }
    }

    /// Returns what was gathered.
    pub fn done(self) -> Seen {
        self.seen
    }

    fn html(&mut self, html: &str, start: usize) {
        let mut from = 0;
        while from < html.len() {
            let rest = html.get(from..).unwrap_or_default();
            let mark = if self.in_comment { "-->" } else { "<!--" };
            let found = rest.find(mark);
            let end = from + found.unwrap_or(rest.len());
            if !self.in_comment {
                self.add(start + from..start + end);
            }
            if found.is_none() {
                return;
            }
            self.in_comment = !self.in_comment;
            from = end + mark.len();
        }
    }

    fn add(&mut self, at: Range<usize>) {
        if at.is_empty() {
            return;
        }
        let follows = std::mem::replace(&mut self.next, Follows::Close);
        match self.seen.runs.last_mut() {
            Some(last) if follows == Follows::Close && last.at.end == at.start => last.at.end = at.end,
            // Nothing but the line's end stands between, or it would be further off.
            Some(last) if follows == Follows::Below && last.at.end + 1 == at.start => last.at.end = at.end,
            _ => self.seen.runs.push(Run { at, follows }),
        }
    }
}

/// Words put one behind the other, and where each stretch of them stands in the file.
#[derive(Clone, Debug, Default)]
pub struct Words {
    /// The words. What stands apart in the text has a sign between that is in no word.
    pub text: String,
    /// Where a stretch begins in the words and in the file.
    stretches: Vec<(usize, usize)>,
}

impl Words {
    /// Returns where a part of the words stands in the file, in bytes.
    pub fn place(&self, part: &Range<usize>) -> Option<Range<usize>> {
        let place = |at: usize| {
            let before = self.stretches.partition_point(|(start, _)| *start <= at).checked_sub(1)?;
            let (start, in_file) = self.stretches.get(before)?;
            Some(in_file + (at - start))
        };
        let last = place(part.end.checked_sub(1)?)?;
        Some(place(part.start)?..last + 1)
    }
}

impl Seen {
    /// Returns the words, given the file that they stand in.
    pub fn words(&self, file: &str) -> Words {
        let mut words = Words::default();
        for run in &self.runs {
            match run.follows {
                Follows::Apart => words.text.push('\0'),
                Follows::Below => words.text.push(' '),
                Follows::Close => {}
            }
            words.stretches.push((words.text.len(), run.at.start));
            for (at, line) in file.get(run.at.clone()).unwrap_or_default().split('\n').enumerate() {
                if at > 0 {
                    words.text.push(' ');
                }
                words.text.push_str(line);
            }
        }
        words
    }
}
