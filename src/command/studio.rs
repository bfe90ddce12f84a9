//! Finds the studio a command is about.

use super::{Failure, terminal};
use crate::catalogue::View;
use crate::entry::Studio;
use crate::entry::value::Date;
use crate::finding::any_error;
use crate::source::disk::{Disk, MARK};
use crate::source::{FilePath, Files, Listing};
use std::io;
use std::path::Path;

/// Returns the studio that was named, or the nearest one at or above the current folder.
pub fn find(named: Option<&Path>) -> Result<Disk, Failure> {
    if let Some(folder) = named {
        let disk = Disk::at(folder);
        if disk.is_studio() {
            return Ok(disk);
        }
        let why = if folder.is_dir() {
            format!("`{}` is no studio: it holds no `{MARK}`", folder.display())
        } else {
            format!("there is no folder `{}`", folder.display())
        };
        return Err(Failure(format!("{why}; name a studio's folder, or lay one out with `ballband start DIR`")));
    }
    let here = std::env::current_dir()?;
    Disk::find(&here).ok_or_else(|| {
        Failure(format!("there is no studio in `{}` or above it: no `{MARK}`; name one with `--studio DIR`, or lay one out with `ballband start DIR`", here.display()))
    })
}

/// A studio's own file and nothing else of it.
struct OnlyTheMark<'a>(&'a Disk);

impl Files for OnlyTheMark<'_> {
    fn list(&self) -> io::Result<Listing> {
        Ok(Listing { paths: FilePath::new(MARK).into_iter().collect(), refused: Vec::new() })
    }

    fn read(&self, path: &FilePath) -> io::Result<Vec<u8>> {
        self.0.read(path)
    }
}

/// Returns how the studio that was named, or the nearest one, writes numbers; nothing where none was named and none is
/// near. Its entries are not read.
pub fn settings(named: Option<&Path>, today: Date) -> Result<Option<Studio>, Failure> {
    let disk = match named {
        Some(_) => find(named)?,
        None => match Disk::find(&std::env::current_dir()?) {
            Some(disk) => disk,
            None => return Ok(None),
        },
    };
    let joined = crate::join(&OnlyTheMark(&disk), View::of_readers(today))
        .map_err(|error| format!("cannot read the studio in `{}`: {error}", disk.root().display()))?;
    if any_error(&joined.findings) {
        terminal::complain(
            "`studio.yaml` has errors, so its inch may not be the one used; `ballband proof` tells them",
        );
    }
    Ok(Some(joined.catalogue.studio))
}
