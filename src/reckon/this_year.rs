//! How much yarn was made into things this year.

use super::pace::{part, used_in_all, whole_length};
use super::progress::{ToldBy, WHOLE, history};
use crate::catalogue::Catalogue;
use crate::entry::{Entry, MadeFrom, Project};
use crate::measure::{Percent, YarnLength};

/// The yarn of some things.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Sum {
    /// How many things it is in.
    pub things: usize,
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
    /// How many more things grew this year by a length that is not known.
    pub unknown: usize,
}

/// Returns the yarn that went into public things this year.
///
/// A thing counts with its length times what it came on this year: all of it, less how far it had come by the last note of
/// an earlier year. Things in which no yarn is named and that are from no pattern of the studio are left out.
pub fn this_year(catalogue: &Catalogue) -> ThisYear {
    let mut sum = ThisYear::default();
    let year = catalogue.view.today.year();
    for (entry, project) in catalogue.projects() {
        let finished = project.finished_by(catalogue.view.today);
        if finished.is_some_and(|day| day.year() != year) || !has_yarn(project) {
            continue;
        }
        let Some(came_on) = came_on(catalogue, entry, year) else {
            // No note tells how far it has come; what she weighed is known all the same.
            match used_in_all(catalogue, project) {
                Some(length) => add(&mut sum.needles, length),
                None => sum.unknown += 1,
            }
            continue;
        };
        if came_on <= Percent::ZERO {
            continue;
        }
        let to = if finished.is_some() { &mut sum.finished } else { &mut sum.needles };
        match whole_length(catalogue, entry).and_then(|whole| part(whole, came_on)) {
            Some(length) => add(to, length),
            None => sum.unknown += 1,
        }
    }
    sum
}

fn add(sum: &mut Sum, length: YarnLength) {
    if let Some(more) = sum.length.checked_add(length) {
        *sum = Sum { things: sum.things + 1, length: more };
    }
}

fn has_yarn(project: &Project) -> bool {
    !project.yarn.is_empty() || matches!(project.pattern, Some(MadeFrom::Own(_)))
}

/// Returns how far a project came on in a year; nothing where it is not finished and no note tells how far it is.
fn came_on(catalogue: &Catalogue, entry: &Entry, year: i16) -> Option<Percent> {
    let history = history(catalogue, entry);
    let last = history.last().filter(|last| last.told != ToldBy::CastOn)?;
    let before = history.iter().rev().find(|reached| reached.day.year() < year);
    let before = before.map_or(Percent::ZERO, |before| before.progress);
    last.progress.min(WHOLE).checked_sub(before)
}
