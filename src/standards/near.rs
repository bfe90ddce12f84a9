//! Near misses among names.

/// The names that are a slip or two away from what was written, the nearest first.
///
/// One slip in short names, two from six letters on. A slip is a letter too many, too few or wrong.
pub(super) fn near<'a>(written: &str, names: impl IntoIterator<Item = &'a str>) -> Vec<String> {
    let allowed = if written.chars().count() < 6 { 1 } else { 2 };
    let mut found: Vec<(usize, &str)> = names
        .into_iter()
        .map(|name| (distance(written, name), name))
        .filter(|(slips, _)| *slips <= allowed)
        .collect();
    found.sort_unstable();
    found.dedup();
    found.into_iter().map(|(_, name)| name.to_owned()).collect()
}

/// How many letters must be put in, taken out or changed.
fn distance(one: &str, two: &str) -> usize {
    let two: Vec<char> = two.chars().collect();
    let mut row: Vec<usize> = (0..=two.len()).collect();
    for (index, left) in one.chars().enumerate() {
        let mut next = vec![index + 1];
        for ((right, above_left), above) in two.iter().zip(row.iter()).zip(row.iter().skip(1)) {
            let beside = next.last().copied().unwrap_or(index + 1);
            let changed = above_left + usize::from(left != *right);
            next.push(changed.min(above + 1).min(beside + 1));
        }
        row = next;
    }
    row.last().copied().unwrap_or(0)
}
