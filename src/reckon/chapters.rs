//! The chapters of a note's video, and what makes a list of them useless where videos are watched.

use crate::entry::heading::{Heading, Wording};
use crate::entry::value::VideoTime;
use crate::entry::{Entry, Note};

/// The fewest chapters that are shown as a list (common practice; one large video host says so: 9to5google.com, 28 May 2020).
pub const FEWEST: usize = 3;

/// The fewest seconds a chapter lasts (the same).
pub const SHORTEST: u32 = 10;

/// One chapter: a heading that begins with a moment of the video.
#[derive(Clone, Copy, Debug)]
pub struct Chapter<'a> {
    /// The heading.
    pub heading: &'a Heading,
    /// The moment it begins with.
    pub time: VideoTime,
    /// What it is called, behind the moment; may be empty.
    pub title: &'a [Wording],
}

/// What is wrong with a chapter. One such fault drops the whole list where videos are watched, without a message.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// The first is not at 0:00.
    First,
    /// There are fewer than [`FEWEST`]; told at the last.
    Few,
    /// It is not later than the one before it.
    Order,
    /// It lasts so many seconds, which are fewer than [`SHORTEST`].
    Short(u32),
    /// It begins when the video is over.
    PastEnd,
    /// It is past the hour and written in minutes, `75:10`.
    Hours,
}

/// Returns the chapters of a text, in its order.
pub fn chapters(entry: &Entry) -> Vec<Chapter<'_>> {
    let timed = entry.prose.headings.iter().filter_map(|heading| Some((heading, heading.chapter?)));
    timed.map(|(heading, time)| Chapter { heading, time, title: &heading.title }).collect()
}

/// Returns what is wrong with the chapters of a note, each fault with the number of its chapter from 0.
///
/// A note without a video, or without any chapter, has no faults.
pub fn faults(entry: &Entry, note: &Note) -> Vec<(usize, Fault)> {
    let Some(video) = &note.video else { return Vec::new() };
    let chapters = chapters(entry);
    let end = video.length.map(|length| length.seconds);
    let mut faults = Vec::new();
    for (at, chapter) in chapters.iter().enumerate() {
        let begins = chapter.time.seconds;
        if at == 0 && begins > 0 {
            faults.push((at, Fault::First));
        }
        if is_in_minutes(chapter) {
            faults.push((at, Fault::Hours));
        }
        let before = at.checked_sub(1).and_then(|before| chapters.get(before));
        if before.is_some_and(|before| begins <= before.time.seconds) {
            faults.push((at, Fault::Order));
        }
        if end.is_some_and(|end| begins >= end) {
            faults.push((at, Fault::PastEnd));
        }
        // Where the next does not follow, that is told, and how long this one lasts is anybody's guess.
        let next = chapters.get(at + 1).map(|next| next.time.seconds).or(end);
        let lasts = next.and_then(|next| next.checked_sub(begins)).filter(|lasts| (1..SHORTEST).contains(lasts));
        faults.extend(lasts.map(|lasts| (at, Fault::Short(lasts))));
    }
    if (1..FEWEST).contains(&chapters.len()) {
        faults.push((chapters.len() - 1, Fault::Few));
    }
    faults
}

fn is_in_minutes(chapter: &Chapter<'_>) -> bool {
    let written = chapter.heading.words.split_whitespace().next().unwrap_or_default();
    chapter.time.seconds >= 3600 && written.matches(':').count() == 1
}
