//! Markdown to HTML.
//!
//! CommonMark with tables, footnotes and heading attributes. Beyond the standard's HTML, headings get ids, tables and
//! code stand in boxes that scroll by themselves, the time that begins a chapter's heading is marked, references become
//! links and pictures their several sizes. A test runs the standard's own examples through here.

use crate::entry::block::Block;
use crate::entry::comment::without_comments;
use crate::entry::heading::{HeadingWords, Ids, level_number, titled_by};
use crate::entry::prose::options;
use crate::entry::value::VideoTime;
use crate::entry::{Key, Reference};
use crate::page::Picture;
use crate::page::disclosure::Disclosed;
use pulldown_cmark::{CodeBlockKind, CowStr, Event, HeadingLevel, LinkType, Parser, Tag, TagEnd, html};
use pulldown_cmark_escape::{escape_href, escape_html};
use std::collections::VecDeque;
use std::fmt::Write as _;

/// Where a reference leads.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Target {
    /// The entry's title.
    pub title: String,
    /// Its address; none if it has no public page, and then only words are shown.
    pub url: Option<String>,
    /// What is told beside the link.
    pub told: Disclosed,
}

/// Knows what references and pictures lead to.
pub trait Resolve {
    /// Returns where a reference leads, or nothing if there is no such entry.
    fn entry(&self, id: &Reference) -> Option<Target>;

    /// Returns an address of the text that is no reference as it must stand where the text is read.
    fn address(&self, address: &str) -> String {
        address.to_owned()
    }

    /// Returns the address of a moment of the video that the text goes with, or nothing if there is none.
    fn moment(&self, _time: VideoTime) -> Option<String> {
        None
    }

    /// Returns what is told beside a link to an address that is no reference.
    fn told_of(&self, _address: &str) -> Disclosed {
        Disclosed::default()
    }

    /// Returns whether plain words may have to be marked, so that [`Self::words`] is worth asking.
    fn marks_words(&self) -> bool {
        false
    }

    /// Returns plain words as HTML where something in them is marked; nothing where they may stand as they are.
    fn words(&self, _words: &str) -> Option<String> {
        None
    }

    /// Returns a computed block as HTML, the `number`th of its text from 1; nothing if it is to stand as code.
    fn block(&self, _block: Block, _text: &str, _number: usize) -> Option<String> {
        None
    }

    /// Returns a picture of the studio as HTML, or nothing for a picture elsewhere.
    fn picture(&self, address: &str, alt: &str) -> Option<String>;
}

/// Returns a text as HTML. All headings are moved down by `shift` levels, where the page around it has its own.
pub fn to_html(source: &str, resolve: &dyn Resolve, shift: u8) -> String {
    let dress = Dress {
        resolve,
        shift,
        ids: Ids::default(),
        links: Vec::new(),
        tables: 0,
        blocks: 0,
        parser: Parser::new_ext(source, options()),
        put_back: VecDeque::new(),
        ready: VecDeque::new(),
        item_begun: false,
        in_code: false,
        marks_words: resolve.marks_words(),
    };
    let mut out = String::with_capacity(source.len() * 3 / 2);
    html::push_html(&mut out, dress);
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
    /// It is a link, with what is told beside it.
    Link(Disclosed),
    /// Only its words are shown.
    Words,
}

/// Changes what the parser says into what we show, as it is asked for.
struct Dress<'a> {
    resolve: &'a dyn Resolve,
    shift: u8,
    ids: Ids,
    links: Vec<Open>,
    tables: usize,
    blocks: usize,
    parser: Parser<'a>,
    /// What was taken to look ahead and comes before what the parser says next.
    put_back: VecDeque<Event<'a>>,
    /// What is to be shown next.
    ready: VecDeque<Event<'a>>,
    /// Whether the last that was made ready begins an item of a list.
    item_begun: bool,
    in_code: bool,
    marks_words: bool,
}

impl<'a> Iterator for Dress<'a> {
    type Item = Event<'a>;

    fn next(&mut self) -> Option<Event<'a>> {
        loop {
            if let Some(event) = self.ready.pop_front() {
                return Some(event);
            }
            let event = self.take()?;
            self.dress(event);
        }
    }
}

impl<'a> Dress<'a> {
    /// Takes the next event as the text has it.
    fn take(&mut self) -> Option<Event<'a>> {
        self.put_back.pop_front().or_else(|| self.parser.next())
    }

    /// Looks at the next event as the text has it.
    fn peek(&mut self) -> Option<&Event<'a>> {
        if self.put_back.is_empty() {
            self.put_back.extend(self.parser.next());
        }
        self.put_back.front()
    }

    /// Takes events up to the end of something, which is taken and dropped.
    fn take_until(&mut self, ends: impl Fn(TagEnd) -> bool) -> Vec<Event<'a>> {
        let is_end = |event: &Event<'_>| matches!(event, Event::End(end) if ends(*end));
        std::iter::from_fn(|| self.take()).take_while(|event| !is_end(event)).collect()
    }

    /// Takes the events inside an image, images inside it included; its own end is taken and dropped.
    fn take_image(&mut self) -> Vec<Event<'a>> {
        let mut inside = Vec::new();
        let mut depth = 0_usize;
        while let Some(event) = self.take() {
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

    /// Puts events back to be dressed next, and behind them one that ends them.
    fn put_back(&mut self, inside: Vec<Event<'a>>, end: Event<'a>) {
        for event in std::iter::once(end).chain(inside.into_iter().rev()) {
            self.put_back.push_front(event);
        }
    }

    /// Makes an event ready to be shown.
    fn show(&mut self, event: Event<'a>) {
        self.item_begun = matches!(event, Event::Start(Tag::Item));
        self.ready.push_back(event);
    }

    fn dress(&mut self, event: Event<'a>) {
        match event {
            Event::Start(Tag::Heading { level, id, classes, attrs }) => self.heading(level, id, classes, attrs),
            Event::Start(Tag::Paragraph) => {
                if matches!(self.peek(), Some(Event::Start(Tag::Image { .. }))) {
                    self.paragraph_of_pictures();
                } else {
                    self.show(Event::Start(Tag::Paragraph));
                }
            }
            Event::Start(Tag::Image { dest_url, title, link_type, id }) => self.image(dest_url, title, link_type, id),
            Event::Start(Tag::Link { link_type, dest_url, title, id }) => {
                if let Some(words) = self.link(link_type, &dest_url, &title, &id) {
                    // An autolink's only words are its address; the entry's title stands for them.
                    let _ = self.take_until(|end| end == TagEnd::Link);
                    self.show(Event::Text(CowStr::from(words)));
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
                self.show(Event::Html(CowStr::from(box_of)));
                self.show(Event::Start(Tag::Table(alignments)));
            }
            Event::End(TagEnd::Table) => {
                self.show(Event::End(TagEnd::Table));
                self.show(Event::Html(CowStr::from("</div>\n")));
            }
            Event::Start(Tag::CodeBlock(CodeBlockKind::Fenced(info))) if Block::of(&info).is_some() => {
                let inside = self.take_until(|end| end == TagEnd::CodeBlock);
                self.block(&info, inside);
            }
            Event::Start(Tag::CodeBlock(kind)) => {
                self.in_code = true;
                self.code(&kind);
            }
            Event::Start(Tag::HtmlBlock) => {
                // A block comes line by line, and a comment may span several.
                let mut block = String::new();
                for event in self.take_until(|end| end == TagEnd::HtmlBlock) {
                    if let Event::Html(line) | Event::Text(line) = event {
                        block.push_str(&line);
                    }
                }
                let (seen, _) = without_comments(&block);
                if !seen.trim().is_empty() {
                    self.show(Event::Html(CowStr::from(seen)));
                }
            }
            Event::InlineHtml(html) => {
                let (seen, _) = without_comments(&html);
                self.show(Event::InlineHtml(CowStr::from(seen)));
            }
            Event::End(TagEnd::CodeBlock) => {
                self.in_code = false;
                self.show(Event::Html(CowStr::from("</code></pre>\n")));
            }
            Event::Text(words) if self.marks_words && !self.in_code => self.words(words),
            other => self.show(other),
        }
    }

    /// Shows plain words, with what is marked in them; the ends of lines among them are parts of them.
    fn words(&mut self, first: CowStr<'a>) {
        let mut events = vec![Event::Text(first)];
        while let Some(Event::Text(_) | Event::SoftBreak) = self.peek() {
            events.extend(self.take());
        }
        let mut all = String::new();
        for event in &events {
            all.push_str(if let Event::Text(words) = event { words } else { "\n" });
        }
        match self.resolve.words(&all) {
            Some(html) => self.show(Event::InlineHtml(CowStr::from(html))),
            None => events.into_iter().for_each(|event| self.show(event)),
        }
    }

    fn heading(
        &mut self,
        level: HeadingLevel,
        id: Option<CowStr<'a>>,
        classes: Vec<CowStr<'a>>,
        attrs: Vec<(CowStr<'a>, Option<CowStr<'a>>)>,
    ) {
        let mut inside = self.take_until(|end| matches!(end, TagEnd::Heading(_)));
        let mut words = HeadingWords::default();
        inside.iter().for_each(|event| words.push(event));
        let id = self.ids.take(id.as_deref(), &words.words());
        let is_chapter = words.split_time().0.is_some();
        let level = HeadingLevel::try_from(usize::from((level_number(level) + self.shift).min(6))).unwrap_or(level);
        self.show(Event::Start(Tag::Heading { level, id: Some(CowStr::from(id)), classes, attrs }));
        if let Some(Event::Text(first)) = inside.first().filter(|_| is_chapter)
            && let Some((time, rest)) = VideoTime::leading(first)
        {
            let mark = match self.resolve.moment(time) {
                Some(url) => format!("<a class=\"at\" href=\"{}\">{time}</a>", escaped(&url)),
                None => format!("<span class=\"at\">{time}</span>"),
            };
            let marked = format!("{mark} {}", escaped(rest));
            if let Some(slot) = inside.first_mut() {
                *slot = Event::InlineHtml(CowStr::from(marked));
            }
        }
        self.put_back(inside, Event::End(TagEnd::Heading(level)));
    }

    /// Puts a picture that is alone in its paragraph into a figure; its title is the caption.
    fn paragraph_of_pictures(&mut self) {
        let inside = self.take_until(|end| end == TagEnd::Paragraph);
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
            self.show(Event::Start(Tag::Paragraph));
            self.put_back(inside, Event::End(TagEnd::Paragraph));
            return;
        };
        self.show(Event::Html(CowStr::from("<figure>")));
        let end = if caption.is_empty() {
            "</figure>\n".to_owned()
        } else {
            format!("<figcaption>{}</figcaption></figure>\n", escaped(&caption))
        };
        self.put_back(inside, Event::Html(CowStr::from(end)));
    }

    fn image(&mut self, dest_url: CowStr<'a>, title: CowStr<'a>, link_type: LinkType, id: CowStr<'a>) {
        let inside = self.take_image();
        let mut alt = String::new();
        for event in &inside {
            match event {
                Event::Text(text) | Event::Code(text) => alt.push_str(text),
                Event::SoftBreak | Event::HardBreak => alt.push(' '),
                _ => {}
            }
        }
        if let Some(html) = self.resolve.picture(&dest_url, &alt) {
            self.show(Event::InlineHtml(CowStr::from(html)));
            return;
        }
        self.show(Event::Start(Tag::Image { link_type, dest_url, title, id }));
        inside.into_iter().for_each(|event| self.show(event));
        self.show(Event::End(TagEnd::Image));
    }

    /// Opens a link; returns the words to show instead of an autolink's own.
    fn link(&mut self, link_type: LinkType, address: &str, title: &CowStr<'a>, id: &CowStr<'a>) -> Option<String> {
        let (path, fragment) =
            address.split_once('#').map_or((address, None), |(path, fragment)| (path, Some(fragment)));
        let reference = Reference::split(path).and_then(|(kind, key)| Some(Reference { kind, key: Key::new(key)? }));
        let target = reference.and_then(|reference| self.resolve.entry(&reference));
        let Some(target) = target else {
            let (url, told) = (CowStr::from(self.resolve.address(address)), self.resolve.told_of(address));
            self.open_link(link_type, url, title.clone(), id.clone(), told);
            return None;
        };
        match target.url {
            Some(url) => {
                let url = fragment.map_or_else(
                    || url.clone(),
                    |fragment| format!("{}#{fragment}", url.split('#').next().unwrap_or(&url)),
                );
                self.open_link(LinkType::Inline, CowStr::from(url), title.clone(), id.clone(), target.told);
            }
            None => self.links.push(Open::Words),
        }
        titled_by(link_type, address).map(|_| target.title)
    }

    fn open_link(
        &mut self,
        link_type: LinkType,
        dest_url: CowStr<'a>,
        title: CowStr<'a>,
        id: CowStr<'a>,
        told: Disclosed,
    ) {
        if told.sponsored {
            // The writer of HTML knows no attributes of links.
            let mut open = String::from("<a href=\"");
            let _ = escape_href(&mut open, &dest_url);
            open.push_str("\" rel=\"sponsored\"");
            if !title.is_empty() {
                open.push_str(&format!(" title=\"{}\"", escaped(&title)));
            }
            open.push('>');
            self.show(Event::InlineHtml(CowStr::from(open)));
        } else {
            self.show(Event::Start(Tag::Link { link_type, dest_url, title, id }));
        }
        self.links.push(Open::Link(told));
    }

    fn close_link(&mut self) {
        let told = match self.links.pop() {
            Some(Open::Words) => return,
            Some(Open::Link(told)) => told,
            None => Disclosed::default(),
        };
        if told.sponsored {
            self.show(Event::InlineHtml(CowStr::from("</a>")));
        } else {
            self.show(Event::End(TagEnd::Link));
        }
        if !told.words.is_empty() {
            let words = format!(" <span class=\"how\">({})</span>", escaped(&told.words));
            self.show(Event::InlineHtml(CowStr::from(words)));
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
            Some(html) => self.show(Event::Html(CowStr::from(html))),
            None => {
                self.code(&CodeBlockKind::Fenced(info.clone()));
                inside.into_iter().for_each(|event| self.show(event));
                self.show(Event::Html(CowStr::from("</code></pre>\n")));
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
        let line = if self.item_begun { "\n" } else { "" };
        self.show(Event::Html(CowStr::from(format!("{line}<pre tabindex=\"0\"><code{}>", class.unwrap_or_default()))));
    }
}
