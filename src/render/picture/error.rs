//! Why a photo cannot be used.

use super::source::{LONGEST_SIDE, MOST_PIXELS};
use std::fmt;

/// Why a photo cannot be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PictureError {
    /// It is none of the formats understood; holds the name of what it is, if that is plain.
    Format(Option<&'static str>),
    /// It has more pixels than can be read in reasonable memory.
    TooLarge {
        /// Pixels across, as stored.
        width: u32,
        /// Pixels down, as stored.
        height: u32,
    },
    /// It ends before the picture does.
    Cut,
    /// It cannot be read; holds what the reader said.
    Damaged(String),
    /// What was asked for cannot be made of it; holds why.
    Variant(String),
}

impl fmt::Display for PictureError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            PictureError::Format(None) => {
                f.write_str("this is not a photo ballband can read: JPEG, PNG and WebP are understood")
            }
            PictureError::Format(Some(name)) => {
                write!(f, "this is {name}: JPEG, PNG and WebP are understood")
            }
            PictureError::TooLarge { width, height } => write!(
                f,
                "the photo is {width} by {height} pixels, more than the {} million pixels or {LONGEST_SIDE} on a side that can be read: save a smaller one",
                MOST_PIXELS / 1_000_000
            ),
            PictureError::Cut => f.write_str("the file ends before the picture does: copy or save it again"),
            PictureError::Damaged(why) => {
                write!(f, "the file is damaged ({why}): copy or save it again")
            }
            PictureError::Variant(why) => f.write_str(why),
        }
    }
}

impl std::error::Error for PictureError {}
