//! Watches a folder and hands over what changed in it, gathered into bursts.
//!
//! It says which paths changed and never what they mean. What is watched:
//!
//! - every folder below the root that is ours, linked ones too, as ballband's own reading follows links. A folder
//!   with two names in the tree is told under both on Linux; a linked file is not told when its target changes.
//! - on Linux each folder by itself, so that an output folder costs nothing and a new folder is watched before
//!   it is read: a file written into it is then either found or told. Elsewhere the system watches the tree.
//! - the root itself: when it goes, and when it or another folder stands in its place, `all` is told.
//!
//! Reading a file is no change. Nor are editors' leftovers and hidden names, see `leftover`.

mod change;
mod gather;
mod leftover;
mod reach;
mod root;
mod run;

pub use run::{Watching, watch};

use std::collections::BTreeSet;
use std::path::PathBuf;

/// What changed within a few milliseconds.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Burst {
    /// Files made, changed or gone, beginning with the root as it was given. A path that is gone may have been a
    /// folder, and then everything below it is gone too. Some may turn out to be as they were.
    pub paths: BTreeSet<PathBuf>,
    /// Something was lost, or the root went or came back: look at everything again.
    pub all: bool,
}
