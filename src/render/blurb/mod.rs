//! The text to paste under a note's video: what it is about, how she came by things, chapters, and every link she promised.
//!
//! Plain text, pure, the same for the same studio and day. Nothing is in it that readers may not see on the note's day.

mod cut;
mod lines;
mod part;

pub use part::PartKind;

use crate::catalogue::Visibility;
use crate::entry::value::{Counted, Date};
use crate::entry::{Entry, Note, Outlet, Studio};
use crate::page::Shown;

/// A text, cut to what its outlet takes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Blurb {
    /// The text, each line ended; empty if not even its first line fits.
    pub text: String,
    /// What was left out to keep within the limit, the least important first.
    pub left_out: Vec<LeftOut>,
    /// Whether chapters are left out because one of them would keep all from being shown.
    pub has_faulty_chapters: bool,
}

/// Lines that did not fit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LeftOut {
    /// Which part of the text they are of.
    pub part: PartKind,
    /// The lines, in the order of the text.
    pub lines: Vec<String>,
}

impl Blurb {
    /// Returns in words what the text lacks, a line each; nothing where it is whole.
    pub fn lacks(&self) -> Vec<String> {
        let chapters = "the chapters are left out, since one of them would keep all from being shown: `ballband proof` tells which";
        let chapters = self.has_faulty_chapters.then(|| chapters.to_owned());
        let cut = self.left_out.iter().map(|left| {
            // Its address makes a line long and tells her nothing.
            let title = |line: &String| line.split(": http").next().unwrap_or(line).to_owned();
            let titles: Vec<String> = left.lines.iter().map(title).collect();
            format!("left out for want of room: {} ({})", left.part.name(), titles.join("; "))
        });
        chapters.into_iter().chain(cut).collect()
    }
}

/// A text and the outlets it is for.
#[derive(Clone, Debug)]
pub struct ForOutlets {
    /// Their names, each with its size in words: `video` and `812 bytes, 790 characters of 5,000 bytes`.
    pub outlets: Vec<(String, String)>,
    /// The text.
    pub blurb: Blurb,
}

/// Returns the outlets of a studio; one called `video` if it names none.
pub fn outlets(studio: &Studio) -> Vec<(String, Outlet)> {
    if !studio.outlets.0.is_empty() {
        return studio.outlets.0.clone();
    }
    let limit = studio.video.as_ref().and_then(|video| video.limit).unwrap_or(Outlet::USUAL.limit);
    vec![("video".to_owned(), Outlet { limit, ..Outlet::USUAL })]
}

/// Returns the text for one outlet.
pub fn blurb(shown: &Shown<'_>, entry: &Entry, note: &Note, outlet: &Outlet) -> Blurb {
    let (parts, has_faulty_chapters) = lines::parts(shown, entry, note);
    let (text, left_out) = cut::cut(parts, &lines::disclosures(shown, note), outlet);
    Blurb { text, left_out, has_faulty_chapters }
}

/// Returns the texts for several outlets in their order, those that are alike together.
pub fn blurbs(shown: &Shown<'_>, entry: &Entry, note: &Note, outlets: &[(String, Outlet)]) -> Vec<ForOutlets> {
    let mut all: Vec<ForOutlets> = Vec::new();
    for (name, outlet) in outlets {
        let blurb = blurb(shown, entry, note, outlet);
        let named = (name.clone(), size_in_words(&blurb.text, outlet));
        match all.iter_mut().find(|known| known.blurb == blurb) {
            Some(known) => known.outlets.push(named),
            None => all.push(ForOutlets { outlets: vec![named], blurb }),
        }
    }
    all
}

/// Returns the day a note's text is of: the note's own, or today if that is past.
pub fn day(shown: &Shown<'_>, note: &Note) -> Date {
    let today = shown.catalogue.view.today;
    note.date.map_or(today, |date| date.max(today))
}

/// Returns whether readers can follow a link to an entry on the note's day.
fn is_public(shown: &Shown<'_>, note: &Note, entry: &Entry) -> bool {
    shown.catalogue.for_readers_on(entry, day(shown, note)) == Visibility::Public
}

/// Returns how long a text is, counted as an outlet does: characters are Unicode's scalar values.
pub fn size(text: &str, counted: Counted) -> usize {
    match counted {
        Counted::Bytes => text.len(),
        Counted::Characters => text.chars().count(),
    }
}

fn size_in_words(text: &str, outlet: &Outlet) -> String {
    let limit = usize::try_from(outlet.limit).unwrap_or(usize::MAX);
    let unit = match outlet.counted() {
        Counted::Bytes => "bytes",
        Counted::Characters => "characters",
    };
    let (bytes, characters) = (size(text, Counted::Bytes), size(text, Counted::Characters));
    format!("{} bytes, {} characters of {} {unit}", grouped(bytes), grouped(characters), grouped(limit))
}

/// Returns a number with a comma before every three digits: `4,812`.
fn grouped(number: usize) -> String {
    let digits = number.to_string();
    let mut out = String::new();
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            out.push(',');
        }
        out.push(digit);
    }
    out
}
