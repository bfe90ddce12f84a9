//! Markdown to HTML.
//!
//! CommonMark with tables, footnotes and heading attributes. Beyond the standard's HTML, headings get ids, tables and
//! code stand in boxes that scroll by themselves, the time that begins a chapter's heading is marked, references become
//! links and pictures their several sizes. A test runs the standard's own examples through here.

use crate::entry::block::Block;
use crate::entry::comment::without_comments;
use crate::entry::prose::{Ids, level_number, options};
use crate::entry::value::VideoTime;
use crate::entry::{Key, Reference};
use crate::page::Picture;
use pulldown_cmark::{CodeBlockKind, CowStr, Event, HeadingLevel, LinkType, Parser, Tag, TagEnd, html};
use pulldown_cmark_escape::escape_html;
use std::fmt::Write as _;

/// Where a reference leads.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Target {
    /// The entry's title.
    pub title: String,
    /// Its address; none if it has no public page, and then only words are shown.
    pub url: Option<String>,
}

/// Knows what references and pictures lead to.
pub trait Resolve {
    /// Returns where a reference leads, or nothing if there is no such entry.
    fn entry(&self, id: &Reference) -> Option<Target>;

    /// Returns an address of the text that is no reference as it must stand where the text is read.
    fn address(&self, address: &str) -> String {
        address.to_owned()
    }

    /// Returns a computed block as HTML, the `number`th of its text from 1; nothing if it is to stand as code.
    fn block(&self, _block: Block, _text: &str, _number: usize) -> Option<String> {
        None
    }

    /// Returns a picture of the studio as HTML, or nothing for a picture elsewhere.
    fn picture(&self, address: &str, alt: &str) -> Option<String>;
}

/// Returns a text as HTML. If it has a heading of level 1, all headings are moved down so that the highest is of
/// `first_level`: the page around it has its own.
pub fn to_html(source: &str, resolve: &dyn Resolve, first_level: u8) -> String {
    let events: Vec<Event<'_>> = Parser::new_ext(source, options()).collect();
    let has_first =
        events.iter().any(|event| matches!(event, Event::Start(Tag::Heading { level: HeadingLevel::H1, .. })));
    let shift = if has_first { first_level.saturating_sub(1) } else { 0 };
    let mut dress = Dress {
        resolve,
        shift,
        ids: Ids::default(),
        links: Vec::new(),
        tables: 0,
        blocks: 0,

        out: Vec::with_capacity(events.len()),
    };
    dress.all(events);
    let mut out = String::with_capacity(source.len() * 3 / 2);
    html::push_html(&mut out, dress.out.into_iter());
    out
}

/// Returns a picture in all its sizes as HTML.
pub fn picture(picture: &Picture) -> String {
    const SIZES: &str = "(min-width: 48rem) 40rem, 92vw";
    let mut out = format!(
        "<picture><source type=\"image/webp\" srcset=\"{}\" sizes=\"{SIZES}\"><img src=\"{}\" srcset=\"{}\" sizes=\"{SIZES}\" ",
        picture.webp, picture.src, picture.jpeg
    );
    push_facts(&mut out, picture);
    out.push_str(" loading=\"lazy\"></picture>");
    out
}

/// Returns a picture in its middle size as HTML.
pub fn plain_picture(picture: &Picture) -> String {
    let mut out = format!("<img src=\"{}\" ", picture.src);
    push_facts(&mut out, picture);
    out.push('>');
    out
}

fn push_facts(out: &mut String, picture: &Picture) {
    // Writing to a text cannot fail.
    let _ = write!(out, "width=\"{}\" height=\"{}\" alt=\"{}\"", picture.width, picture.height, escaped(&picture.alt));
}

fn escaped(text: &str) -> String {
    let mut out = String::new();
    let _ = escape_html(&mut out, text);
    out
}

/// What became of the start of a link, so that its end is treated alike.
enum Open {
    /// It is a link.
    Link,
    /// Only its words are shown.
    Words,
}

struct Dress<'a> {
    resolve: &'a dyn Resolve,
    shift: u8,
    ids: Ids,
    links: Vec<Open>,
    tables: usize,
    blocks: usize,
    out: Vec<Event<'a>>,
}

impl<'a> Dress<'a> {
    fn all(&mut self, events: Vec<Event<'a>>) {
        let mut events = events.into_iter().peekable();
        while let Some(event) = events.next() {
            match event {
                Event::Start(Tag::Heading { level, id, classes, attrs }) => {
                    let inside: Vec<Event<'a>> =
                        take_until(&mut events, |event| matches!(event, Event::End(TagEnd::Heading(_))));
                    self.heading(level, id, classes, attrs, inside);
                }
                Event::Start(Tag::Paragraph) => {
                    let lone = matches!(events.peek(), Some(Event::Start(Tag::Image { .. })));
                    if !lone {
                        self.out.push(Event::Start(Tag::Paragraph));
                        continue;
                    }
                    let inside: Vec<Event<'a>> =
                        take_until(&mut events, |event| matches!(event, Event::End(TagEnd::Paragraph)));
                    self.paragraph_of_pictures(inside);
                }
                Event::Start(Tag::Image { dest_url, title, link_type, id }) => {
                    let inside: Vec<Event<'a>> = take_image(&mut events);
                    self.image(dest_url, title, link_type, id, inside);
                }
                Event::Start(Tag::Link { link_type, dest_url, title, id }) => {
                    if let Some(words) = self.link(link_type, &dest_url, &title, &id) {
                        // An autolink's only words are its address; the entry's title stands for them.
                        let _ = take_until(&mut events, |event| matches!(event, Event::End(TagEnd::Link)));
                        self.out.push(Event::Text(CowStr::from(words)));
                        self.close_link();
                    }
                }
                Event::End(TagEnd::Link) => self.close_link(),
                Event::Start(Tag::Table(alignments)) => {
                    self.tables += 1;
                    let box_of = format!(
                        "<div class=\"scroller\" tabindex=\"0\" role=\"region\" aria-label=\"Table {}\">",
                        self.tables
                    );
                    self.out.push(Event::Html(CowStr::from(box_of)));
                    self.out.push(Event::Start(Tag::Table(alignments)));
                }
                Event::End(TagEnd::Table) => {
                    self.out.push(Event::End(TagEnd::Table));
                    self.out.push(Event::Html(CowStr::from("</div>\n")));
                }
                Event::Start(Tag::CodeBlock(CodeBlockKind::Fenced(info))) if Block::of(&info).is_some() => {
                    let inside = take_until(&mut events, |event| matches!(event, Event::End(TagEnd::CodeBlock)));
                    self.block(&info, inside);
                }
                Event::Start(Tag::CodeBlock(kind)) => self.code(&kind),
                Event::Start(Tag::HtmlBlock) => {
                    // A block comes line by line, and a comment may span several.
                    let mut block = String::new();
                    for event in take_until(&mut events, |event| matches!(event, Event::End(TagEnd::HtmlBlock))) {
                        if let Event::Html(line) | Event::Text(line) = event {
                            block.push_str(&line);
                        }
                    }
                    let (seen, _) = without_comments(&block);
                    if !seen.trim().is_empty() {
                        self.out.push(Event::Html(CowStr::from(seen)));
                    }
                }
                Event::InlineHtml(html) => {
                    let (seen, _) = without_comments(&html);
                    self.out.push(Event::InlineHtml(CowStr::from(seen)));
                }
                Event::End(TagEnd::CodeBlock) => self.out.push(Event::Html(CowStr::from("</code></pre>\n"))),
                other => self.out.push(other),
            }
        }
    }

    fn heading(
        &mut self,
        level: HeadingLevel,
        id: Option<CowStr<'a>>,
        classes: Vec<CowStr<'a>>,
        attrs: Vec<(CowStr<'a>, Option<CowStr<'a>>)>,
        inside: Vec<Event<'a>>,
    ) {
        let mut words = String::new();
        for event in &inside {
            if let Event::Text(text) | Event::Code(text) = event {
                words.push_str(text);
            }
        }
        let id = self.ids.take(id.as_deref(), &words);
        let level = HeadingLevel::try_from(usize::from((level_number(level) + self.shift).min(6))).unwrap_or(level);
        self.out.push(Event::Start(Tag::Heading { level, id: Some(CowStr::from(id)), classes, attrs }));
        let mut inside = inside;
        if let Some(Event::Text(first)) = inside.first()
            && let Some((time, rest)) = VideoTime::leading(first)
        {
            let marked = format!("<span class=\"at\">{time}</span> {}", escaped(rest));
            if let Some(slot) = inside.first_mut() {
                *slot = Event::InlineHtml(CowStr::from(marked));
            }
        }
        self.all(inside);
        self.out.push(Event::End(TagEnd::Heading(level)));
    }

    /// Puts a picture that is alone in its paragraph into a figure; its title is the caption.
    fn paragraph_of_pictures(&mut self, inside: Vec<Event<'a>>) {
        let alone = inside.iter().filter(|event| matches!(event, Event::Start(Tag::Image { .. }))).count() == 1
            && matches!(inside.last(), Some(Event::End(TagEnd::Image)));
        let caption = match inside.first() {
            Some(Event::Start(Tag::Image { dest_url, title, .. }))
                if alone && self.resolve.picture(dest_url, "").is_some() =>
            {
                Some(title.to_string())
            }
            _ => None,
        };
        let Some(caption) = caption else {
            self.out.push(Event::Start(Tag::Paragraph));
            self.all(inside);
            self.out.push(Event::End(TagEnd::Paragraph));
            return;
        };
        self.out.push(Event::Html(CowStr::from("<figure>")));
        self.all(inside);
        let end = if caption.is_empty() {
            "</figure>\n".to_owned()
        } else {
            format!("<figcaption>{}</figcaption></figure>\n", escaped(&caption))
        };
        self.out.push(Event::Html(CowStr::from(end)));
    }

    fn image(
        &mut self,
        dest_url: CowStr<'a>,
        title: CowStr<'a>,
        link_type: LinkType,
        id: CowStr<'a>,
        inside: Vec<Event<'a>>,
    ) {
        let mut alt = String::new();
        for event in &inside {
            match event {
                Event::Text(text) | Event::Code(text) => alt.push_str(text),
                Event::SoftBreak | Event::HardBreak => alt.push(' '),
                _ => {}
            }
        }
        if let Some(html) = self.resolve.picture(&dest_url, &alt) {
            self.out.push(Event::InlineHtml(CowStr::from(html)));
            return;
        }
        self.out.push(Event::Start(Tag::Image { link_type, dest_url, title, id }));
        self.out.extend(inside);
        self.out.push(Event::End(TagEnd::Image));
    }

    /// Opens a link; returns the words to show instead of an autolink's own.
    fn link(&mut self, link_type: LinkType, address: &str, title: &CowStr<'a>, id: &CowStr<'a>) -> Option<String> {
        let (path, fragment) =
            address.split_once('#').map_or((address, None), |(path, fragment)| (path, Some(fragment)));
        let reference = Reference::split(path).and_then(|(kind, key)| Some(Reference { kind, key: Key::new(key)? }));
        let target = reference.and_then(|reference| self.resolve.entry(&reference));
        let Some(target) = target else {
            self.open_link(link_type, CowStr::from(self.resolve.address(address)), title.clone(), id.clone());
            return None;
        };
        match target.url {
            Some(url) => {
                let url = fragment.map_or_else(
                    || url.clone(),
                    |fragment| format!("{}#{fragment}", url.split('#').next().unwrap_or(&url)),
                );
                self.open_link(LinkType::Inline, CowStr::from(url), title.clone(), id.clone());
            }
            None => self.links.push(Open::Words),
        }
        (link_type == LinkType::Autolink).then_some(target.title)
    }

    fn open_link(&mut self, link_type: LinkType, dest_url: CowStr<'a>, title: CowStr<'a>, id: CowStr<'a>) {
        self.out.push(Event::Start(Tag::Link { link_type, dest_url, title, id }));
        self.links.push(Open::Link);
    }

    fn close_link(&mut self) {
        if let Some(Open::Link) | None = self.links.pop() {
            self.out.push(Event::End(TagEnd::Link));
        }
    }

    fn block(&mut self, info: &CowStr<'a>, inside: Vec<Event<'a>>) {
        let mut text = String::new();
        for event in &inside {
            if let Event::Text(line) = event {
                text.push_str(line);
            }
        }
        self.blocks += 1;
        match Block::of(info).and_then(|block| self.resolve.block(block, &text, self.blocks)) {
            Some(html) => self.out.push(Event::Html(CowStr::from(html))),
            None => {
                self.code(&CodeBlockKind::Fenced(info.clone()));
                self.out.extend(inside);
                self.out.push(Event::Html(CowStr::from("</code></pre>\n")));
            }
        }
    }

    fn code(&mut self, kind: &CodeBlockKind<'_>) {
        let class = match kind {
            CodeBlockKind::Fenced(info) => info
                .split(' ')
                .next()
                .filter(|language| !language.is_empty())
                .map(|language| format!(" class=\"language-{}\"", escaped(language))),
            CodeBlockKind::Indented => None,
        };
        // The writer of HTML begins a line for its own blocks and not for ours.
        let line = if matches!(self.out.last(), Some(Event::Start(Tag::Item))) { "\n" } else { "" };
        self.out
            .push(Event::Html(CowStr::from(format!("{line}<pre tabindex=\"0\"><code{}>", class.unwrap_or_default()))));
    }
}

/// Takes events up to one that ends something, which is taken and dropped.
fn take_until<'a>(events: &mut impl Iterator<Item = Event<'a>>, ends: impl Fn(&Event<'a>) -> bool) -> Vec<Event<'a>> {
    events.take_while(|event| !ends(event)).collect()
}

/// Takes the events inside an image, images inside it included; its own end is taken and dropped.
fn take_image<'a>(events: &mut impl Iterator<Item = Event<'a>>) -> Vec<Event<'a>> {
    let mut inside = Vec::new();
    let mut depth = 0_usize;
    for event in events {
        match event {
            Event::Start(Tag::Image { .. }) => depth += 1,
            Event::End(TagEnd::Image) if depth == 0 => break,
            Event::End(TagEnd::Image) => depth -= 1,
            _ => {}
        }
        inside.push(event);
    }
    inside
}
