//! The note in hand: what it mentions, what it does not link yet, and the text for its video.

use super::super::view::Link;
use super::super::{Item, Shown, disclosure, lists};
use super::Day;
use crate::catalogue::Visibility;
use crate::entry::{Entry, Kind, Note, Reference};
use crate::reckon::desk::{Unlinked, unlinked};
use serde::Serialize;

/// The note in hand.
#[derive(Clone, Debug, Serialize)]
pub struct WeekView {
    /// The note.
    pub link: Item<Link>,
    /// Its number, if it has one.
    pub number: Option<u32>,
    /// Its day.
    pub day: Option<Day>,
    /// Where it stands: `readers have it`, `comes out in two days`.
    pub state: String,
    /// What it mentions, by kind.
    pub mentioned: Vec<MentionedKind>,
    /// What it does not link yet.
    pub unlinked: Vec<MentionLine>,
    /// The texts to paste under its video, filled in where texts are made.
    pub texts: Vec<WeekText>,
    /// Which note it is.
    #[serde(skip)]
    pub id: Reference,
}

/// A text to paste.
#[derive(Clone, Debug, Serialize)]
pub struct WeekText {
    /// Its id on the page.
    pub id: String,
    /// What it is for: `video`, `video and letter`.
    pub title: String,
    /// How long it is for each of these, in words.
    pub sizes: Vec<String>,
    /// The text.
    pub text: String,
    /// How many lines it has.
    pub lines: usize,
    /// What it lacks, in words.
    pub lacks: Vec<String>,
}

/// What a note mentions of one kind.
#[derive(Clone, Debug, Serialize)]
pub struct MentionedKind {
    /// The kind: `Patterns`.
    pub title: String,
    /// The things.
    pub lines: Vec<MentionLine>,
}

/// One thing that a note mentions, or does not link.
#[derive(Clone, Debug, Serialize)]
pub struct MentionLine {
    /// The thing.
    pub link: Item<Link>,
    /// Its reference, to paste into the text: `<pattern:reeds>`.
    pub reference: String,
    /// Words beside it: how she came by it, or why it is listed; may be empty.
    pub words: String,
    /// What readers see of it where that is not its page; may be empty.
    pub readers: &'static str,
}

/// Returns the note in hand: the first that readers do not have yet, or else the latest.
pub fn week(shown: &Shown<'_>) -> Option<WeekView> {
    let notes = shown.latest_notes();
    let coming = notes.iter().rev().find(|(entry, _)| shown.catalogue.for_readers(entry) != Visibility::Public);
    let (entry, note) = *coming.or(notes.first())?;
    let mentioned = mentioned(shown, entry, note);
    Some(WeekView {
        link: shown.own_link(entry),
        number: note.number,
        day: note.date.map(Day::from),
        state: state(shown, entry, note),
        mentioned,
        unlinked: unlinked(shown.catalogue, entry).into_iter().filter_map(|one| not_linked(shown, &one)).collect(),
        texts: Vec::new(),
        id: entry.id.clone(),
    })
}

fn state(shown: &Shown<'_>, entry: &Entry, note: &Note) -> String {
    let today = shown.catalogue.view.today;
    match note.date {
        None => "it has no date, so readers never get it".to_owned(),
        _ if entry.common.ready == Some(false) => "not ready: readers do not get it before you say so".to_owned(),
        Some(date) if date > today => format!("comes out in {}", super::days(today.days_to(date))),
        Some(_) => "readers have it".to_owned(),
    }
}

/// Returns what readers see in place of an entry's page.
fn readers(shown: &Shown<'_>, entry: &Entry) -> &'static str {
    match shown.catalogue.for_readers(entry) {
        Visibility::Public => "",
        Visibility::OnTheWay => "readers get its line on the list of designs on the way",
        Visibility::Hidden => "readers get its title without a link",
    }
}

fn mentioned(shown: &Shown<'_>, entry: &Entry, note: &Note) -> Vec<MentionedKind> {
    let of_kind = |kind: Kind| {
        let lines: Vec<MentionLine> = once(entry)
            .into_iter()
            .filter(|id| id.kind == kind)
            .filter_map(|id| {
                let other = shown.catalogue.entry(id)?;
                Some(MentionLine {
                    link: shown.own_link(other),
                    reference: format!("<{id}>"),
                    words: disclosure::of(&shown.catalogue.studio, note, id).words,
                    readers: readers(shown, other),
                })
            })
            .collect();
        (!lines.is_empty()).then(|| MentionedKind { title: lists::kind_title(kind).to_owned(), lines })
    };
    Kind::ALL.into_iter().filter_map(of_kind).collect()
}

/// Returns what an entry refers to, once each, in the order it is written.
fn once(entry: &Entry) -> Vec<&Reference> {
    let mut seen: Vec<&Reference> = Vec::new();
    for mention in entry.mentions.iter().filter(|mention| !mention.private && mention.to != entry.id) {
        if !seen.contains(&&mention.to) {
            seen.push(&mention.to);
        }
    }
    seen
}

fn not_linked(shown: &Shown<'_>, one: &Unlinked) -> Option<MentionLine> {
    let (id, words) = match one {
        Unlinked::OnlyInFront(id) => (id, "in the front matter, and not in the text"),
        Unlinked::Named(id) => (id, "named in the text without a link"),
    };
    let other = shown.catalogue.entry(id)?;
    Some(MentionLine {
        link: shown.own_link(other),
        reference: format!("<{id}>"),
        words: words.to_owned(),
        readers: readers(shown, other),
    })
}
