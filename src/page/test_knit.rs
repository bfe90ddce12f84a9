//! The page of a design's call for test knitters.

use super::buy;
use super::pattern::{self, Figures};
use super::view::{Head, Line, Link};
use super::{Item, Shown, page_path, words};
use crate::catalogue::{Call, CallState};
use crate::entry::value::Date;
use crate::entry::{Entry, Pattern};
use crate::reckon;
use schemars::JsonSchema;
use serde::Serialize;

/// What testers send back where a call does not say it (common practice: the gauge they got, finished measurements, yarn
/// weighed and not guessed, photos only if they like).
const COMES_BACK: [&str; 4] = [
    "your gauge, after washing",
    "the measurements of the finished piece",
    "the yarn you used of each colour, weighed before and after",
    "photos, if you like: none is shown unless you say so",
];

/// What `test-knit.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct TestKnitContext {
    /// The page's head.
    pub head: Head,
    /// The call.
    pub call: CallView,
    /// The figures of the design that a tester needs.
    pub pattern: Figures,
}

/// A call for test knitters.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct CallView {
    /// What the design is called, with a link to its line on the page of designs on the way.
    pub design: Item<Link>,
    /// `Test knit`, and what it is: `Test knit · Mittens`.
    pub kicker: String,
    /// Whether one can still apply: the call is open, and a place is left.
    pub open: bool,
    /// Where it stands, in a sentence: `Applications are open until 31 December 2026.`
    pub state: String,
    /// How many testers are wanted in each size; empty once the call is closed.
    pub wanted: Vec<WantedView>,
    /// The days, in order.
    pub days: Vec<CallDay>,
    /// What testers send back.
    pub comes_back: Vec<String>,
    /// What testers are given; may be empty.
    pub reward: String,
    /// Where to apply, while one can.
    pub apply: Option<String>,
}

/// How many testers are wanted in one size.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct WantedView {
    /// The size.
    pub size: String,
    /// How many, in words: `two testers wanted`, `taken`.
    pub words: String,
    /// Whether a place is left.
    pub left: bool,
}

/// One day of a call.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct CallDay {
    /// What it is: `Check-in`.
    pub what: String,
    /// The day in words.
    pub words: String,
    /// The day as ISO 8601 has it.
    pub iso: String,
}

/// Returns the folder of a design's call in the site: `patterns/shoal-mittens/test-knit/`.
pub fn path(entry: &Entry) -> String {
    page_path(&entry.id) + "test-knit/"
}

/// Returns the context of the page of a design's call; nothing where it has no such page.
pub fn of(shown: &Shown<'_>, entry: &Entry) -> Option<TestKnitContext> {
    let pattern = entry.pattern()?;
    Some(context(shown, entry, pattern, shown.catalogue.call(entry, pattern)?))
}

fn context(shown: &Shown<'_>, entry: &Entry, pattern: &Pattern, call: Call<'_>) -> TestKnitContext {
    let title = format!("{}: call for test knitters", entry.common.title);
    let summary = entry.common.summary.as_deref().unwrap_or_default();
    TestKnitContext {
        head: Head {
            unlisted: call.state != CallState::Open,
            ..shown.head(&title, summary, &path(entry), "patterns", "website", None)
        },
        call: view(shown, entry, pattern, call),
        pattern: pattern::figures(shown, pattern, &shown.needs(pattern), &buy::purchases(shown, pattern)),
    }
}

fn view(shown: &Shown<'_>, entry: &Entry, pattern: &Pattern, call: Call<'_>) -> CallView {
    let places = reckon::places(pattern);
    let garment = pattern.garment.as_deref().map(words::sentence);
    let open = is_open(call, &places);
    CallView {
        design: Item::from(Link { title: entry.common.title.clone(), url: Some(shown.address_on_the_way(entry)) }),
        kicker: ["Test knit".to_owned()].into_iter().chain(garment).collect::<Vec<_>>().join(" · "),
        open,
        state: state(call, &places),
        wanted: if call.state == CallState::Closed { Vec::new() } else { wanted(pattern, &places) },
        days: days(call, shown.catalogue.view.today),
        comes_back: match call.says.comes_back.as_slice() {
            [] => COMES_BACK.map(str::to_owned).to_vec(),
            own => own.to_vec(),
        },
        reward: call.says.reward.clone().unwrap_or_default(),
        apply: call.says.apply.as_ref().filter(|_| open).map(|apply| apply.as_str().to_owned()),
    }
}

/// Returns the folder of a design's call in the site if one can apply on a day; nothing for any other entry.
pub fn open_path(shown: &Shown<'_>, entry: &Entry, day: Date) -> Option<String> {
    let pattern = entry.pattern()?;
    let call = shown.catalogue.call_on(entry, pattern, day)?;
    is_open(call, &reckon::places(pattern)).then(|| path(entry))
}

/// Returns whether one can apply. A call that says of no size how many are wanted has no places that could all be taken.
fn is_open(call: Call<'_>, places: &[Option<usize>]) -> bool {
    call.state == CallState::Open && !are_all_taken(places)
}

fn are_all_taken(places: &[Option<usize>]) -> bool {
    let mut known = places.iter().flatten().peekable();
    known.peek().is_some() && known.all(|left| *left == 0)
}

fn state(call: Call<'_>, places: &[Option<usize>]) -> String {
    let until = |words: &str| match call.says.closes {
        Some(day) => format!("{words} until {}.", day.in_words()),
        None => format!("{words}."),
    };
    match call.state {
        CallState::Coming => {
            let day = call.says.opens.map(Date::in_words).unwrap_or_default();
            format!("Applications open on {day}.")
        }
        CallState::Closed => {
            let day = call.says.closes.map(Date::in_words).unwrap_or_default();
            format!("Applications closed on {day}.")
        }
        CallState::Open if are_all_taken(places) => until("Every size has its testers; they are knitting"),
        CallState::Open => until("Applications are open"),
    }
}

fn wanted(pattern: &Pattern, places: &[Option<usize>]) -> Vec<WantedView> {
    let one = |(size, left): (String, &Option<usize>)| {
        let words = match (*left)? {
            0 => "taken".to_owned(),
            left => format!("{} wanted", words::counted(left, "tester", "testers")),
        };
        Some(WantedView { size, words, left: *left != Some(0) })
    };
    pattern::table_sizes(pattern).into_iter().zip(places).filter_map(one).collect()
}

fn days(call: Call<'_>, today: Date) -> Vec<CallDay> {
    let mut days: Vec<(Date, &str)> = call.says.check_ins.iter().map(|day| (*day, "Check-in")).collect();
    days.extend(call.says.opens.map(|day| (day, if day <= today { "Opened" } else { "Opens" })));
    days.extend(call.says.closes.map(|day| (day, if day < today { "Closed" } else { "Closes" })));
    days.sort();
    days.into_iter()
        .map(|(day, what)| CallDay { what: what.to_owned(), words: day.in_words(), iso: day.to_string() })
        .collect()
}

/// Returns a link to the page of a design's call, with what it says in a few words; nothing where there is no such page.
pub fn link(shown: &Shown<'_>, entry: &Entry, pattern: &Pattern) -> Option<Line> {
    let call = shown.catalogue.call(entry, pattern)?;
    let places = reckon::places(pattern);
    let title = format!("Call for test knitters: {}", entry.common.title);
    let url = shown.addresses.local(&path(entry));
    let sizes: Vec<String> = wanted(pattern, &places).into_iter().filter(|one| one.left).map(|one| one.size).collect();
    let words = if is_open(call, &places) && !sizes.is_empty() && pattern.size_count() > 1 {
        let until = call.says.closes.map(|day| format!(", until {}", day.in_words())).unwrap_or_default();
        format!("still wanted: {}{until}", words::list(&sizes))
    } else {
        state(call, &places)
    };
    Some(Line { link: Item::from(Link { title, url: Some(url) }), words, sponsored: false })
}

/// Returns the calls that can be answered, the one that closes first above.
pub fn open_calls(shown: &Shown<'_>) -> Vec<Line> {
    let mut calls: Vec<_> =
        shown.catalogue.calls().filter(|(_, pattern, call)| is_open(*call, &reckon::places(pattern))).collect();
    calls.sort_by_key(|(entry, _, call)| (call.says.closes.is_none(), call.says.closes, entry.id.clone()));
    calls.into_iter().filter_map(|(entry, pattern, _)| link(shown, entry, pattern)).collect()
}
