//! The disk itself.

// The one place of this folder that may touch the disk; everything else works on `Disk`.
#![allow(clippy::disallowed_methods)]

use std::fs::{self, File, TryLockError};
use std::io::{self, Read, Write};
use std::path::PathBuf;

use crate::write::{Disk, Held, Kind};

/// A site's folder on the disk.
pub struct RealDisk {
    root: PathBuf,
}

impl RealDisk {
    /// A folder, which need not be there yet.
    pub fn new(root: impl Into<PathBuf>) -> RealDisk {
        RealDisk { root: root.into() }
    }

    fn at(&self, path: &str) -> PathBuf {
        if path.is_empty() { self.root.clone() } else { self.root.join(path) }
    }
}

fn kind(meta: &fs::Metadata) -> Kind {
    if meta.is_dir() {
        Kind::Folder
    } else if meta.is_file() {
        Kind::File(meta.len())
    } else {
        Kind::Other
    }
}

/// Turns "not there" into none. A file where a folder was asked for is "not there" too.
fn if_there(meta: io::Result<fs::Metadata>) -> io::Result<Option<Kind>> {
    match meta {
        Ok(meta) => Ok(Some(kind(&meta))),
        Err(error) if matches!(error.kind(), io::ErrorKind::NotFound | io::ErrorKind::NotADirectory) => Ok(None),
        Err(error) => Err(error),
    }
}

impl Disk for RealDisk {
    fn place(&self, path: &str) -> PathBuf {
        self.at(path)
    }

    fn root(&self) -> io::Result<Option<Kind>> {
        // A link to nowhere is "not there" when followed, and cannot be made a folder either.
        match if_there(fs::metadata(&self.root))? {
            None if fs::symlink_metadata(&self.root).is_ok() => Ok(Some(Kind::Other)),
            kind => Ok(kind),
        }
    }

    fn make_root(&self) -> io::Result<()> {
        fs::create_dir_all(&self.root)
    }

    fn look(&self, path: &str) -> io::Result<Option<Kind>> {
        if_there(fs::symlink_metadata(self.at(path)))
    }

    fn list(&self, folder: &str) -> io::Result<Vec<(String, Kind)>> {
        let mut all = Vec::new();
        for entry in fs::read_dir(self.at(folder))? {
            let entry = entry?;
            // A name that is not Unicode is no name of ours.
            all.push(match entry.file_name().into_string() {
                Ok(name) => (name, kind(&entry.metadata()?)),
                Err(name) => (name.to_string_lossy().into_owned(), Kind::Other),
            });
        }
        Ok(all)
    }

    fn read(&self, path: &str) -> io::Result<Vec<u8>> {
        fs::read(self.at(path))
    }

    fn same(&self, path: &str, bytes: &[u8]) -> io::Result<bool> {
        let mut file = File::open(self.at(path))?;
        let mut rest = bytes;
        let mut piece = [0; 32 * 1024];
        loop {
            let read = match file.read(&mut piece) {
                Ok(read) => read,
                Err(error) if error.kind() == io::ErrorKind::Interrupted => continue,
                Err(error) => return Err(error),
            };
            if read == 0 {
                return Ok(rest.is_empty());
            }
            match (piece.get(..read), rest.get(..read), rest.get(read..)) {
                (Some(there), Some(ours), Some(after)) if there == ours => rest = after,
                _ => return Ok(false),
            }
        }
    }

    fn write(&self, path: &str, bytes: &[u8]) -> io::Result<()> {
        let mut file = File::create_new(self.at(path))?;
        file.write_all(bytes)?;
        // Nothing is buffered in the process, so the bytes outlive it; they are not forced to the
        // platters, which would cost milliseconds a file and is not what is promised.
        file.flush()
    }

    fn rename(&self, from: &str, to: &str) -> io::Result<()> {
        fs::rename(self.at(from), self.at(to))
    }

    fn make_folder(&self, path: &str) -> io::Result<()> {
        match fs::create_dir(self.at(path)) {
            // Where the disk folds capitals, a folder's other spelling is the folder.
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists && self.look(path)? == Some(Kind::Folder) => {
                Ok(())
            }
            done => done,
        }
    }

    fn remove_file(&self, path: &str) -> io::Result<()> {
        fs::remove_file(self.at(path))
    }

    fn remove_folder(&self, path: &str) -> io::Result<()> {
        fs::remove_dir(self.at(path))
    }

    fn lock(&self, path: &str) -> io::Result<Option<Box<dyn Held>>> {
        // Opened for writing, as some systems lock nothing else, and never written to: an empty
        // file is the same in every folder.
        let file = File::options().create(true).truncate(false).write(true).open(self.at(path))?;
        match file.try_lock() {
            Ok(()) => Ok(Some(Box::new(file))),
            Err(TryLockError::WouldBlock) => Ok(None),
            // Some network disks know no locks. To refuse to publish there would be worse than
            // the small chance of two makes at once.
            Err(TryLockError::Error(error)) if error.kind() == io::ErrorKind::Unsupported => Ok(Some(Box::new(file))),
            Err(TryLockError::Error(error)) => Err(error),
        }
    }
}
