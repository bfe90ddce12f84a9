//! The pages of what is on the needles and of what is finished.

use crate::measure::{Mass, YarnLength};
use crate::page::view::{Both, Head, ProjectItem};
use crate::page::{Item, Shown, ThisYear, progress, project, words};
use crate::reckon;
use schemars::JsonSchema;
use serde::Serialize;

/// What `needles.html`, the page of things on the needles, sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct NeedlesContext {
    /// The page's head.
    pub head: Head,
    /// The yarn that went into things this year; absent if none is known.
    pub this_year: Option<ThisYear>,
    /// The projects, the latest begun first.
    pub projects: Vec<Item<ProjectItem>>,
}

/// What `finished.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct FinishedContext {
    /// The page's head.
    pub head: Head,
    /// The yarn that went into things this year; absent if none is known.
    pub this_year: Option<ThisYear>,
    /// The years, the latest first.
    pub years: Vec<FinishedYear>,
}

/// One year's finished things.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct FinishedYear {
    /// The year.
    pub year: i16,
    /// How many things: `eleven things`.
    pub count: String,
    /// The length of all yarn in them that is known; absent if of none.
    pub length: Option<Both>,
    /// The mass of all yarn in them that is known; absent if of none.
    pub mass: Option<Both>,
    /// How many of them hold yarn whose length is not known: `two things`; empty if none.
    pub unknown: String,
    /// The things, the latest first.
    pub projects: Vec<Item<ProjectItem>>,
}

/// Returns the context of the page of things on the needles.
pub fn needles(shown: &Shown<'_>) -> NeedlesContext {
    NeedlesContext {
        head: shown.head(
            "On the needles",
            "What is being made, from which pattern and yarn, and how far it has come.",
            "on-the-needles/",
            "on-the-needles",
            "website",
            None,
        ),
        this_year: progress::this_year(shown),
        projects: on_the_needles(shown),
    }
}

/// Returns the public projects that are not finished, the latest begun first.
pub fn on_the_needles(shown: &Shown<'_>) -> Vec<Item<ProjectItem>> {
    let mut projects: Vec<_> = shown
        .catalogue
        .projects()
        .filter(|(_, project)| project.finished_by(shown.catalogue.view.today).is_none())
        .collect();
    project::latest_first(shown, &mut projects);
    projects.into_iter().map(|(entry, project)| shown.project_item(entry, project)).collect()
}

/// Returns the context of the page of finished things.
pub fn finished(shown: &Shown<'_>) -> FinishedContext {
    let years = reckon::by_year(shown.catalogue);
    let year = |(year, of): (i16, reckon::Year<'_>)| FinishedYear {
        year,
        count: words::counted(of.projects.len(), "thing", "things"),
        length: (of.length != YarnLength::default()).then(|| shown.length(of.length)),
        mass: (of.mass != Mass::default()).then(|| shown.mass(of.mass)),
        unknown: if of.unknown == 0 { String::new() } else { words::counted(of.unknown, "thing", "things") },
        projects: of.projects.iter().map(|(entry, project)| shown.project_item(entry, project)).collect(),
    };
    FinishedContext {
        head: shown.head(
            "Finished",
            "Finished things by year, with the yarn that went into them.",
            "finished/",
            "finished",
            "website",
            None,
        ),
        this_year: progress::this_year(shown),
        years: years.into_iter().rev().map(year).collect(),
    }
}
