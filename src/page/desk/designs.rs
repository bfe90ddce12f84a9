//! Every design by stage: its dates, how long it has stood there, what is missing before the next stage.

use super::super::view::Link;
use super::super::{Item, Shown, words};
use super::Day;
use crate::entry::value::{Choice, Date, Stage};
use crate::entry::{Entry, Kind, Pattern, Reached};
use crate::reckon::desk::{Missing, Since, What, missing, next_stage, since};
use serde::Serialize;

/// The designs of one stage.
#[derive(Clone, Debug, Serialize)]
pub struct StageGroup {
    /// The stage: `Test knit`.
    pub stage: String,
    /// The stage after it, if there is one.
    pub next: Option<&'static str>,
    /// The designs, by title.
    pub designs: Vec<DesignLine>,
}

/// One design.
#[derive(Clone, Debug, Serialize)]
pub struct DesignLine {
    /// The design.
    pub link: Item<Link>,
    /// Its dates, each with what it is.
    pub dates: Vec<DateLine>,
    /// How long it has stood: `published eight months ago`; absent where no day tells it.
    pub stands: Option<String>,
    /// The note that was taken for it, where a note was.
    pub by_note: Option<Item<Link>>,
    /// What is missing before the next stage.
    pub missing: Vec<MissingLine>,
    /// Whether a day has gone by on which it was to be published, or its test knit to end, and it is not published.
    pub is_late: bool,
}

/// One thing that is missing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct MissingLine {
    /// The key of the front matter that would say it; absent where there is more to it than a key.
    pub key: Option<&'static str>,
    /// What it is otherwise; empty where the key says it.
    pub words: String,
}

/// A day of a design, and what it is.
#[derive(Clone, Debug, Serialize)]
pub struct DateLine {
    /// What it is: `Published`.
    pub what: String,
    /// The day.
    pub day: Day,
}

/// The stages in their order.
const STAGES: [Stage; 7] =
    [Stage::Sketch, Stage::Swatch, Stage::Sample, Stage::TechEdit, Stage::TestKnit, Stage::Published, Stage::Retired];

/// Returns the designs by stage; stages without any are left out.
pub fn designs(shown: &Shown<'_>) -> Vec<StageGroup> {
    let all: Vec<(&Entry, &Pattern)> = shown
        .catalogue
        .of_kind(Kind::Pattern)
        .iter()
        .filter_map(|entry| entry.pattern().map(|pattern| (entry, pattern)))
        .collect();
    let group = |stage: Stage| {
        let mut designs: Vec<_> = all.iter().filter(|(_, pattern)| pattern.stage() == stage).collect();
        designs.sort_by(|a, b| (&a.0.common.title, &a.0.id).cmp(&(&b.0.common.title, &b.0.id)));
        let designs: Vec<DesignLine> =
            designs.into_iter().map(|(entry, pattern)| line(shown, entry, pattern)).collect();
        (!designs.is_empty()).then(|| StageGroup {
            stage: words::sentence(stage.word()),
            next: next_stage(stage).map(|next| if next == Stage::Published { "publication" } else { next.word() }),
            designs,
        })
    };
    STAGES.into_iter().filter_map(group).collect()
}

fn line(shown: &Shown<'_>, entry: &Entry, pattern: &Pattern) -> DesignLine {
    let since = since(shown.catalogue, entry, pattern);
    let by_note = since.as_ref().and_then(|since| match &since.what {
        What::ToldOf(note) => shown.link(note),
        _ => None,
    });
    DesignLine {
        link: shown.own_link(entry),
        dates: dates(shown, pattern),
        stands: since.map(|since| stands(shown, &since)),
        by_note,
        missing: missing(shown.catalogue, entry, pattern).iter().map(in_words).collect(),
        is_late: is_late(pattern, shown.catalogue.view.today),
    }
}

fn is_late(pattern: &Pattern, today: Date) -> bool {
    let is_past = |day: Option<Date>| day.is_some_and(|day| day < today);
    let closes = pattern.test_knit.as_ref().and_then(|call| call.closes);
    match pattern.stage() {
        Stage::Published | Stage::Retired => false,
        Stage::TestKnit => is_past(pattern.published) || is_past(closes),
        _ => is_past(pattern.published),
    }
}

fn dates(shown: &Shown<'_>, pattern: &Pattern) -> Vec<DateLine> {
    let today = shown.catalogue.view.today;
    let call = pattern.test_knit.as_ref();
    let line = |before: &'static str, after: &'static str, day: Option<Date>| {
        day.map(|day| {
            let what = if day <= today { after } else { before };
            (day, DateLine { what: what.to_owned(), day: Day::from(day) })
        })
    };
    // What another line tells already is not said twice.
    let is_told = |stage: Stage, day: Date| match stage {
        Stage::TestKnit => call.and_then(|call| call.opens) == Some(day),
        Stage::Published => pattern.published == Some(day),
        _ => false,
    };
    let days = pattern.reached.for_desk().iter().flat_map(Reached::days);
    let reached = days.filter(|(stage, day)| !is_told(*stage, *day)).map(|(stage, day)| {
        let what = if day > today {
            format!("{} planned", words::sentence(stage.word()))
        } else {
            words::sentence(stage.word())
        };
        (day, DateLine { what, day: Day::from(day) })
    });
    // A day of publication before that stage is only planned, even if it has gone by.
    let is_out = matches!(pattern.stage(), Stage::Published | Stage::Retired);
    let mut lines: Vec<(Date, DateLine)> = [
        line("Test knit opens", "Test knit opened", call.and_then(|call| call.opens)),
        line("Test knit closes", "Test knit closed", call.and_then(|call| call.closes)),
        line("Planned for", if is_out { "Published" } else { "Was planned for" }, pattern.published),
    ]
    .into_iter()
    .flatten()
    .chain(reached)
    .collect();
    lines.sort_by_key(|(day, _)| *day);
    lines.into_iter().map(|(_, line)| line).collect()
}

fn stands(shown: &Shown<'_>, since: &Since) -> String {
    let what = match since.what {
        What::Reached => {
            return match since.day.days_to(shown.catalogue.view.today) {
                0 => "at this stage since today".to_owned(),
                count => format!("at this stage for {}", super::days(count)),
            };
        }
        What::Published => "published",
        What::TestKnitOpened => "test knit opened",
        What::TestKnitClosed => "test knit closed",
        What::ToldOf(_) => "last told of",
    };
    match since.day.days_to(shown.catalogue.view.today) {
        0 => format!("{what} today"),
        count => format!("{what} {} ago", super::days(count)),
    }
}

fn in_words(missing: &Missing) -> MissingLine {
    let sizes =
        |names: &[String]| format!("{} {}", if names.len() == 1 { "size" } else { "sizes" }, words::list(names));
    let words = match missing {
        Missing::Key(key) => return MissingLine { key: Some(key), words: String::new() },
        Missing::Text => "a text".to_owned(),
        Missing::SampleWeight => "what went into the sample".to_owned(),
        Missing::Needs(names) => format!("the yarn of {}", sizes(names)),
        Missing::Tester(wanted) => {
            let each = |(size, count): &(String, usize)| format!("{} for {size}", words::number(*count));
            format!("testers: {}", words::list(&wanted.iter().map(each).collect::<Vec<_>>()))
        }
        Missing::TestersYarn(count) => format!("what {} used", words::counted(*count, "tester", "testers")),
        Missing::EndOfTestKnit(day) => format!("the end of the test knit, {}", day.in_words()),
    };
    MissingLine { key: None, words }
}
