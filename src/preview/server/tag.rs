//! Tags, by which a browser asks whether what it has is still right.

use xxhash_rust::xxh3::xxh3_128;

/// Returns the tag of a body, with its quotes.
pub(super) fn tag(body: &[u8]) -> String {
    format!("\"{:032x}\"", xxh3_128(body))
}

/// Returns whether an `If-None-Match` names this tag.
pub(super) fn matches(asked: &str, tag: &str) -> bool {
    asked.split(',').map(str::trim).any(|one| one == "*" || one.strip_prefix("W/").unwrap_or(one) == tag)
}
