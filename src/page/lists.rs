//! The pages that list entries, and lists on other pages.

use super::view::{Band, Both, Group, Head, Line, Link, NoteItem, PatternItem, ProjectItem};
use super::{Item, Shown, ThisYear, events, pattern, progress, project, test_knit, words, yarn};
use crate::catalogue::{BackLink, Via};
use crate::entry::value::{Choice, Stage};
use crate::entry::{Data, Entry, Kind, Pattern, Reference};
use crate::measure::{Mass, YarnLength};
use crate::reckon;
use crate::standards::yarn_weights;
use schemars::JsonSchema;
use serde::Serialize;
use std::cmp::Reverse;
use std::collections::BTreeMap;

/// The path of the page of designs on the way.
pub const ON_THE_WAY: &str = "patterns/on-the-way/";

/// What `patterns.html`, the catalogue, sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PatternsContext {
    /// The page's head.
    pub head: Head,
    /// Every published pattern, the newest first.
    pub patterns: Vec<Item<PatternItem>>,
    /// The same by garment, by its name.
    pub garments: Vec<Group>,
    /// The same by standard yarn weight, the finest first; a pattern of two weights stands under both.
    pub weights: Vec<Group>,
    /// How many designs are on the way.
    pub on_the_way: usize,
    /// The address of the page of designs on the way.
    pub on_the_way_url: String,
}

/// What `on-the-way.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct OnTheWayContext {
    /// The page's head.
    pub head: Head,
    /// The designs, the furthest along first.
    pub designs: Vec<Design>,
    /// The address of the calendar of publications and test knits; absent while there is no day in it.
    pub calendar: Option<String>,
}

/// A design that cannot be had yet: all that readers may know of it.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Design {
    /// What it is called.
    pub title: String,
    /// An id for it, unique on the page.
    pub id: String,
    /// One sentence about it; may be empty.
    pub summary: String,
    /// What it is: `Pullover`; may be empty.
    pub garment: String,
    /// The stage in words: `Being test knitted`.
    pub stage: String,
    /// The stage's number, from 1 for a sketch to 5 for a test knit.
    pub step: usize,
    /// What happens to it at that stage, in a sentence.
    pub happens: String,
    /// The day it is planned to be published, in words; may be empty.
    pub planned: String,
    /// Its call for test knitters, where there is one.
    pub call: Option<Line>,
}

/// What `needles.html`, the page of things on the needles, sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct NeedlesContext {
    /// The page's head.
    pub head: Head,
    /// The yarn that went into things this year; absent if none is known.
    pub this_year: Option<ThisYear>,
    /// The projects, the latest begun first.
    pub projects: Vec<Item<ProjectItem>>,
}

/// What `finished.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct FinishedContext {
    /// The page's head.
    pub head: Head,
    /// The yarn that went into things this year; absent if none is known.
    pub this_year: Option<ThisYear>,
    /// The years, the latest first.
    pub years: Vec<FinishedYear>,
}

/// One year's finished things.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct FinishedYear {
    /// The year.
    pub year: i16,
    /// How many things: `eleven things`.
    pub count: String,
    /// The length of all yarn in them that is known; absent if of none.
    pub length: Option<Both>,
    /// The mass of all yarn in them that is known; absent if of none.
    pub mass: Option<Both>,
    /// How many of them hold yarn whose length is not known: `two things`; empty if none.
    pub unknown: String,
    /// The things, the latest first.
    pub projects: Vec<Item<ProjectItem>>,
}

/// What `journal.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct JournalContext {
    /// The page's head.
    pub head: Head,
    /// The years, the latest first.
    pub years: Vec<JournalYear>,
}

/// One year's notes.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct JournalYear {
    /// The year.
    pub year: i16,
    /// The notes, the latest first.
    pub notes: Vec<Item<NoteItem>>,
}

/// What `yarns.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct YarnsContext {
    /// The page's head.
    pub head: Head,
    /// The yarns by standard weight, the finest first, those of unknown weight last.
    pub weights: Vec<YarnGroup>,
}

/// The yarns of one weight.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct YarnGroup {
    /// The weight: `Light`.
    pub title: String,
    /// An id for it, unique on the page.
    pub id: String,
    /// The yarns, by title.
    pub bands: Vec<Band>,
}

/// What `techniques.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct TechniquesContext {
    /// The page's head.
    pub head: Head,
    /// The techniques, by title, with their summaries.
    pub techniques: Vec<Line>,
}

/// What `people.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PeopleContext {
    /// The page's head.
    pub head: Head,
    /// The people, by what they are.
    pub groups: Vec<Group>,
}

/// Returns the plural of a kind, as a heading.
pub fn kind_title(kind: Kind) -> &'static str {
    match kind {
        Kind::Pattern => "Patterns",
        Kind::Project => "Projects",
        Kind::Note => "Notes",
        Kind::Yarn => "Yarns",
        Kind::Technique => "Techniques",
        Kind::Person => "People and places",
        Kind::Page => "Pages",
    }
}

/// Returns a pattern as a line of a list.
pub fn pattern_item(shown: &Shown<'_>, entry: &Entry, pattern: &Pattern) -> PatternItem {
    PatternItem {
        link: shown.own_link(entry),
        summary: shown.summary(entry),
        garment: pattern.garment.as_deref().map(words::sentence).unwrap_or_default(),
        sizes: pattern::sizes_in_words(pattern),
        yarn: pattern::yarn_in_words(shown, pattern, &shown.needs(pattern)).unwrap_or_default(),
        published: pattern.published.map(|date| date.month_in_words()).unwrap_or_default(),
        retired: pattern.stage() == Stage::Retired,
        picture: shown.picture(entry),
    }
}

/// Returns the public patterns, the newest first, those without a day last, then by key.
pub fn newest_patterns<'a>(shown: &Shown<'a>) -> Vec<(&'a Entry, &'a Pattern)> {
    let mut patterns: Vec<_> = shown.catalogue.patterns().collect();
    patterns.sort_by(|a, b| b.1.published.cmp(&a.1.published).then_with(|| a.0.id.cmp(&b.0.id)));
    patterns
}

/// Returns the context of the catalogue of patterns.
pub fn patterns(shown: &Shown<'_>) -> PatternsContext {
    let all = newest_patterns(shown);
    let mut garments: BTreeMap<String, Vec<Line>> = BTreeMap::new();
    let mut weights: BTreeMap<(u8, String), Vec<Line>> = BTreeMap::new();
    for (entry, pattern) in &all {
        let line = Line { link: shown.own_link(entry), words: pattern::sizes_in_words(pattern), sponsored: false };
        garments
            .entry(pattern.garment.as_deref().map_or_else(|| "Other things".to_owned(), words::sentence))
            .or_default()
            .push(line.clone());
        let mut seen = Vec::new();
        for yarn in
            pattern.yarn.iter().filter_map(|use_of| shown.catalogue.public_yarn(&use_of.yarn.as_ref()?.reference()))
        {
            let Some(weight) = &yarn.weight else { continue };
            if !seen.contains(&weight.category.number) {
                seen.push(weight.category.number);
                weights.entry((weight.category.number, weight.category.name.clone())).or_default().push(line.clone());
            }
        }
    }
    PatternsContext {
        head: shown.head(
            "Patterns",
            "All patterns, by garment and by weight of yarn.",
            "patterns/",
            "patterns",
            "website",
            None,
        ),
        patterns: all.iter().map(|(entry, pattern)| shown.pattern_item(entry, pattern)).collect(),
        garments: garments.into_iter().map(|(title, lines)| group("garment", title, lines)).collect(),
        weights: weights.into_iter().map(|((_, name), lines)| group("weight", name, lines)).collect(),
        on_the_way: shown.catalogue.on_the_way().count(),
        on_the_way_url: shown.addresses.local(ON_THE_WAY),
    }
}

fn group(prefix: &str, title: String, lines: Vec<Line>) -> Group {
    let id = format!("{prefix}-{}", crate::entry::slug(&title));
    Group { title, id, lines }
}

/// Returns the context of the page of designs on the way.
pub fn on_the_way(shown: &Shown<'_>) -> OnTheWayContext {
    let mut designs: Vec<_> = shown.catalogue.on_the_way().collect();
    designs.sort_by(|a, b| Reverse(a.1.stage()).cmp(&Reverse(b.1.stage())).then_with(|| a.0.id.cmp(&b.0.id)));
    let has_days = !events::events(shown).is_empty();
    let step = |stage: Stage| Stage::ALL.iter().position(|(_, one)| *one == stage).map_or(0, |at| at + 1);
    OnTheWayContext {
        head: shown.head(
            "On the way",
            "Designs that are not published yet, and how far they have come.",
            ON_THE_WAY,
            "patterns",
            "website",
            None,
        ),
        calendar: has_days.then(|| shown.addresses.local("calendar.ics")),
        designs: designs
            .into_iter()
            .map(|(entry, pattern)| Design {
                title: entry.common.title.clone(),
                id: entry.id.key.to_string(),
                summary: entry.common.summary.clone().unwrap_or_default(),
                garment: pattern.garment.as_deref().map(words::sentence).unwrap_or_default(),
                stage: stage_in_words(pattern.stage()).to_owned(),
                step: step(pattern.stage()),
                happens: happens(pattern.stage()).to_owned(),
                call: test_knit::link(shown, entry, pattern),
                planned: pattern
                    .published
                    .filter(|date| *date > shown.catalogue.view.today)
                    .map(|date| date.in_words())
                    .unwrap_or_default(),
            })
            .collect(),
    }
}

fn stage_in_words(stage: Stage) -> &'static str {
    match stage {
        Stage::Sketch => "A sketch",
        Stage::Swatch => "Being swatched",
        Stage::Sample => "The sample is on the needles",
        Stage::TechEdit => "With the technical editor",
        Stage::TestKnit => "Being test knitted",
        Stage::Published => "Published",
        Stage::Retired => "Retired",
    }
}

impl Shown<'_> {
    /// Returns the address of a design's line on the page of designs on the way.
    pub fn address_on_the_way(&self, entry: &Entry) -> String {
        format!("{}#{}", self.addresses.local(ON_THE_WAY), entry.id.key)
    }
}

/// Returns what happens to a design at a stage (common practice of designers), in a sentence for readers.
fn happens(stage: Stage) -> &'static str {
    match stage {
        Stage::Sketch => "An idea, perhaps drawn; neither yarn nor sizes are settled.",
        Stage::Swatch => "Yarn and stitch are tried on small pieces, which are washed, measured and weighed.",
        Stage::Sample => "The first whole one is being knitted, with all its yarn weighed beforehand.",
        Stage::TechEdit => "Somebody who checks patterns for a living goes through every sentence and every number.",
        Stage::TestKnit => "Other knitters make it in their own sizes and say where the pattern leaves them alone.",
        Stage::Published => "It can be had.",
        Stage::Retired => "It can no longer be had.",
    }
}

/// Returns the context of the page of things on the needles.
pub fn needles(shown: &Shown<'_>) -> NeedlesContext {
    NeedlesContext {
        head: shown.head(
            "On the needles",
            "What is being made, from which pattern and yarn, and how far it has come.",
            "on-the-needles/",
            "on-the-needles",
            "website",
            None,
        ),
        this_year: progress::this_year(shown),
        projects: on_the_needles(shown),
    }
}

/// Returns the public projects that are not finished, the latest begun first.
pub fn on_the_needles(shown: &Shown<'_>) -> Vec<Item<ProjectItem>> {
    let mut projects: Vec<_> = shown
        .catalogue
        .projects()
        .filter(|(_, project)| project.finished_by(shown.catalogue.view.today).is_none())
        .collect();
    project::latest_first(shown, &mut projects);
    projects.into_iter().map(|(entry, project)| shown.project_item(entry, project)).collect()
}

/// Returns the context of the page of finished things.
pub fn finished(shown: &Shown<'_>) -> FinishedContext {
    let years = reckon::by_year(shown.catalogue);
    let year = |(year, of): (i16, reckon::Year<'_>)| FinishedYear {
        year,
        count: words::counted(of.projects.len(), "thing", "things"),
        length: (of.length != YarnLength::default()).then(|| shown.length(of.length)),
        mass: (of.mass != Mass::default()).then(|| shown.mass(of.mass)),
        unknown: if of.unknown == 0 { String::new() } else { words::counted(of.unknown, "thing", "things") },
        projects: of.projects.iter().map(|(entry, project)| shown.project_item(entry, project)).collect(),
    };
    FinishedContext {
        head: shown.head(
            "Finished",
            "Finished things by year, with the yarn that went into them.",
            "finished/",
            "finished",
            "website",
            None,
        ),
        this_year: progress::this_year(shown),
        years: years.into_iter().rev().map(year).collect(),
    }
}

/// Returns the context of the journal; `notes` are all notes, the latest first.
pub fn journal(shown: &Shown<'_>) -> JournalContext {
    let mut years: Vec<JournalYear> = Vec::new();
    for (entry, note) in shown.latest_notes() {
        let year = note.date.map(|date| date.year()).unwrap_or_default();
        let item = shown.note_item(entry, note);
        match years.last_mut() {
            Some(last) if last.year == year => last.notes.push(item),
            _ => years.push(JournalYear { year, notes: vec![item] }),
        }
    }
    JournalContext {
        head: shown.head("Journal", "Weekly notes, by year.", "journal/", "journal", "website", None),
        years,
    }
}

/// Returns the context of the page of yarns.
pub fn yarns(shown: &Shown<'_>) -> YarnsContext {
    let mut weights: BTreeMap<u8, Vec<Band>> = BTreeMap::new();
    let mut all: Vec<_> = shown.catalogue.yarns().collect();
    all.sort_by_key(|(entry, _)| entry.common.title.to_lowercase());
    for (entry, one) in all {
        let number = one.weight.as_ref().map_or(u8::MAX, |weight| weight.category.number);
        weights.entry(number).or_default().push(yarn::list_band(shown, entry, one));
    }
    let group = |(number, bands): (u8, Vec<Band>)| {
        let title = yarn_weights::by_number(number)
            .map_or_else(|| "Of unknown weight".to_owned(), |weight| weight.name.clone());
        YarnGroup { id: format!("weight-{}", crate::entry::slug(&title)), title, bands }
    };
    YarnsContext {
        head: shown.head(
            "Yarns",
            "Yarns by standard weight, and what is knitted in each.",
            "yarns/",
            "yarns",
            "website",
            None,
        ),
        weights: weights.into_iter().map(group).collect(),
    }
}

/// Returns the context of the page of techniques.
pub fn techniques(shown: &Shown<'_>) -> TechniquesContext {
    let mut lines: Vec<Line> = shown
        .catalogue
        .techniques()
        .map(|(entry, _)| Line { link: shown.own_link(entry), words: shown.summary(entry), sponsored: false })
        .collect();
    lines.sort_by_key(|line| line.link.title.to_lowercase());
    TechniquesContext {
        head: shown.head(
            "Techniques",
            "How-tos for what the patterns ask for.",
            "techniques/",
            "techniques",
            "website",
            None,
        ),
        techniques: lines,
    }
}

/// Returns the context of the page of people.
pub fn people(shown: &Shown<'_>) -> PeopleContext {
    let mut groups: BTreeMap<String, Vec<Line>> = BTreeMap::new();
    for (entry, person) in shown.catalogue.people() {
        let title = person.is.first().map_or_else(|| "Others".to_owned(), |what| words::sentence(&plural(what)));
        groups.entry(title).or_default().push(Line {
            link: shown.own_link(entry),
            words: shown.summary(entry),
            sponsored: false,
        });
    }
    let mut groups: Vec<Group> = groups.into_iter().map(|(title, lines)| group("people", title, lines)).collect();
    for group in &mut groups {
        group.lines.sort_by_key(|line| line.link.title.to_lowercase());
    }
    PeopleContext {
        head: shown.head(
            "People and places",
            "Mills, shops, events and other designers.",
            "people/",
            "",
            "website",
            None,
        ),
        groups,
    }
}

/// Returns the plural of an English noun of the regular kind.
fn plural(noun: &str) -> String {
    match noun.as_bytes() {
        [.., b's' | b'x'] | [.., b's' | b'c', b'h'] => format!("{noun}es"),
        [.., before, b'y'] if !b"aeiou".contains(before) => {
            format!("{}ies", noun.get(..noun.len() - 1).unwrap_or(noun))
        }
        _ => format!("{noun}s"),
    }
}

/// Returns the published patterns whose front matter names a yarn or technique, the newest first.
pub fn patterns_that_take(shown: &Shown<'_>, id: &Reference) -> Vec<Item<PatternItem>> {
    let key = if id.kind == Kind::Yarn { "yarn" } else { "techniques" };
    let from =
        shown.catalogue.linked_from(id).iter().filter(|link| link.from.kind == Kind::Pattern && link.is_via(key));
    let mut patterns: Vec<(&Entry, &Pattern)> = from
        .filter_map(|link| {
            let entry = shown.catalogue.public_entry(&link.from)?;
            Some((entry, entry.pattern()?))
        })
        .collect();
    patterns.sort_by(|a, b| b.1.published.cmp(&a.1.published).then_with(|| a.0.id.cmp(&b.0.id)));
    patterns.into_iter().map(|(entry, pattern)| shown.pattern_item(entry, pattern)).collect()
}

/// Returns where an entry is mentioned: notes first, the latest first, then other entries by kind and title.
pub fn mentions(shown: &Shown<'_>, id: &Reference, wanted: impl Fn(&BackLink) -> bool) -> Vec<Line> {
    let mut links: Vec<(&BackLink, &Entry)> = shown
        .catalogue
        .linked_from(id)
        .iter()
        .filter(|link| wanted(link))
        .filter_map(|link| Some((link, shown.catalogue.public_entry(&link.from)?)))
        .collect();
    let order = |kind: Kind| (kind != Kind::Note, kind);
    links.sort_by(|(_, a), (_, b)| {
        let late = |entry: &Entry| Reverse(if entry.id.kind == Kind::Note { entry.date() } else { None });
        (order(a.id.kind), late(a), &a.common.title, &a.id).cmp(&(order(b.id.kind), late(b), &b.common.title, &b.id))
    });
    links.into_iter().map(|(link, entry)| mention_line(shown, link, entry)).collect()
}

fn mention_line(shown: &Shown<'_>, link: &BackLink, entry: &Entry) -> Line {
    let own = shown.own_link(entry);
    let heading = link.via.iter().find_map(|via| match via {
        Via::Text(Some(id)) => entry.prose.headings.iter().find(|heading| heading.id == *id),
        Via::Text(None) | Via::Field(_) => None,
    });
    let mut title = None;
    let mut words = Vec::new();
    if let Data::Note(note) = &entry.data {
        title = note.number.map(|number| words::numbered(number, &own.title));
        words.extend(note.date.map(|date| date.in_words()));
    } else {
        words.push(entry.id.kind.word().to_owned());
        words.extend(entry.project().map(|of| project::credit(shown, of)).filter(|credit| !credit.is_empty()));
    }
    let url = heading.zip(own.url.as_ref()).map(|(heading, url)| format!("{url}#{}", heading.id));
    if let Some(time) = heading.and_then(|heading| heading.chapter) {
        words.push(format!("at {time}"));
    }
    let link = match (title, url) {
        (None, None) => own,
        (title, url) => {
            Item::from(Link { title: title.unwrap_or_else(|| own.title.clone()), url: url.or_else(|| own.url.clone()) })
        }
    };
    Line { link, words: words.join(", "), sponsored: false }
}
