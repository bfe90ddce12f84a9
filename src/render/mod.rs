//! Makes pages of contexts: templates, Markdown to HTML, feeds and lists for machines, pictures.
//!
//! Everything here is pure, bytes from values; nothing is written and no clock is asked.

pub mod count;
mod data;
mod decimal;
mod feeds;
pub mod markdown;
pub mod need;
pub mod photos;
pub mod picture;
pub mod reference;
mod sitemap;
mod table;
pub mod theme;

pub use theme::Theme;
use theme::{Engine, EngineError};

use crate::catalogue::Visibility;
use crate::entry::block::{self, Block, Subject};
use crate::entry::{Entry, Kind, Reference};
use crate::finding::Finding;
use crate::page::{Addresses, Context, Page, Pages, Shown, block_context, page_path};
use markdown::{Resolve, Target};
use pulldown_cmark_escape::escape_html;
use rayon::prelude::*;
use std::cell::RefCell;
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
    pages: Pages,
    engine: Engine,
}

impl<'a> Renderer<'a> {
    /// Plans the pages of a site.
    pub fn new(shown: Shown<'a>, theme: &'a Theme) -> Self {
        let pages = Pages::plan(&shown);
        let engine = theme.engine(&pages.site);
        Self { shown, theme, pages, engine }
    }

    /// Returns every file of the site but the photos: pages, assets, feeds, lists for machines. None is made before it is
    /// asked for, so that a large site is never held whole.
    pub fn files(&self) -> Vec<ToMake<'_>> {
        let shown = &self.shown;
        let pages = self.pages.pages.iter().map(|page| ToMake::new(&page.file, move || self.page(page)));
        let assets = self.theme.assets().map(|(path, bytes)| ToMake::new(path, move || Ok(bytes.to_vec())));
        let others = [
            ToMake::new(feeds::ATOM, move || Ok(feeds::atom(shown, &self.engine).into_bytes())),
            ToMake::new(feeds::JSON, move || Ok(feeds::json(shown, &self.engine).into_bytes())),
            ToMake::new("sitemap.xml", move || Ok(sitemap::sitemap(shown, &self.pages.pages))),
            ToMake::new("robots.txt", move || Ok(sitemap::robots(shown).into_bytes())),
            ToMake::new("catalogue.json", move || Ok(data::catalogue(shown))),
        ];
        pages.chain(assets).chain(others).collect()
    }

    fn page(&self, page: &Page) -> Result<Vec<u8>, Box<Finding>> {
        let explain = |error: EngineError| Box::new(self.theme.explain(&error, page));
        let entry = page.entry().and_then(|id| self.shown.catalogue.entry(id));
        let mut context = self.pages.context(&self.shown, page);
        if let Some(entry) = entry {
            context.set_body(body(&self.shown, &self.engine, entry, false).map_err(explain)?);
        }
        self.engine.page(page.template, &context).map_err(explain)
    }
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
    let page = shown.addresses.whole(&page_path(&entry.id));
    // The page has a heading of level 1 already, the title.
    let shift = u8::from(entry.prose.headings.iter().any(|heading| heading.level == 1));
    let site = Site { shown, engine, entry, whole, page, fault: RefCell::new(None) };
    let html = markdown::to_html(entry.prose.source(), &site, shift);
    site.fault.into_inner().map_or(Ok(html), Err)
}

/// Resolves what a text refers to in the site.
struct Site<'a> {
    shown: &'a Shown<'a>,
    engine: &'a Engine,
    /// The entry whose text it is.
    entry: &'a Entry,
    whole: bool,
    /// The whole address of the entry's page.
    page: String,
    /// Why the last block that failed did.
    fault: RefCell<Option<EngineError>>,
}

impl Site<'_> {
    fn local(&self, local: String) -> String {
        if self.whole { self.shown.whole_url(&local) } else { local }
    }
}

impl Resolve for Site<'_> {
    fn entry(&self, id: &Reference) -> Option<Target> {
        let link = self.shown.link(id)?;
        Some(Target { title: link.title, url: link.url.map(|url| self.local(url)) })
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

    fn block(&self, block: Block, text: &str, number: usize) -> Option<String> {
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
            context.pattern.url = context.pattern.url.map(|url| self.shown.whole_url(&url));
            for link in context.bands.iter_mut().flat_map(|band| std::iter::once(&mut band.yarn).chain(&mut band.maker))
            {
                link.url = link.url.take().map(|url| self.shown.whole_url(&url));
            }
        }
        match self.engine.page("block.html", &Context::Block(Box::new(context))) {
            Ok(html) => String::from_utf8(html).ok(),
            Err(error) => {
                self.fault.replace(Some(error));
                None
            }
        }
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
