//! The near miss: most mistakes are typing.

/// Returns the known name closest to a misspelt one, or nothing if none is close enough to be meant.
///
/// Close is measured by Damerau and Levenshtein's count of edits, case aside; at most a third of the word's characters
/// (and always one) may differ. Of equally close names the first in order is taken.
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let word = word.to_lowercase();
    let limit = (word.chars().count() / 3).max(1);
    known
        .into_iter()
        .map(|name| (strsim::damerau_levenshtein(&word, &name.to_lowercase()), name))
        .filter(|(distance, _)| *distance <= limit)
        .min()
        .map(|(_, name)| name)
}
