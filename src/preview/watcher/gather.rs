//! One burst as it grows.
#![allow(clippy::disallowed_methods, reason = "watching looks at the disk")]

use super::Burst;
use super::change::Change;
use super::reach::{EACH, Reach};
use notify::Event;
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// What was noticed of one path.
#[derive(Clone, Copy, Debug, Default)]
struct Noticed {
    made: bool,
    gone: bool,
}

/// What was noticed since the last burst.
#[derive(Debug, Default)]
pub(super) struct Gather {
    noticed: BTreeMap<PathBuf, Noticed>,
    /// Whether something was lost.
    pub all: bool,
    /// Whether something happened to the root itself.
    pub root: bool,
}

impl Gather {
    /// Returns whether there is anything to tell.
    pub fn is_empty(&self) -> bool {
        self.noticed.is_empty() && !self.all && !self.root
    }

    /// Adds an event.
    pub fn add<F: Fn(&Path) -> bool>(&mut self, event: &Event, reach: &mut Reach<F>) {
        self.all |= event.need_rescan();
        let Some(change) = super::change::change(event) else { return };
        for path in &event.paths {
            if reach.is_root(path) {
                self.root |= change == Change::Gone || change == Change::Ask;
                continue;
            }
            for name in reach.names(path) {
                self.notice(&name, change, reach);
            }
        }
    }

    fn notice<F: Fn(&Path) -> bool>(&mut self, path: &Path, change: Change, reach: &mut Reach<F>) {
        let Some(told) = reach.told(path) else { return };
        let change = match change {
            Change::Ask if fs::symlink_metadata(path).is_ok() => Change::Here,
            Change::Ask => Change::Gone,
            known => known,
        };
        match change {
            Change::Gone => self.all |= reach.leave(path),
            Change::Made | Change::Here if path.is_dir() => self.enter(path, reach),
            _ => {}
        }
        let noticed = self.noticed.entry(told).or_insert(Noticed { made: change == Change::Made, gone: false });
        noticed.gone |= change == Change::Gone;
    }

    /// Returns the burst and begins anew.
    pub fn burst(&mut self) -> Burst {
        let Self { noticed, all, .. } = std::mem::take(self);
        let paths = noticed.into_iter().filter(|(path, noticed)| noticed.tells(path)).map(|(path, _)| path).collect();
        Burst { paths, all }
    }

    fn enter<F: Fn(&Path) -> bool>(&mut self, folder: &Path, reach: &mut Reach<F>) {
        let mut found = Vec::new();
        // A folder that cannot be watched is looked at this once at least.
        self.all |= reach.enter(folder, &mut found).is_err();
        for told in found.iter().filter_map(|path| reach.told(path)) {
            self.noticed.entry(told).or_default();
        }
    }
}

impl Noticed {
    /// Returns whether a path is told, now that the burst is over.
    fn tells(self, path: &Path) -> bool {
        match fs::symlink_metadata(path) {
            // What is in a folder is told by itself, unless there was another folder before it.
            Ok(_) => self.gone || !path.is_dir(),
            // Made and gone again: a copy aside that was moved over the real file.
            Err(_) => !(EACH && self.made),
        }
    }
}
