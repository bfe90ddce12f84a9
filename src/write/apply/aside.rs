//! Making and writing new files aside, where they touch nothing.

use std::collections::HashMap;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, Mutex, PoisonError};

use rayon::prelude::*;

use super::{make_folders, untouched};
use crate::write::path::folders_of_all;
use crate::write::{
    ASIDE, Batch, Content, Digest, Disk, Doing, Kind, Left, Made, Plan, Progress, RECORDS, SiteFile, SitePath, Stage,
    Trouble,
};

/// What came of a file that was to be written.
pub(super) struct Written {
    /// Its number among the wanted files.
    pub number: usize,
    /// False if, once made, it turned out to be what is there already.
    pub aside: bool,
    /// For a costly one, what it was made from.
    pub made: Option<Made>,
}

/// The path a file waits at: its place in a folder that is moved whole, or a number, since its own name might clash.
fn waits_at(plan: &Plan, number: usize, path: &str) -> String {
    if plan.goes_along(path) { in_new(path) } else { format!("{ASIDE}/{number}") }
}

/// The path at which something of a folder waits that is moved whole.
fn in_new(path: &str) -> String {
    format!("{ASIDE}/new/{path}")
}

/// What is moved, from where it waits to where it goes: each file that is moved alone, and each whole folder.
pub(super) fn moves<'a>(plan: &'a Plan, files: &[(usize, &'a SitePath)]) -> Vec<(String, &'a str)> {
    let alone = files.iter().map(|(number, path)| (*number, path.as_str())).filter(|(_, path)| !plan.goes_along(path));
    let alone = alone.map(|(number, path)| (waits_at(plan, number, path), path));
    alone.chain(plan.whole.iter().map(|folder| (in_new(folder), folder.as_str()))).collect()
}

/// Makes the folders that are moved whole, with all in them, where they wait.
fn make_whole(disk: &dyn Disk, files: &[SiteFile<'_>], plan: &Plan) -> Result<(), Trouble> {
    if plan.whole.is_empty() {
        return Ok(());
    }
    let along = |path: &&SitePath| plan.goes_along(path.as_str());
    let paths = plan.write.iter().filter_map(|number| files.get(*number)).map(|file| &file.path).filter(along);
    let paths: Vec<SitePath> = paths.cloned().collect();
    let new = [ASIDE.to_owned(), format!("{ASIDE}/new")].into_iter();
    let all: Vec<String> = new.chain(folders_of_all(&paths).map(in_new)).collect();
    make_folders(disk, &all, Left::AsItWas)
}

/// Removes what waits aside, ours or left by a make that was stopped.
///
/// Anything there that is neither a file nor a folder is left, and so is the folder then.
pub(super) fn clean(disk: &dyn Disk) -> Result<(), Trouble> {
    let looked = disk.look(RECORDS).map_err(untouched(disk, Doing::Read, RECORDS))?;
    let there = disk.look(ASIDE).map_err(untouched(disk, Doing::Read, ASIDE))?;
    match (looked, there) {
        (Some(Kind::Folder), Some(Kind::Folder)) => {}
        (Some(Kind::Folder), Some(_)) => {
            return Err(Trouble::WrongKind { place: disk.place(ASIDE), should_be: "a folder" });
        }
        _ => return Ok(()),
    }
    clear(disk, ASIDE)
}

/// Removes the files in a folder and in those in it, and each folder that this empties.
fn clear(disk: &dyn Disk, folder: &str) -> Result<(), Trouble> {
    let names = disk.list(folder).map_err(untouched(disk, Doing::Read, folder))?;
    names.par_iter().try_for_each(|(name, kind)| {
        let path = format!("{folder}/{name}");
        match kind {
            Kind::File(_) => disk.remove_file(&path).map_err(untouched(disk, Doing::Remove, &path)),
            Kind::Folder => clear(disk, &path),
            Kind::Other => Ok(()),
        }
    })?;
    match disk.remove_folder(folder) {
        Err(error) if error.kind() == std::io::ErrorKind::DirectoryNotEmpty => Ok(()),
        done => done.map_err(untouched(disk, Doing::Remove, folder)),
    }
}

/// Makes what the plan says to write, and writes it aside.
pub(super) fn write(
    disk: &dyn Disk,
    files: &[SiteFile<'_>],
    plan: &Plan,
    progress: &(dyn Fn(Progress) + Sync),
) -> Result<Vec<Written>, Trouble> {
    if plan.write.is_empty() {
        return Ok(Vec::new());
    }
    let total = plan.write.len();
    make_whole(disk, files, plan)?;
    progress(Progress { stage: Stage::Writing, done: 0, total });
    let done = AtomicUsize::new(0);
    let work = Work { disk, files, plan, folder: Mutex::new(false) };
    let tell = || {
        let done = done.fetch_add(1, Ordering::Relaxed) + 1;
        progress(Progress { stage: Stage::Writing, done, total });
    };
    let (ones, batches) = units(files, &plan.write);
    // Small pieces, since a thread that is done can take no part of a piece that another has begun.
    let ones: Vec<Option<Written>> = ones
        .into_par_iter()
        .with_max_len(PIECE)
        .map(|number| work.one(number, &tell))
        .collect::<Result<_, Trouble>>()?;
    let parts: Vec<Vec<Written>> = batches
        .into_par_iter()
        .with_max_len(1)
        .map(|(batch, parts)| work.parts(&batch, &parts, &tell))
        .collect::<Result<_, Trouble>>()?;
    let mut written: Vec<Written> = ones.into_iter().flatten().chain(parts.into_iter().flatten()).collect();
    written.sort_by_key(|one| one.number);
    Ok(written)
}

/// Makes the folder that new files wait in, if it is not there.
pub(super) fn make_folder(disk: &dyn Disk) -> Result<(), Trouble> {
    if disk.look(ASIDE).map_err(untouched(disk, Doing::Read, ASIDE))?.is_none() {
        disk.make_folder(ASIDE).map_err(untouched(disk, Doing::MakeFolder, ASIDE))?;
    }
    Ok(())
}

/// How many files a thread takes on at once.
const PIECE: usize = 16;

/// A batch with numbers of files and the number of the part of each, in the order of the files.
type Parts = (Arc<Batch>, Vec<(usize, usize)>);

/// Tells the files that are made alone from those that are made together, and gathers the parts of each batch.
///
/// Those made alone come first, because a page that cannot be made is then known before any costly batch is. Among them
/// the fewer folders a file lies in, the earlier it comes: such pages list many others and take longest.
fn units(files: &[SiteFile<'_>], write: &[usize]) -> (Vec<usize>, Vec<Parts>) {
    let mut batches: Vec<Parts> = Vec::new();
    let mut which: HashMap<*const Batch, usize> = HashMap::new();
    let mut ones = Vec::new();
    for &number in write {
        let Some(Content::Part { batch, part, .. }) = files.get(number).map(|file| &file.content) else {
            ones.push(number);
            continue;
        };
        let at = *which.entry(Arc::as_ptr(batch)).or_insert_with(|| {
            batches.push((Arc::clone(batch), Vec::new()));
            batches.len() - 1
        });
        if let Some((_, parts)) = batches.get_mut(at) {
            parts.push((number, *part));
        }
    }
    ones.sort_by_key(|number| files.get(*number).map_or(0, |file| file.path.folders().count()));
    (ones, batches)
}

struct Work<'a> {
    disk: &'a dyn Disk,
    files: &'a [SiteFile<'a>],
    plan: &'a Plan,
    /// Whether the folder that files wait in is there; it is made for the first of them.
    folder: Mutex<bool>,
}

impl Work<'_> {
    fn one(&self, number: usize, tell: &(dyn Fn() + Sync)) -> Result<Option<Written>, Trouble> {
        let Some(file) = self.files.get(number) else { return Ok(None) };
        let written = match &file.content {
            Content::Bytes(bytes) => self.bytes(number, file.path.as_str(), bytes)?,
            Content::Derived { make, .. } => {
                let bytes = make().map_err(|why| Trouble::Make { path: file.path.clone(), why })?;
                self.made(number, file, &bytes)?
            }
            // Parts are never alone: `units` gathers them.
            Content::Part { .. } => return Ok(None),
        };
        tell();
        Ok(Some(written))
    }

    fn parts(
        &self,
        batch: &Batch,
        parts: &[(usize, usize)],
        tell: &(dyn Fn() + Sync),
    ) -> Result<Vec<Written>, Trouble> {
        let asked: Vec<usize> = parts.iter().map(|(_, part)| *part).collect();
        let first = parts.first().and_then(|(number, _)| self.files.get(*number));
        let Some(first) = first else { return Ok(Vec::new()) };
        let all = batch.make(&asked).map_err(|why| Trouble::Make { path: first.path.clone(), why })?;
        let mut written = Vec::with_capacity(parts.len());
        for ((number, _), bytes) in parts.iter().zip(all) {
            let Some(file) = self.files.get(*number) else { continue };
            written.push(self.made(*number, file, &bytes)?);
            tell();
        }
        Ok(written)
    }

    /// Writes a file that was made aside, unless it came out as it was.
    fn made(&self, number: usize, file: &SiteFile<'_>, bytes: &[u8]) -> Result<Written, Trouble> {
        let path = file.path.as_str();
        let made = file.content.from().map(|from| Made { from, out: Digest::of(bytes) });
        let there = self.plan.replace.contains(&number);
        if there && self.disk.same(path, bytes).map_err(untouched(self.disk, Doing::Read, path))? {
            return Ok(Written { number, aside: false, made });
        }
        Ok(Written { made, ..self.bytes(number, path, bytes)? })
    }

    fn bytes(&self, number: usize, path: &str, bytes: &[u8]) -> Result<Written, Trouble> {
        self.folder()?;
        let path = waits_at(self.plan, number, path);
        self.disk.write(&path, bytes).map_err(untouched(self.disk, Doing::Write, &path))?;
        Ok(Written { number, aside: true, made: None })
    }

    fn folder(&self) -> Result<(), Trouble> {
        // A thread that stopped while it held this told its own error; looking again does no harm.
        let mut there = self.folder.lock().unwrap_or_else(PoisonError::into_inner);
        if !*there {
            make_folder(self.disk)?;
            *there = true;
        }
        Ok(())
    }
}
