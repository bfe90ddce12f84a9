//! How much yarn a thing takes from cast-on to cast-off, and how fast it goes.

use super::{needs, progress, total_to_buy, used};
use crate::catalogue::Catalogue;
use crate::entry::{Entry, MadeFrom, Pattern, Project, Reference, Yarn};
use crate::measure::{Percent, YarnLength};

/// Returns the length of all yarn that went into a project so far, as far as readers may know of its yarns; nothing where
/// any part of it is not known, or no yarn is named.
pub fn used_in_all(catalogue: &Catalogue, project: &Project) -> Option<YarnLength> {
    let usage = used(catalogue, project);
    let lengths: Option<Vec<YarnLength>> = usage.iter().map(|one| one.length).collect();
    YarnLength::sum(lengths.filter(|lengths| !lengths.is_empty())?)
}

/// Returns the length of yarn that a project takes from cast-on to cast-off, as far as readers may know.
///
/// Of a finished thing that is what was used, or else what its pattern takes in its size. Of one on the needles it is what
/// the pattern takes, or else what was used so far over how far it has come. Nothing where neither is known.
pub fn whole_length(catalogue: &Catalogue, entry: &Entry) -> Option<YarnLength> {
    let project = entry.project()?;
    let needs = || {
        let pattern = |id: &Reference| catalogue.public_entry(id)?.pattern();
        needs_of(project, pattern, |id| catalogue.public_yarn(id))
    };
    let used = used_in_all(catalogue, project);
    if project.finished_by(catalogue.view.today).is_some() {
        return used.or_else(needs);
    }
    needs().or_else(|| {
        let come = progress(catalogue, &entry.id).filter(|come| *come > Percent::ZERO)?;
        used?.times_near(10_000, come.hundredths())
    })
}

/// Returns what a project's own pattern takes in its size, all yarns together and without margin; nothing where it is from
/// no pattern of the studio, or size, pattern or a yarn's length is not known.
pub(super) fn needs_of<'a>(
    project: &Project,
    pattern: impl Fn(&Reference) -> Option<&'a Pattern>,
    yarn: impl Fn(&Reference) -> Option<&'a Yarn>,
) -> Option<YarnLength> {
    let Some(MadeFrom::Own(own)) = &project.pattern else { return None };
    let pattern = pattern(&own.reference())?;
    let size = size_of(pattern, project.size.as_deref())?;
    let sizes = pattern.size_count();
    // Runs that do not fit the sizes are told of elsewhere.
    if pattern.yarn.is_empty()
        || !pattern.yarn.iter().all(|line| line.needs.as_ref().is_none_or(|run| run.values.serves(sizes)))
    {
        return None;
    }
    let told = needs(pattern, |line| yarn(&line.yarn.as_ref()?.reference()));
    *total_to_buy(pattern, &told).get(size)?
}

/// Returns a size of a pattern by its name, counted from 0; the only one where it has one.
pub(super) fn size_of(pattern: &Pattern, name: Option<&str>) -> Option<usize> {
    match &pattern.sizes {
        Some(names) if pattern.size_count() > 1 => names.find(name?),
        _ => Some(0),
    }
}

/// Returns a part of a length, to the nearest of its smallest units.
pub fn part(length: YarnLength, part: Percent) -> Option<YarnLength> {
    let (above, below) = part.of_one();
    length.times_near(above, below)
}

/// Returns how much of a length that took so many days goes into a week; a day is the least that anything takes.
pub fn per_week(length: YarnLength, days: i64) -> Option<YarnLength> {
    length.times_near(7, days.max(1))
}
