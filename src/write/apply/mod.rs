//! Putting the pages into the folder, in an order that may be stopped anywhere.
//!
//! 1. Everything new is written aside, in a folder of the site's own file system.
//! 2. A list naming the old and the new files is put in place, so that whatever happens next is
//!    known to be ours.
//! 3. Old files that stand in the way are removed, folders made, and each new file moved into
//!    place in one step; a folder that is new altogether is moved with all that is in it.
//! 4. Old files are removed, and folders this empties.
//! 5. The list of just the new files is put in place.
//!
//! Until 3 the site is as it was. After it, each page is whole, and the next make finds by
//! comparing what is left to do.
//!
//! We look for links before we write and do not guard against one that is put there meanwhile:
//! whoever can do that in the designer's folder can as well change her files.

mod aside;
mod place;
mod real;
mod survey;

use std::collections::BTreeMap;
use std::io;
use std::path::Path;

use rayon::prelude::*;

use super::{
    Disk, Doing, Kind, LOCK, Left, MANIFEST, Manifest, Progress, RECORDS, Report, SiteFile, SitePath, Trouble, plan,
};

pub use real::RealDisk;

/// Puts the files into a folder and removes what an earlier make left there and this one did not.
///
/// A folder that is missing is made; one that holds anything ballband did not make, and no list
/// of ours, is refused. Files that are already as they should be are not touched, so they keep
/// their times. Files are made and compared on all of rayon's threads.
///
/// # Errors
/// [`Trouble`] says what, where and how the site was left. For everything but a disk that fails
/// half-way, it was left as it was.
pub fn publish(
    folder: &Path,
    files: Vec<SiteFile<'_>>,
    progress: &(dyn Fn(Progress) + Sync),
) -> Result<Report, Trouble> {
    publish_on(&RealDisk::new(folder), files, progress)
}

/// As [`publish`], on any disk.
///
/// # Errors
/// As [`publish`].
pub fn publish_on(
    disk: &dyn Disk,
    mut files: Vec<SiteFile<'_>>,
    progress: &(dyn Fn(Progress) + Sync),
) -> Result<Report, Trouble> {
    files.sort_by(|a, b| a.path.cmp(&b.path));
    let paths: Vec<SitePath> = files.iter().map(|file| file.path.clone()).collect();
    plan::check(&paths).map_err(|why| refused(disk, why))?;

    let _lock = enter(disk)?;
    let old = read_list(disk)?;
    aside::clean(disk)?;
    let survey = survey::survey(disk, &old.manifest, &files, &paths, progress)?;
    let plan = plan::decide(&survey.existing, &paths).map_err(|why| refused(disk, why))?;

    let outcome = aside::write(disk, &files, &plan, progress);
    let placed = outcome.and_then(|written| place::place(disk, &paths, &plan, &old, &survey, written, progress));
    // What is left aside is of no use to anybody. If even this fails, the site is still as `placed`
    // says, and the next make cleans up before it begins.
    let _ = aside::clean(disk);
    placed
}

/// The list an earlier make left.
struct Old {
    manifest: Manifest,
    /// As it is on the disk; none if there is no list.
    bytes: Option<Vec<u8>>,
}

fn refused(disk: &dyn Disk, why: super::Refusal) -> Trouble {
    Trouble::Refused { place: disk.place(why.path()), why }
}

fn trouble<'a>(disk: &'a dyn Disk, doing: Doing, path: &'a str, left: Left) -> impl FnOnce(io::Error) -> Trouble + 'a {
    move |error| Trouble::Disk { doing, place: disk.place(path), error, left }
}

fn untouched<'a>(disk: &'a dyn Disk, doing: Doing, path: &'a str) -> impl FnOnce(io::Error) -> Trouble + 'a {
    trouble(disk, doing, path, Left::AsItWas)
}

/// Makes the folders, a level at a time so that each level can be made at once.
fn make_folders(disk: &dyn Disk, folders: &[String], left: Left) -> Result<(), Trouble> {
    let mut levels: BTreeMap<usize, Vec<&str>> = BTreeMap::new();
    for folder in folders {
        levels.entry(folder.matches('/').count()).or_default().push(folder);
    }
    levels.into_values().try_for_each(|level| {
        level
            .par_iter()
            .try_for_each(|folder| disk.make_folder(folder).map_err(trouble(disk, Doing::MakeFolder, folder, left)))
    })
}

/// Makes or takes the folder, if it may be taken, and locks it.
fn enter(disk: &dyn Disk) -> Result<Box<dyn super::Held>, Trouble> {
    let wrong = |path, should_be| Trouble::WrongKind { place: disk.place(path), should_be };
    match disk.root().map_err(untouched(disk, Doing::Read, ""))? {
        None => disk.make_root().map_err(untouched(disk, Doing::MakeFolder, ""))?,
        Some(Kind::Folder) => {}
        Some(Kind::File(_) | Kind::Other) => return Err(wrong("", "a folder")),
    }
    // Before anything is made in the folder: is it ours, or empty?
    let look = |path| disk.look(path).map_err(untouched(disk, Doing::Read, path));
    let records = look(RECORDS)?;
    if !matches!(records, None | Some(Kind::Folder)) {
        return Err(wrong(RECORDS, "a folder"));
    }
    let list = if records.is_some() { look(MANIFEST)? } else { None };
    if list.is_none() {
        let names = disk.list("").map_err(untouched(disk, Doing::Read, ""))?;
        if names.iter().any(|(name, _)| name != RECORDS) {
            return Err(Trouble::NotOurs { folder: disk.place("") });
        }
    }
    if records.is_none() {
        disk.make_folder(RECORDS).map_err(untouched(disk, Doing::MakeFolder, RECORDS))?;
    }
    if !matches!(look(LOCK)?, None | Some(Kind::File(_))) {
        return Err(wrong(LOCK, "a file"));
    }
    match disk.lock(LOCK).map_err(untouched(disk, Doing::Lock, LOCK))? {
        Some(lock) => Ok(lock),
        None => Err(Trouble::Busy { folder: disk.place("") }),
    }
}

fn read_list(disk: &dyn Disk) -> Result<Old, Trouble> {
    match disk.look(MANIFEST).map_err(untouched(disk, Doing::Read, MANIFEST))? {
        None => Ok(Old { manifest: Manifest::default(), bytes: None }),
        Some(Kind::File(_)) => {
            let bytes = disk.read(MANIFEST).map_err(untouched(disk, Doing::Read, MANIFEST))?;
            let manifest = Manifest::read(&bytes).map_err(|why| Trouble::List {
                place: disk.place(MANIFEST),
                folder: disk.place(""),
                why,
            })?;
            Ok(Old { manifest, bytes: Some(bytes) })
        }
        Some(Kind::Folder | Kind::Other) => {
            Err(Trouble::WrongKind { place: disk.place(MANIFEST), should_be: "a file" })
        }
    }
}
