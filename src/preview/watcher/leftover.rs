//! Names that editors leave beside a file while they save it.

use std::ffi::OsStr;

/// Ends of names of copies aside.
const ENDS: [&str; 8] = ["~", ".swp", ".swo", ".swx", ".tmp", ".bak", "___jb_tmp___", "___jb_old___"];

/// Returns whether a name is hidden or an editor's leftover, never a studio's own file.
pub(super) fn is_leftover(name: &OsStr) -> bool {
    let Some(name) = name.to_str() else { return false };
    let marked = name.len() > 1 && name.starts_with('#') && name.ends_with('#');
    name.starts_with('.') || marked || is_probe(name) || ENDS.iter().any(|end| name.ends_with(end))
}

/// Returns whether the name is one of those by which an editor tries whether a folder may be written: 4913, and
/// 123 more for each that is taken.
fn is_probe(name: &str) -> bool {
    name.len() == 4 && name.parse::<u32>().is_ok_and(|number| number >= 4913 && (number - 4913).is_multiple_of(123))
}
