//! What a design still owes before its next stage.

use crate::catalogue::Catalogue;
use crate::entry::value::{Date, Stage};
use crate::entry::{Entry, Pattern};
use crate::reckon::{Told, needs};

/// One thing that is missing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Missing {
    /// A key of the front matter, as it is written: `gauge`, `test knit: apply`.
    Key(&'static str),
    /// The text.
    Text,
    /// What was weighed: the sample's yarn.
    SampleWeight,
    /// The length of yarn in these sizes, by name; every one where there are no names.
    Needs(Vec<String>),
    /// Testers for these sizes, so many for each.
    Tester(Vec<(String, usize)>),
    /// What this many testers used.
    TestersYarn(usize),
    /// The end of the test knit.
    EndOfTestKnit(Date),
}

/// Returns the stage after one; nothing after publication.
pub fn next_stage(stage: Stage) -> Option<Stage> {
    match stage {
        Stage::Sketch => Some(Stage::Swatch),
        Stage::Swatch => Some(Stage::Sample),
        Stage::Sample => Some(Stage::TechEdit),
        Stage::TechEdit => Some(Stage::TestKnit),
        Stage::TestKnit => Some(Stage::Published),
        Stage::Published | Stage::Retired => None,
    }
}

/// Returns what is missing before a design's next stage, also what an earlier stage left owing, in the order of stages.
///
/// Before a swatch: what it is to be, and its yarn. Before a sample: sizes, finished measurements, gauge and needles, since
/// yarn is ordered by them. Before the tech edit: the sample's weight, the yarn of every size, construction and text.
/// Before the test knit: what its call must say, which is days, sizes wanted, where to apply, and the level. Before
/// publication: a tester for every size, what each of them used, a picture with its description, a summary, a day and a
/// place that sells it (practice of designers and testers as published; none of it is a rule).
pub fn missing(catalogue: &Catalogue, entry: &Entry, pattern: &Pattern) -> Vec<Missing> {
    let stage = pattern.stage();
    let mut owed = Vec::new();
    if next_stage(stage).is_none() {
        return owed;
    }
    key(&mut owed, "garment", pattern.garment.is_some());
    key(&mut owed, "yarn", pattern.yarn.iter().any(|line| line.yarn.is_some()));
    if stage >= Stage::Swatch {
        key(&mut owed, "sizes", pattern.sizes.is_some());
        key(&mut owed, "finished", !pattern.finished.0.is_empty());
        key(&mut owed, "gauge", !pattern.gauge.is_empty());
        key(&mut owed, "needles", !pattern.needles.is_empty());
    }
    if stage >= Stage::Sample {
        key(&mut owed, "construction", !pattern.construction.is_empty());
        if entry.prose.source().trim().is_empty() {
            owed.push(Missing::Text);
        }
        if pattern.sample.as_ref().is_none_or(|sample| sample.used.is_none()) {
            owed.push(Missing::SampleWeight);
        }
        let unknown = sizes_without_needs(catalogue, pattern);
        if !unknown.is_empty() {
            owed.push(Missing::Needs(unknown));
        }
    }
    if stage >= Stage::TechEdit {
        let call = pattern.test_knit.as_ref();
        key(&mut owed, "level", pattern.level.is_some());
        if call.is_none() {
            key(&mut owed, "test knit", false);
        } else {
            key(&mut owed, "test knit: opens", call.is_some_and(|call| call.opens.is_some()));
            key(&mut owed, "test knit: closes", call.is_some_and(|call| call.closes.is_some()));
            key(&mut owed, "test knit: sizes wanted", call.is_some_and(|call| call.sizes_wanted.is_some()));
            key(&mut owed, "test knit: apply", call.is_some_and(|call| call.apply.is_some()));
        }
    }
    if stage >= Stage::TestKnit {
        owed.extend(of_testers(catalogue, pattern));
        key(&mut owed, "summary", entry.common.summary.is_some());
        key(&mut owed, "picture", entry.common.picture.is_some());
        key(&mut owed, "alt", entry.common.alt.is_some() || entry.common.picture.is_none());
        key(&mut owed, "published", pattern.published.is_some());
        key(&mut owed, "sold at", !pattern.sold_at.is_empty());
    }
    owed
}

fn key(owed: &mut Vec<Missing>, name: &'static str, there: bool) {
    if !there {
        owed.push(Missing::Key(name));
    }
}

/// Returns the names of the sizes of which it cannot be told how much yarn they take.
fn sizes_without_needs(catalogue: &Catalogue, pattern: &Pattern) -> Vec<String> {
    let lines = needs(pattern, |line| catalogue.yarn(&line.yarn.as_ref()?.reference()));
    let is_unknown = |size: usize| lines.iter().any(|line| line.get(size) == Some(&Told::Unknown));
    (0..pattern.size_count()).filter(|size| is_unknown(*size)).map(|size| name(pattern, size)).collect()
}

fn of_testers(catalogue: &Catalogue, pattern: &Pattern) -> Vec<Missing> {
    let testers = pattern.testers.all.for_desk();
    let mut owed = Vec::new();
    let is_of = |name: &str, size: usize| crate::reckon::pace::size_of(pattern, Some(name)) == Some(size);
    let by_others = |size: usize| {
        pattern.tested_in.as_ref().is_some_and(|tested| tested.labels().iter().any(|name| is_of(name, size)))
    };
    let by_testers =
        |size: usize| testers.iter().any(|tester| tester.size.as_deref().is_some_and(|name| is_of(name, size)));
    // As many as the call wants; where it says nothing of a size, one.
    let wanted = |(size, free): (usize, Option<usize>)| {
        let count = free.unwrap_or_else(|| usize::from(!by_testers(size)));
        (count > 0 && !by_others(size)).then(|| (name(pattern, size), count))
    };
    let untested: Vec<(String, usize)> =
        crate::reckon::places(pattern).into_iter().enumerate().filter_map(wanted).collect();
    if !untested.is_empty() {
        owed.push(Missing::Tester(untested));
    }
    let silent = testers.iter().filter(|tester| tester.used.0.is_empty()).count();
    if silent > 0 {
        owed.push(Missing::TestersYarn(silent));
    }
    let closes = pattern.test_knit.as_ref().and_then(|call| call.closes);
    owed.extend(closes.filter(|day| *day > catalogue.view.today).map(Missing::EndOfTestKnit));
    owed
}

fn name(pattern: &Pattern, size: usize) -> String {
    pattern.sizes.as_ref().and_then(|names| names.get(size)).unwrap_or("the one size").to_owned()
}
