//! What an entry's Markdown says of other things: references, pictures, headings and chapters.
//!
//! Nothing is rendered here. The options are the ones the renderer uses, so that both read the same text alike.

use super::block::{self, BAD_BLOCK, Block, Subject};
use super::chart::{ChartBlock, SwatchBlock, SwatchOf, read_chart, read_swatch};
use super::comment::without_comments;
use super::fenced::Fenced;
use super::heading::{Heading, HeadingWords, Ids, Wording, level_number, titled_by};
use super::kind::{Key, Kind, Reference};
use super::open_fence::open_fence;
use super::seen::{Gathering, Seen};
use super::studio::Settings;
use super::value::BAD_REFERENCE;
use crate::finding::{Code, Finding, Severity, nearest};
use crate::source::{FilePath, Place};
use pulldown_cmark::{CodeBlockKind, Event, HeadingLevel, Options, Parser, Tag, TagEnd};
use std::ops::Range;
use std::sync::Arc;

/// A picture without a description.
pub static NO_DESCRIPTION: Code = Code {
    name: "picture-undescribed",
    severity: Severity::Warning,
    what: "A picture has no description.",
    why: "A reader who cannot see it learns nothing, and search finds nothing.",
    bad: "![](photos/yoke.jpg)",
    good: "![Reeds round a yoke](photos/yoke.jpg)",
};

/// A comment that a blank line cuts in two.
pub static COMMENT_OPEN: Code = Code {
    name: "comment-open",
    severity: Severity::Error,
    what: "A comment in the text is not closed before the next blank line of its HTML.",
    why: "Markdown ends the HTML at a blank line, so the rest of the comment would stand on the page for all to read.",
    bad: "<div>\n<!-- ask Wyn\n\nabout the date -->\n</div>",
    good: "<!-- ask Wyn\n\nabout the date -->\n\n<div>\n</div>",
};

/// Returns the Markdown we read: CommonMark with tables, footnotes and heading attributes.
pub fn options() -> Options {
    Options::ENABLE_TABLES | Options::ENABLE_FOOTNOTES | Options::ENABLE_HEADING_ATTRIBUTES
}

/// A reference in the text and the bytes of its file it stands in.
#[derive(Clone, Debug)]
pub struct ProseReference {
    /// The entry meant.
    pub to: Reference,
    /// The heading meant, if one is.
    pub heading: Option<String>,
    /// The whole link, in bytes of the file.
    pub at: Range<usize>,
}

/// A picture of the text.
#[derive(Clone, Debug)]
pub struct ProsePicture {
    /// The address as written.
    pub path: String,
    /// Where it stands, in bytes of the file.
    pub at: Range<usize>,
}

/// A link to an address elsewhere.
#[derive(Clone, Debug)]
pub struct OutsideLink {
    /// The words that carry it.
    pub words: String,
    /// The address.
    pub url: String,
    /// The whole link, in bytes of the file.
    pub at: Range<usize>,
}

/// What a text says of other things.
#[derive(Clone, Debug)]
pub struct Prose {
    /// The whole file, shared with the texts.
    file: Arc<str>,
    /// The Markdown in it.
    body: Range<usize>,
    /// The references in the order of the text.
    pub references: Vec<ProseReference>,
    /// The runs of plain words outside of links, headings, pictures and code, in bytes of the file.
    pub plain: Vec<Range<usize>>,
    /// All words that readers see.
    pub seen: Seen,
    /// The links to other sites in the order of the text.
    pub outside: Vec<OutsideLink>,
    /// The pictures in the order of the text.
    pub pictures: Vec<ProsePicture>,
    /// The headings in the order of the text.
    pub headings: Vec<Heading>,
    /// The `rows` blocks in the order of the text, but for empty ones.
    pub rows: Vec<Fenced>,
    /// The charts in the order of the text; those that could not be read are left out.
    pub charts: Vec<ChartBlock>,
    /// How many charts could not be read.
    pub unread_charts: usize,
    /// The swatches in the order of the text; those that could not be read are left out.
    pub swatches: Vec<SwatchBlock>,
    /// The first paragraph's words, for where a summary is wanted and none is given.
    pub opening: Vec<Wording>,
}

impl Default for Prose {
    fn default() -> Self {
        Self {
            file: Arc::from(""),
            body: 0..0,
            references: Vec::new(),
            plain: Vec::new(),
            seen: Seen::default(),
            outside: Vec::new(),
            pictures: Vec::new(),
            headings: Vec::new(),
            rows: Vec::new(),
            charts: Vec::new(),
            unread_charts: 0,
            swatches: Vec::new(),
            opening: Vec::new(),
        }
    }
}

impl Prose {
    /// Returns where the Markdown begins, in bytes of the file.
    pub fn start(&self) -> usize {
        self.body.start
    }

    /// Returns the whole text of the file that the Markdown stands in; places are bytes of it.
    pub fn file(&self) -> &str {
        &self.file
    }

    /// Returns the chart that a swatch of this text shows; nothing if there is none of its name.
    pub fn chart_of<'a>(&'a self, swatch: &'a SwatchBlock) -> Option<&'a ChartBlock> {
        match &swatch.of {
            SwatchOf::Own(chart) => Some(chart),
            SwatchOf::Named(name) => self.charts.iter().find(|chart| chart.name.as_ref() == Some(name)),
        }
    }

    /// Returns every chart of the text, those written out in a swatch included.
    pub fn all_charts(&self) -> Vec<&ChartBlock> {
        let own = self.swatches.iter().filter_map(|swatch| match &swatch.of {
            SwatchOf::Own(chart) => Some(&**chart),
            SwatchOf::Named(_) => None,
        });
        self.charts.iter().chain(own).collect()
    }

    /// Returns the Markdown.
    pub fn source(&self) -> &str {
        self.file.get(self.body.clone()).unwrap_or_default()
    }

    /// Returns a stretch of the file.
    pub fn stretch(&self, at: &Range<usize>) -> &str {
        self.file.get(at.clone()).unwrap_or_default()
    }
}

/// Reads a text; `body` is its range in the file.
pub fn read(
    file: &FilePath,
    text: &Arc<str>,
    body: Range<usize>,
    settings: &Settings,
    findings: &mut Vec<Finding>,
) -> Prose {
    let source = text.get(body.clone()).unwrap_or_default();
    let mut prose = Prose { file: Arc::clone(text), body: body.clone(), ..Prose::default() };
    let mut ids = Ids::default();
    let mut heading: Option<(HeadingLevel, Option<String>, Range<usize>, HeadingWords)> = None;
    let mut picture: Option<String> = None;
    let mut outside: Option<OutsideLink> = None;
    let mut in_code = false;
    let mut computed: Option<(Block, Fenced)> = None;
    let mut blocks = 0_usize;
    let mut block: Option<(String, usize)> = None;
    // How many links are open, and whether a line has just ended within a paragraph.
    let mut links = 0_usize;
    let mut is_next_line = false;
    // Runs of plain text, where a link that is none would stand.
    let mut plain: Vec<Range<usize>> = Vec::new();
    let mut in_opening = false;
    // Whether the words that come are an autolink's address, for which the entry's title stands.
    let mut titled = false;
    let mut seen = Gathering::default();
    for (event, range) in Parser::new_ext(source, options()).into_offset_iter() {
        let at = range.start + body.start..range.end + body.start;
        seen.take(&event, &at);
        match &event {
            Event::Start(Tag::CodeBlock(kind)) => {
                in_code = true;
                if let CodeBlockKind::Fenced(info) = kind {
                    findings.extend(open_fence(file, text, &at));
                    computed = Block::of(info).map(|block| {
                        blocks += 1;
                        (block, Fenced::new(blocks, at.clone()))
                    });
                }
            }
            Event::End(TagEnd::CodeBlock) => {
                in_code = false;
                if let Some((block, fenced)) = computed.take() {
                    keep_block(file, block, fenced, settings, &mut prose, findings);
                }
            }
            Event::Text(text) if in_code => {
                if let Some((_, fenced)) = &mut computed {
                    fenced.push(text, at.start);
                }
            }
            Event::Text(_) if !in_code => {
                match plain.last_mut() {
                    Some(last) if last.end == at.start => last.end = at.end,
                    _ => plain.push(at.clone()),
                }
                if links == 0 && heading.is_none() && picture.is_none() {
                    match prose.plain.last_mut() {
                        Some(last) if is_next_line || last.end == at.start => last.end = at.end,
                        _ => prose.plain.push(at.clone()),
                    }
                }
            }
            Event::Start(Tag::Link { .. }) => links += 1,
            Event::End(TagEnd::Link) => links = links.saturating_sub(1),
            _ => {}
        }
        if let Some((.., words)) = &mut heading {
            words.push(&event);
        }
        // A line that ends behind plain words goes on with those of the next.
        is_next_line = matches!(event, Event::SoftBreak) && prose.plain.last().is_some_and(|last| last.end == at.start);
        match event {
            Event::Start(Tag::Link { link_type, dest_url, .. }) => {
                if dest_url.starts_with("https://") || dest_url.starts_with("http://") {
                    let (words, url) = (String::new(), dest_url.to_string());
                    outside = Some(OutsideLink { words, url, at: at.clone() });
                }
                refer(file, &dest_url, at, &mut prose, findings);
                let entry = titled_by(link_type, &dest_url);
                titled = entry.is_some();
                if in_opening {
                    prose.opening.extend(entry.map(Wording::Title));
                }
            }
            Event::End(TagEnd::Link) => {
                prose.outside.extend(outside.take());
                titled = false;
            }
            Event::Start(Tag::Image { dest_url, .. }) => {
                prose.pictures.push(ProsePicture { path: dest_url.to_string(), at });
                picture = Some(String::new());
            }
            Event::End(TagEnd::Image) if picture.take().is_some_and(|words| words.trim().is_empty()) => {
                let finding = Finding::new(
                    &NO_DESCRIPTION,
                    Place { file: file.clone(), span: at },
                    "the picture has no description",
                );
                findings.push(finding.help("say in the square brackets what it shows"));
            }
            Event::Start(Tag::Heading { level, id, .. }) => {
                heading = Some((level, id.map(|id| id.to_string()), at, HeadingWords::default()))
            }
            Event::End(TagEnd::Heading(_)) => {
                if let Some((level, id, at, gathered)) = heading.take() {
                    let words = gathered.words();
                    let id = ids.take(id.as_deref(), &words);
                    let (chapter, title) = gathered.split_time();
                    prose.headings.push(Heading { level: level_number(level), words, title, id, chapter, at });
                }
            }
            Event::Start(Tag::HtmlBlock) => block = Some((String::new(), at.start)),
            Event::Html(line) => {
                if let Some((block, _)) = &mut block {
                    block.push_str(&line);
                }
            }
            Event::End(TagEnd::HtmlBlock) => {
                let open = block.take().and_then(|(html, start)| Some((without_comments(&html).1?, start)));
                if let Some((offset, start)) = open {
                    let place = Place { file: file.clone(), span: start + offset..start + offset + 4 };
                    let finding = Finding::new(&COMMENT_OPEN, place, "the comment is not closed before a blank line");
                    findings.push(finding.help(
                        "close it with `-->` first, or let the comment begin a line of its own after a blank one",
                    ));
                }
            }
            Event::Start(Tag::Paragraph) => in_opening = prose.opening.is_empty(),
            Event::End(TagEnd::Paragraph) => in_opening = false,
            Event::Text(words) | Event::Code(words) => {
                if let Some(link) = &mut outside {
                    link.words.push_str(&words);
                }
                if let Some(picture) = &mut picture {
                    picture.push_str(&words);
                } else if in_opening && !titled {
                    prose.opening.push(Wording::Words(words.to_string()));
                }
            }
            Event::SoftBreak | Event::HardBreak => {
                if let Some(link) = &mut outside {
                    link.words.push(' ');
                }
                if in_opening && picture.is_none() {
                    prose.opening.push(Wording::Words(" ".to_owned()));
                }
            }
            _ => {}
        }
    }
    findings.extend(plain.into_iter().filter_map(|at| looks_meant(file, text, at)));
    prose.seen = seen.done();
    prose
}

/// Keeps what a computed block shows or refers to; one that does not say it is a finding.
fn keep_block(
    file: &FilePath,
    block: Block,
    fenced: Fenced,
    settings: &Settings,
    prose: &mut Prose,
    findings: &mut Vec<Finding>,
) {
    match block {
        Block::Chart => match read_chart(file, fenced, settings, findings) {
            Some(chart) => prose.charts.push(chart),
            None => prose.unread_charts += 1,
        },
        Block::Swatch => prose.swatches.extend(read_swatch(file, fenced, settings, findings)),
        Block::Needs | Block::Sizes => keep_subject(file, block, fenced, prose, findings),
        // Their place is kept, since what is wrong in them is told of at their bytes.
        Block::Rows if fenced.text.is_empty() => {}
        Block::Rows => prose.rows.push(fenced),
    }
}

/// Keeps which pattern a block is about.
fn keep_subject(file: &FilePath, block: Block, fenced: Fenced, prose: &mut Prose, findings: &mut Vec<Finding>) {
    let Fenced { text, at, .. } = fenced;
    match block::subject(&text) {
        Subject::Pattern(key) => {
            let to = Reference { kind: Kind::Pattern, key };
            prose.references.push(ProseReference { to, heading: None, at });
        }
        Subject::Own if file.as_str().starts_with("patterns/") => {}
        Subject::Own | Subject::Unclear => {
            let message = format!("the `{}` block does not say which pattern it is about", block.word());
            let finding = Finding::new(&BAD_BLOCK, Place { file: file.clone(), span: at }, message);
            findings.push(
                finding.help("write the pattern's key in it, such as `pattern: saltmarsh-yoke`, and nothing else"),
            );
        }
    }
}

/// Keeps a link that is a reference.
fn refer(file: &FilePath, address: &str, at: Range<usize>, prose: &mut Prose, findings: &mut Vec<Finding>) {
    let Some((kind, rest)) = Reference::split(address) else {
        findings.extend(misspelt_kind(file, address, at));
        return;
    };
    let (key, heading) = rest.split_once('#').map_or((rest, None), |(key, heading)| (key, Some(heading.to_owned())));
    match Key::new(key) {
        Some(key) => {
            prose.references.push(ProseReference { to: Reference { kind, key }, heading, at });
        }
        None => {
            let finding = Finding::new(
                &BAD_REFERENCE,
                Place { file: file.clone(), span: at },
                format!("`{address}` is not a reference"),
            );
            let help = format!("a key is lower-case letters, digits and hyphens: `{}:{}`", kind.word(), Key::like(key));
            findings.push(finding.help(help));
        }
    }
}

/// Finds a reference or a picture that Markdown takes for plain words.
fn looks_meant(file: &FilePath, text: &str, at: Range<usize>) -> Option<Finding> {
    let missed = missed(text.get(at.clone())?)?;
    let place = Place { file: file.clone(), span: at.start + missed.at.start..at.start + missed.at.end };
    Some(Finding::new(&BAD_REFERENCE, place, missed.message).help(missed.help))
}

/// Something that was meant as a link and is read as plain words.
#[derive(Clone, Debug)]
pub struct Missed {
    /// Where it stands among the words, in bytes.
    pub at: Range<usize>,
    /// What is wrong.
    pub message: String,
    /// What to do.
    pub help: String,
}

/// Returns the first reference or picture in a run of plain words that was meant as one, mostly with a space in its address.
pub fn missed(words: &str) -> Option<Missed> {
    // Two searches for rare signs, since every text of every studio comes through here.
    let is_reference = |rest: &&str| Reference::split(rest).is_some();
    let angle = words.match_indices('<').find(|(start, _)| words.get(start + 1..).filter(is_reference).is_some());
    let meant = |rest: &&str| Reference::split(rest).is_some() || rest.starts_with("photos/");
    let in_round = |start: usize| words.get(start + 1..)?.strip_prefix('(').filter(meant);
    let round = words.match_indices(']').map(|(start, _)| (start, "](")).find(|(start, _)| in_round(*start).is_some());
    let (start, open) = angle.or(round)?;
    let rest = words.get(start..)?;
    let close = if open == "<" { '>' } else { ')' };
    let end = rest.find(close).map_or(rest.len(), |end| end + 1);
    let inside = rest.get(open.len()..end).unwrap_or_default().trim_end_matches(close);
    let help = match Reference::split(inside) {
        Some((kind, key)) => {
            format!("a key is lower-case letters, digits and hyphens: `{}:{}`", kind.word(), Key::like(key))
        }
        None => format!("put an address with spaces in angle brackets: `](<{inside}>)`"),
    };
    Some(Missed { at: start..start + end, message: format!("`{inside}` is not read as a link"), help })
}

/// Finds an address whose scheme is nearly a kind: `patterns:reeds`, `Pattern:reeds`.
fn misspelt_kind(file: &FilePath, address: &str, at: Range<usize>) -> Option<Finding> {
    let (scheme, rest) = address.split_once(':')?;
    let key = rest.split('#').next().unwrap_or(rest);
    let near = nearest(scheme, Kind::ALL.map(Kind::word))?;
    // Any other scheme may be a real one; only what is followed by a key was meant as a reference.
    Key::new(key)?;
    let finding = Finding::new(
        &BAD_REFERENCE,
        Place { file: file.clone(), span: at },
        format!("`{scheme}` is not a kind of entry"),
    );
    Some(finding.help(format!("did you mean `{near}:{rest}`?")))
}
