//! What stands in each part of the text.

use super::part::{Disclosure, Line, Part, PartKind};
use super::{day, is_public};
use crate::catalogue::Visibility;
use crate::entry::value::{How, Verdict, Web};
use crate::entry::{Data, Entry, Kind, MadeFrom, Note, OtherPattern, Reference};
use crate::page::{Shown, credit, disclosure, open_call_path, page_path, sentence};
use crate::reckon::chapters::{Fault, chapters, faults};
use crate::reckon::code_of_chapter;

/// The ways she came by things that readers are told of at once, what she earns by first.
const TOLD: [How; 6] = [How::Paid, How::Affiliate, How::Gifted, How::Loaned, How::Friend, How::Own];

/// Returns the parts in the order of the text, and whether chapters are left out because of a fault in them.
pub fn parts(shown: &Shown<'_>, entry: &Entry, note: &Note) -> (Vec<Part>, bool) {
    let (chapters, has_faulty_chapters) = chapter_lines(shown, entry, note);
    let mut parts = vec![
        Part { kind: PartKind::Summary, lines: summary(shown, entry) },
        // Which lines there are depends on what the cut leaves of the rest.
        Part { kind: PartKind::Disclosures, lines: Vec::new() },
        Part { kind: PartKind::Chapters, lines: chapters },
    ];
    parts.extend(references(shown, entry, note));
    parts.push(Part { kind: PartKind::Credits, lines: credits(note) });
    let own = format!("The whole note: {}", shown.addresses.whole(&page_path(&entry.id)));
    parts.push(Part { kind: PartKind::Address, lines: vec![Line::from(own)] });
    (parts, has_faulty_chapters)
}

/// Returns a text on one line.
fn one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn summary(shown: &Shown<'_>, entry: &Entry) -> Vec<Line> {
    Some(one_line(&shown.summary(entry))).filter(|summary| !summary.is_empty()).map(Line::from).into_iter().collect()
}

/// Returns each way she came by things that has words, with the things.
pub fn disclosures(shown: &Shown<'_>, note: &Note) -> Vec<Disclosure> {
    let studio = &shown.catalogue.studio;
    let line = |how: How| {
        let words = disclosure::words(studio, how);
        let known = note.links.iter().filter(|known| known.how == Some(how));
        let things = known.filter_map(|known| {
            let entry = shown.catalogue.entry(&known.to.0)?;
            Some((entry.id.clone(), one_line(&entry.common.title)))
        });
        (!words.is_empty()).then(|| Disclosure { words: sentence(&one_line(words)), things: things.collect() })
    };
    TOLD.into_iter().filter_map(line).collect()
}

/// Returns the chapters, the moment first; none if one of them would keep all from being shown.
fn chapter_lines(shown: &Shown<'_>, entry: &Entry, note: &Note) -> (Vec<Line>, bool) {
    if note.video.is_none() {
        return (Vec::new(), false);
    }
    let checks = &shown.catalogue.studio.checks;
    // A time in minutes is written here as it should be; a check that is turned off she has judged for herself.
    let counts =
        |fault: Fault| fault != Fault::Hours && checks.get(code_of_chapter(fault).name).copied() != Some(Verdict::Off);
    if faults(entry, note).into_iter().any(|(_, fault)| counts(fault)) {
        return (Vec::new(), true);
    }
    let line = |chapter: crate::reckon::chapters::Chapter<'_>| {
        let line = format!("{} {}", chapter.time, shown.worded(chapter.title));
        Line::from(one_line(&line))
    };
    (chapters(entry).into_iter().map(line).collect(), false)
}

/// Returns whose stories the note prints, each once; who wishes to be no one is not named.
fn credits(note: &Note) -> Vec<Line> {
    let mut lines: Vec<Line> = Vec::new();
    for story in note.story.iter().filter(|story| story.credit.as_deref().is_some_and(|credit| credit != "anonymous")) {
        let line = Line::from(format!("Story: {}", one_line(&credit(story))));
        if !lines.contains(&line) {
            lines.push(line);
        }
    }
    lines
}

/// Returns everything the note refers to that readers can follow, each once, by kind.
fn references(shown: &Shown<'_>, entry: &Entry, note: &Note) -> Vec<Part> {
    use PartKind::{Elsewhere, Others, Own, People, Projects, Techniques, Yarn};
    let mut parts =
        [Own, Others, Projects, Yarn, People, Techniques, Elsewhere].map(|kind| Part { kind, lines: Vec::new() });
    let mut add = |kind: PartKind, text: String, of: Option<&Reference>| {
        let Some(part) = parts.iter_mut().find(|part| part.kind == kind) else { return };
        match part.lines.iter_mut().find(|known| known.text == text) {
            Some(known) => known.of.extend(of.cloned()),
            None => part.lines.push(Line { text, of: of.cloned().into_iter().collect() }),
        }
    };
    let mut seen: Vec<&Reference> = Vec::new();
    let mut addresses: Vec<String> = Vec::new();
    for mention in entry.mentions.iter().filter(|mention| !mention.private && mention.to != entry.id) {
        if seen.contains(&&mention.to) {
            continue;
        }
        seen.push(&mention.to);
        let Some(other) = shown.catalogue.entry(&mention.to) else { continue };
        let told = disclosure::of(&shown.catalogue.studio, note, &other.id).words;
        if !is_public(shown, note, other) {
            if let Some((title, address)) = on_the_way(shown, note, other) {
                add(Own, line(&title, &told, Some(&address)), Some(&other.id));
            }
            continue;
        }
        let page = || shown.addresses.whole(&page_path(&other.id));
        let (kind, address) = match &other.data {
            Data::Pattern(_) => (Own, page()),
            Data::Project(project) => {
                if let Some(MadeFrom::Other(pattern)) = &project.pattern {
                    addresses.extend(pattern.url.as_ref().map(|url| url.as_str().to_owned()));
                    add(Others, other_pattern(shown, note, pattern), None);
                }
                (Projects, page())
            }
            Data::Yarn(_) => (Yarn, page()),
            Data::Person(person) => (People, person.url.as_ref().map_or_else(page, |url| url.as_str().to_owned())),
            Data::Technique(_) => (Techniques, page()),
            Data::Note(_) | Data::Page(_) => (Elsewhere, page()),
        };
        add(kind, line(&other.common.title, &told, Some(&address)), Some(&other.id));
        addresses.push(address);
    }
    for outside in &entry.prose.outside {
        let address = outside.url.replace(' ', "%20");
        if addresses.contains(&address) {
            continue;
        }
        let words = Some(outside.words.trim()).filter(|words| !words.is_empty() && *words != outside.url);
        let told = disclosure::of_address(shown, note, &outside.url).words;
        add(
            Elsewhere,
            match words {
                Some(words) => line(&sentence(words), &told, Some(&address)),
                None => line(&address, &told, None),
            },
            None,
        );
        addresses.push(address);
    }
    parts.into_iter().collect()
}

/// Returns what a design on the way is called, and where it is read of on the note's day: on the page of its call for test
/// knitters while one can answer it, or else among the designs on the way; nothing for anything else.
fn on_the_way(shown: &Shown<'_>, note: &Note, entry: &Entry) -> Option<(String, String)> {
    let day = day(shown, note);
    if shown.catalogue.for_readers_on(entry, day) != Visibility::OnTheWay {
        return None;
    }
    let title = &entry.common.title;
    Some(match open_call_path(shown, entry, day) {
        Some(path) => (format!("{title}, call for test knitters"), shown.addresses.whole(&path)),
        None => (format!("{title}, on the way"), shown.whole_url(&shown.address_on_the_way(entry))),
    })
}

/// Returns somebody else's pattern with whose it is; what the note tells of them is told of it too.
fn other_pattern(shown: &Shown<'_>, note: &Note, pattern: &OtherPattern) -> String {
    let by = pattern.by.as_ref().and_then(|by| shown.catalogue.entry(&by.reference()));
    let by = by.filter(|by| by.id.kind == Kind::Person && is_public(shown, note, by));
    let title = by.map_or_else(|| pattern.title.clone(), |by| format!("{} by {}", pattern.title, by.common.title));
    let told = by.map(|by| disclosure::of(&shown.catalogue.studio, note, &by.id).words).unwrap_or_default();
    line(&title, &told, pattern.url.as_ref().map(Web::as_str))
}

/// Returns a thing as a line: `Heron DK (given to me): https://…`.
fn line(title: &str, told: &str, address: Option<&str>) -> String {
    let told = if told.is_empty() { String::new() } else { format!(" ({})", one_line(told)) };
    let address = address.map(|address| format!(": {address}")).unwrap_or_default();
    format!("{}{told}{address}", one_line(title))
}
