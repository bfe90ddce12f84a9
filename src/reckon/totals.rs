//! Totals of finished things by year.

use super::used;
use crate::catalogue::Catalogue;
use crate::entry::{Entry, Project};
use crate::measure::{Mass, YarnLength};
use std::collections::BTreeMap;

/// One year's finished things.
#[derive(Clone, Debug, Default)]
pub struct Year<'a> {
    /// The things, the latest first; those of one day by key.
    pub projects: Vec<(&'a Entry, &'a Project)>,
    /// The length of all yarn in them that is known.
    pub length: YarnLength,
    /// The mass of all yarn in them that is known.
    pub mass: Mass,
    /// How many of them hold a yarn whose length is not known, so that the sum falls short.
    pub unknown: usize,
}

/// Returns the public finished things by year, as of the day of the catalogue.
pub fn by_year(catalogue: &Catalogue) -> BTreeMap<i16, Year<'_>> {
    let mut years: BTreeMap<i16, Year<'_>> = BTreeMap::new();
    let mut projects: Vec<_> = catalogue
        .projects()
        .filter_map(|(entry, project)| project.finished_by(catalogue.view.today).map(|day| (day, entry, project)))
        .collect();
    projects.sort_by(|a, b| b.0.cmp(&a.0).then_with(|| a.1.id.cmp(&b.1.id)));
    for (day, entry, project) in projects {
        let year = years.entry(day.year()).or_default();
        let usage = used(catalogue, project);
        let (mut length, mut mass) = (year.length.micrometres(), year.mass.nanograms());
        for one in &usage {
            length = length.saturating_add(one.length.map_or(0, YarnLength::micrometres));
            mass = mass.saturating_add(one.mass.map_or(0, Mass::nanograms));
        }
        year.length = YarnLength::from_micrometres(length);
        year.mass = Mass::from_nanograms(mass);
        year.unknown += usize::from(usage.iter().any(|one| one.length.is_none()));
        year.projects.push((entry, project));
    }
    years
}
