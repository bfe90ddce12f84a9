//! The places of a test knit that are still free.

use crate::entry::Pattern;

/// Returns how many testers are still wanted in each size; nothing for a size in which the call wants none.
///
/// Each tester who says a size takes a place of it, whoever it is; more testers than are wanted leave none.
pub fn places(pattern: &Pattern) -> Vec<Option<usize>> {
    let wanted = pattern.test_knit.as_ref().and_then(|call| call.sizes_wanted.as_ref());
    let size_of = |name: &String| match &pattern.sizes {
        Some(names) if pattern.size_count() > 1 => names.find(name),
        _ => Some(0),
    };
    let taken: Vec<usize> = pattern.testers.sizes.iter().filter_map(size_of).collect();
    let of = |size: usize| {
        let wanted = usize::try_from(wanted?.values.get(size)?.thousandths() / 1000).unwrap_or_default();
        Some(wanted.saturating_sub(taken.iter().filter(|at| **at == size).count()))
    };
    (0..pattern.size_count()).map(of).collect()
}
