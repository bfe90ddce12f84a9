//! Near misses among names: most mistakes are typing.

/// Returns the names close enough to a written one to be meant, the nearest first, equally near ones by name.
///
/// Close is measured by Damerau and Levenshtein's count of edits, case aside; at most a third of the letters, and always
/// one, may differ.
pub fn near<'a>(written: &str, names: impl IntoIterator<Item = &'a str>) -> Vec<&'a str> {
    let written = written.to_lowercase();
    let allowed = (written.chars().count() / 3).max(1);
    let mut found: Vec<(usize, &str)> = names
        .into_iter()
        .map(|name| (strsim::damerau_levenshtein(&written, &name.to_lowercase()), name))
        .filter(|(slips, _)| *slips <= allowed)
        .collect();
    found.sort_unstable();
    found.dedup();
    found.into_iter().map(|(_, name)| name).collect()
}
