//! The folders that are watched.
#![allow(clippy::disallowed_methods, reason = "watching looks at the disk")]

use super::leftover::is_leftover;
use notify::{RecommendedWatcher, RecursiveMode, Watcher};
use std::collections::BTreeSet;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// Whether each folder is watched by itself. The system that needs it also tells exactly what was made when.
pub(super) const EACH: bool = cfg!(any(target_os = "linux", target_os = "android"));

/// What is watched below one root.
pub(super) struct Reach<F> {
    /// The root as it was given; told paths begin with it.
    given: PathBuf,
    /// The root without links, as the system names it.
    real: PathBuf,
    ours: F,
    watcher: RecommendedWatcher,
    folders: BTreeSet<PathBuf>,
}

impl<F: Fn(&Path) -> bool> Reach<F> {
    /// Begins to watch; hands `ours` back if that fails.
    pub fn begin(given: &Path, ours: F, watcher: notify::Result<RecommendedWatcher>) -> Result<Self, (F, io::Error)> {
        let (real, watcher) = match (fs::canonicalize(given), watcher) {
            (Ok(real), Ok(watcher)) => (real, watcher),
            (Err(error), _) => return Err((ours, error)),
            (_, Err(error)) => return Err((ours, io::Error::other(error))),
        };
        let mut reach = Self { given: given.to_owned(), real: real.clone(), ours, watcher, folders: BTreeSet::new() };
        let begun = if EACH {
            reach.enter(&real, &mut Vec::new())
        } else {
            reach.watcher.watch(&real, RecursiveMode::Recursive).map_err(io::Error::other)
        };
        match begun {
            Ok(()) => Ok(reach),
            Err(error) => Err((reach.ours, error)),
        }
    }

    /// Gives back what decides which paths are ours, and ends watching.
    pub fn end(self) -> F {
        self.ours
    }

    /// Returns a path of an event as it is told, or nothing if it is not ours.
    pub fn told(&self, path: &Path) -> Option<PathBuf> {
        let below = path.strip_prefix(&self.real).or_else(|_| path.strip_prefix(&self.given)).ok()?;
        let mut told = self.given.clone();
        for part in below.components() {
            told.push(part);
            if is_leftover(part.as_os_str()) || !(self.ours)(&told) {
                return None;
            }
        }
        Some(told)
    }

    /// Returns whether a path of an event is the root itself.
    pub fn is_root(&self, path: &Path) -> bool {
        path == self.real || path == self.given
    }

    /// Watches a folder that appeared, and all below it; what is in it is added to `found`.
    ///
    /// Each folder is watched before it is read, so that nothing falls between.
    ///
    /// # Errors
    /// If a folder cannot be watched, such as when the system's limit is reached.
    pub fn enter(&mut self, folder: &Path, found: &mut Vec<PathBuf>) -> io::Result<()> {
        let mut chain = Vec::new();
        self.enter_below(folder, &mut chain, found)
    }

    fn enter_below(&mut self, folder: &Path, chain: &mut Vec<PathBuf>, found: &mut Vec<PathBuf>) -> io::Result<()> {
        let Ok(real) = fs::canonicalize(folder) else { return Ok(()) };
        // A link to a folder above itself would never end.
        if chain.contains(&real) {
            return Ok(());
        }
        if EACH {
            match self.watcher.watch(folder, RecursiveMode::NonRecursive) {
                Ok(()) => {}
                // It is gone again, which its own event tells.
                Err(_) if !folder.exists() => return Ok(()),
                Err(error) => return Err(io::Error::other(error)),
            }
            self.folders.insert(folder.to_owned());
        }
        chain.push(real);
        let entries = fs::read_dir(folder).into_iter().flatten().flatten();
        for path in entries.map(|entry| entry.path()) {
            if self.told(&path).is_none() {
                continue;
            }
            if path.is_dir() {
                self.enter_below(&path, chain, found)?;
            } else {
                found.push(path);
            }
        }
        chain.pop();
        Ok(())
    }

    /// Stops watching a folder that went, and all below it; elsewhere it might still be told under its old name.
    pub fn leave(&mut self, gone: &Path) {
        let left: Vec<PathBuf> =
            self.folders.range(gone.to_owned()..).take_while(|path| path.starts_with(gone)).cloned().collect();
        for folder in left {
            // The system may have stopped by itself.
            let _ = self.watcher.unwatch(&folder);
            self.folders.remove(&folder);
        }
    }
}
