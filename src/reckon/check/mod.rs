//! Checks that a writer's numbers and names agree, one file a check.
//!
//! A check looks at the joined entries, public or not, and tells what disagrees at the smallest guilty place. To add
//! one: a file here with its [`Code`](crate::finding::Code), a line in [`check`], and a case under `tests/cases`.

mod both_systems;
mod run_length;
mod settings;
mod shade;
mod size;

use crate::catalogue::Catalogue;
use crate::entry::Entry;
use crate::entry::Placing;
use crate::finding::{Code, Finding};
use rayon::prelude::*;

/// The checks that a studio or a pattern may set: those whose findings are a matter of judgement.
static SETTABLE: [&Code; 3] = [&both_systems::SYSTEMS_DISAGREE, &shade::UNKNOWN_SHADE, &size::UNKNOWN_SIZE];

/// Runs every check over every entry; each finding weighs what the pattern or the studio says.
pub fn check(catalogue: &Catalogue, placing: &Placing<'_>) -> Vec<Finding> {
    let check_one = |entry: &Entry| {
        let mut findings = Vec::new();
        both_systems::check(entry, placing, &mut findings);
        run_length::check(entry, placing, &mut findings);
        shade::check(catalogue, entry, placing, &mut findings);
        size::check(catalogue, entry, placing, &mut findings);
        let mut findings = settings::weigh(catalogue, entry, findings, &SETTABLE);
        settings::check(entry, placing, &SETTABLE, &mut findings);
        findings
    };
    let mut findings: Vec<Finding> = catalogue.entries.par_iter().flat_map_iter(check_one).collect();
    settings::check_studio(catalogue, &SETTABLE, &mut findings);
    findings
}
