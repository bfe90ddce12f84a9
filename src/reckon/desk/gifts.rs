//! Gifts: who in which household has which design, what is alike, and what a household has not had.

use crate::catalogue::Catalogue;
use crate::entry::value::Stage;
use crate::entry::{Entry, Kind, MadeFor, MadeFrom, Project, Reference};
use std::collections::BTreeMap;

/// What a gift was made from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Design {
    /// A pattern of the studio.
    Own(Reference),
    /// Somebody else's, by its title.
    Other(String),
    /// None that is named.
    None,
}

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
    /// Whether another in the household is of the same design in the same variant.
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
/// Two are alike if they are of one design and one variant: the same names with the same values, in any order, large and
/// small letters alike. Two without a variant are alike too, since nothing sets them apart; sizes and yarns do not count.
/// Things that are made from no pattern are never alike. Retired designs and those on the way are not missed by anyone.
pub fn households(catalogue: &Catalogue) -> Vec<Household<'_>> {
    let mut all: BTreeMap<(bool, Option<String>), Household<'_>> = BTreeMap::new();
    for entry in catalogue.of_kind(Kind::Project) {
        let Some(project) = entry.project() else { continue };
        let Some(made_for) = project.made_for.for_desk() else { continue };
        let is_named = made_for.household.is_some();
        let name = made_for.household.as_deref().or(made_for.who.as_deref());
        let design = match &project.pattern {
            Some(MadeFrom::Own(pattern)) => Design::Own(pattern.reference()),
            Some(MadeFrom::Other(other)) => Design::Other(other.title.clone()),
            None => Design::None,
        };
        // One household is one however its name's letters are written.
        let place = all.entry((!is_named, name.map(plain))).or_insert_with(|| Household {
            name,
            is_named,
            gifts: Vec::new(),
            not_had: Vec::new(),
        });
        place.gifts.push(Gift { entry, project, made_for, design, is_alike: false });
    }
    let mut all: Vec<Household<'_>> = all.into_values().collect();
    for household in &mut all {
        mark(&mut household.gifts);
        household.gifts.sort_by_key(|gift| {
            (gift.made_for.who.as_deref(), gift.project.finished.or(gift.made_for.by), &gift.entry.id)
        });
        let has = |id: &Reference| household.gifts.iter().any(|gift| gift.design == Design::Own(id.clone()));
        let published = |entry: &&Entry| entry.pattern().is_some_and(|pattern| pattern.stage() == Stage::Published);
        let patterns = catalogue.of_kind(Kind::Pattern).iter();
        household.not_had = patterns.filter(published).filter(|entry| !has(&entry.id)).collect();
    }
    all
}

/// Marks each gift that another is like.
fn mark(gifts: &mut [Gift<'_>]) {
    let variants: Vec<_> = gifts.iter().map(|gift| (gift.design.clone(), variant(gift.project))).collect();
    for (at, gift) in gifts.iter_mut().enumerate() {
        let here = variants.get(at);
        gift.is_alike = gift.design != Design::None
            && variants.iter().enumerate().any(|(other, one)| other != at && Some(one) == here);
    }
}

/// Returns a project's variant in a form that can be compared.
fn variant(project: &Project) -> BTreeMap<String, String> {
    project.variant.for_desk().0.iter().map(|(name, value)| (plain(name), plain(value))).collect()
}

fn plain(text: &str) -> String {
    text.trim().to_lowercase()
}
