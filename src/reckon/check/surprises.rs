//! A surprise stays one until its day, and its day is not before that of the gift.
//!
//! A finding is for the designer's eyes, so what is private may be looked at.

use crate::catalogue::Catalogue;
use crate::entry::value::Date;
use crate::entry::{At, Entry, Kind, Mention, Placing, Project};
use crate::finding::{Code, Finding, Severity};

/// The title of a surprise in a text that comes out before its day.
pub static SURPRISE_NAMED: Code = Code {
    name: "surprise-named",
    severity: Severity::Warning,
    what: "A text refers without words of its own to a project that is held back by `reveal`, so its title is shown.",
    why: "Whoever it is for may read what it is.",
    bad: "I am knitting <project:wyns-hat>.",
    good: "I am knitting [a present](project:wyns-hat).",
};

/// A surprise that is on the site before it is given.
pub static REVEAL_EARLY: Code = Code {
    name: "reveal-early",
    severity: Severity::Warning,
    what: "A project is on the site from a day before the one on which it must be there.",
    why: "Whoever it is for may see it before it is given.",
    bad: "reveal: 2026-12-20\nmade for: { who: Wyn, by: 2026-12-24 }",
    good: "reveal: 2026-12-25\nmade for: { who: Wyn, by: 2026-12-24 }",
};

/// Finds what gives a surprise away.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    if let Some(project) = entry.project() {
        findings.extend(early(entry, project, placing));
    }
    if entry.common.ready == Some(false) {
        return;
    }
    for mention in entry.mentions.iter().filter(|mention| mention.to.kind == Kind::Project && !mention.private) {
        findings.extend(held_back(catalogue, entry, mention).map(|day| {
            let message = format!("readers get its title, and it is held back until {}", day.in_words());
            Finding::new(&SURPRISE_NAMED, entry.origin.place(&mention.at, placing), message)
                .help(format!("write other words: `[a present]({})`", mention.to))
        }));
    }
}

fn early(entry: &Entry, project: &Project, placing: &Placing<'_>) -> Option<Finding> {
    let by = project.made_for.for_desk().as_ref()?.by?;
    let reveal = project.reveal.filter(|reveal| *reveal < by)?;
    let message = format!("it is on the site from {}, and must be there on {}", reveal.in_words(), by.in_words());
    Some(
        Finding::new(&REVEAL_EARLY, entry.origin.field(&["reveal"], placing), message)
            .help("give `reveal` the day of the gift or a later one")
            .also(entry.origin.field(&["made for", "by"], placing), "the day of the gift"),
    )
}

/// Returns the day until which a project is held back, if an entry shows its title before.
fn held_back(catalogue: &Catalogue, entry: &Entry, mention: &Mention) -> Option<Date> {
    let text = match &mention.at {
        At::Prose(span) => entry.prose.file().get(span.clone()),
        At::Field(steps) => entry.texts.iter().find(|(way, _)| way == steps).map(|(_, text)| text.as_str()),
    };
    let bare = format!("<{}", mention.to);
    let ends = |rest: &str| rest.starts_with(['>', '#']);
    if !text?.match_indices(&bare).any(|(at, _)| text.and_then(|text| text.get(at + bare.len()..)).is_some_and(ends)) {
        return None;
    }
    let shown_from = entry.seen_from().max(Some(catalogue.view.today));
    catalogue.entry(&mention.to)?.project()?.reveal.filter(|day| Some(*day) > shown_from)
}
