//! What went into a project so far, against what its pattern takes in its size.

use crate::catalogue::Catalogue;
use crate::entry::{MadeFrom, Pattern, Project, Reference};
use crate::measure::{Percent, YarnLength};
use crate::reckon::pace::size_of;
use crate::reckon::{Purchase, Terms, purchases, used};

/// One yarn of a project, or of its pattern where the project does not name it yet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct YarnOfProject {
    /// The yarn.
    pub yarn: Option<Reference>,
    /// Its shade.
    pub shade: Option<String>,
    /// What went into it so far; nothing where that cannot be told. Where the project does not say, none did.
    pub used: Option<YarnLength>,
    /// What the pattern takes in this size, without margin; nothing where that cannot be told.
    pub need: Option<YarnLength>,
}

impl YarnOfProject {
    /// Returns what it still takes: none where more was used than the pattern says, nothing where either is not known.
    pub fn left(&self) -> Option<YarnLength> {
        Some(self.need?.checked_sub(self.used?).filter(|left| *left > YarnLength::ZERO).unwrap_or(YarnLength::ZERO))
    }

    /// Returns the part of the need that was used, rounded down to the whole percent: a thing is not done before it is.
    pub fn part(&self) -> Option<Percent> {
        let (used, need) = (i128::from(self.used?.micrometres()), i128::from(self.need?.micrometres()));
        let hundred = used.checked_mul(100)?.checked_div(need)?;
        Some(Percent::from_hundredths(i64::try_from(hundred).ok()?.checked_mul(100)?))
    }
}

/// Returns the yarns of a project beside what its pattern takes in its size.
///
/// A yarn of the project answers to that of the pattern with the same yarn and shade. Where colours were changed, they are
/// taken in the order they are written, if the project has as many as the pattern. Otherwise nothing is set beside it:
/// which colour took whose place cannot be told. A pattern's yarns stand for a project that names none.
pub fn yarn_of_project(catalogue: &Catalogue, project: &Project) -> Vec<YarnOfProject> {
    let pattern = match &project.pattern {
        Some(MadeFrom::Own(pattern)) => catalogue.pattern(&pattern.reference()),
        _ => None,
    };
    let bought = pattern.map(|pattern| (needs(catalogue, pattern), size_of(pattern, project.size.as_deref())));
    let need = |purchase: &Purchase<'_>, size: Option<usize>| (*purchase.sizes.get(size?)?).map(|one| one.length);
    if project.yarn.is_empty() {
        let Some((bought, size)) = bought else { return Vec::new() };
        let one = |purchase: &Purchase<'_>| {
            let line = purchase.uses.first()?;
            let (yarn, shade) = (line.yarn.as_ref().map(|yarn| yarn.reference()), line.shade.clone());
            Some(YarnOfProject { yarn, shade, used: Some(YarnLength::ZERO), need: need(purchase, size) })
        };
        return bought.iter().filter_map(one).collect();
    }
    let mut lines: Vec<YarnOfProject> = Vec::new();
    for (line, usage) in project.yarn.iter().zip(used(catalogue, project)) {
        let used = if line.used.is_none() { Some(YarnLength::ZERO) } else { usage.length };
        let yarn = line.yarn.as_ref().map(|yarn| yarn.reference());
        lines.push(YarnOfProject { yarn, shade: line.shade.clone(), used, need: None });
    }
    if let Some((bought, size)) = bought {
        let places: Vec<Option<usize>> =
            lines.iter().map(|line| bought.iter().position(|purchase| is_of(purchase, line))).collect();
        let in_order = places.contains(&None) && lines.len() == bought.len();
        for (at, (line, place)) in lines.iter_mut().zip(places).enumerate() {
            let place = if in_order { Some(at) } else { place };
            line.need = place.and_then(|place| need(bought.get(place)?, size));
        }
    }
    lines
}

fn is_of(purchase: &Purchase<'_>, line: &YarnOfProject) -> bool {
    purchase
        .uses
        .first()
        .is_some_and(|first| first.yarn.as_ref().map(|yarn| yarn.reference()) == line.yarn && first.shade == line.shade)
}

/// Returns what a pattern has one buy, without margin.
pub(super) fn needs<'a>(catalogue: &'a Catalogue, pattern: &'a Pattern) -> Vec<Purchase<'a>> {
    purchases(pattern, Terms::of(Percent::ZERO), |line| catalogue.yarn(&line.yarn.as_ref()?.reference()))
}
