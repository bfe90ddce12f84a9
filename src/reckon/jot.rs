//! What this week's note can begin with: what is known before a word of it is written.

use super::progress;
use crate::catalogue::{Catalogue, Visibility};
use crate::entry::heading::{Heading, Wording};
use crate::entry::value::{Date, Stage, VideoTime};
use crate::entry::{Data, Entry, Kind, Note, Reference};
use crate::measure::Percent;

/// What a new note begins with.
#[derive(Clone, Debug)]
pub struct Jotted<'a> {
    /// Its day.
    pub day: Date,
    /// The number after the highest; nothing where there are notes and none has a number.
    pub number: Option<u32>,
    /// Whether the last note had a video.
    pub video: bool,
    /// What is on the needles, what was begun first above.
    pub needles: Vec<OnNeedles<'a>>,
    /// What was finished since the last note and may be told of, by day.
    pub finished: Vec<&'a Entry>,
    /// The designs that were published since, by day.
    pub published: Vec<&'a Entry>,
    /// The designs on the way that came to another stage since, by day, each with its stage.
    pub moved: Vec<(&'a Entry, Stage)>,
    /// The sections of the last note.
    pub sections: Vec<Section<'a>>,
}

/// One thing on the needles.
#[derive(Clone, Debug)]
pub struct OnNeedles<'a> {
    /// The project.
    pub project: &'a Reference,
    /// How far it had come as the last note that says so has it.
    pub progress: Option<Percent>,
    /// What is left to do.
    pub left: Vec<&'a str>,
}

/// A heading to write under.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Section<'a> {
    /// Its level, 1 to 6.
    pub level: u8,
    /// The moment of the video, for the first if the last note had moments.
    pub time: Option<VideoTime>,
    /// Its words.
    pub words: &'a str,
}

/// Returns what the note of the catalogue's day can begin with. The catalogue must be for the designer's eyes, so that notes
/// which are not out yet count.
///
/// A heading that names an entry is left out, since it was of that week alone; so is, from the lists of what was finished or
/// published, whatever readers may not see on that day. Without an earlier note there are neither lists nor headings.
pub fn jotted(catalogue: &Catalogue) -> Jotted<'_> {
    let day = catalogue.view.today;
    let notes: Vec<(&Entry, &Note)> = catalogue.notes().collect();
    let highest = notes.iter().filter_map(|(_, note)| note.number).max();
    let earlier =
        notes.iter().filter_map(|(entry, note)| Some((note.date.filter(|date| *date < day)?, &entry.id, *entry)));
    let last = earlier.max_by_key(|(date, id, _)| (*date, *id));
    let since = last.map(|(date, ..)| date);
    Jotted {
        day,
        number: match highest {
            Some(highest) => highest.checked_add(1),
            None if notes.is_empty() => Some(1),
            None => None,
        },
        video: last.is_some_and(|(.., entry)| entry.note().is_some_and(|note| note.video.is_some())),
        needles: needles(catalogue),
        finished: of_days(catalogue, Kind::Project, since, |entry| {
            entry.project().and_then(|project| project.finished)
        }),
        published: of_days(catalogue, Kind::Pattern, since, published),
        moved: moved(catalogue, since),
        sections: last.map(|(.., entry)| sections(entry)).unwrap_or_default(),
    }
}

/// Returns the note of a day, if there is one.
pub fn note_of(catalogue: &Catalogue, day: Date) -> Option<&Entry> {
    let is_of = |entry: &&Entry| matches!(&entry.data, Data::Note(note) if note.date == Some(day));
    catalogue.of_kind(Kind::Note).iter().find(is_of)
}

fn needles(catalogue: &Catalogue) -> Vec<OnNeedles<'_>> {
    let today = catalogue.view.today;
    let mut all: Vec<_> = catalogue
        .of_kind(Kind::Project)
        .iter()
        .filter_map(|entry| Some((entry, entry.project()?)))
        .filter(|(_, project)| {
            project.finished_by(today).is_none() && project.started.is_none_or(|started| started <= today)
        })
        .collect();
    all.sort_by_key(|(entry, project)| (project.started.is_none(), project.started, &entry.id));
    all.into_iter()
        .map(|(entry, project)| OnNeedles {
            project: &entry.id,
            progress: progress(catalogue, &entry.id),
            left: project.to_do().collect(),
        })
        .collect()
}

fn published(entry: &Entry) -> Option<Date> {
    let pattern = entry.pattern().filter(|pattern| pattern.stage() == Stage::Published)?;
    pattern.published
}

/// Returns the entries of a kind whose day lies after a day and not after today, as far as readers may see them.
fn of_days(
    catalogue: &Catalogue,
    kind: Kind,
    since: Option<Date>,
    day: impl Fn(&Entry) -> Option<Date>,
) -> Vec<&Entry> {
    let Some(since) = since else { return Vec::new() };
    let mut all: Vec<(Date, &Entry)> = catalogue
        .of_kind(kind)
        .iter()
        .filter_map(|entry| Some((day(entry)?, entry)))
        .filter(|(day, _)| since < *day && *day <= catalogue.view.today)
        .filter(|(_, entry)| catalogue.for_readers(entry) == Visibility::Public)
        .collect();
    all.sort_by_key(|(day, entry)| (*day, &entry.id));
    all.into_iter().map(|(_, entry)| entry).collect()
}

/// Returns the designs on the way whose stage, as its day under `reached` says, began after a day and not after today.
fn moved(catalogue: &Catalogue, since: Option<Date>) -> Vec<(&Entry, Stage)> {
    let Some(since) = since else { return Vec::new() };
    let mut all: Vec<(Date, &Entry, Stage)> = catalogue
        .of_kind(Kind::Pattern)
        .iter()
        .filter(|entry| catalogue.for_readers(entry) == Visibility::OnTheWay)
        .filter_map(|entry| {
            let pattern = entry.pattern()?;
            let stage = pattern.stage();
            // She asks for herself, and a stage is public; only its day is not.
            Some((pattern.reached.for_desk().as_ref()?.day(stage)?, entry, stage))
        })
        .filter(|(day, ..)| since < *day && *day <= catalogue.view.today)
        .collect();
    all.sort_by_key(|(day, entry, _)| (*day, &entry.id));
    all.into_iter().map(|(_, entry, stage)| (entry, stage)).collect()
}

fn sections(note: &Entry) -> Vec<Section<'_>> {
    let references = &note.prose.references;
    let names_one = |heading: &Heading| {
        references.iter().any(|one| heading.at.start <= one.at.start && one.at.end <= heading.at.end)
    };
    let mut first =
        Some(VideoTime { seconds: 0 }).filter(|_| note.prose.headings.iter().any(|one| one.chapter.is_some()));
    let kept = note.prose.headings.iter().filter(|heading| !names_one(heading));
    kept.map(|heading| {
        // Without a reference all its words are one.
        let words = match heading.title.as_slice() {
            [Wording::Words(words)] => words.as_str(),
            _ => "",
        };
        Section { level: heading.level, time: first.take(), words: words.trim() }
    })
    .collect()
}
