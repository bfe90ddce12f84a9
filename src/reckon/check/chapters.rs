//! The chapters of a video must be a list that is shown where it is watched.
//!
//! None is an error: the note's own page is right whatever the times are.

use super::like_time::LikeTime;
use crate::entry::heading::Heading;
use crate::entry::value::VideoTime;
use crate::entry::{Data, Entry, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::reckon::chapters::{FEWEST, Fault, SHORTEST, chapters, faults};
use crate::source::Place;

/// A list of chapters that does not begin where the video does.
pub static CHAPTER_FIRST: Code = Code {
    name: "chapter-first",
    severity: Severity::Warning,
    what: "The first chapter of a video is not at 0:00.",
    why: "Where videos are watched, the whole list is then left out without a word.",
    bad: "## 0:01 Hello",
    good: "## 0:00 Hello",
};

/// A list of one or two chapters.
pub static CHAPTERS_FEW: Code = Code {
    name: "chapters-few",
    severity: Severity::Warning,
    what: "A video has one or two chapters.",
    why: "Where videos are watched, a list is only shown from three on.",
    bad: "## 0:00 Hello\n## 1:10 Finished",
    good: "## 0:00 Hello\n## 1:10 Finished\n## 8:05 On the needles",
};

/// A chapter that is not later than the one before it.
pub static CHAPTER_ORDER: Code = Code {
    name: "chapter-order",
    severity: Severity::Warning,
    what: "A chapter is not later than the one above it.",
    why: "One of the two times is mistyped, and where videos are watched the whole list is then left out.",
    bad: "## 12:40 Finished\n## 8:05 On the needles",
    good: "## 8:05 On the needles\n## 12:40 Finished",
};

/// A chapter of a few seconds.
pub static CHAPTER_SHORT: Code = Code {
    name: "chapter-short",
    severity: Severity::Warning,
    what: "A chapter lasts less than ten seconds.",
    why: "Where videos are watched, the whole list is then left out without a word.",
    bad: "## 8:05 On the needles\n## 8:10 Finished",
    good: "## 8:05 On the needles\n## 12:40 Finished",
};

/// A chapter that begins when the video is over.
pub static CHAPTER_PAST_END: Code = Code {
    name: "chapter-past-end",
    severity: Severity::Warning,
    what: "A chapter begins when the video is over.",
    why: "The time, or the video's length, is mistyped, and the link leads nowhere.",
    bad: "length: \"25:12\", and ## 26:30 Letters",
    good: "length: \"27:12\", and ## 26:30 Letters",
};

/// A time past the hour in minutes alone.
pub static CHAPTER_HOURS: Code = Code {
    name: "chapter-hours",
    severity: Severity::Warning,
    what: "A time past the hour is written in minutes.",
    why: "Where videos are watched, `75:10` is not read as a time; and it may be a slip.",
    bad: "## 75:10 Letters",
    good: "## 1:15:10 Letters",
};

/// A heading that seems to begin with a time and is no chapter.
pub static CHAPTER_UNREAD: Code = Code {
    name: "chapter-unread",
    severity: Severity::Warning,
    what: "A heading among chapters begins with something like a time that cannot be read.",
    why: "The heading is then no chapter, and the chapter before it seems to last until the one after.",
    bad: "## 5.12 Finished",
    good: "## 5:12 Finished",
};

/// A chapter without words.
pub static CHAPTER_NAMELESS: Code = Code {
    name: "chapter-nameless",
    severity: Severity::Warning,
    what: "A chapter has a time and no words.",
    why: "Whoever picks a chapter from the list picks it by its words.",
    bad: "## 0:00",
    good: "## 0:00 Hello",
};

/// Returns the mistake that a fault of a chapter is.
pub fn code(fault: Fault) -> &'static Code {
    match fault {
        Fault::First => &CHAPTER_FIRST,
        Fault::Few => &CHAPTERS_FEW,
        Fault::Order => &CHAPTER_ORDER,
        Fault::Short(_) => &CHAPTER_SHORT,
        Fault::PastEnd => &CHAPTER_PAST_END,
        Fault::Hours => &CHAPTER_HOURS,
    }
}

/// Finds chapters that would cost a note its whole list.
pub fn check(entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Note(note) = &entry.data else { return };
    let all = chapters(entry);
    let place = |heading: &Heading| {
        let mut span = heading.at.clone();
        // The line end belongs to a heading, and would be underlined with it.
        let text = placing.texts().of(&entry.origin.file).get(span.clone()).unwrap_or_default();
        span.end = span.start + text.trim_end().len();
        Place { file: entry.origin.file.clone(), span }
    };
    for (at, fault) in faults(entry, note) {
        let Some(chapter) = all.get(at) else { continue };
        let time = chapter.time;
        let beside = |at: Option<usize>| at.and_then(|at| all.get(at));
        let (before, after) = (beside(at.checked_sub(1)), beside(Some(at + 1)));
        let end = note.video.as_ref().and_then(|video| video.length);
        let found = |message: String| Finding::new(code(fault), place(chapter.heading), message);
        let finding = match fault {
            Fault::First => found(format!("the first chapter is at {time}"))
                .help("let the first chapter begin at `0:00`, with what the video opens with"),
            Fault::Few => {
                let count = if all.len() == 1 { "one chapter".to_owned() } else { format!("{} chapters", all.len()) };
                found(format!("the video has {count}, and a list is shown from {FEWEST} on"))
                    .help("begin more headings with a time, or none")
            }
            Fault::Order => {
                let earlier = before.map_or(VideoTime { seconds: 0 }, |before| before.time);
                let message = format!("the chapter is at {time}, and the one above it at {earlier}");
                let finding = found(message).help("look for a slip in either time");
                match before {
                    Some(before) => finding.also(place(before.heading), "the one above it"),
                    None => finding,
                }
            }
            Fault::Short(lasts) => {
                let seconds = if lasts == 1 { "one second".to_owned() } else { format!("{lasts} seconds") };
                let until = if after.is_some() { "the next begins" } else { "the video ends" };
                let message = format!("the chapter lasts {seconds}, until {until}, and the least is {SHORTEST}");
                match after {
                    Some(after) => found(message)
                        .help("take the time from one of the two headings")
                        .also(place(after.heading), "the next one"),
                    None => found(message)
                        .help("look for a slip in the time or in the length, or take the time from the heading")
                        .also(entry.origin.field(&["video", "length"], placing), "the video's length"),
                }
            }
            Fault::PastEnd => {
                let end = end.unwrap_or(time);
                let message = format!("the chapter is at {time}, and the video ends at {end}");
                let finding = found(message).help("look for a slip in the time or in the length");
                finding.also(entry.origin.field(&["video", "length"], placing), "the video's length")
            }
            Fault::Hours => found("a time past the hour is written in minutes".to_owned())
                .help(format!("write hours, minutes and seconds: `{time}`")),
        };
        findings.push(finding);
    }
    if note.video.is_some() && !all.is_empty() {
        let headings = entry.prose.headings.iter();
        findings.extend(headings.filter_map(|heading| misread(heading, || place(heading))));
    }
}

/// Finds what a heading among chapters says wrongly of its own time or name.
fn misread(heading: &Heading, place: impl Fn() -> Place) -> Option<Finding> {
    if let Some(time) = heading.chapter {
        return heading.title.is_empty().then(|| {
            Finding::new(&CHAPTER_NAMELESS, place(), format!("the chapter at {time} has no words"))
                .help(format!("say behind the time what it is about, as in `## {time} Hello`"))
        });
    }
    let like = LikeTime::of(&heading.words)?;
    let message = format!("`{}` is not read as a time, so the heading is no chapter", like.written);
    let form = "minutes, a colon and two digits of seconds, and then a space";
    let help = match like.meant() {
        Some(times) => format!("write {times}: {form}"),
        None => format!("write it as in `5:12`, or `1:05:12` past the hour: {form}"),
    };
    Some(Finding::new(&CHAPTER_UNREAD, place(), message).help(help))
}
