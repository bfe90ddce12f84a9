//! Makes pages of contexts: templates, Markdown to HTML, feeds and lists for machines, pictures.
//!
//! Everything here is pure, bytes from values; nothing is written and no clock is asked.

mod data;
mod feeds;
pub mod markdown;
pub mod photos;
pub mod picture;
pub mod reference;
mod sitemap;
pub mod theme;

pub use theme::Theme;

use crate::entry::{Entry, Reference};
use crate::finding::Finding;
use crate::page::{Addresses, Page, Pages, Shown, page_path};
use markdown::{Resolve, Target};
use rayon::prelude::*;
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
    engine: theme::Engine,
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
            ToMake::new(feeds::ATOM, move || Ok(feeds::atom(shown).into_bytes())),
            ToMake::new(feeds::JSON, move || Ok(feeds::json(shown).into_bytes())),
            ToMake::new("sitemap.xml", move || Ok(sitemap::sitemap(shown, &self.pages.pages))),
            ToMake::new("robots.txt", move || Ok(sitemap::robots(shown).into_bytes())),
            ToMake::new("catalogue.json", move || Ok(data::catalogue(shown))),
        ];
        pages.chain(assets).chain(others).collect()
    }

    fn page(&self, page: &Page) -> Result<Vec<u8>, Box<Finding>> {
        let entry = page.entry().and_then(|id| self.shown.catalogue.entry(id));
        let mut context = self.pages.context(&self.shown, page);
        if let Some(entry) = entry {
            context.set_body(body(&self.shown, entry, false));
        }
        self.engine.page(page.template, &context).map_err(|error| Box::new(self.theme.explain(&error, page)))
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
fn body(shown: &Shown<'_>, entry: &Entry, whole: bool) -> String {
    let page = shown.addresses.whole(&page_path(&entry.id));
    // The page has a heading of level 1 already, the title.
    let shift = u8::from(entry.prose.headings.iter().any(|heading| heading.level == 1));
    markdown::to_html(entry.prose.source(), &Site { shown, whole, page }, shift)
}

/// Resolves what a text refers to in the site.
struct Site<'a> {
    shown: &'a Shown<'a>,
    whole: bool,
    /// The whole address of the entry's page.
    page: String,
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
