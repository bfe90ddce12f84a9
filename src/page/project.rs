//! A project's page, and projects in lists.

use super::view::{Amount, Band, Both, Head, Line, Link, Picture, ProjectItem, Source};
use super::{Item, ProgressView, Shown, lists, page_path, progress, words};
use crate::entry::{Entry, Kind, MadeFrom, Project, Reference};
use crate::measure::{Mass, YarnLength};
use crate::reckon::{self, Usage};
use schemars::JsonSchema;
use serde::Serialize;

/// What `project.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ProjectContext {
    /// The page's head.
    pub head: Head,
    /// The project.
    pub project: ProjectView,
    /// The project's text as HTML.
    pub body: String,
}

/// A thing on the needles or finished.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ProjectView {
    /// What it is called.
    pub title: String,
    /// One sentence about it; may be empty.
    pub summary: String,
    /// The craft, and where it stands: `Knitting · finished 18 November 2026`.
    pub kicker: String,
    /// Its picture.
    pub picture: Option<Picture>,
    /// What it is made from.
    pub pattern: Option<Source>,
    /// The size made.
    pub size: Option<String>,
    /// The day it was begun, in words.
    pub started: Option<String>,
    /// The day it was finished, in words; absent while it is being made.
    pub finished: Option<String>,
    /// How much of it is done, in whole percent; absent where no note says it or it is finished.
    pub progress: Option<i64>,
    /// How long it took from cast-on to cast-off: `47 days`; absent where that is not known.
    pub took: Option<String>,
    /// How far it had come, day by day; absent where no note tells it.
    pub progress_by_day: Option<ProgressView>,
    /// The yarn that went into it each week, from cast-on to cast-off or to the last note that tells how far it is; absent
    /// where its length or either day is not known.
    pub a_week: Option<Both>,
    /// The yarns in it, with what was used.
    pub bands: Vec<Band>,
    /// The length of all yarn in it, if all of it is known.
    pub length: Option<Both>,
    /// The mass of all yarn in it, if all of it is known.
    pub mass: Option<Both>,
    /// What it takes beside yarn.
    pub materials: Vec<String>,
    /// What is still to be done; empty once it is finished.
    pub left_to_do: Vec<String>,
    /// What was made otherwise than the pattern says; may be empty.
    pub changes: String,
    /// Where else it is mentioned.
    pub mentioned: Vec<Line>,
}

/// Returns the context of a project's page, its text still to be filled in.
pub fn context(shown: &Shown<'_>, entry: &Entry, project: &Project) -> ProjectContext {
    let picture = shown.picture(entry);
    let finished = project.finished_by(shown.catalogue.view.today);
    let part = if finished.is_some() { "finished" } else { "on-the-needles" };
    let usage = reckon::used(shown.catalogue, project);
    let (length, mass) = sums(&usage);
    let view = ProjectView {
        title: entry.common.title.clone(),
        summary: entry.common.summary.clone().unwrap_or_default(),
        kicker: format!("{} · {}", words::sentence(project.craft()), when(shown, project)),
        picture: picture.clone(),
        pattern: made_from(shown, project),
        size: project.size.clone(),
        started: project.started.map(|date| date.in_words()),
        finished: finished.map(|date| date.in_words()),
        progress: if finished.is_some() { None } else { shown.progress_of(&entry.id) },
        took: project.started.zip(finished).and_then(|(from, to)| progress::took(from.days_to(to))),
        progress_by_day: progress::progress(shown, entry),
        a_week: progress::a_week(shown, entry),
        bands: bands(shown, project, &usage),
        length: length.map(|length| shown.length(length)),
        mass: mass.map(|mass| shown.mass(mass)),
        materials: project.materials.clone(),
        left_to_do: if finished.is_some() { Vec::new() } else { project.to_do().map(str::to_owned).collect() },
        changes: project.changes.clone().unwrap_or_default(),
        mentioned: lists::mentions(shown, &entry.id, |_| true),
    };
    let head = shown.head(
        &entry.common.title,
        &shown.summary(entry),
        &page_path(&entry.id),
        part,
        "article",
        picture.as_ref(),
    );
    ProjectContext { head, project: view, body: String::new() }
}

/// Returns a project as a line of a list.
pub fn item(shown: &Shown<'_>, entry: &Entry, project: &Project) -> ProjectItem {
    let finished = project.finished_by(shown.catalogue.view.today).is_some();
    let (length, _) = sums(&reckon::used(shown.catalogue, project));
    ProjectItem {
        link: shown.own_link(entry),
        summary: shown.summary(entry),
        craft: Some(project.craft()).filter(|craft| *craft != "knitting").map(str::to_owned),
        pattern: made_from(shown, project),
        size: project.size.as_deref().map(size_in_words),
        yarns: yarns(shown, project),
        length: length.map(|length| shown.length(length)),
        when: when(shown, project),
        progress: if finished { None } else { shown.progress_of(&entry.id) },
        picture: shown.picture(entry),
    }
}

fn size_in_words(size: &str) -> String {
    if size.to_lowercase().contains("size") { size.to_lowercase() } else { format!("size {size}") }
}

/// Returns the public projects whose front matter refers to an entry under a key, the latest first.
pub fn linked_by(shown: &Shown<'_>, id: &Reference, key: &str) -> Vec<Item<ProjectItem>> {
    let links =
        shown.catalogue.linked_from(id).iter().filter(|link| link.from.kind == Kind::Project && link.is_via(key));
    let mut projects: Vec<(&Entry, &Project)> = links
        .filter_map(|link| {
            let entry = shown.catalogue.public_entry(&link.from)?;
            Some((entry, entry.project()?))
        })
        .collect();
    latest_first(shown, &mut projects);
    projects.into_iter().map(|(entry, project)| shown.project_item(entry, project)).collect()
}

/// Sorts projects by the day they were finished or begun, the latest first, those without one last, then by key.
pub fn latest_first(shown: &Shown<'_>, projects: &mut [(&Entry, &Project)]) {
    let day = |project: &Project| project.finished_by(shown.catalogue.view.today).or(project.started);
    projects.sort_by(|a, b| day(b.1).cmp(&day(a.1)).then_with(|| a.0.id.cmp(&b.0.id)));
}

fn when(shown: &Shown<'_>, project: &Project) -> String {
    match (project.finished_by(shown.catalogue.view.today), project.started) {
        (Some(day), _) => format!("finished {}", day.in_words()),
        (None, Some(day)) if day <= shown.catalogue.view.today => format!("begun {}", day.in_words()),
        (None, Some(day)) => format!("to be begun {}", day.in_words()),
        (None, None) => "on the needles".to_owned(),
    }
}

/// Returns what a project is made from, as far as readers may know.
pub fn made_from(shown: &Shown<'_>, project: &Project) -> Option<Source> {
    match project.pattern.as_ref()? {
        // A design readers may not know of yet is not named before its time.
        MadeFrom::Own(pattern) => {
            let link = shown
                .public_link(&pattern.reference())
                .unwrap_or_else(|| Item::from(Link { title: "a design not yet published".to_owned(), url: None }));
            Some(Source { link, own: true, by: None })
        }
        MadeFrom::Other(other) => Some(Source {
            link: Item::from(Link {
                title: other.title.clone(),
                url: other.url.as_ref().map(|url| url.as_str().to_owned()),
            }),
            own: false,
            by: other.by.as_ref().and_then(|by| shown.public_link(&by.reference())),
        }),
    }
}

/// Returns in words what a project is made from and whose that is: `from Plain Socks by Otha Plimsett`; empty where it is made
/// from no pattern.
pub fn credit(shown: &Shown<'_>, project: &Project) -> String {
    let Some(source) = made_from(shown, project) else { return String::new() };
    let whose = match (source.own, &source.by) {
        (true, _) => ", my own".to_owned(),
        (false, Some(by)) => format!(" by {}", by.title),
        (false, None) => ", somebody else’s".to_owned(),
    };
    format!("from {}{whose}", source.link.title)
}

fn yarns(shown: &Shown<'_>, project: &Project) -> Vec<Item<Link>> {
    let mut links: Vec<Item<Link>> = Vec::new();
    for link in project.yarn.iter().filter_map(|used| shown.public_link(&used.yarn.as_ref()?.reference())) {
        if !links.contains(&link) {
            links.push(link);
        }
    }
    links
}

fn bands(shown: &Shown<'_>, project: &Project, usage: &[Usage]) -> Vec<Band> {
    project
        .yarn
        .iter()
        .zip(usage)
        .map(|(used, usage)| {
            let amount = used.used.map(|amount| amount.show(shown.system)).unwrap_or_default();
            let mut small: Vec<Both> = Vec::new();
            small.extend(usage.length.map(|length| shown.length(length)));
            small.extend(usage.mass.map(|mass| shown.mass(mass)));
            small.retain(|both| both.first != amount);
            Band {
                small: join(&small),
                unknown: match (used.used, usage.length, usage.mass) {
                    (Some(_), None, _) | (Some(_), _, None) => {
                        "How it is sold is not known, so not all can be told.".to_owned()
                    }
                    _ => String::new(),
                },
                amount: Amount::of(&amount),
                ..shown.band(used.yarn.as_ref().map(|yarn| yarn.reference()).as_ref(), used.shade.as_deref())
            }
        })
        .collect()
}

fn join(all: &[Both]) -> Both {
    let side = |side: fn(&Both) -> &String| {
        all.iter().map(side).filter(|text| !text.is_empty()).cloned().collect::<Vec<_>>().join(", ")
    };
    Both { first: side(|both| &both.first), second: side(|both| &both.second) }
}

/// Returns the length and mass of all yarns together, each only if every part of it is known.
fn sums(usage: &[Usage]) -> (Option<YarnLength>, Option<Mass>) {
    let some = !usage.is_empty();
    let length = usage.iter().try_fold(0_i64, |sum, one| sum.checked_add(one.length?.micrometres()));
    let mass = usage.iter().try_fold(0_i64, |sum, one| sum.checked_add(one.mass?.nanograms()));
    (length.filter(|_| some).map(YarnLength::from_micrometres), mass.filter(|_| some).map(Mass::from_nanograms))
}
