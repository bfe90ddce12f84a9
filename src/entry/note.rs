//! A weekly note.

use super::field::record;
use super::value::{AnyRef, Date, How, Ref, VideoTime, Web, to};
use crate::measure::Percent;

record! {
    /// A weekly note.
    pub struct Note: "a note" {
        /// Its day; the one its file's name begins with if it is not given.
        "date" => date: Option<Date>,
        /// Its number in the run of notes.
        "number" => number: Option<u32> = "12",
        /// The video that goes with it.
        "video" => video: Option<Video> = "{ url: 'https://example.org/video/12', length: '25:12' }",
        /// What she wears in it.
        "wearing" => wearing: Vec<AnyRef> = "[project:storm-lantern]",
        /// What she worked on.
        "worked on" => worked_on: Vec<WorkedOn> = "[ { project: storm-lantern, progress: 65% } ]",
        /// How she came by things she mentions.
        "links" => links: Vec<Mentioned> = "[ { to: tidewater-mill, how: bought } ]",
    }
}

record! {
    /// A video.
    pub struct Video: "a video" {
        /// Its page.
        "url" => url: Web = "https://example.org/video/12",
        /// How long it is.
        "length" => length: Option<VideoTime>,
    }
}

record! {
    /// One project she worked on, and how far it came.
    pub struct WorkedOn: "what was worked on" {
        /// The project.
        "project" => project: Ref<to::Project>,
        /// How much of it is done.
        "progress" => progress: Option<Percent> = "65%",
    }
}

record! {
    /// How she came by a thing.
    pub struct Mentioned: "a link" {
        /// The thing.
        "to" => to: AnyRef = "tidewater-mill",
        /// How she came by it.
        "how" => how: Option<How>,
    }
}
