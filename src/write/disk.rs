//! What publishing asks of a disk.
//!
//! A trait, so that a test can stop it after any operation. Paths are relative to the site's
//! folder, with `/` between parts; the empty path is the folder itself.

use std::io;
use std::path::PathBuf;

/// What stands at a path; a symbolic link is `Other`, whatever it leads to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A plain file and its size in bytes.
    File(u64),
    /// A folder.
    Folder,
    /// A symbolic link, a device, or whatever else is neither.
    Other,
}

/// A lock, held until it is dropped or the process ends.
pub trait Held {}

impl<T> Held for T {}

/// A folder that a site is put into.
pub trait Disk: Sync {
    /// The path as the designer would write it, for messages.
    fn place(&self, path: &str) -> PathBuf;

    /// What the site's folder is, following a link; none if there is nothing.
    fn root(&self) -> io::Result<Option<Kind>>;

    /// Makes the site's folder and those it lies in.
    fn make_root(&self) -> io::Result<()>;

    /// What stands at a path, without following a link there; none if there is nothing.
    fn look(&self, path: &str) -> io::Result<Option<Kind>>;

    /// The names in a folder, in any order, with what they are.
    fn list(&self, folder: &str) -> io::Result<Vec<(String, Kind)>>;

    /// A file's bytes.
    fn read(&self, path: &str) -> io::Result<Vec<u8>>;

    /// Whether a file holds just these bytes.
    fn same(&self, path: &str, bytes: &[u8]) -> io::Result<bool>;

    /// Writes a file that is not there yet.
    fn write(&self, path: &str, bytes: &[u8]) -> io::Result<()>;

    /// Moves a file over whatever file is at the other path, or a folder to where nothing is, in one step.
    fn rename(&self, from: &str, to: &str) -> io::Result<()>;

    /// Makes a folder whose own folder is there.
    fn make_folder(&self, path: &str) -> io::Result<()>;

    /// Removes a file, or a link rather than what it leads to.
    fn remove_file(&self, path: &str) -> io::Result<()>;

    /// Removes a folder if nothing is in it.
    fn remove_folder(&self, path: &str) -> io::Result<()>;

    /// Takes the lock at a path, making the file if need be; none if another process has it.
    fn lock(&self, path: &str) -> io::Result<Option<Box<dyn Held>>>;
}
