//! Moving what waits aside into place, and removing what is no longer wanted.

use std::collections::BTreeMap;
use std::io;

use rayon::prelude::*;

use super::aside::{self, Written};
use super::survey::Survey;
use super::{Old, make_folders, trouble};
use crate::write::{
    ASIDE, Disk, Doing, Kind, Left, MANIFEST, Manifest, Plan, Progress, Report, SitePath, Stage, Trouble,
};

pub(super) fn place(
    disk: &dyn Disk,
    paths: &[SitePath],
    plan: &Plan,
    old: &Old,
    survey: &Survey,
    written: Vec<Written>,
    progress: &(dyn Fn(Progress) + Sync),
) -> Result<Report, Trouble> {
    let new = list(paths, survey, &written);
    let moving: Vec<(usize, &SitePath)> = written
        .iter()
        .filter(|one| one.aside)
        .filter_map(|one| paths.get(one.number).map(|path| (one.number, path)))
        .collect();

    let mut on_disk = OnDisk { disk, bytes: old.bytes.clone() };
    on_disk.put(&old.manifest.union(&new), Left::AsItWas)?;

    progress(Progress { stage: Stage::Placing, done: 0, total: moving.len() });
    each(&plan.clear, |path| remove_file(disk, path))?;
    plan.clear_folders.iter().try_for_each(|folder| remove_folder(disk, folder))?;
    make_folders(disk, &plan.folders, Left::PartlyNew)?;
    let moves = aside::moves(plan, &moving);
    moves.par_iter().try_for_each(|(from, to)| put(disk, from, to))?;

    progress(Progress { stage: Stage::Removing, done: 0, total: plan.remove.len() });
    each(&plan.remove, |path| remove_file(disk, path))?;
    plan.emptied.iter().try_for_each(|folder| remove_folder(disk, folder))?;
    on_disk.put(&new, Left::PartlyNew)?;

    let changed: Vec<SitePath> = moving.iter().map(|(_, path)| (*path).clone()).collect();
    let mut gone: Vec<SitePath> = plan.clear.iter().chain(&plan.remove).cloned().collect();
    gone.sort();
    Ok(Report { written: changed.len(), unchanged: paths.len() - changed.len(), removed: gone.len(), changed, gone })
}

/// The list of just the wanted files.
fn list(paths: &[SitePath], survey: &Survey, written: &[Written]) -> Manifest {
    let made: BTreeMap<usize, _> = written.iter().map(|one| (one.number, one.made)).collect();
    let files = paths
        .iter()
        .enumerate()
        .map(|(number, path)| {
            let known = survey.made.get(number).copied().flatten();
            (path.clone(), made.get(&number).copied().flatten().or(known))
        })
        .collect();
    Manifest { files }
}

/// Our list as it is on the disk, so that it is written only when it changes.
struct OnDisk<'a> {
    disk: &'a dyn Disk,
    bytes: Option<Vec<u8>>,
}

impl OnDisk<'_> {
    fn put(&mut self, list: &Manifest, left: Left) -> Result<(), Trouble> {
        let bytes = list.to_bytes();
        if self.bytes.as_ref() == Some(&bytes) {
            return Ok(());
        }
        aside::make_folder(self.disk)?;
        let path = format!("{ASIDE}/made.json");
        self.disk.write(&path, &bytes).map_err(trouble(self.disk, Doing::Write, &path, left))?;
        self.disk.rename(&path, MANIFEST).map_err(trouble(self.disk, Doing::Place, MANIFEST, left))?;
        self.bytes = Some(bytes);
        Ok(())
    }
}

/// Moves a file, or a folder that is new altogether, into place.
///
/// Where a folder stands by now all the same, or cannot be moved since somebody looks into it, it is made and what is in it
/// moved piece by piece.
fn put(disk: &dyn Disk, from: &str, to: &str) -> Result<(), Trouble> {
    let place = partly(disk, Doing::Place, to);
    let Err(error) = disk.rename(from, to) else { return Ok(()) };
    if !matches!(disk.look(from), Ok(Some(Kind::Folder))) {
        return Err(place(error));
    }
    match disk.look(to).map_err(partly(disk, Doing::Place, to))? {
        Some(Kind::Folder) => {}
        Some(Kind::File(_) | Kind::Other) => return Err(place(error)),
        None => disk.make_folder(to).map_err(partly(disk, Doing::MakeFolder, to))?,
    }
    let inside = disk.list(from).map_err(partly(disk, Doing::Read, from))?;
    inside.iter().try_for_each(|(name, _)| {
        let to = format!("{to}/{name}");
        // A file of hers that came meanwhile is not replaced.
        match disk.look(&to).map_err(partly(disk, Doing::Place, &to))? {
            Some(Kind::File(_) | Kind::Other) => {
                Err(partly(disk, Doing::Place, &to)(io::ErrorKind::AlreadyExists.into()))
            }
            Some(Kind::Folder) | None => put(disk, &format!("{from}/{name}"), &to),
        }
    })
}

fn partly<'a>(disk: &'a dyn Disk, doing: Doing, path: &'a str) -> impl FnOnce(io::Error) -> Trouble + 'a {
    trouble(disk, doing, path, Left::PartlyNew)
}

fn each(paths: &[SitePath], act: impl Fn(&str) -> Result<(), Trouble> + Sync) -> Result<(), Trouble> {
    paths.par_iter().try_for_each(|path| act(path.as_str()))
}

fn remove_file(disk: &dyn Disk, path: &str) -> Result<(), Trouble> {
    match disk.remove_file(path) {
        // Somebody was quicker; it is gone, which is what was wanted.
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(()),
        done => done.map_err(partly(disk, Doing::Remove, path)),
    }
}

/// Removes a folder if it is empty; one that holds something of hers stays.
fn remove_folder(disk: &dyn Disk, path: &str) -> Result<(), Trouble> {
    match disk.remove_folder(path) {
        Err(error) if matches!(error.kind(), io::ErrorKind::NotFound | io::ErrorKind::DirectoryNotEmpty) => Ok(()),
        done => done.map_err(partly(disk, Doing::Remove, path)),
    }
}
