//! A studio's files: where they come from, and places in them.
//!
//! Everything after this stage works on [`Texts`] in memory and never touches a disk. [`disk`] is the only
//! file here that does; [`memory`] lets a test state a whole studio as values.

pub mod disk;
pub mod memory;
mod path;
mod place;
mod text;

pub use path::FilePath;
pub use place::{Place, Position};
pub use text::{Text, Texts, Unreadable, load, may_hold_entries};

use std::io;

/// The files of a studio, in any order.
#[derive(Debug, Default)]
pub struct Listing {
    /// The files.
    pub paths: Vec<FilePath>,
    /// Files and folders that the system refused, such as links that lead nowhere.
    pub refused: Vec<(FilePath, io::Error)>,
}

/// Where a studio's files come from.
///
/// Implementations list every file of the studio once, in any order, and read one whole file at a time.
pub trait Files: Sync {
    /// Returns the paths of all files below the studio's root, without hidden ones and earlier output.
    ///
    /// # Errors
    /// If the studio's own folder cannot be listed; what is refused below it is among the result.
    fn list(&self) -> io::Result<Listing>;

    /// Returns the bytes of one file.
    ///
    /// # Errors
    /// If the file is missing or cannot be read.
    fn read(&self, path: &FilePath) -> io::Result<Vec<u8>>;
}
