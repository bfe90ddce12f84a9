//! Checks that a writer's numbers and names agree, one file a check.
//!
//! A check looks at the joined entries, public or not, and tells what disagrees at the smallest guilty place. To add
//! one: a file here with its [`Code`](crate::finding::Code), a line in [`check`], and a case under `tests/cases`.

mod run_length;
mod shade;
mod size;

use crate::catalogue::Catalogue;
use crate::entry::Entry;
use crate::finding::Finding;
use crate::source::Texts;
use rayon::prelude::*;

/// Runs every check over every entry.
pub fn check(catalogue: &Catalogue, texts: &Texts) -> Vec<Finding> {
    let check_one = |entry: &Entry| {
        let mut findings = Vec::new();
        run_length::check(entry, texts, &mut findings);
        shade::check(catalogue, entry, texts, &mut findings);
        size::check(catalogue, entry, texts, &mut findings);
        findings
    };
    catalogue.entries.par_iter().flat_map_iter(check_one).collect()
}
