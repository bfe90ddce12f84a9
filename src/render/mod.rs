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

/// One file of the site.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rendered {
    /// Its path in the site.
    pub path: String,
    /// Its bytes.
    pub bytes: Vec<u8>,
}

/// Renders a whole site: every page, the theme's assets, the feeds and the lists for machines.
///
/// A template that fails is a finding that names the template, the line and the entry; the page is then missing from
/// the result, which must not be published.
pub fn render(shown: &Shown<'_>, theme: &Theme) -> (Vec<Rendered>, Vec<Finding>) {
    let pages = Pages::plan(shown);
    let engine = theme.engine(&pages.site);
    let one = |buffer: &mut Vec<u8>, page| render_page(shown, &pages, page, theme, &engine, buffer);
    // The lists for machines are single pieces of work; beside the pages they cost no time of their own.
    let (made, (feeds, data)) = rayon::join(
        || pages.pages.par_iter().map_init(Vec::new, one).collect::<Vec<_>>(),
        || rayon::join(|| feeds::feeds(shown), || data::catalogue(shown)),
    );
    let mut rendered = Vec::with_capacity(made.len() + 16);
    let mut findings = Vec::new();
    for one in made.into_iter().flatten() {
        match one {
            Ok(page) => rendered.push(page),
            Err(finding) => findings.push(finding),
        }
    }
    rendered.extend(theme.assets());
    rendered.extend(feeds);
    rendered.extend(sitemap::sitemap(shown, &pages.pages));
    rendered.push(data);
    (rendered, findings)
}

fn render_page(
    shown: &Shown<'_>,
    pages: &Pages,
    page: &Page,
    theme: &Theme,
    engine: &theme::Engine,
    buffer: &mut Vec<u8>,
) -> Option<Result<Rendered, Finding>> {
    let mut context = pages.context(shown, page)?;
    if let Some(entry) = page.entry.as_ref().and_then(|id| shown.catalogue.entry(id)) {
        context.set_body(body(shown, entry, false));
    }
    let made = engine.page(page.template, &context, buffer);
    Some(match made {
        Ok(bytes) => Ok(Rendered { path: page.file.clone(), bytes }),
        Err(error) => Err(theme.explain(&error, page)),
    })
}

/// Returns an entry's text as HTML; with whole addresses where it is read away from the site, as in a feed.
fn body(shown: &Shown<'_>, entry: &Entry, whole: bool) -> String {
    let page = shown.addresses.whole(&page_path(&entry.id));
    markdown::to_html(entry.prose.source(), &Site { shown, whole, page }, 2)
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
