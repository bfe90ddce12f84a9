//! A weekly note.

use super::field::record;
use super::value::{AnyRef, Date, How, Private, Quotation, Ref, VideoTime, Web, to};
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
        /// What others wrote to her and let her print.
        "story" => story: Vec<Story> = "[ { leave: 2026-11-18, credit: a reader in the hills, text: I wept. } ]",
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
    /// What somebody else wrote, printed with their leave.
    pub struct Story: "a story" {
        /// Whose it is.
        "whose" => whose: Option<Private<String>> = "Elowen Trease, by letter",
        /// The day they gave leave to print it.
        "leave" => leave: Option<Private<Date>> = "2026-11-18",
        /// The words it is credited with, or `anonymous`.
        "credit" => credit: Option<String> = "a reader in the hills",
        /// What they wrote, in Markdown.
        "text" => text: Quotation = "We cast on in the same week.",
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
