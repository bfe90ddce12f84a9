//! What can go wrong, in the designer's words.

use std::fmt;
use std::io;
use std::path::PathBuf;

use super::{Refusal, SitePath, Unreadable};

/// Why the site could not be published.
#[derive(Debug)]
pub enum Trouble {
    /// What was asked for cannot be put into this folder; nothing was touched.
    Refused {
        /// The path in question, as the designer would write it.
        place: PathBuf,
        /// Why not.
        why: Refusal,
    },
    /// The folder holds files and no list of ours; nothing was touched.
    NotOurs {
        /// The site's folder.
        folder: PathBuf,
    },
    /// The site's folder, or our records inside it, is something else than a folder or file.
    WrongKind {
        /// The path in question.
        place: PathBuf,
        /// What it should be: `a folder` or `a file`.
        should_be: &'static str,
    },
    /// Our list of files cannot be relied on; nothing was touched.
    List {
        /// The list.
        place: PathBuf,
        /// The site's folder.
        folder: PathBuf,
        /// What is wrong with the list.
        why: Unreadable,
    },
    /// Another make is at work in this folder.
    Busy {
        /// The site's folder.
        folder: PathBuf,
    },
    /// A file could not be made, such as a photo that is damaged; the site is as it was.
    Make {
        /// The file that was to be made.
        path: SitePath,
        /// Why, as its maker said.
        why: String,
    },
    /// The disk refused.
    Disk {
        /// What we were doing.
        doing: Doing,
        /// To which path.
        place: PathBuf,
        /// What the system said.
        error: io::Error,
        /// How the site was left.
        left: Left,
    },
}

/// What was being done to a path.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doing {
    /// Making a folder.
    MakeFolder,
    /// Reading a file or folder, or asking what it is.
    Read,
    /// Writing a file.
    Write,
    /// Moving a file into place.
    Place,
    /// Removing a file or folder.
    Remove,
    /// Taking the lock.
    Lock,
}

/// How the site was left when something went wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Left {
    /// No page was touched.
    AsItWas,
    /// Some pages are new and some old, each of them whole; the next make finishes.
    PartlyNew,
}

impl fmt::Display for Doing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Doing::MakeFolder => "make the folder",
            Doing::Read => "read",
            Doing::Write => "write",
            Doing::Place => "move into place",
            Doing::Remove => "remove",
            Doing::Lock => "lock",
        })
    }
}

impl fmt::Display for Left {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Left::AsItWas => "the site is as it was",
            Left::PartlyNew => "the site is partly new, each page whole, and the next make finishes it",
        })
    }
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Trouble::Refused { place, why } => why.describe(f, place),
            Trouble::NotOurs { folder } => write!(
                f,
                "`{}` holds files that ballband did not make, so it was left alone: choose an empty or a new folder",
                folder.display()
            ),
            Trouble::WrongKind { place, should_be } => write!(
                f,
                "`{}` is not {should_be}, so nothing was written: move it away or choose another folder",
                place.display()
            ),
            Trouble::List { place, folder, why } => write!(
                f,
                "`{}`, the list of what ballband wrote, cannot be used: {why}; nothing was touched: make the site into a new folder, or empty `{}` yourself and make it again",
                place.display(),
                folder.display()
            ),
            Trouble::Busy { folder } => write!(
                f,
                "another ballband is writing to `{}` now: wait until it is done, or stop it",
                folder.display()
            ),
            Trouble::Make { path, why } => {
                write!(f, "cannot make `{path}`: {why}; {}", Left::AsItWas)
            }
            Trouble::Disk { doing, place, error, left } => {
                write!(f, "cannot {doing} `{}`: {}; {left}", place.display(), plain(error))
            }
        }
    }
}

impl std::error::Error for Trouble {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        match self {
            Trouble::Disk { error, .. } => Some(error),
            _ => None,
        }
    }
}

/// The commonest errors in plain words; the others as the system has them.
fn plain(error: &io::Error) -> String {
    match error.kind() {
        io::ErrorKind::StorageFull => "no space is left on the disk".to_owned(),
        io::ErrorKind::FileTooLarge => "the file is larger than this disk or your share of it takes".to_owned(),
        io::ErrorKind::QuotaExceeded => "your share of the disk is full".to_owned(),
        io::ErrorKind::PermissionDenied => "you may not write there, or not read it".to_owned(),
        io::ErrorKind::ReadOnlyFilesystem => "the disk can only be read".to_owned(),
        io::ErrorKind::NotFound => "it is not there any more".to_owned(),
        _ => error.to_string(),
    }
}
