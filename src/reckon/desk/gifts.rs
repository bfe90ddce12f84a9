//! Gifts: who in which household has which design, what is alike, and what a household has not had.

use crate::catalogue::Catalogue;
use crate::entry::value::Stage;
use crate::entry::{Entry, Kind, MadeFor, Pattern, Project, Reference};
use crate::reckon::gift::{Design, are_alike, design, plain};
use std::collections::BTreeMap;

/// One thing made for somebody.
#[derive(Clone, Debug)]
pub struct Gift<'a> {
    /// The project's entry.
    pub entry: &'a Entry,
    /// The project.
    pub project: &'a Project,
    /// For whom.
    pub made_for: &'a MadeFor,
    /// What it is made from.
    pub design: Design,
    /// Whether another for the same household or person is of the same design in the same variant.
    pub is_alike: bool,
}

/// Those who live together, and what was made for them.
#[derive(Clone, Debug)]
pub struct Household<'a> {
    /// What the household is called; a person's name where none is said; nothing where that is not said either.
    pub name: Option<&'a str>,
    /// Whether it is a household, or one person of whom no household is said.
    pub is_named: bool,
    /// What was made for them, by person, then by day.
    pub gifts: Vec<Gift<'a>>,
    /// The published designs that none of them has had, by key.
    pub not_had: Vec<&'a Entry>,
}

/// Returns the households for whom anything was or is being made, by name; persons of whom no household is said come last.
///
/// Retired designs and those on the way are not missed by anyone.
pub fn households(catalogue: &Catalogue) -> Vec<Household<'_>> {
    let mut all: BTreeMap<(bool, Option<String>), Household<'_>> = BTreeMap::new();
    for entry in catalogue.of_kind(Kind::Project) {
        let Some(project) = entry.project() else { continue };
        let Some(made_for) = project.made_for.for_desk() else { continue };
        let is_named = made_for.household.is_some();
        let name = made_for.household.as_deref().or(made_for.who.as_deref());
        // One household is one however its name's letters are written.
        let place = all.entry((!is_named, name.map(plain))).or_insert_with(|| Household {
            name,
            is_named,
            gifts: Vec::new(),
            not_had: Vec::new(),
        });
        place.gifts.push(Gift { entry, project, made_for, design: design(project), is_alike: false });
    }
    let mut all: Vec<Household<'_>> = all.into_values().collect();
    mark(&mut all);
    for household in &mut all {
        household.gifts.sort_by_key(|gift| {
            (gift.made_for.who.as_deref(), gift.project.finished.or(gift.made_for.by), &gift.entry.id)
        });
        let has = |id: &Reference| household.gifts.iter().any(|gift| gift.design == Design::Own(id.clone()));
        let is_out = |pattern: &Pattern| {
            pattern.stage() == Stage::Published && pattern.published.is_none_or(|day| day <= catalogue.view.today)
        };
        let published = |entry: &&Entry| entry.pattern().is_some_and(is_out);
        let patterns = catalogue.of_kind(Kind::Pattern).iter();
        household.not_had = patterns.filter(published).filter(|entry| !has(&entry.id)).collect();
    }
    all
}

/// Marks each gift that another is like.
fn mark(households: &mut [Household<'_>]) {
    let all: Vec<(&Reference, &Project)> =
        households.iter().flat_map(|one| one.gifts.iter().map(|gift| (&gift.entry.id, gift.project))).collect();
    let is_alike = |id: &Reference, project: &Project| {
        all.iter().any(|(other_id, other)| *other_id != id && are_alike(project, other))
    };
    let marks: Vec<bool> = all.iter().map(|(id, project)| is_alike(id, project)).collect();
    for (gift, mark) in households.iter_mut().flat_map(|one| &mut one.gifts).zip(marks) {
        gift.is_alike = mark;
    }
}
