//! What is on the needles: progress, yarn used against needs, deadline.

use super::super::view::{Both, Link};
use super::super::{Item, Shown, words};
use super::Day;
use crate::entry::value::Date;
use crate::entry::{Entry, Kind, LeftToDo, MadeFrom, Project};
use crate::measure::YarnLength;
use crate::reckon::desk::{YarnOfProject, yarn_of_project};
use serde::Serialize;

/// One thing on the needles.
#[derive(Clone, Debug, Serialize)]
pub struct NeedleLine {
    /// The project.
    pub link: Item<Link>,
    /// What it is made from.
    pub pattern: Option<Item<Link>>,
    /// Whose pattern that is: `my own`, `by Otha Plimsett`; empty where there is none.
    pub credit: String,
    /// The size made.
    pub size: Option<String>,
    /// The day it was begun.
    pub started: Option<Day>,
    /// How much of it is done, in whole percent, as the latest note has it.
    pub progress: Option<i64>,
    /// Its yarns.
    pub yarns: Vec<UsedLine>,
    /// The day it must be there.
    pub by: Option<Day>,
    /// How long that is from now: `in four weeks`, `three days late`.
    pub in_words: String,
    /// Whether that day has gone by.
    pub is_late: bool,
    /// What is still to be done.
    pub left_to_do: Vec<String>,
    /// What of it was done, and when.
    pub done: Vec<DoneLine>,
}

/// Something that was left to do and is done.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct DoneLine {
    /// What it was.
    pub what: String,
    /// The day it was done.
    pub day: Day,
}

/// What was used of one yarn, against what it takes.
#[derive(Clone, Debug, Serialize)]
pub struct UsedLine {
    /// The yarn.
    pub yarn: Item<Link>,
    /// Its shade; absent where it is not said.
    pub shade: Option<String>,
    /// What was used; absent where it cannot be told.
    pub used: Option<Both>,
    /// What it takes, without margin; absent where it cannot be told.
    pub need: Option<Both>,
    /// The part used, in whole percent.
    pub part: Option<i64>,
}

/// Returns what is on the needles: what must be there first above, then what was begun first.
pub fn needles(shown: &Shown<'_>) -> Vec<NeedleLine> {
    let today = shown.catalogue.view.today;
    let mut all: Vec<(&Entry, &Project, Option<Date>)> = shown
        .catalogue
        .of_kind(Kind::Project)
        .iter()
        .filter_map(|entry| {
            let project = entry.project().filter(|project| project.finished_by(today).is_none())?;
            let by = project.made_for.for_desk().as_ref().and_then(|made_for| made_for.by);
            Some((entry, project, by))
        })
        .collect();
    all.sort_by_key(|(entry, project, by)| (by.is_none(), *by, project.started.is_none(), project.started, &entry.id));
    all.into_iter().map(|(entry, project, by)| line(shown, entry, project, by)).collect()
}

fn line(shown: &Shown<'_>, entry: &Entry, project: &Project, by: Option<Date>) -> NeedleLine {
    let days = by.map(|by| shown.catalogue.view.today.days_to(by));
    NeedleLine {
        link: shown.own_link(entry),
        pattern: match &project.pattern {
            Some(MadeFrom::Own(pattern)) => shown.link(&pattern.reference()),
            Some(MadeFrom::Other(other)) => Some(super::no_link(&other.title)),
            None => None,
        },
        credit: match &project.pattern {
            Some(MadeFrom::Own(_)) => "my own".to_owned(),
            Some(MadeFrom::Other(other)) => {
                let by = other.by.as_ref().and_then(|by| shown.link(&by.reference()));
                by.map_or_else(|| "somebody else's".to_owned(), |by| format!("by {}", by.title))
            }
            None => String::new(),
        },
        size: project.size.clone(),
        started: project.started.map(Day::from),
        progress: shown.progress_of(&entry.id),
        yarns: yarn_of_project(shown.catalogue, project).iter().map(|yarn| used(shown, yarn)).collect(),
        by: by.map(Day::from),
        in_words: match days {
            None => String::new(),
            Some(0) => "today".to_owned(),
            Some(days) if days > 0 => format!("in {}", super::days(days)),
            Some(days) => format!("{} late", super::days(days)),
        },
        is_late: days.is_some_and(|days| days < 0),
        left_to_do: project.to_do().map(str::to_owned).collect(),
        done: project.left_to_do.iter().filter_map(done).collect(),
    }
}

fn done(one: &LeftToDo) -> Option<DoneLine> {
    Some(DoneLine { what: one.0.what.clone(), day: Day::from(one.0.done?) })
}

fn used(shown: &Shown<'_>, yarn: &YarnOfProject) -> UsedLine {
    let length = |length: Option<YarnLength>| length.map(|length| shown.length(length));
    UsedLine {
        yarn: shown.yarn_link(yarn.yarn.as_ref()),
        shade: yarn.shade.as_deref().map(words::sentence),
        used: length(yarn.used),
        need: length(yarn.need),
        part: yarn.part().map(|part| part.hundredths() / 100),
    }
}
