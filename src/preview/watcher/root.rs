//! The root: whether it is still the same folder.
#![allow(clippy::disallowed_methods, reason = "watching looks at the disk")]

use std::fs;
use std::path::Path;

/// What tells one folder from another that takes its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Identity(u64, u64);

/// Returns the identity of a folder, or nothing if there is none.
pub(super) fn identity(root: &Path) -> Option<Identity> {
    let about = fs::metadata(root).ok().filter(fs::Metadata::is_dir)?;
    Some(of(&about))
}

#[cfg(unix)]
fn of(about: &fs::Metadata) -> Identity {
    use std::os::unix::fs::MetadataExt;
    Identity(about.dev(), about.ino())
}

#[cfg(not(unix))]
fn of(_: &fs::Metadata) -> Identity {
    Identity(0, 0)
}
