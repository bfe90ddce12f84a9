//! Which pages a site has, and what the template of each sees.

use super::view::{Head, Link, NoteItem, Part, Picture, Site};
use super::{
    BlockContext, FinishedContext, HomeContext, JournalContext, MissingContext, NeedlesContext, NoteContext,
    OnTheWayContext, PatternContext, PatternsContext, PeopleContext, PersonContext, PlainContext, ProjectContext,
    Shown, TechniquesContext, YarnContext, YarnsContext,
};
use super::{home, lists, note, page_path, pattern, person, plain, project, yarn};
use crate::entry::{Data, Entry, Kind, Reference};
use serde::Serialize;
use std::collections::HashMap;

/// One page to be made. What its template sees is worked out when it is rendered, so that a large site is never held whole
/// in contexts.
#[derive(Clone, Debug)]
pub struct Page {
    /// Its file in the site: `patterns/saltmarsh-yoke/index.html`.
    pub file: String,
    /// The template that makes it.
    pub template: &'static str,
    /// What it shows.
    of: Of,
}

impl Page {
    /// Returns the entry whose page it is, and whose text fills `body`; none for a page of the site's own.
    pub fn entry(&self) -> Option<&Reference> {
        match &self.of {
            Of::Entry(id) => Some(id),
            Of::Site(_) => None,
        }
    }
}

/// What a page shows.
#[derive(Clone, Debug)]
enum Of {
    /// An entry.
    Entry(Reference),
    /// Something of the site's own.
    Site(Own),
}

/// Works out what a page of the site's own shows; the notes are all public ones, the latest first.
type Own = fn(&Shown<'_>, &[NoteItem]) -> Context;

/// The pages of the site's own: path, template and what it shows.
const OWN: [(&str, &str, Own); 10] = [
    ("index.html", "home.html", |shown, notes| Context::Home(Box::new(home::context(shown, notes)))),
    ("patterns/index.html", "patterns.html", |shown, _| Context::Patterns(Box::new(lists::patterns(shown)))),
    ("patterns/on-the-way/index.html", "on-the-way.html", |shown, _| {
        Context::OnTheWay(Box::new(lists::on_the_way(shown)))
    }),
    ("on-the-needles/index.html", "needles.html", |shown, _| Context::Needles(Box::new(lists::needles(shown)))),
    ("finished/index.html", "finished.html", |shown, _| Context::Finished(Box::new(lists::finished(shown)))),
    ("journal/index.html", "journal.html", |shown, notes| Context::Journal(Box::new(lists::journal(shown, notes)))),
    ("yarns/index.html", "yarns.html", |shown, _| Context::Yarns(Box::new(lists::yarns(shown)))),
    ("techniques/index.html", "techniques.html", |shown, _| Context::Techniques(Box::new(lists::techniques(shown)))),
    ("people/index.html", "people.html", |shown, _| Context::People(Box::new(lists::people(shown)))),
    ("404.html", "missing.html", |shown, _| Context::Missing(Box::new(plain::missing(shown)))),
];

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
    Block(Box<BlockContext>),
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
    /// The public notes, the latest first.
    notes: Vec<NoteItem>,
    /// Where each note stands among them.
    places: HashMap<Reference, usize>,
}

impl Pages {
    /// Plans all pages of a site.
    pub fn plan(shown: &Shown<'_>) -> Self {
        let mut pages: Vec<Page> = OWN
            .iter()
            .map(|(file, template, own)| Page { file: (*file).to_owned(), template, of: Of::Site(*own) })
            .collect();
        let entries = Kind::ALL.into_iter().flat_map(|kind| shown.catalogue.public(kind));
        pages.extend(entries.map(|entry| Page {
            file: format!("{}index.html", page_path(&entry.id)),
            template: template(entry),
            of: Of::Entry(entry.id.clone()),
        }));
        let order = lists::latest_notes(shown);
        let places = order.iter().enumerate().map(|(at, (entry, _))| (entry.id.clone(), at)).collect();
        let notes = order.into_iter().map(|(entry, note)| note::item(shown, entry, note)).collect();
        Self { site: site(shown), pages, notes, places }
    }

    /// Works out what the template of a page sees, all but the text.
    pub fn context(&self, shown: &Shown<'_>, page: &Page) -> Context {
        let entry = match &page.of {
            Of::Site(own) => return own(shown, &self.notes),
            Of::Entry(id) => shown.catalogue.entry(id),
        };
        let Some(entry) = entry else { return Context::Missing(Box::new(plain::missing(shown))) };
        match &entry.data {
            Data::Pattern(data) => Context::Pattern(Box::new(pattern::context(shown, entry, data))),
            Data::Project(data) => Context::Project(Box::new(project::context(shown, entry, data))),
            Data::Note(data) => {
                let at = self.places.get(&entry.id).copied().unwrap_or(self.notes.len());
                let after = at.checked_sub(1).and_then(|at| self.notes.get(at));
                Context::Note(Box::new(note::context(shown, entry, data, self.notes.get(at + 1), after)))
            }
            Data::Yarn(data) => Context::Yarn(Box::new(yarn::context(shown, entry, data))),
            Data::Person(data) => Context::Person(Box::new(person::context(shown, entry, data))),
            Data::Technique(_) | Data::Page(_) => Context::Plain(Box::new(plain::context(shown, entry))),
        }
    }
}

fn template(entry: &Entry) -> &'static str {
    match entry.id.kind {
        Kind::Pattern => "pattern.html",
        Kind::Project => "project.html",
        Kind::Note => "note.html",
        Kind::Yarn => "yarn.html",
        Kind::Person => "person.html",
        Kind::Technique => "technique.html",
        Kind::Page => "page.html",
    }
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
    let mut pages: Vec<_> = shown.catalogue.pages().map(|(entry, _)| Link::clone(&shown.own_link(entry))).collect();
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
            summary: if summary.is_empty() {
                self.catalogue.studio.summary.clone().unwrap_or_default()
            } else {
                summary.to_owned()
            },
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
