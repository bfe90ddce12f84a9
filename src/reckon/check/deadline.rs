//! What must be there on a day has to be done by then.
//!
//! A finding is for the designer's eyes, so what is private may be looked at.

use crate::catalogue::Catalogue;
use crate::entry::value::Date;
use crate::entry::{Entry, Kind, Placing, Project};
use crate::finding::{Code, Finding, Severity};
use crate::measure::{Percent, YarnLength};
use crate::reckon::pace::needs_of;
use crate::reckon::{WHOLE, part, per_week, progress, used, used_in_all};

/// A thing that would have to grow faster than things mostly do.
pub static DEADLINE_PACE: Code = Code {
    name: "deadline-pace",
    severity: Severity::Warning,
    what: "What is left of a thing, over the days that are left, is more yarn a week than you mostly get through.",
    why: "It will not be there in time unless something else waits.",
    bad: "made for: { who: Wyn, by: 2026-12-01 }, with two thirds of a blanket to go",
    good: "made for: { who: Wyn, by: 2027-02-14 }",
};

/// A day that has gone by, with the thing still on the needles.
pub static DEADLINE_PAST: Code = Code {
    name: "deadline-past",
    severity: Severity::Warning,
    what: "The day on which a thing had to be there has gone by, and it is not finished.",
    why: "Either it is late, or `finished` was forgotten.",
    bad: "made for: { who: Wyn, by: 2026-11-01 }, and no `finished`",
    good: "made for: { who: Wyn, by: 2026-11-01 }, and `finished: 2026-10-28`",
};

/// As many finished things as it takes to tell how fast she is.
const ENOUGH: usize = 3;

/// Finds a deadline that has gone by, or that asks for more yarn a week than the median of what was finished so far.
///
/// What is left is what the pattern takes in its size, less the part that the latest note calls done; where no note does,
/// less what is known to have been used. How fast she is, is the yarn of each finished thing over its days. Nothing is told
/// where either is not known, or of fewer than three things.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let today = catalogue.view.today;
    let Some(project) = entry.project().filter(|project| project.finished_by(today).is_none()) else { return };
    let Some(by) = project.made_for.for_desk().as_ref().and_then(|made_for| made_for.by) else { return };
    let days = today.days_to(by);
    let found = if days < 0 { Some(past(by, -days)) } else { too_fast(catalogue, entry, project, by, days) };
    findings.extend(found.map(|(code, message, help)| {
        Finding::new(code, entry.origin.field(&["made for", "by"], placing), message).help(help)
    }));
}

type Found = (&'static Code, String, &'static str);

fn past(by: Date, days: i64) -> Found {
    let ago = if days == 1 { "yesterday".to_owned() } else { format!("{days} days ago") };
    let message = format!("it had to be there on {}, {ago}, and is not finished", by.in_words());
    (&DEADLINE_PAST, message, "add `finished:` with the day, or give `by` another")
}

fn too_fast(catalogue: &Catalogue, entry: &Entry, project: &Project, by: Date, days: i64) -> Option<Found> {
    let needs = needs_of(project, |id| catalogue.pattern(id), |id| catalogue.yarn(id))?;
    let left = match progress(catalogue, &entry.id) {
        Some(done) => part(needs, WHOLE.checked_sub(done.clamp(Percent::ZERO, WHOLE))?)?,
        None => needs.checked_sub(YarnLength::sum(used(catalogue, project).iter().filter_map(|one| one.length))?)?,
    };
    let wanted = per_week(left, days)?;
    let mut paces = paces(catalogue);
    let count = paces.len();
    let median = median(&mut paces).filter(|median| count >= ENOUGH && wanted > *median)?;
    let system = catalogue.studio.units.unwrap_or_default();
    let message = format!(
        "needs {} a week to be there by {}; your median is {} a week over {count} projects",
        wanted.show(system),
        by.in_words(),
        median.show(system),
    );
    Some((&DEADLINE_PACE, message, "let something else wait, or give `by` a later day"))
}

/// Returns the yarn a week of each finished thing whose first and last day and whose length are known.
fn paces(catalogue: &Catalogue) -> Vec<YarnLength> {
    let pace = |entry: &Entry| {
        let project = entry.project()?;
        let (started, finished) = project.started.zip(project.finished_by(catalogue.view.today))?;
        let length = used_in_all(catalogue, project)
            .or_else(|| needs_of(project, |id| catalogue.pattern(id), |id| catalogue.yarn(id)))?;
        per_week(length, started.days_to(finished))
    };
    catalogue.of_kind(Kind::Project).iter().filter_map(pace).collect()
}

/// Returns the middle one of some lengths, or the mean of the middle two.
fn median(lengths: &mut [YarnLength]) -> Option<YarnLength> {
    lengths.sort_unstable();
    let upper = *lengths.get(lengths.len() / 2)?;
    if lengths.len() % 2 == 1 {
        return Some(upper);
    }
    lengths.get(lengths.len() / 2 - 1)?.checked_add(upper)?.times_near(1, 2)
}
