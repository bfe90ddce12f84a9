//! Looking at what is there before anything is decided.

use std::collections::{BTreeMap, BTreeSet};

use rayon::prelude::*;

use super::untouched;
use crate::write::path::folder_of;
use crate::write::{
    Content, Digest, Disk, Doing, Existing, Found, Kind, Made, Manifest, Progress, RECORDS, SiteFile, SitePath, Stage,
    Trouble,
};

/// What is there, and what is known of the wanted files that are kept.
pub(super) struct Survey {
    pub existing: Existing,
    /// For each wanted file that is as it should be and costly: what it was made from.
    pub made: Vec<Option<Made>>,
}

pub(super) fn survey(
    disk: &dyn Disk,
    old: &Manifest,
    files: &[SiteFile<'_>],
    paths: &[SitePath],
    progress: &(dyn Fn(Progress) + Sync),
) -> Result<Survey, Trouble> {
    progress(Progress { stage: Stage::Comparing, done: 0, total: files.len() });
    let mut found = folders(disk, old, paths)?;

    // A link among the folders is not followed: what lies below it counts as not there.
    let reachable = |path: &str| {
        let folder = folder_of(path);
        folder.is_empty() || found.get(folder) == Some(&Found::Folder)
    };
    let looked: Vec<(Option<Found>, Option<Made>)> = files
        .par_iter()
        .map(|file| if reachable(file.path.as_str()) { wanted(disk, old, file) } else { Ok((None, None)) })
        .collect::<Result<_, Trouble>>()?;

    let want: BTreeSet<&str> = paths.iter().map(SitePath::as_str).collect();
    let obsolete: Vec<&SitePath> =
        old.files.keys().filter(|path| !want.contains(path.as_str()) && reachable(path.as_str())).collect();
    let there: Vec<Option<Kind>> =
        obsolete.par_iter().map(|path| look(disk, path.as_str())).collect::<Result<_, Trouble>>()?;

    for (path, kind) in obsolete.iter().zip(there) {
        if let Some(kind) = kind {
            found.insert(path.to_string(), plainly(kind));
        }
    }
    let mut made = Vec::with_capacity(files.len());
    for (path, (what, from)) in paths.iter().zip(looked) {
        if let Some(what) = what {
            if what == Found::Folder {
                everything_in(disk, path.as_str(), &mut found)?;
            }
            found.insert(path.to_string(), what);
        }
        made.push(from);
    }
    let folds = folds(disk)?;
    Ok(Survey { existing: Existing { manifest: old.clone(), found, folds }, made })
}

/// Whether the disk takes capitals and small letters for one: is our folder there in capitals too?
fn folds(disk: &dyn Disk) -> Result<bool, Trouble> {
    let capitals = RECORDS.to_uppercase();
    if look(disk, &capitals)?.is_none() {
        return Ok(false);
    }
    // Or did somebody make such a folder?
    let names = disk.list("").map_err(untouched(disk, Doing::Read, ""))?;
    Ok(names.iter().all(|(name, _)| *name != capitals))
}

fn look(disk: &dyn Disk, path: &str) -> Result<Option<Kind>, Trouble> {
    disk.look(path).map_err(untouched(disk, Doing::Read, path))
}

fn plainly(kind: Kind) -> Found {
    match kind {
        Kind::File(_) => Found::Differs,
        Kind::Folder => Found::Folder,
        Kind::Other => Found::Other,
    }
}

/// Looks at the folders of all wanted and old files, outermost first.
fn folders(disk: &dyn Disk, old: &Manifest, paths: &[SitePath]) -> Result<BTreeMap<String, Found>, Trouble> {
    let all: BTreeSet<&str> = paths.iter().chain(old.files.keys()).flat_map(SitePath::folders).collect();
    let mut levels: BTreeMap<usize, Vec<&str>> = BTreeMap::new();
    for folder in all {
        levels.entry(folder.matches('/').count()).or_default().push(folder);
    }
    let mut found = BTreeMap::new();
    for level in levels.into_values() {
        let there: Vec<Option<(&str, Kind)>> = level
            .par_iter()
            .map(|&folder| {
                let outer = folder_of(folder);
                if outer.is_empty() || found.get(outer) == Some(&Found::Folder) {
                    Ok(look(disk, folder)?.map(|kind| (folder, kind)))
                } else {
                    Ok(None)
                }
            })
            .collect::<Result<_, Trouble>>()?;
        for (folder, kind) in there.into_iter().flatten() {
            found.insert(folder.to_owned(), plainly(kind));
        }
    }
    Ok(found)
}

/// Looks at a wanted file, and whether it is as it should be.
fn wanted(disk: &dyn Disk, old: &Manifest, file: &SiteFile<'_>) -> Result<(Option<Found>, Option<Made>), Trouble> {
    let path = file.path.as_str();
    let size = match look(disk, path)? {
        None => return Ok((None, None)),
        Some(Kind::File(size)) => size,
        Some(kind) => return Ok((Some(plainly(kind)), None)),
    };
    let same = |bytes: &[u8]| {
        if bytes.len() as u64 == size {
            disk.same(path, bytes).map_err(untouched(disk, Doing::Read, path))
        } else {
            Ok(false)
        }
    };
    let as_found = |same| Some(if same { Found::Same } else { Found::Differs });
    if let Content::Bytes(bytes) = &file.content {
        return Ok((as_found(same(bytes)?), None));
    }
    let from = file.content.from();
    match old.files.get(path) {
        Some(Some(made)) if Some(made.from) == from => {
            let bytes = disk.read(path).map_err(untouched(disk, Doing::Read, path))?;
            let same = Digest::of(&bytes) == made.out;
            Ok((as_found(same), same.then_some(*made)))
        }
        // Ours, of another digest or none: it is made anew, and compared then.
        Some(_) => Ok((Some(Found::Differs), None)),
        // Hers, or ours and the list is lost. It may stay only if it is just what we would make,
        // so we have to know that now, before anything is decided.
        None => {
            let bytes = match &file.content {
                Content::Bytes(bytes) => Ok(bytes.clone()),
                Content::Derived { make, .. } => make(),
                Content::Part { batch, part, .. } => batch.make(&[*part]).map(|mut all| {
                    // `Batch::make` answers one part for one asked.
                    all.pop().unwrap_or_default()
                }),
            }
            .map_err(|why| Trouble::Make { path: file.path.clone(), why })?;
            let same = same(&bytes)?;
            Ok((as_found(same), from.filter(|_| same).map(|from| Made { from, out: Digest::of(&bytes) })))
        }
    }
}

/// Adds everything inside a folder, without following links.
fn everything_in(disk: &dyn Disk, folder: &str, found: &mut BTreeMap<String, Found>) -> Result<(), Trouble> {
    let mut todo = vec![folder.to_owned()];
    while let Some(folder) = todo.pop() {
        let names = disk.list(&folder).map_err(untouched(disk, Doing::Read, &folder))?;
        for (name, kind) in names {
            let path = format!("{folder}/{name}");
            if kind == Kind::Folder {
                todo.push(path.clone());
            }
            found.insert(path, plainly(kind));
        }
    }
    Ok(())
}
