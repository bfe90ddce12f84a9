//! Builds the contexts of all pages.

use super::view::{Head, NoteItem, Part, Picture, Site};
use super::{
    FinishedContext, HomeContext, JournalContext, MissingContext, NeedlesContext, NoteContext, OnTheWayContext,
    PatternContext, PatternsContext, PeopleContext, PersonContext, PictureSizes, PlainContext, ProjectContext, Shown,
    TechniquesContext, YarnContext, YarnsContext,
};
use super::{home, lists, note, page_path, pattern, person, plain, project, yarn};
use crate::catalogue::Catalogue;
use crate::entry::{Data, Entry, Kind, Reference};
use rayon::prelude::*;
use serde::Serialize;
use std::collections::HashMap;

/// One page to be made.
#[derive(Clone, Debug)]
pub struct Page {
    /// Its file in the site: `patterns/saltmarsh-yoke/index.html`.
    pub file: String,
    /// The template that makes it.
    pub template: &'static str,
    /// What the template sees.
    pub context: Context,
    /// The entry whose text fills `body`, if it is an entry's page.
    pub entry: Option<Reference>,
}

/// What a template sees, by template.
#[derive(Clone, Debug, Serialize)]
#[serde(untagged)]
#[expect(missing_docs, reason = "each holds the context of the page it is named after")]
pub enum Context {
    Home(Box<HomeContext>),
    Patterns(Box<PatternsContext>),
    OnTheWay(Box<OnTheWayContext>),
    Needles(Box<NeedlesContext>),
    Finished(Box<FinishedContext>),
    Journal(Box<JournalContext>),
    Yarns(Box<YarnsContext>),
    Techniques(Box<TechniquesContext>),
    People(Box<PeopleContext>),
    Pattern(Box<PatternContext>),
    Project(Box<ProjectContext>),
    Note(Box<NoteContext>),
    Yarn(Box<YarnContext>),
    Person(Box<PersonContext>),
    Plain(Box<PlainContext>),
    Missing(Box<MissingContext>),
}

impl Context {
    /// Fills in the entry's text as HTML; a page that is no entry's has no place for it.
    pub fn set_body(&mut self, html: String) {
        let body = match self {
            Self::Pattern(context) => &mut context.body,
            Self::Project(context) => &mut context.body,
            Self::Note(context) => &mut context.body,
            Self::Yarn(context) => &mut context.body,
            Self::Person(context) => &mut context.body,
            Self::Plain(context) => &mut context.body,
            _ => return,
        };
        *body = html;
    }
}

/// All pages of a site, and what they share.
#[derive(Clone, Debug)]
pub struct Pages {
    /// What every template knows of the site.
    pub site: Site,
    /// The pages, in a fixed order.
    pub pages: Vec<Page>,
}

/// Builds the contexts of all public pages.
pub fn build(catalogue: &Catalogue, pictures: &PictureSizes) -> Pages {
    let shown = Shown::new(catalogue, pictures);
    let notes = lists::notes(&shown);
    let mut pages = list_pages(&shown, &notes);
    let neighbours = neighbours(&notes);
    let entries: Vec<&Entry> = Kind::ALL.into_iter().flat_map(|kind| catalogue.public(kind)).collect();
    pages.par_extend(entries.into_par_iter().map(|entry| entry_page(&shown, entry, &notes, &neighbours)));
    Pages { site: site(&shown), pages }
}

fn list_pages(shown: &Shown<'_>, notes: &[NoteItem]) -> Vec<Page> {
    let page = |path: &str, template: &'static str, context: Context| Page {
        file: format!("{path}index.html"),
        template,
        context,
        entry: None,
    };
    let mut pages = vec![
        page("", "home.html", Context::Home(Box::new(home::context(shown, notes)))),
        page("patterns/", "patterns.html", Context::Patterns(Box::new(lists::patterns(shown)))),
        page(lists::ON_THE_WAY, "on-the-way.html", Context::OnTheWay(Box::new(lists::on_the_way(shown)))),
        page("on-the-needles/", "needles.html", Context::Needles(Box::new(lists::needles(shown)))),
        page("finished/", "finished.html", Context::Finished(Box::new(lists::finished(shown)))),
        page("journal/", "journal.html", Context::Journal(Box::new(lists::journal(shown, notes)))),
        page("yarns/", "yarns.html", Context::Yarns(Box::new(lists::yarns(shown)))),
        page("techniques/", "techniques.html", Context::Techniques(Box::new(lists::techniques(shown)))),
        page("people/", "people.html", Context::People(Box::new(lists::people(shown)))),
    ];
    pages.push(Page {
        file: "404.html".to_owned(),
        template: "missing.html",
        context: Context::Missing(Box::new(plain::missing(shown))),
        entry: None,
    });
    pages
}

fn entry_page(shown: &Shown<'_>, entry: &Entry, notes: &[NoteItem], neighbours: &HashMap<String, usize>) -> Page {
    let (template, context) = match &entry.data {
        Data::Pattern(data) => ("pattern.html", Context::Pattern(Box::new(pattern::context(shown, entry, data)))),
        Data::Project(data) => ("project.html", Context::Project(Box::new(project::context(shown, entry, data)))),
        Data::Note(data) => {
            let at = shown.own_link(entry).url.and_then(|url| neighbours.get(&url)).copied().unwrap_or(notes.len());
            let after = at.checked_sub(1).and_then(|at| notes.get(at));
            ("note.html", Context::Note(Box::new(note::context(shown, entry, data, notes.get(at + 1), after))))
        }
        Data::Yarn(data) => ("yarn.html", Context::Yarn(Box::new(yarn::context(shown, entry, data)))),
        Data::Person(data) => ("person.html", Context::Person(Box::new(person::context(shown, entry, data)))),
        Data::Technique(_) => ("technique.html", Context::Plain(Box::new(plain::context(shown, entry)))),
        Data::Page(_) => ("page.html", Context::Plain(Box::new(plain::context(shown, entry)))),
    };
    Page { file: format!("{}index.html", page_path(&entry.id)), template, context, entry: Some(entry.id.clone()) }
}

/// Returns where each note stands in the run of notes, by its address.
fn neighbours(notes: &[NoteItem]) -> HashMap<String, usize> {
    notes.iter().enumerate().filter_map(|(at, note)| Some((note.link.url.clone()?, at))).collect()
}

fn site(shown: &Shown<'_>) -> Site {
    let studio = &shown.catalogue.studio;
    let part = |name: &str, title: &str, path: &str| Part {
        name: name.to_owned(),
        title: title.to_owned(),
        url: shown.addresses.local(path),
    };
    let has = |kind: Kind| shown.catalogue.public(kind).next().is_some();
    let mut parts = Vec::new();
    if has(Kind::Pattern) || shown.catalogue.on_the_way().next().is_some() {
        parts.push(part("patterns", "Patterns", "patterns/"));
    }
    if has(Kind::Project) {
        parts.push(part("on-the-needles", "On the needles", "on-the-needles/"));
        parts.push(part("finished", "Finished", "finished/"));
    }
    if has(Kind::Note) {
        parts.push(part("journal", "Journal", "journal/"));
    }
    if has(Kind::Yarn) {
        parts.push(part("yarns", "Yarns", "yarns/"));
    }
    if has(Kind::Technique) {
        parts.push(part("techniques", "Techniques", "techniques/"));
    }
    let mut pages: Vec<_> = shown.catalogue.pages().map(|(entry, _)| shown.own_link(entry)).collect();
    pages.sort_by(|a, b| a.title.cmp(&b.title));
    Site {
        title: studio.title.clone(),
        summary: studio.summary.clone().unwrap_or_default(),
        address: studio.address().to_owned(),
        base: studio.base().to_owned(),
        designer: studio.designer.clone().unwrap_or_default(),
        language: studio.language().to_owned(),
        parts,
        pages,
        style: shown.addresses.local("style.css"),
    }
}

impl Shown<'_> {
    /// Returns the head of a page; `path` is its folder in the site.
    pub fn head(
        &self,
        title: &str,
        summary: &str,
        path: &str,
        part: &str,
        og_type: &str,
        picture: Option<&Picture>,
    ) -> Head {
        Head {
            title: title.to_owned(),
            summary: summary.to_owned(),
            url: self.addresses.local(path),
            canonical: self.addresses.whole(path),
            part: part.to_owned(),
            og_type: og_type.to_owned(),
            image: picture.map(|picture| self.whole_url(&picture.src)),
            image_alt: picture.map(|picture| picture.alt.clone()),
            published: None,
            json_ld: String::new(),
        }
    }

    /// Returns the whole address of one from the root of the host.
    pub fn whole_url(&self, local: &str) -> String {
        let base = self.catalogue.studio.base();
        format!("{}{}", self.catalogue.studio.address(), local.strip_prefix(base).unwrap_or(local))
    }
}
