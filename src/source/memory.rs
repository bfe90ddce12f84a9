//! A studio held as values, for tests.

use super::{FilePath, Files, Listing};
use std::collections::BTreeMap;
use std::io;

/// A studio in memory. It has no folders of its own: a path's folders exist because files are in them.
#[derive(Clone, Debug, Default)]
pub struct Memory {
    /// The bytes of each file.
    pub files: BTreeMap<FilePath, Vec<u8>>,
}

impl Memory {
    /// Adds or replaces one file; a path that would leave the studio is left out.
    pub fn with(mut self, path: &str, content: impl Into<Vec<u8>>) -> Self {
        if let Some(path) = FilePath::new(path) {
            self.files.insert(path, content.into());
        }
        self
    }
}

impl Files for Memory {
    fn list(&self) -> io::Result<Listing> {
        Ok(Listing { paths: self.files.keys().cloned().collect(), refused: Vec::new() })
    }

    fn read(&self, path: &FilePath) -> io::Result<Vec<u8>> {
        self.files.get(path).cloned().ok_or_else(|| io::Error::from(io::ErrorKind::NotFound))
    }
}
