//! Which pages a site has, and what the template of each sees.

use super::view::{Head, Link, Part, Picture, Site};
use super::{
    BlockContext, FinishedContext, HomeContext, JournalContext, MissingContext, NeedlesContext, NoteContext,
    OnTheWayContext, PatternContext, PatternsContext, PeopleContext, PersonContext, PlainContext, ProjectContext,
    RowsContext, Shown, TechniquesContext, TestKnitContext, YarnContext, YarnsContext,
};
use super::{home, lists, note, page_path, pattern, person, plain, project, test_knit, yarn};
use crate::catalogue::CallState;
use crate::entry::{Data, Entry, Key, Kind, Reference};
use serde::Serialize;

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
    /// Returns the entry whose page it is, and whose text fills `body`; none for any other page.
    pub fn entry(&self) -> Option<&Reference> {
        match &self.of {
            Of::Entry(id) => Some(id),
            Of::Call { .. } | Of::Site(_) => None,
        }
    }

    /// Returns the design whose call for test knitters it is.
    pub fn call(&self) -> Option<&Reference> {
        match &self.of {
            Of::Call { design, .. } => Some(design),
            Of::Entry(_) | Of::Site(_) => None,
        }
    }

    /// Returns whether search engines are told of it.
    pub fn is_listed(&self) -> bool {
        self.file != "404.html" && !matches!(self.of, Of::Call { is_open: false, .. })
    }
}

/// What a page shows.
#[derive(Clone, Debug)]
enum Of {
    /// An entry.
    Entry(Reference),
    /// The call for test knitters of a design, and whether it is open.
    Call { design: Reference, is_open: bool },
    /// Something of the site's own.
    Site(Own),
}

/// Works out what a page of the site's own shows.
type Own = fn(&Shown<'_>) -> Context;

/// The pages of the site's own: path, template and what it shows.
const OWN: [(&str, &str, Own); 10] = [
    ("index.html", "home.html", |shown| Context::Home(Box::new(home::context(shown)))),
    ("patterns/index.html", "patterns.html", |shown| Context::Patterns(Box::new(lists::patterns(shown)))),
    ("patterns/on-the-way/index.html", "on-the-way.html", |shown| {
        Context::OnTheWay(Box::new(lists::on_the_way(shown)))
    }),
    ("on-the-needles/index.html", "needles.html", |shown| Context::Needles(Box::new(lists::needles(shown)))),
    ("finished/index.html", "finished.html", |shown| Context::Finished(Box::new(lists::finished(shown)))),
    ("journal/index.html", "journal.html", |shown| Context::Journal(Box::new(lists::journal(shown)))),
    ("yarns/index.html", "yarns.html", |shown| Context::Yarns(Box::new(lists::yarns(shown)))),
    ("techniques/index.html", "techniques.html", |shown| Context::Techniques(Box::new(lists::techniques(shown)))),
    ("people/index.html", "people.html", |shown| Context::People(Box::new(lists::people(shown)))),
    ("404.html", "missing.html", |shown| Context::Missing(Box::new(plain::missing(shown)))),
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
    TestKnit(Box<TestKnitContext>),
    Project(Box<ProjectContext>),
    Note(Box<NoteContext>),
    Yarn(Box<YarnContext>),
    Person(Box<PersonContext>),
    Plain(Box<PlainContext>),
    Missing(Box<MissingContext>),
    Block(Box<BlockContext>),
    Rows(Box<RowsContext>),
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

    /// Fills in a note's stories as HTML, in their order.
    pub fn set_stories(&mut self, texts: Vec<String>) {
        if let Self::Note(context) = self {
            context.note.stories.iter_mut().zip(texts).for_each(|(story, html)| story.html = html);
        }
    }
}

impl Page {
    /// Returns all pages of a site, in a fixed order.
    pub fn all(shown: &Shown<'_>) -> Vec<Self> {
        let entries = Kind::ALL.into_iter().flat_map(|kind| shown.catalogue.public(kind));
        let calls = shown.catalogue.calls().map(|(entry, _, call)| Self::of_call(entry, call.state));
        // Asked for at once: a list of thousands that grows is moved again and again.
        let mut all = Vec::with_capacity(OWN.len() + shown.catalogue.entries.len());
        all.extend(OWN.iter().map(Self::own).chain(entries.map(Self::of_entry)).chain(calls));
        all
    }

    /// Returns the page that is this file of a site, if there is one.
    pub fn at(shown: &Shown<'_>, file: &str) -> Option<Self> {
        if let Some(own) = OWN.iter().find(|(own, _, _)| *own == file) {
            return Some(Self::own(own));
        }
        let folder = file.strip_suffix("/index.html")?;
        let (kind, key) = match folder.split_once('/') {
            Some(("patterns", rest)) if rest.ends_with("/test-knit") => {
                let key = Key::new(rest.trim_end_matches("/test-knit"))?;
                let entry = shown.catalogue.entry(&Reference { kind: Kind::Pattern, key })?;
                let call = shown.catalogue.call(entry, entry.pattern()?)?;
                return Some(Self::of_call(entry, call.state)).filter(|page| page.file == file);
            }
            Some((first, key)) => (Kind::of_folder(first)?, key),
            None => (Kind::Page, folder),
        };
        let entry = shown.catalogue.public_entry(&Reference { kind, key: Key::new(key)? })?;
        Some(Self::of_entry(entry)).filter(|page| page.file == file)
    }

    /// Works out what the template of a page sees, all but the text.
    pub fn context(&self, shown: &Shown<'_>) -> Context {
        let entry = match &self.of {
            Of::Site(own) => return own(shown),
            Of::Entry(id) => shown.catalogue.entry(id),
            Of::Call { design, .. } => {
                let of = |entry| test_knit::of(shown, entry);
                return match shown.catalogue.entry(design).and_then(of) {
                    Some(context) => Context::TestKnit(Box::new(context)),
                    None => Context::Missing(Box::new(plain::missing(shown))),
                };
            }
        };
        let Some(entry) = entry else { return Context::Missing(Box::new(plain::missing(shown))) };
        match &entry.data {
            Data::Pattern(data) => Context::Pattern(Box::new(pattern::context(shown, entry, data))),
            Data::Project(data) => Context::Project(Box::new(project::context(shown, entry, data))),
            Data::Note(data) => Context::Note(Box::new(note::context(shown, entry, data))),
            Data::Yarn(data) => Context::Yarn(Box::new(yarn::context(shown, entry, data))),
            Data::Person(data) => Context::Person(Box::new(person::context(shown, entry, data))),
            Data::Technique(_) | Data::Page(_) => Context::Plain(Box::new(plain::context(shown, entry))),
        }
    }

    fn own((file, template, own): &(&str, &'static str, Own)) -> Self {
        Self { file: (*file).to_owned(), template, of: Of::Site(*own) }
    }

    fn of_call(entry: &Entry, state: CallState) -> Self {
        let file = format!("{}index.html", test_knit::path(entry));
        let of = Of::Call { design: entry.id.clone(), is_open: state == CallState::Open };
        Self { file, template: "test-knit.html", of }
    }

    fn of_entry(entry: &Entry) -> Self {
        let file = format!("{}index.html", page_path(&entry.id));
        Self { file, template: template(entry), of: Of::Entry(entry.id.clone()) }
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

/// Returns what every template knows of the site.
pub fn site(shown: &Shown<'_>) -> Site {
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
            unlisted: false,
            json_ld: String::new(),
        }
    }

    /// Returns the whole address of one from the root of the host.
    pub fn whole_url(&self, local: &str) -> String {
        let base = self.catalogue.studio.base();
        format!("{}{}", self.catalogue.studio.address(), local.strip_prefix(base).unwrap_or(local))
    }
}
