//! Paths inside the site.

use std::borrow::Borrow;
use std::fmt;

use super::RECORDS;

/// The longest name of one part, in bytes; every common file system takes this much.
const LONGEST_PART: usize = 255;

/// A path inside the site: relative, with `/` between its parts.
///
/// No part is empty, `.` or `..`, none holds a backslash or NUL or is longer than 255 bytes, and
/// the first is neither a drive letter nor our own records' folder. So joining one to the site's
/// folder cannot lead out of it, short of a symbolic link, which `apply` looks for.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SitePath(String);

/// Why a text is not a path inside the site.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BadPath {
    /// The text as it was given.
    pub path: String,
    /// What is wrong with it, to follow the path in a sentence.
    pub why: &'static str,
}

impl fmt::Display for BadPath {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "`{}` cannot be a path inside the site: {}", self.path.escape_debug(), self.why)
    }
}

impl std::error::Error for BadPath {}

impl SitePath {
    /// Checks a text and takes it as a path.
    ///
    /// # Errors
    /// [`BadPath`] says which rule the text breaks.
    pub fn new(path: impl Into<String>) -> Result<SitePath, BadPath> {
        let path = path.into();
        match fault(&path) {
            Some(why) => Err(BadPath { path, why }),
            None => Ok(SitePath(path)),
        }
    }

    /// The path as text, with `/` between its parts.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The folders the path lies in, outermost first; none for a file at the top.
    pub fn folders(&self) -> impl Iterator<Item = &str> {
        folders_of(&self.0)
    }
}

/// The folders a checked path lies in, outermost first.
pub(super) fn folders_of(path: &str) -> impl Iterator<Item = &str> {
    path.match_indices('/').filter_map(|(at, _)| path.get(..at))
}

/// The folders that some checked paths lie in; each once if the paths are sorted, since then those in one folder follow each
/// other.
pub(super) fn folders_of_all(paths: &[SitePath]) -> impl Iterator<Item = &str> {
    let before = std::iter::once("").chain(paths.iter().map(SitePath::as_str));
    let is_known = |before: &str, folder: &str| before.strip_prefix(folder).is_some_and(|rest| rest.starts_with('/'));
    paths.iter().zip(before).flat_map(move |(path, before)| path.folders().filter(move |f| !is_known(before, f)))
}

/// The folder a checked path lies in; empty at the top.
pub(super) fn folder_of(path: &str) -> &str {
    path.rsplit_once('/').map_or("", |(folder, _)| folder)
}

/// The path as a host that does not tell capitals from small letters sees it.
pub(super) fn folded(path: &str) -> String {
    if path.is_ascii() { path.to_ascii_lowercase() } else { path.to_lowercase() }
}

fn fault(path: &str) -> Option<&'static str> {
    if path.is_empty() {
        return Some("it is empty");
    }
    if path.starts_with('/') {
        return Some("it begins with `/`");
    }
    if path.contains('\\') {
        return Some("it holds a backslash");
    }
    if path.contains('\0') {
        return Some("it holds a NUL character");
    }
    for part in path.split('/') {
        match part {
            "" => return Some("a part of it is empty"),
            "." | ".." => return Some("it holds `.` or `..`"),
            _ if part.len() > LONGEST_PART => return Some("a part of it is longer than 255 bytes"),
            _ => {}
        }
    }
    let first = path.split('/').next().unwrap_or_default();
    if first.eq_ignore_ascii_case(RECORDS) {
        return Some("ballband keeps its own records there");
    }
    let bytes = first.as_bytes();
    if bytes.get(1) == Some(&b':') && bytes.first().is_some_and(u8::is_ascii_alphabetic) {
        return Some("it begins with a drive letter");
    }
    None
}

impl fmt::Display for SitePath {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl AsRef<str> for SitePath {
    fn as_ref(&self) -> &str {
        &self.0
    }
}

// Order and hash are those of the text, so maps of paths can be asked with a `&str`.
impl Borrow<str> for SitePath {
    fn borrow(&self) -> &str {
        &self.0
    }
}

impl TryFrom<&str> for SitePath {
    type Error = BadPath;

    fn try_from(path: &str) -> Result<SitePath, BadPath> {
        SitePath::new(path)
    }
}

impl TryFrom<String> for SitePath {
    type Error = BadPath;

    fn try_from(path: String) -> Result<SitePath, BadPath> {
        SitePath::new(path)
    }
}
