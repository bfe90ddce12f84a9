//! A note's page.

use super::view::{Group, Head, Line, Link, NoteItem, Picture, Source};
use super::{Item, Shown, disclosure, open_call_path, page_path, project, words};
use crate::entry::value::VideoTime;
use crate::entry::{Entry, Kind, Note, Reference, Story};
use crate::reckon;
use schemars::JsonSchema;
use serde::Serialize;

/// What `note.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct NoteContext {
    /// The page's head.
    pub head: Head,
    /// The note.
    pub note: NoteView,
    /// The note's text as HTML.
    pub body: String,
}

/// A weekly note.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct NoteView {
    /// What it is called.
    pub title: String,
    /// One sentence about it; may be empty.
    pub summary: String,
    /// Its number, if it has one.
    pub number: Option<u32>,
    /// Its day in words.
    pub date: String,
    /// Its day as ISO 8601 has it.
    pub iso_date: String,
    /// Its picture.
    pub picture: Option<Picture>,
    /// The video that goes with it.
    pub video: Option<VideoView>,
    /// The chapters of the video.
    pub chapters: Vec<Chapter>,
    /// The address of the same as a file for players (WebVTT); absent where the video's length is not known or a time is wrong.
    pub chapters_file: Option<String>,
    /// What others wrote to her, in the order she gives it.
    pub stories: Vec<StoryView>,
    /// What she wears in it.
    pub wearing: Vec<WornView>,
    /// What she worked on.
    pub worked_on: Vec<WorkedOnView>,
    /// Everything it mentions, by kind.
    pub mentioned: Vec<Group>,
    /// The note before.
    pub before: Option<Item<NoteItem>>,
    /// The note after.
    pub after: Option<Item<NoteItem>>,
}

/// A video.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct VideoView {
    /// Its address.
    pub url: String,
    /// How long it is: `25:12`.
    pub length: Option<String>,
}

/// One chapter of a video.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Chapter {
    /// The moment it begins: `12:40`.
    pub time: String,
    /// What it is called.
    pub title: String,
    /// The id of its heading in the text.
    pub id: String,
    /// The address of that moment of the video; absent for a note without a video.
    pub url: Option<String>,
}

/// What somebody else wrote.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct StoryView {
    /// Their words as HTML.
    pub html: String,
    /// The words it is credited with; empty only in the preview, where they may be still to come.
    pub credit: String,
}

/// One thing she wears.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct WornView {
    /// The thing, and how she came by it.
    pub line: Line,
    /// What it is made from, if it is a project.
    pub pattern: Option<Source>,
}

/// One project she worked on.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct WorkedOnView {
    /// The project.
    pub link: Item<Link>,
    /// How she came by it; may be empty.
    pub words: String,
    /// What it is made from.
    pub pattern: Option<Source>,
    /// How much of it was done then, in whole percent.
    pub progress: Option<i64>,
}

/// Returns the context of a note's page, its text still to be filled in.
pub fn context(shown: &Shown<'_>, entry: &Entry, note: &Note) -> NoteContext {
    let notes = shown.latest_notes();
    let at = shown.place_of_note(entry, note);
    let item = |(entry, note): &(&Entry, &Note)| shown.note_item(entry, note);
    let picture = shown.picture(entry);
    let view = NoteView {
        title: entry.common.title.clone(),
        summary: entry.common.summary.clone().unwrap_or_default(),
        number: note.number,
        date: note.date.map(|date| date.in_words()).unwrap_or_default(),
        iso_date: note.date.map(|date| date.to_string()).unwrap_or_default(),
        picture: picture.clone(),
        video: note.video.as_ref().map(|video| VideoView {
            url: video.url.as_str().to_owned(),
            length: video.length.map(|length| length.to_string()),
        }),
        chapters: chapters(shown, entry, note),
        chapters_file: cues(shown, entry, note).map(|_| shown.addresses.local(&chapters_path(&entry.id))),
        stories: note.story.iter().map(|story| StoryView { html: String::new(), credit: credit(story) }).collect(),
        wearing: note
            .wearing
            .iter()
            .filter_map(|worn| {
                let line = line(shown, note, &worn.0, shown.public_link(&worn.0)?);
                Some(WornView { line, pattern: made_from(shown, &worn.0) })
            })
            .collect(),
        worked_on: note
            .worked_on
            .iter()
            .filter_map(|worked| {
                let id = worked.project.reference();
                Some(WorkedOnView {
                    link: shown.public_link(&id)?,
                    words: disclosure::of(&shown.catalogue.studio, note, &id).words,
                    pattern: made_from(shown, &id),
                    progress: worked.progress.map(|progress| progress.hundredths() / 100),
                })
            })
            .collect(),
        mentioned: mentioned(shown, entry, note),
        before: at.and_then(|at| notes.get(at + 1)).map(item),
        after: at.and_then(|at| notes.get(at.checked_sub(1)?)).map(item),
    };
    let head = Head {
        json_ld: super::json_ld::note(shown, entry, note),
        published: note.date.map(|date| date.moment()),
        ..shown.head(
            &entry.common.title,
            &shown.summary(entry),
            &page_path(&entry.id),
            "journal",
            "article",
            picture.as_ref(),
        )
    };
    NoteContext { head, note: view, body: String::new() }
}

/// Returns the words that a story is credited with; empty where there are none yet.
pub fn credit(story: &Story) -> String {
    match story.credit.as_deref() {
        Some("anonymous") => "Anonymous".to_owned(),
        credit => credit.unwrap_or_default().to_owned(),
    }
}

/// Returns a note as a line of a list.
pub fn item(shown: &Shown<'_>, entry: &Entry, note: &Note) -> NoteItem {
    NoteItem {
        link: shown.own_link(entry),
        summary: shown.summary(entry),
        number: note.number,
        date: note.date.map(|date| date.in_words()).unwrap_or_default(),
        iso_date: note.date.map(|date| date.to_string()).unwrap_or_default(),
    }
}

/// Returns what a project is made from, if the reference is to one that readers may know of.
fn made_from(shown: &Shown<'_>, id: &Reference) -> Option<Source> {
    project::made_from(shown, shown.catalogue.public_entry(id)?.project()?)
}

fn chapters(shown: &Shown<'_>, entry: &Entry, note: &Note) -> Vec<Chapter> {
    let view = |chapter: reckon::chapters::Chapter<'_>| Chapter {
        time: chapter.time.to_string(),
        title: shown.worded(chapter.title),
        id: chapter.heading.id.clone(),
        url: note.video.as_ref().map(|video| shown.catalogue.studio.moment(&video.url, chapter.time)),
    };
    reckon::chapters::chapters(entry).into_iter().map(view).collect()
}

/// One chapter with its end, as a player wants it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cue {
    /// Where it begins.
    pub from: VideoTime,
    /// Where it ends: where the next begins, or the video does.
    pub to: VideoTime,
    /// What it is called.
    pub title: String,
}

/// Returns the chapters of a note with their ends; nothing where there are none, where the video's length is not known, or
/// where one does not follow the one before it and end before the video does.
pub fn cues(shown: &Shown<'_>, entry: &Entry, note: &Note) -> Option<Vec<Cue>> {
    let end = note.video.as_ref()?.length?;
    let chapters = reckon::chapters::chapters(entry);
    let ends = chapters.iter().skip(1).map(|next| next.time).chain([end]);
    let cue = |(chapter, to): (&reckon::chapters::Chapter<'_>, VideoTime)| {
        let title = Some(shown.worded(chapter.title)).filter(|title| !title.is_empty());
        let title = title.unwrap_or_else(|| chapter.time.to_string());
        (chapter.time < to).then_some(Cue { from: chapter.time, to, title })
    };
    let cues: Vec<Cue> = chapters.iter().zip(ends).map(cue).collect::<Option<_>>()?;
    (!cues.is_empty()).then_some(cues)
}

/// Returns the path in the site of a note's chapters as a file for players.
pub fn chapters_path(id: &Reference) -> String {
    format!("{}chapters.vtt", page_path(id))
}

/// Returns everything a note mentions that readers may see, once each, by kind, and then the links to other sites.
fn mentioned(shown: &Shown<'_>, entry: &Entry, note: &Note) -> Vec<Group> {
    let open_call = |id: &Reference| {
        let path = open_call_path(shown, shown.catalogue.entry(id)?, shown.catalogue.view.today)?;
        Some(shown.addresses.local(&path))
    };
    let mut groups: Vec<Group> = Vec::new();
    for kind in Kind::ALL {
        let mut seen: Vec<&Reference> = Vec::new();
        let mut lines = Vec::new();
        for mention in entry
            .mentions
            .iter()
            .filter(|mention| mention.to.kind == kind && !mention.private && mention.to != entry.id)
        {
            if seen.contains(&&mention.to) {
                continue;
            }
            seen.push(&mention.to);
            if let Some(link) = shown.public_link(&mention.to) {
                let mut line = line(shown, note, &mention.to, link);
                if let Some(url) = open_call(&mention.to) {
                    line.link = Item::from(Link { title: line.link.title.clone(), url: Some(url) });
                    line.words = [line.words, "call for test knitters".to_owned()]
                        .into_iter()
                        .filter(|words| !words.is_empty())
                        .collect::<Vec<_>>()
                        .join(", ");
                }
                let of = shown.catalogue.public_entry(&mention.to).and_then(Entry::project);
                let credit = of.map(|of| project::credit(shown, of)).filter(|credit| !credit.is_empty());
                line.words = [line.words]
                    .into_iter()
                    .filter(|words| !words.is_empty())
                    .chain(credit)
                    .collect::<Vec<_>>()
                    .join(", ");
                lines.push(line);
            }
        }
        add(&mut groups, super::lists::kind_title(kind), lines);
    }
    let mut lines: Vec<Line> = Vec::new();
    for outside in &entry.prose.outside {
        if lines.iter().all(|line| line.link.url.as_deref() != Some(&outside.url)) {
            let title =
                if outside.words.trim().is_empty() { outside.url.clone() } else { outside.words.trim().to_owned() };
            let link = Item::from(Link { title: words::sentence(&title), url: Some(outside.url.clone()) });
            let told = disclosure::of_address(shown, note, &outside.url);
            lines.push(Line { link, words: told.words, sponsored: told.sponsored });
        }
    }
    add(&mut groups, "Elsewhere", lines);
    groups
}

/// Returns a thing with what the note tells of how she came by it.
fn line(shown: &Shown<'_>, note: &Note, id: &Reference, link: Item<Link>) -> Line {
    let told = disclosure::of(&shown.catalogue.studio, note, id);
    Line { link, words: told.words, sponsored: told.sponsored }
}

fn add(groups: &mut Vec<Group>, title: &str, lines: Vec<Line>) {
    if !lines.is_empty() {
        groups.push(Group { title: title.to_owned(), id: format!("mentioned-{}", crate::entry::slug(title)), lines });
    }
}
