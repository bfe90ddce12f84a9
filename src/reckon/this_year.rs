//! How much yarn was made into things this year.

use super::pace::{part, used_in_all, whole_length};
use super::progress::{ToldBy, WHOLE, history};
use super::used;
use crate::catalogue::Catalogue;
use crate::entry::{Entry, MadeFrom, Project};
use crate::measure::{Percent, YarnLength};

/// The yarn of some things.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Sum {
    /// How many things it is in.
    pub things: usize,
    /// Whether more went into them, since of one of their yarns it is not known how much.
    pub is_least: bool,
    /// Its length.
    pub length: YarnLength,
}

/// The yarn that went into things this year, up to the catalogue's day.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct ThisYear {
    /// In what was finished this year.
    pub finished: Sum,
    /// In what is still on the needles.
    pub needles: Sum,
    /// How many more things grew this year by a length of which nothing is known.
    pub unknown: usize,
}

/// Returns the yarn that went into public things this year.
///
/// A thing counts with its length times what it came on this year: all of it, less how far it had come by the last note of
/// an earlier year. Of a thing on the needles what she says she used goes before a share of what its pattern takes. Where
/// not all of its yarn is known, what is known of it counts. Things in which no yarn is named and that are from no pattern of the studio are left out.
pub fn this_year(catalogue: &Catalogue) -> ThisYear {
    let mut sum = ThisYear::default();
    let year = catalogue.view.today.year();
    for (entry, project) in catalogue.projects() {
        let finished = project.finished_by(catalogue.view.today);
        if finished.is_some_and(|day| day.year() != year) || !has_yarn(project) {
            continue;
        }
        let came = came_on(catalogue, entry, year);
        if came.as_ref().is_some_and(|came| came.on <= Percent::ZERO) {
            continue;
        }
        let of_year = |used: YarnLength| came.as_ref().map_or(Some(used), |came| came.part_of(used));
        let stated = || used_in_all(catalogue, project).and_then(of_year);
        let share = || part(whole_length(catalogue, entry)?, came.as_ref()?.on);
        let to = if finished.is_some() { &mut sum.finished } else { &mut sum.needles };
        let length = if finished.is_some() { share() } else { stated().or_else(share) };
        match length.map(|length| (length, false)).or_else(|| Some((of_year(known(catalogue, project)?)?, true))) {
            Some((length, is_least)) => add(to, length, is_least),
            None => sum.unknown += 1,
        }
    }
    sum
}

/// Returns what is known of the yarn in a project where not all of it is; nothing where none is.
fn known(catalogue: &Catalogue, project: &Project) -> Option<YarnLength> {
    let lengths: Vec<YarnLength> = used(catalogue, project).iter().filter_map(|one| one.length).collect();
    YarnLength::sum(lengths).filter(|sum| *sum > YarnLength::ZERO)
}

fn add(sum: &mut Sum, length: YarnLength, is_least: bool) {
    if let Some(more) = sum.length.checked_add(length) {
        *sum = Sum { things: sum.things + 1, length: more, is_least: sum.is_least || is_least };
    }
}

fn has_yarn(project: &Project) -> bool {
    !project.yarn.is_empty() || matches!(project.pattern, Some(MadeFrom::Own(_)))
}

/// How far a project came on in a year, and how far it is.
struct Came {
    on: Percent,
    to: Percent,
}

impl Came {
    /// Returns the part of what was used so far that was used in the year.
    fn part_of(&self, used: YarnLength) -> Option<YarnLength> {
        if self.to <= Percent::ZERO { Some(used) } else { used.times_near(self.on.hundredths(), self.to.hundredths()) }
    }
}

/// Returns how far a project came on in a year; nothing where it is not finished and no note tells how far it is.
fn came_on(catalogue: &Catalogue, entry: &Entry, year: i16) -> Option<Came> {
    let history = history(catalogue, entry);
    let last = history.last().filter(|last| last.told != ToldBy::CastOn)?;
    let before = history.iter().rev().find(|reached| reached.day.year() < year);
    let before = before.map_or(Percent::ZERO, |before| before.progress);
    let to = last.progress.min(WHOLE);
    Some(Came { on: to.checked_sub(before)?, to })
}
