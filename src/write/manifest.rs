//! The list of what a make wrote.
//!
//! It holds paths and fingerprints only, in order: no times and nothing of the machine, so that
//! two makes of one studio give the same bytes.

use std::collections::BTreeMap;
use std::fmt;

use serde::{Deserialize, Serialize};

use super::{Digest, SitePath};

const VERSION: u32 = 1;
const ABOUT: &str =
    "What ballband wrote here. Please leave it: without it ballband cannot know which files it may replace.";

/// The list of what a make wrote.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Manifest {
    /// Each file, and for a costly one what it was made from.
    pub files: BTreeMap<SitePath, Option<Made>>,
}

/// What a costly file was made from, and what came of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Made {
    /// The digest of everything it depends on.
    pub from: Digest,
    /// The digest of the file's own bytes; a file on disk with another is not this one.
    pub out: Digest,
}

/// Why a list cannot be relied on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unreadable {
    /// It is not the list we write; says what is wrong.
    Damaged(String),
    /// It is of a version we do not know.
    Version(u64),
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Form {
    about: String,
    version: u32,
    files: BTreeMap<String, Option<FormMade>>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct FormMade {
    from: String,
    made: String,
}

#[derive(Deserialize)]
struct OnlyVersion {
    version: u64,
}

impl Manifest {
    /// Reads a list.
    ///
    /// Every path is checked as strictly as a new one: a list that somebody changed must not lead
    /// us to remove a file outside the site.
    ///
    /// # Errors
    /// [`Unreadable`] if it is not a list of this version, whole and as we write it.
    pub fn read(bytes: &[u8]) -> Result<Manifest, Unreadable> {
        let form: Form = match serde_json::from_slice(bytes) {
            Ok(form) => form,
            Err(error) => {
                // A later version may well have other fields; then that is the thing to say.
                return Err(match serde_json::from_slice::<OnlyVersion>(bytes) {
                    Ok(only) if only.version != u64::from(VERSION) => Unreadable::Version(only.version),
                    _ => Unreadable::Damaged(error.to_string()),
                });
            }
        };
        if form.version != VERSION {
            return Err(Unreadable::Version(u64::from(form.version)));
        }
        let mut files = BTreeMap::new();
        for (path, made) in form.files {
            let path = SitePath::new(path).map_err(|bad| Unreadable::Damaged(bad.to_string()))?;
            files.insert(path, made.map(Made::try_from).transpose()?);
        }
        Ok(Manifest { files })
    }

    /// The list as it is kept: JSON in a fixed order, with a line end at its end.
    pub fn to_bytes(&self) -> Vec<u8> {
        let form = Form {
            about: ABOUT.to_owned(),
            version: VERSION,
            files: self.files.iter().map(|(path, made)| (path.as_str().to_owned(), made.map(FormMade::from))).collect(),
        };
        let mut bytes = Vec::with_capacity(self.files.keys().map(|path| path.as_str().len() + 16).sum());
        // Text keys and text values always serialize; an empty list would be refused when read.
        if serde_json::to_writer_pretty(&mut bytes, &form).is_err() {
            bytes.clear();
        }
        bytes.push(b'\n');
        bytes
    }

    /// The two lists in one; where both name a file, what the newer says of it stands.
    pub fn union(&self, newer: &Manifest) -> Manifest {
        let mut files = self.files.clone();
        files.extend(newer.files.iter().map(|(path, made)| (path.clone(), *made)));
        Manifest { files }
    }
}

impl TryFrom<FormMade> for Made {
    type Error = Unreadable;

    fn try_from(form: FormMade) -> Result<Made, Unreadable> {
        let digest = |text: &str| text.parse().map_err(|bad: super::BadDigest| Unreadable::Damaged(bad.to_string()));
        Ok(Made { from: digest(&form.from)?, out: digest(&form.made)? })
    }
}

impl From<Made> for FormMade {
    fn from(made: Made) -> FormMade {
        FormMade { from: made.from.to_string(), made: made.out.to_string() }
    }
}

impl fmt::Display for Unreadable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Unreadable::Damaged(why) => write!(f, "it is damaged ({why})"),
            Unreadable::Version(version) => {
                write!(f, "it is of version {version}, and this ballband knows only {VERSION}")
            }
        }
    }
}
