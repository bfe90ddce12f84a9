//! What the desk shows: the designer's working table, for the preview alone.
//!
//! Private fields are opened in this folder and in no other of `page`; no theme ever sees these contexts, since they are no
//! variant of [`super::Context`]. A catalogue for the designer's eyes is expected, in which every entry has a page.

mod designs;
mod events;
mod findings;
mod gifts;
mod needles;
mod week;
mod yarn;

pub use designs::{DateLine, DesignLine, MissingLine, StageGroup};
pub use events::events;
pub use findings::{FileFindings, FindingView, FindingsView, OtherPlace, Quote};
pub use gifts::{GiftLine, HouseholdView};
pub use needles::{DoneLine, NeedleLine, UsedLine};
pub use week::{MentionLine, MentionedKind, WeekText, WeekView};
pub use yarn::{WantLine, YarnLine};

use super::view::Link;
use super::{Item, Shown, words};
use crate::entry::value::Date;
use crate::finding::Finding;
use crate::source::Texts;
use serde::Serialize;

/// What the desk's own template sees.
#[derive(Clone, Debug, Serialize)]
pub struct DeskContext {
    /// The site's name.
    pub site: String,
    /// The address of the site's first page.
    pub home: String,
    /// The day it is, in words.
    pub today: String,
    /// The sections, with what stands in each, for the list at the top.
    pub sections: Vec<Section>,
    /// What is wrong.
    pub findings: FindingsView,
    /// The note in hand, if there is any note.
    pub week: Option<WeekView>,
    /// How many days the designer's own calendar holds.
    pub days: usize,
    /// The designs by stage.
    pub designs: Vec<StageGroup>,
    /// What is on the needles, what must be there first above.
    pub needles: Vec<NeedleLine>,
    /// Yarn at hand and wanted, short ones first.
    pub yarn: Vec<YarnLine>,
    /// How many of those something planned takes.
    pub planned: usize,
    /// How many of them nothing planned takes.
    pub free: usize,
    /// Gifts by household.
    pub households: Vec<HouseholdView>,
}

/// One section of the desk.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Section {
    /// Its id on the page.
    pub id: &'static str,
    /// What it is called.
    pub title: &'static str,
    /// What stands in it, in a few words: `two short of ten`.
    pub count: String,
    /// Whether something in it wants her eye.
    pub calls: bool,
}

/// Returns what the desk shows of a studio and its findings.
pub fn context(shown: &Shown<'_>, findings: &[Finding], texts: &Texts) -> DeskContext {
    let catalogue = shown.catalogue;
    let yarn = yarn::yarn(shown);
    let free = yarn.iter().filter(|line| line.state == "free").count();
    let mut context = DeskContext {
        site: catalogue.studio.title.clone(),
        home: shown.addresses.local(""),
        today: catalogue.view.today.in_words(),
        sections: Vec::new(),
        findings: findings::findings(shown, findings, texts),
        week: week::week(shown),
        days: events::events(shown).len(),
        designs: designs::designs(shown),
        needles: needles::needles(shown),
        planned: yarn.len() - free,
        free,
        yarn,
        households: gifts::households(shown),
    };
    context.sections = sections(&context);
    context
}

fn sections(desk: &DeskContext) -> Vec<Section> {
    let section = |id, title, count: String, calls| Section { id, title, count, calls };
    let designs: Vec<&DesignLine> = desk.designs.iter().flat_map(|group| &group.designs).collect();
    let behind = designs.iter().filter(|line| line.is_late).count();
    let late = desk.needles.iter().filter(|line| line.is_late).count();
    let short = desk.yarn.iter().filter(|line| line.state == "short").count();
    let alike = desk.households.iter().filter(|household| !household.alike.is_empty()).count();
    let week = desk.week.as_ref();
    let unlinked = week.map_or(0, |week| week.unlinked.len());
    vec![
        section("findings", "Findings", desk.findings.count.clone(), desk.findings.total > 0),
        section(
            "week",
            "This week",
            match (week, unlinked) {
                (None, _) => "no note yet".to_owned(),
                (Some(_), 0) => "all is linked".to_owned(),
                (Some(_), count) => format!("{} not linked", words::number(count)),
            },
            unlinked > 0,
        ),
        section("designs", "Designs", of(designs.len(), behind, "late"), behind > 0),
        section("needles", "On the needles", of(desk.needles.len(), late, "late"), late > 0),
        section("yarn", "Yarn", of(desk.planned, short, "short"), short > 0),
        section(
            "gifts",
            "Gifts",
            match alike {
                0 => words::counted(desk.households.len(), "household", "households"),
                count => format!("some alike in {}", words::counted(count, "household", "households")),
            },
            alike > 0,
        ),
    ]
}

/// Returns a count of all, and of those that are somehow, if any are: `two short of ten`.
fn of(all: usize, some: usize, how: &str) -> String {
    if some == 0 { words::number(all) } else { format!("{} {how} of {}", words::number(some), words::number(all)) }
}

/// A day in words and for machines.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Day {
    /// In words: `14 March 2026`.
    pub words: String,
    /// As ISO 8601 has it.
    pub iso: String,
}

impl From<Date> for Day {
    fn from(date: Date) -> Self {
        Self { words: date.in_words(), iso: date.to_string() }
    }
}

/// Returns plain words where a link might stand.
fn no_link(title: &str) -> Item<Link> {
    Item::from(Link { title: title.to_owned(), url: None })
}

/// Returns a number of days in words: `today`, `one day`, `19 days`, in weeks from six weeks on, in months from half a year.
fn days(count: i64) -> String {
    let count = usize::try_from(count.unsigned_abs()).unwrap_or(usize::MAX);
    match count {
        0 => "less than a day".to_owned(),
        1..42 => words::counted(count, "day", "days"),
        // A month is 365.25 ÷ 12 days on average, near enough for how long something has lain.
        42..183 => words::counted(count / 7, "week", "weeks"),
        _ => words::counted(count.saturating_mul(48) / 1461, "month", "months"),
    }
}
