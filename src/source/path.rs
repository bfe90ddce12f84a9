//! The name of a file inside a studio.

use std::fmt;
use std::sync::Arc;

/// A path relative to the studio's root, with `/` between its parts on every system.
///
/// It never begins with `/` and never holds `.` or `..`, so it cannot point outside the studio.
/// Cloning is cheap: the text is shared.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FilePath(Arc<str>);

impl FilePath {
    /// Returns the path, or nothing if the text would leave the studio or is no clean relative path.
    pub fn new(text: &str) -> Option<Self> {
        let clean = |part: &str| !part.is_empty() && part != "." && part != ".." && !part.contains(['\\', '\0']);
        text.split('/').all(clean).then(|| Self(Arc::from(text)))
    }

    /// Returns the path of the file that marks a studio.
    pub fn studio() -> Self {
        Self(Arc::from("studio.yaml"))
    }

    /// Returns the whole path as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// Returns the first folder of the path, or nothing for a file at the root.
    pub fn folder(&self) -> Option<&str> {
        self.0.split_once('/').map(|(first, _)| first)
    }

    /// Returns the file's own name without folders and without its extension.
    pub fn stem(&self) -> &str {
        let name = self.0.rsplit('/').next().unwrap_or_default();
        name.rsplit_once('.').map_or(name, |(stem, _)| stem)
    }

    /// Returns the extension in lower case, empty if there is none.
    pub fn extension(&self) -> String {
        let name = self.0.rsplit('/').next().unwrap_or_default();
        name.rsplit_once('.').map_or_else(String::new, |(_, end)| end.to_lowercase())
    }
}

impl fmt::Display for FilePath {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl fmt::Debug for FilePath {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Debug::fmt(&*self.0, f)
    }
}
