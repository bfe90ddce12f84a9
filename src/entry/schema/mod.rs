//! JSON Schemas of what a writer writes in YAML, for editors that know how to use them.
//!
//! They are made of the records and fields that also read it, so there is one definition of a key. A schema refuses less
//! than reading does: what it cannot see, such as a size run with a value too few, is left to [`read`](super::read).
//!
//! The schemas are of draft 7, which the language servers of YAML editors know; later drafts they know in part or not.

mod files;
mod shape;

pub use files::{FOLDER, MARK, files};
pub use shape::{Definitions, Schema, keys, of_record};
