//! The folders that are watched.
#![allow(clippy::disallowed_methods, reason = "watching looks at the disk")]

use super::leftover::is_leftover;
use notify::{RecommendedWatcher, RecursiveMode, Watcher};
use std::collections::{BTreeMap, BTreeSet};
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
    /// The folders that are watched by themselves, each with its path without links.
    folders: BTreeMap<PathBuf, PathBuf>,
    /// The names that a folder has in the tree, by its path without links: the system tells it under one of them.
    names: BTreeMap<PathBuf, BTreeSet<PathBuf>>,
}

impl<F: Fn(&Path) -> bool> Reach<F> {
    /// Begins to watch; hands `ours` back if that fails.
    pub fn begin(given: &Path, ours: F, watcher: notify::Result<RecommendedWatcher>) -> Result<Self, (F, io::Error)> {
        let (real, watcher) = match (fs::canonicalize(given), watcher) {
            (Ok(real), Ok(watcher)) => (real, watcher),
            (Err(error), _) => return Err((ours, error)),
            (_, Err(error)) => return Err((ours, io::Error::other(error))),
        };
        let (folders, names) = (BTreeMap::new(), BTreeMap::new());
        let mut reach = Self { given: given.to_owned(), real: real.clone(), ours, watcher, folders, names };
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

    /// Returns every name that the path of an event has in the tree: its folder may be linked from elsewhere in it.
    pub fn names(&self, path: &Path) -> Vec<PathBuf> {
        let folder = path.parent().and_then(|folder| self.names.get(self.folders.get(folder)?));
        match (folder, path.file_name()) {
            (Some(folders), Some(name)) => folders.iter().map(|folder| folder.join(name)).collect(),
            _ => vec![path.to_owned()],
        }
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
        let above = folder.ancestors().skip(1).take_while(|above| above.starts_with(&self.real));
        let mut chain = above.filter_map(|above| fs::canonicalize(above).ok()).collect();
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
            self.folders.insert(folder.to_owned(), real.clone());
            self.names.entry(real.clone()).or_default().insert(folder.to_owned());
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
    ///
    /// Returns whether something may have been missed: one watch serves all names of a folder, and what is told under one
    /// that is gone could be in another.
    pub fn leave(&mut self, gone: &Path) -> bool {
        let is_below = |(path, _): &(&PathBuf, &PathBuf)| path.starts_with(gone);
        let left: Vec<(PathBuf, PathBuf)> = self
            .folders
            .range(gone.to_owned()..)
            .take_while(is_below)
            .map(|(path, real)| (path.clone(), real.clone()))
            .collect();
        let mut is_missed = false;
        for (folder, real) in left {
            self.folders.remove(&folder);
            let names = self.names.entry(real.clone()).or_default();
            names.remove(&folder);
            if let Some(other) = names.iter().find(|name| !name.starts_with(gone)) {
                // The same watch, under another name from now on.
                let _ = self.watcher.watch(other, RecursiveMode::NonRecursive);
                is_missed = true;
            } else {
                // The system may have stopped by itself.
                let _ = self.watcher.unwatch(&folder);
            }
            if names.is_empty() {
                self.names.remove(&real);
            }
        }
        is_missed
    }
}
