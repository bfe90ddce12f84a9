//! Making and writing new files aside, where they touch nothing.

use std::collections::HashMap;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

use rayon::prelude::*;

use super::survey::Survey;
use super::untouched;
use crate::write::{
    ASIDE, Batch, Content, Digest, Disk, Doing, Found, Kind, Made, Plan, Progress, RECORDS, SiteFile, Stage, Trouble,
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

/// The path a file waits at; its own name might be too long or clash, a number is neither.
pub(super) fn aside(number: usize) -> String {
    format!("{ASIDE}/{number}")
}

/// Removes what waits aside, ours or left by a make that was stopped.
///
/// Anything there that is not a file is left, and so is the folder then.
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
    let names = disk.list(ASIDE).map_err(untouched(disk, Doing::Read, ASIDE))?;
    names.par_iter().filter(|(_, kind)| matches!(kind, Kind::File(_))).try_for_each(|(name, _)| {
        let path = format!("{ASIDE}/{name}");
        disk.remove_file(&path).map_err(untouched(disk, Doing::Remove, &path))
    })?;
    match disk.remove_folder(ASIDE) {
        Err(error) if error.kind() == std::io::ErrorKind::DirectoryNotEmpty => Ok(()),
        done => done.map_err(untouched(disk, Doing::Remove, ASIDE)),
    }
}

/// Makes what the plan says to write, and writes it aside.
pub(super) fn write(
    disk: &dyn Disk,
    files: &[SiteFile],
    plan: &Plan,
    survey: &Survey,
    progress: &(dyn Fn(Progress) + Sync),
) -> Result<Vec<Written>, Trouble> {
    if plan.write.is_empty() {
        return Ok(Vec::new());
    }
    make_folder(disk)?;
    let total = plan.write.len();
    progress(Progress { stage: Stage::Writing, done: 0, total });
    let done = AtomicUsize::new(0);
    let work = Work { disk, files, survey };
    let tell = || {
        let done = done.fetch_add(1, Ordering::Relaxed) + 1;
        progress(Progress { stage: Stage::Writing, done, total });
    };
    let written: Vec<Vec<Written>> = units(files, &plan.write)
        .into_par_iter()
        .map(|unit| work.unit(&unit, &tell))
        .collect::<Result<_, Trouble>>()?;
    let mut written: Vec<Written> = written.into_iter().flatten().collect();
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

/// Files that are made together, on one thread.
enum Unit {
    One(usize),
    /// Numbers of files with the number of their part, in the order of the files.
    Parts(Arc<Batch>, Vec<(usize, usize)>),
}

/// Gathers the parts of each batch. Batches come first, as they take longest.
fn units(files: &[SiteFile], write: &[usize]) -> Vec<Unit> {
    let mut batches: Vec<Unit> = Vec::new();
    let mut which: HashMap<*const Batch, usize> = HashMap::new();
    let mut ones = Vec::new();
    for &number in write {
        let Some(Content::Part { batch, part, .. }) = files.get(number).map(|file| &file.content) else {
            ones.push(Unit::One(number));
            continue;
        };
        let at = *which.entry(Arc::as_ptr(batch)).or_insert_with(|| {
            batches.push(Unit::Parts(Arc::clone(batch), Vec::new()));
            batches.len() - 1
        });
        if let Some(Unit::Parts(_, parts)) = batches.get_mut(at) {
            parts.push((number, *part));
        }
    }
    batches.extend(ones);
    batches
}

struct Work<'a> {
    disk: &'a dyn Disk,
    files: &'a [SiteFile],
    survey: &'a Survey,
}

impl Work<'_> {
    fn unit(&self, unit: &Unit, tell: &dyn Fn()) -> Result<Vec<Written>, Trouble> {
        let numbered = |number: usize| self.files.get(number).map(|file| (number, file));
        let mut written = Vec::new();
        match unit {
            Unit::One(number) => {
                let Some((number, file)) = numbered(*number) else { return Ok(written) };
                written.push(match &file.content {
                    Content::Bytes(bytes) => self.bytes(number, bytes)?,
                    Content::Derived { from, make } => {
                        let bytes = make().map_err(|why| Trouble::Make { path: file.path.clone(), why })?;
                        self.made(number, file, *from, &bytes)?
                    }
                    // Parts are never alone: `units` gathers them.
                    Content::Part { .. } => return Ok(written),
                });
                tell();
            }
            Unit::Parts(batch, parts) => {
                let asked: Vec<usize> = parts.iter().map(|(_, part)| *part).collect();
                let first = parts.first().and_then(|(number, _)| numbered(*number));
                let Some((_, first)) = first else { return Ok(written) };
                let all = batch.make(&asked).map_err(|why| Trouble::Make { path: first.path.clone(), why })?;
                for ((number, _), bytes) in parts.iter().zip(all) {
                    let Some((number, file)) = numbered(*number) else { continue };
                    if let Some(from) = file.content.from() {
                        written.push(self.made(number, file, from, &bytes)?);
                    }
                    tell();
                }
            }
        }
        Ok(written)
    }

    /// Writes a costly file aside, unless it came out as it was.
    fn made(&self, number: usize, file: &SiteFile, from: Digest, bytes: &[u8]) -> Result<Written, Trouble> {
        let path = file.path.as_str();
        let made = Some(Made { from, out: Digest::of(bytes) });
        let there = self.survey.existing.found.get(path) == Some(&Found::Differs);
        if there && self.disk.same(path, bytes).map_err(untouched(self.disk, Doing::Read, path))? {
            return Ok(Written { number, aside: false, made });
        }
        Ok(Written { made, ..self.bytes(number, bytes)? })
    }

    fn bytes(&self, number: usize, bytes: &[u8]) -> Result<Written, Trouble> {
        let path = aside(number);
        self.disk.write(&path, bytes).map_err(untouched(self.disk, Doing::Write, &path))?;
        Ok(Written { number, aside: true, made: None })
    }
}
