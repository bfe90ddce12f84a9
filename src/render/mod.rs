//! Makes pages of contexts: templates, Markdown to HTML, feeds and lists for machines, pictures.
//!
//! Everything here is pure, bytes from values; nothing is written and no clock is asked.

pub mod blurb;
pub mod calendar;
mod chapters;
pub mod chart;
pub mod count;
mod data;
mod decimal;
pub mod desk;
mod feeds;
pub mod jot;
pub mod markdown;
pub mod need;
pub mod photos;
pub mod picture;
pub mod reference;
pub mod rows;
mod sitemap;
pub mod stitches;
mod table;
pub mod theme;

pub use theme::Theme;
use theme::{Engine, EngineError};

use crate::catalogue::Visibility;
use crate::entry::block::{self, Block, Subject};
use crate::entry::value::VideoTime;
use crate::entry::{ChartBlock, Entry, Fenced, Key, Kind, Reference, SwatchBlock};
use crate::finding::Finding;
use crate::page::disclosure::{self, Disclosed};
use crate::page::{self, Addresses, Context, CountedRows, Item, Link, Page, Shown, block_context, page_path};
use markdown::{Resolve, Target};
use pulldown_cmark_escape::escape_html;
use rayon::prelude::*;
use std::borrow::Cow;
use std::cell::{OnceCell, RefCell};
use std::fmt;

/// One file of the site.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rendered {
    /// Its path in the site.
    pub path: String,
    /// Its bytes.
    pub bytes: Vec<u8>,
}

/// One file of the site that is still to be made.
pub struct ToMake<'a> {
    /// Its path in the site.
    pub path: String,
    make: Box<dyn Fn() -> Result<Vec<u8>, Box<Finding>> + Send + Sync + 'a>,
}

impl<'a> ToMake<'a> {
    fn new(path: &str, make: impl Fn() -> Result<Vec<u8>, Box<Finding>> + Send + Sync + 'a) -> Self {
        Self { path: path.to_owned(), make: Box::new(make) }
    }

    /// Makes its bytes.
    ///
    /// # Errors
    /// A template that fails, with the line of the template and the entry; a site without that page must not be published.
    pub fn make(&self) -> Result<Vec<u8>, Box<Finding>> {
        (self.make)()
    }
}

impl fmt::Debug for ToMake<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "ToMake({})", self.path)
    }
}

/// A site about to be rendered: what all its pages share.
#[derive(Debug)]
pub struct Renderer<'a> {
    shown: Shown<'a>,
    theme: &'a Theme,
    engine: Cow<'a, Engine>,
}

/// Files of the site that are neither pages nor assets: path and how each is made.
type Other = fn(&Renderer<'_>) -> Vec<u8>;
const OTHERS: [(&str, Other); 6] = [
    (calendar::CALENDAR, |site| {
        let name = &site.shown.catalogue.studio.title;
        calendar::calendar(&site.shown, name, &page::events(&site.shown)).unwrap_or_default()
    }),
    (feeds::ATOM, |site| feeds::atom(&site.shown, &site.engine).into_bytes()),
    (feeds::JSON, |site| feeds::json(&site.shown, &site.engine).into_bytes()),
    ("sitemap.xml", |site| sitemap::sitemap(&site.shown, &Page::all(&site.shown))),
    ("robots.txt", |site| sitemap::robots(&site.shown).into_bytes()),
    ("catalogue.json", |site| data::catalogue(&site.shown)),
];

impl<'a> Renderer<'a> {
    /// Returns what renders a whole site.
    pub fn new(shown: Shown<'a>, theme: &'a Theme) -> Self {
        let engine = Cow::Owned(theme.engine(&page::site(&shown)));
        Self { shown, theme, engine }
    }

    /// Returns the same with an engine that is there already, made by the theme for the site as it is.
    pub fn with(shown: Shown<'a>, theme: &'a Theme, engine: &'a Engine) -> Self {
        Self { shown, theme, engine: Cow::Borrowed(engine) }
    }

    /// Returns every file of the site but the photos: pages, assets, feeds, lists for machines. None is made before it is
    /// asked for, so that a large site is never held whole.
    pub fn files(&self) -> Vec<ToMake<'_>> {
        let pages = Page::all(&self.shown);
        // Half as many again for the chapters of notes and the rest.
        let mut files = Vec::with_capacity(pages.len() * 3 / 2);
        let pages = pages.into_iter().map(|page| {
            let file = page.file.clone();
            ToMake::new(&file, move || self.fill(&page, &self.context(&page)?))
        });
        let assets = self.theme.assets().map(|(path, bytes)| ToMake::new(path, move || Ok(bytes.to_vec())));
        let others = self.others().map(|(path, make)| ToMake::new(path, move || Ok(make(self))));
        let chapters = self.shown.catalogue.notes().filter_map(|(entry, note)| {
            let cues = page::cues(&self.shown, entry, note)?;
            Some(ToMake::new(&page::chapters_path(&entry.id), move || Ok(chapters::to_vtt(&cues).into_bytes())))
        });
        files.extend(pages.chain(assets).chain(others).chain(chapters));
        files
    }

    /// Returns the page that is this file of the site, if there is one.
    pub fn page_at(&self, file: &str) -> Option<Page> {
        Page::at(&self.shown, file)
    }

    /// Makes a file that is no page; nothing if the site has no such file.
    pub fn other(&self, file: &str) -> Option<Vec<u8>> {
        let asset = self.theme.assets().find(|(path, _)| *path == file).map(|(_, bytes)| bytes.to_vec());
        let other = || self.others().find(|(path, _)| *path == file).map(|(_, make)| make(self));
        asset.or_else(other).or_else(|| self.chapters(file))
    }

    /// Makes the chapters of a note, if that is the file.
    fn chapters(&self, file: &str) -> Option<Vec<u8>> {
        let key = file.strip_prefix(Kind::Note.folder())?.strip_prefix('/')?.split('/').next().and_then(Key::new)?;
        let entry = self.shown.catalogue.public_entry(&Reference { kind: Kind::Note, key })?;
        let note = entry.note().filter(|_| page::chapters_path(&entry.id) == file)?;
        page::cues(&self.shown, entry, note).map(|cues| chapters::to_vtt(&cues).into_bytes())
    }

    /// Returns the files that are neither pages nor assets; there is no calendar without a day in it.
    fn others(&self) -> impl Iterator<Item = &'static (&'static str, Other)> {
        OTHERS.iter().filter(|(path, _)| *path != calendar::CALENDAR || !page::events(&self.shown).is_empty())
    }

    /// Works out all that a page shows, its text included.
    ///
    /// # Errors
    /// A computed block of the text whose template fails.
    pub fn context(&self, page: &Page) -> Result<Context, Box<Finding>> {
        let mut context = page.context(&self.shown);
        if let Some(entry) = page.entry().and_then(|id| self.shown.catalogue.entry(id)) {
            let html = body(&self.shown, &self.engine, entry, false).map_err(|error| self.explain(&error, page))?;
            context.set_body(html);
            context.set_stories(stories(&self.shown, &self.engine, entry, false));
        }
        Ok(context)
    }

    /// Fills a page's template.
    ///
    /// # Errors
    /// A template that fails, with the line of the template and the entry; a site without that page must not be published.
    pub fn fill(&self, page: &Page, context: &Context) -> Result<Vec<u8>, Box<Finding>> {
        self.engine.page(page.template, context).map_err(|error| self.explain(&error, page))
    }

    fn explain(&self, error: &EngineError, page: &Page) -> Box<Finding> {
        Box::new(self.theme.explain(error, page))
    }
}

/// Makes every file and keeps none: the findings are of those that cannot be made.
pub fn faults(renderer: &Renderer<'_>) -> Vec<Finding> {
    renderer.files().par_iter().filter_map(|file| file.make().err()).map(|finding| *finding).collect()
}

/// Makes every file at once and keeps them all; those that cannot be made are findings and missing.
pub fn render(renderer: &Renderer<'_>) -> (Vec<Rendered>, Vec<Finding>) {
    let files = renderer.files();
    let made: Vec<_> = files.par_iter().map(|file| (file.path.clone(), file.make())).collect();
    let mut rendered = Vec::with_capacity(made.len());
    let mut findings = Vec::new();
    for (path, made) in made {
        match made {
            Ok(bytes) => rendered.push(Rendered { path, bytes }),
            Err(finding) => findings.push(*finding),
        }
    }
    (rendered, findings)
}

/// Returns an entry's text as HTML; with whole addresses where it is read away from the site, as in a feed.
///
/// # Errors
/// A computed block whose template fails.
fn body(shown: &Shown<'_>, engine: &Engine, entry: &Entry, whole: bool) -> Result<String, EngineError> {
    // The page has a heading of level 1 already, the title.
    let shift = u8::from(entry.prose.headings.iter().any(|heading| heading.level == 1));
    let site = Site::new(shown, engine, entry, whole);
    let html = markdown::to_html(entry.prose.source(), &site, shift);
    site.fault.into_inner().map_or(Ok(html), Err)
}

/// Returns what others wrote for a note as HTML, in its order; nothing for any other entry.
fn stories(shown: &Shown<'_>, engine: &Engine, entry: &Entry, whole: bool) -> Vec<String> {
    let site = Site::new(shown, engine, entry, whole);
    let stories = entry.note().map(|note| note.story.as_slice()).unwrap_or_default();
    // A story holds no computed block, so no template can fail in it.
    stories.iter().map(|story| markdown::to_html(story.text.as_str(), &site, 0)).collect()
}

/// Resolves what a text refers to in the site.
struct Site<'a, 's> {
    shown: &'a Shown<'s>,
    engine: &'a Engine,
    /// The entry whose text it is.
    entry: &'a Entry,
    whole: bool,
    /// The whole address of the entry's page.
    page: String,
    /// Why the last block that failed did.
    fault: RefCell<Option<EngineError>>,
    /// The pattern's rows in every size, once one of its blocks was met.
    rows: OnceCell<CountedRows>,
}

impl<'a, 's> Site<'a, 's> {
    fn new(shown: &'a Shown<'s>, engine: &'a Engine, entry: &'a Entry, whole: bool) -> Self {
        let page = shown.addresses.whole(&page_path(&entry.id));
        let (fault, rows) = (RefCell::new(None), OnceCell::new());
        Self { shown, engine, entry, whole, page, fault, rows }
    }

    fn local(&self, local: String) -> String {
        if self.whole { self.shown.whole_url(&local) } else { local }
    }
}

impl Site<'_, '_> {
    /// Draws a chart of the entry's own text; nothing if it could not be read.
    fn chart(&self, text: &str, number: usize) -> Option<String> {
        let is = |block: &&ChartBlock| block.source.number == number && block.source.text == text;
        let block = self.entry.prose.charts.iter().find(is)?;
        let view = page::chart_view(self.shown, block, self.entry.pattern());
        Some(stitches::chart(&view, &format!("leaflet-block-{number}")))
    }

    /// Shows a block of rows; nothing, so that it stands as it is written, where it is read away from the site or is empty.
    fn rows(&self, text: &str, number: usize) -> Option<String> {
        if self.whole || text.is_empty() {
            return None;
        }
        let pattern = self.entry.pattern();
        let counted = pattern
            .map(|pattern| self.rows.get_or_init(|| CountedRows::new(self.shown.catalogue, self.entry, pattern)));
        // What others wrote for a note has blocks of its own, which are not among these.
        let is = |block: &Fenced| block.number == number && block.text == text;
        let counted = counted.zip(self.entry.prose.rows.iter().position(is));
        let view = page::rows_view(self.shown, pattern, text, counted, number);
        self.filled("rows.html", &Context::Rows(Box::new(rows::context(&view))))
    }

    /// Fills a template of a block; why it fails is kept.
    fn filled(&self, template: &str, context: &Context) -> Option<String> {
        match self.engine.page(template, context) {
            Ok(html) => String::from_utf8(html).ok(),
            Err(error) => {
                self.fault.replace(Some(error));
                None
            }
        }
    }

    /// Draws a swatch of the entry's own text; nothing if it could not be read, or if its chart is missing.
    fn swatch(&self, text: &str, number: usize) -> Option<String> {
        let prose = &self.entry.prose;
        let is = |block: &&SwatchBlock| block.source.number == number && block.source.text == text;
        let swatch = prose.swatches.iter().find(is)?;
        let chart = prose.chart_of(swatch)?;
        let pattern = self.entry.pattern();
        let wide = page::swatch_stitches(swatch, &chart.chart, pattern)?;
        let view = page::chart_view(self.shown, chart, pattern);
        Some(stitches::swatch(&view, wide, swatch.up, &format!("leaflet-block-{number}")))
    }
}

impl Resolve for Site<'_, '_> {
    fn entry(&self, id: &Reference) -> Option<Target> {
        let link = self.shown.link(id)?;
        let told = self.entry.note().map(|note| disclosure::of(&self.shown.catalogue.studio, note, id));
        let url = link.url.clone().map(|url| self.local(url));
        Some(Target { title: link.title.clone(), url, told: told.unwrap_or_default() })
    }

    fn told_of(&self, address: &str) -> Disclosed {
        self.entry.note().map(|note| disclosure::of_address(self.shown, note, address)).unwrap_or_default()
    }

    fn address(&self, address: &str) -> String {
        if !self.whole {
            return address.to_owned();
        }
        match address.strip_prefix('#') {
            Some(_) => format!("{}{address}", self.page),
            None if address.starts_with('/') && !address.starts_with("//") => {
                format!("{}{address}", self.shown.catalogue.studio.address())
            }
            None => address.to_owned(),
        }
    }

    fn moment(&self, time: VideoTime) -> Option<String> {
        let video = self.entry.note()?.video.as_ref()?;
        Some(self.shown.catalogue.studio.moment(&video.url, time))
    }

    fn words(&self, words: &str) -> Option<String> {
        let sizes = self.entry.pattern()?.size_count();
        rows::with_runs(words, sizes, self.shown.catalogue.studio.settings().runs)
    }

    fn marks_words(&self) -> bool {
        self.entry.pattern().is_some_and(|pattern| pattern.size_count() > 1)
    }

    fn block(&self, block: Block, text: &str, number: usize) -> Option<String> {
        match block {
            Block::Chart => return self.chart(text, number),
            Block::Swatch => return self.swatch(text, number),
            Block::Rows => return self.rows(text, number),
            Block::Needs | Block::Sizes => {}
        }
        let entry = match block::subject(text) {
            Subject::Pattern(key) => self.shown.catalogue.entry(&Reference { kind: Kind::Pattern, key })?,
            Subject::Own => self.entry,
            Subject::Unclear => return None,
        };
        let pattern = entry.pattern()?;
        if self.shown.catalogue.visibility(entry) != Visibility::Public {
            // As for any reference in a text: its title, and nothing of its figures.
            let mut words = String::from("<p>");
            let _ = escape_html(&mut words, &entry.common.title);
            return Some(words + "</p>\n");
        }
        let mut context = block_context(self.shown, block, entry, pattern, number);
        if self.whole {
            let whole = |link: &Link| {
                let url = link.url.as_deref().map(|url| self.shown.whole_url(url));
                Item::from(Link { title: link.title.clone(), url })
            };
            context.pattern = whole(&context.pattern);
            for band in &mut context.bands {
                band.yarn = whole(&band.yarn);
                band.maker = band.maker.as_deref().map(whole);
            }
        }
        self.filled("block.html", &Context::Block(Box::new(context)))
    }

    fn picture(&self, address: &str, alt: &str) -> Option<String> {
        let mut picture = self.shown.picture_of(address, alt)?;
        if self.whole {
            // A reader of feeds wants one plain picture.
            picture.src = self.shown.whole_url(&picture.src);
            return Some(markdown::plain_picture(&picture));
        }
        Some(markdown::picture(&picture))
    }
}

/// Returns where a file of the site is, as a whole address: a page by its folder.
fn whole_address(addresses: &Addresses, file: &str) -> String {
    addresses.whole(file.strip_suffix("index.html").unwrap_or(file))
}
