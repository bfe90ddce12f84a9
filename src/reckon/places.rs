//! The places of a test knit: how many are wanted in each size, and how many of them are left.

use crate::entry::Pattern;

/// The places for one size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Places {
    /// How many testers are wanted.
    pub wanted: i64,
    /// How many of them are not found yet.
    pub left: i64,
}

/// Returns the places for each size; nothing for a size of which the call says nothing.
///
/// Each tester who says a size takes a place of it, whoever it is; more testers than are wanted leave none.
pub fn places(pattern: &Pattern) -> Vec<Option<Places>> {
    let wanted = pattern.test_knit.as_ref().and_then(|call| call.sizes_wanted.as_ref());
    let size_of = |name: &String| match &pattern.sizes {
        Some(names) if pattern.size_count() > 1 => names.find(name),
        _ => Some(0),
    };
    let taken: Vec<usize> = pattern.testers.sizes.iter().filter_map(size_of).collect();
    let of = |size: usize| {
        let wanted = wanted?.values.get(size)?.thousandths() / 1000;
        let found = taken.iter().filter(|at| **at == size).count();
        Some(Places { wanted, left: wanted.saturating_sub(i64::try_from(found).unwrap_or(i64::MAX)).max(0) })
    };
    (0..pattern.size_count()).map(of).collect()
}
