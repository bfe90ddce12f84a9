//! A studio on disk. This file is one of the few places that touch it.
#![allow(clippy::disallowed_methods, reason = "reading the studio's files is this file's job")]

use super::{FilePath, Files, Listing};
use std::ffi::OsStr;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use walkdir::{DirEntry, WalkDir};

/// The file that marks the root of a studio.
pub const MARK: &str = "studio.yaml";

/// The folder by which a made site is known; nothing below a folder that holds one is read.
const MADE: &str = ".ballband";

/// A studio's folder on disk.
#[derive(Clone, Debug)]
pub struct Disk {
    root: PathBuf,
}

impl Disk {
    /// Returns the studio whose root is this folder, which need not exist yet.
    pub fn at(root: impl Into<PathBuf>) -> Self {
        Self { root: root.into() }
    }

    /// Returns the nearest studio at or above a folder, or nothing up to the file system's root.
    pub fn find(from: &Path) -> Option<Self> {
        from.ancestors().find(|folder| folder.join(MARK).is_file()).map(Self::at)
    }

    /// Returns the folder the studio is in.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// Returns whether the folder holds the file that marks a studio.
    pub fn is_studio(&self) -> bool {
        self.root.join(MARK).is_file()
    }
}

impl Files for Disk {
    fn list(&self) -> io::Result<Listing> {
        let mut listing = Listing::default();
        // A link is followed, since studios keep photos on another disk; walkdir ends a loop of links with an error.
        for entry in WalkDir::new(&self.root).follow_links(true).into_iter().filter_entry(ours) {
            match entry {
                Ok(entry) if entry.file_type().is_file() => listing.paths.extend(self.relative(entry.path())),
                Ok(_) => {}
                Err(error) if error.depth() == 0 => return Err(io::Error::from(error)),
                Err(error) => {
                    // An editor's lock on an open file is often a hidden link that leads nowhere.
                    let path =
                        error.path().filter(|path| !is_hidden(path.file_name())).and_then(|path| self.relative(path));
                    listing.refused.extend(path.map(|path| (path, io::Error::from(error))));
                }
            }
        }
        Ok(listing)
    }

    fn read(&self, path: &FilePath) -> io::Result<Vec<u8>> {
        fs::read(self.root.join(path.as_str()))
    }
}

impl Disk {
    /// Returns whether a file or folder may be part of the studio: not hidden, and not in a made site.
    pub fn is_ours(&self, path: &Path) -> bool {
        path == self.root || !(is_hidden(path.file_name()) || path.join(MADE).is_dir())
    }

    /// Returns the name in the studio of a path below its root, if it can have one.
    pub fn name(&self, path: &Path) -> Option<FilePath> {
        self.relative(path)
    }

    /// Returns a path below the root in our own form; a name that is not Unicode cannot be referred to and is left out.
    fn relative(&self, path: &Path) -> Option<FilePath> {
        let parts: Option<Vec<&str>> =
            path.strip_prefix(&self.root).ok()?.components().map(|part| part.as_os_str().to_str()).collect();
        FilePath::new(&parts?.join("/"))
    }
}

fn is_hidden(name: Option<&OsStr>) -> bool {
    name.and_then(OsStr::to_str).is_some_and(|name| name.starts_with('.'))
}

fn ours(entry: &DirEntry) -> bool {
    let hidden = entry.depth() > 0 && is_hidden(Some(entry.file_name()));
    let made = entry.file_type().is_dir() && entry.depth() > 0 && entry.path().join(MADE).is_dir();
    !hidden && !made
}
