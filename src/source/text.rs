//! All texts of a studio, read once.

use super::{FilePath, Files, Listing};
use rayon::prelude::*;
use std::collections::BTreeMap;
use std::io;
use std::sync::Arc;

/// The extensions of files that hold entries; everything else is a picture, a template or none of our business.
const TEXT_EXTENSIONS: [&str; 4] = ["md", "markdown", "yaml", "yml"];

/// One file's text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Text {
    /// The content without a byte-order mark; line ends are as the file has them.
    pub content: Arc<str>,
    /// Whether the file began with a byte-order mark.
    pub had_mark: bool,
}

/// Every text of a studio by path, in a fixed order, and the names of its other files.
#[derive(Clone, Debug, Default)]
pub struct Texts {
    /// The texts that could be read.
    pub texts: BTreeMap<FilePath, Text>,
    /// Texts that no entries are read from, kept to show findings in: templates, and texts that are not UTF-8 with a sign
    /// for each wrong byte.
    pub only_shown: BTreeMap<FilePath, String>,
    /// Files that hold no entries: pictures, templates and the like, sorted.
    pub others: Vec<FilePath>,
}

impl Texts {
    /// Returns a file's text, empty if there is no such file or it could not be read.
    pub fn of(&self, path: &FilePath) -> &str {
        match self.texts.get(path) {
            Some(text) => &text.content,
            None => self.only_shown.get(path).map_or("", String::as_str),
        }
    }
}

/// Why a text could not be taken in.
#[derive(Debug)]
pub enum Unreadable {
    /// The bytes are not UTF-8; the offset is that of the first wrong byte.
    NotUtf8 {
        /// The file.
        file: FilePath,
        /// Bytes before the first wrong one.
        offset: usize,
    },
    /// The system would not give the file.
    System {
        /// The file.
        file: FilePath,
        /// What the system said.
        error: io::Error,
    },
}

impl Unreadable {
    /// Returns the file that could not be taken in.
    pub fn file(&self) -> &FilePath {
        match self {
            Self::NotUtf8 { file, .. } | Self::System { file, .. } => file,
        }
    }
}

/// Reads every text of a studio; a file that cannot be read is named beside the rest.
///
/// # Errors
/// If the studio's files cannot be listed at all.
pub fn load(files: &dyn Files) -> io::Result<(Texts, Vec<Unreadable>)> {
    let Listing { mut paths, refused } = files.list()?;
    paths.sort_unstable();
    let (wanted, others): (Vec<_>, Vec<_>) = paths.into_iter().partition(may_hold_entries);
    let read: Vec<_> = wanted.into_par_iter().map(|path| (read_one(files, &path), path)).collect();
    let mut texts = Texts { others, ..Texts::default() };
    let mut unreadable: Vec<Unreadable> =
        refused.into_iter().map(|(file, error)| Unreadable::System { file, error }).collect();
    for (result, path) in read {
        match result {
            Ok(text) => {
                texts.texts.insert(path, text);
            }
            Err(Refused::NotUtf8(bytes, offset)) => {
                texts.only_shown.insert(path.clone(), String::from_utf8_lossy(&bytes).into_owned());
                unreadable.push(Unreadable::NotUtf8 { file: path, offset });
            }
            Err(Refused::System(error)) => unreadable.push(Unreadable::System { file: path, error }),
        }
    }
    Ok((texts, unreadable))
}

enum Refused {
    NotUtf8(Vec<u8>, usize),
    System(io::Error),
}

fn read_one(files: &dyn Files, path: &FilePath) -> Result<Text, Refused> {
    let bytes = files.read(path).map_err(Refused::System)?;
    Text::of(bytes).map_err(|(bytes, offset)| Refused::NotUtf8(bytes, offset))
}

/// Returns whether a file is one that entries may be read from, by its name and place.
pub fn may_hold_entries(path: &FilePath) -> bool {
    TEXT_EXTENSIONS.contains(&path.extension().as_str()) && path.folder() != Some("themes")
}

impl Text {
    /// Returns the text of a file's bytes.
    ///
    /// # Errors
    /// The bytes, and how many of them come before the first that is not UTF-8.
    pub fn of(bytes: Vec<u8>) -> Result<Self, (Vec<u8>, usize)> {
        let whole = String::from_utf8(bytes).map_err(|error| {
            let offset = error.utf8_error().valid_up_to();
            (error.into_bytes(), offset)
        })?;
        Ok(match whole.strip_prefix('\u{feff}') {
            Some(rest) => Self { content: Arc::from(rest), had_mark: true },
            None => Self { content: Arc::from(whole), had_mark: false },
        })
    }
}
