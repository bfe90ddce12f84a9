//! Sums as JSON.

use serde::Serialize;

/// Returns a value as JSON on several lines, a line end at its end.
pub(super) fn pretty(value: &impl Serialize) -> String {
    // Texts and numbers always serialise.
    let mut text = serde_json::to_string_pretty(value).unwrap_or_default();
    text.push('\n');
    text
}
