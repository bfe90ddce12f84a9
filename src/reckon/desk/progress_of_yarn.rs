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
    /// Why it cannot be told what it still takes.
    pub untold: Option<Untold>,
}

/// Why it cannot be told how much of a yarn something still takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Untold {
    /// No pattern of the studio says it.
    NoPattern,
    /// The pattern has several sizes, and none of them is named.
    NoSize,
    /// Which of the pattern's colours it is cannot be told.
    WhichColour,
    /// The pattern does not say how much.
    NoNeeds,
    /// What was used is not known as a length.
    Used,
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
/// A yarn of the project answers to that of the pattern whose colour it names, or else to the one with the same yarn and
/// shade. Where colours were changed, they are taken in the order they are written, if the project has as many as the
/// pattern. Otherwise nothing is set beside it: which colour took whose place cannot be told. A pattern's yarns stand for
/// a project that names none.
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
            let need = need(purchase, size);
            let untold = need.is_none().then(|| no_need(size));
            Some(YarnOfProject { yarn, shade, used: Some(YarnLength::ZERO), need, untold })
        };
        return bought.iter().filter_map(one).collect();
    }
    let mut lines: Vec<YarnOfProject> = Vec::new();
    for (line, usage) in project.yarn.iter().zip(used(catalogue, project)) {
        let used = if line.used.is_none() { Some(YarnLength::ZERO) } else { usage.length };
        let yarn = line.yarn.as_ref().map(|yarn| yarn.reference());
        let untold = Some(Untold::NoPattern);
        lines.push(YarnOfProject { yarn, shade: line.shade.clone(), used, need: None, untold });
    }
    if let Some((bought, size)) = bought {
        let of_colour = |label: &str| bought.iter().position(|purchase| is_colour(purchase, label));
        let place = |line: &YarnOfProject| bought.iter().position(|purchase| is_of(purchase, line));
        let labelled = project.yarn.iter().map(|used| used.colour.as_deref());
        let places: Vec<Option<usize>> = lines
            .iter()
            .zip(labelled.clone())
            .map(|(line, label)| label.map_or_else(|| place(line), of_colour))
            .collect();
        let in_order = places.contains(&None) && lines.len() == bought.len() && labelled.flatten().next().is_none();
        for (at, (line, place)) in lines.iter_mut().zip(places).enumerate() {
            let place = if in_order { Some(at) } else { place };
            line.need = place.and_then(|place| need(bought.get(place)?, size));
            line.untold = match (line.need, line.used, place) {
                (_, _, None) => Some(Untold::WhichColour),
                (None, ..) => Some(no_need(size)),
                (_, None, _) => Some(Untold::Used),
                _ => None,
            };
        }
    }
    lines
}

/// Returns why it cannot be told what a yarn takes in a size that is known or not.
pub(super) fn no_need(size: Option<usize>) -> Untold {
    if size.is_none() { Untold::NoSize } else { Untold::NoNeeds }
}

/// Returns whether a colour of the pattern has a label, in whatever capitals.
fn is_colour(purchase: &Purchase<'_>, label: &str) -> bool {
    let labels = purchase.uses.iter().filter_map(|line| line.colour.as_deref());
    labels.into_iter().any(|known| known.eq_ignore_ascii_case(label.trim()))
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
