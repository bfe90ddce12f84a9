//! The near miss, to offer in advice.

use crate::standards::near;

/// Returns the known name closest to a misspelt one, or nothing if none is close enough to be meant.
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    near(word, known).into_iter().next()
}
