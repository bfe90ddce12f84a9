//! What a knitter decides by: sizes, yarn, gauge, needles and the rest, as lines of words.

use crate::entry::Pattern;
use crate::entry::value::Wearer;
use crate::measure::{FabricLength, Needle, NeedleSize, Run, System, YarnLength};
use crate::page::view::Both;
use crate::page::{Shown, held, words};
use crate::reckon::{self, LineNeeds};
use crate::standards::needles;
use schemars::JsonSchema;
use serde::Serialize;

/// One fact of a pattern.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Fact {
    /// What it is: `Gauge`.
    pub label: String,
    /// The fact, in parts that are joined by a comma.
    pub parts: Vec<Both>,
}

/// Returns the facts a knitter decides by; `needs` are those of each line, `fit` how it sits.
pub fn facts(shown: &Shown<'_>, pattern: &Pattern, needs: &[LineNeeds], fit: Option<Both>) -> Vec<Fact> {
    let mut facts = Vec::new();
    let mut add = |label: String, parts: Vec<Both>| {
        if !parts.is_empty() {
            facts.push(Fact { label, parts });
        }
    };
    add(
        "For".to_owned(),
        pattern
            .wearer
            .map(|wearer| Both { first: words::sentence(wearer_in_words(wearer)), second: String::new() })
            .into_iter()
            .collect(),
    );
    for (name, run) in &pattern.to_fit.0 {
        add(format!("To fit {name}"), fabric_range(shown, run));
    }
    for (name, run) in &pattern.finished.0 {
        add(format!("Finished {name}"), fabric_range(shown, run));
    }
    add("Fit".to_owned(), fit.into_iter().collect());
    add("Yarn".to_owned(), yarn_in_words(shown, pattern, needs).into_iter().collect());
    add("Held together".to_owned(), held::together(shown, pattern));
    for gauge in &pattern.gauge {
        let over = gauge.stretch();
        let rows = gauge.rows.map(|rows| format!(" and {} rows", rows.show())).unwrap_or_default();
        let head = format!("{} sts{rows} to ", gauge.stitches.show());
        let inch = shown.catalogue.studio.settings().inch;
        let mut parts = vec![shown.both(|system| {
            if system == shown.system { format!("{head}{}", over.show(system, inch)) } else { over.show(system, inch) }
        })];
        parts.extend(gauge.stitch.iter().map(|stitch| Both { first: stitch.clone(), second: String::new() }));
        parts.extend(gauge.needle.as_ref().map(|needle| {
            let Both { first, second } = needle_words(shown, needle);
            Both { first: format!("on {first}"), second }
        }));
        add("Gauge".to_owned(), parts);
    }
    add("Needles".to_owned(), pattern.needles.iter().map(|needle| needle_words(shown, needle)).collect());
    if let Some(tested) = &pattern.tested_in {
        add("Test knitted in".to_owned(), vec![Both { first: words::list(tested.labels()), second: String::new() }]);
    }
    if let Some(level) = pattern.level {
        add("Level".to_owned(), vec![Both { first: words::sentence(level.name()), second: String::new() }]);
    }
    facts
}

fn wearer_in_words(wearer: Wearer) -> &'static str {
    match wearer {
        Wearer::Women => "women",
        Wearer::Men => "men",
        Wearer::Youth => "young people",
        Wearer::Child => "children",
        Wearer::Baby => "babies",
    }
}

fn fabric_range(shown: &Shown<'_>, run: &Run<FabricLength>) -> Vec<Both> {
    let lengths: Vec<FabricLength> = run.values.present().copied().collect();
    shown.fabric_range(&lengths).into_iter().collect()
}

/// Returns a pattern's yarn in words: the weights, then the total length over all sizes, of what each line `needs`.
pub fn yarn_in_words(shown: &Shown<'_>, pattern: &Pattern, needs: &[LineNeeds]) -> Option<Both> {
    let mut weights: Vec<String> = Vec::new();
    let all =
        pattern.yarn.iter().flat_map(|line| std::iter::once(line).chain(line.held_with.iter().map(|held| &held.0)));
    for use_of in all {
        let yarn = use_of.yarn.as_ref().and_then(|yarn| shown.catalogue.public_yarn(&yarn.reference()));
        if let Some(weight) =
            yarn.and_then(|yarn| yarn.weight.as_ref()).filter(|weight| !weights.contains(&weight.words))
        {
            weights.push(weight.words.clone());
        }
    }
    let lengths: Vec<YarnLength> = reckon::total_to_buy(pattern, needs).into_iter().flatten().collect();
    let weights = words::list(&weights);
    match (weights.is_empty(), shown.length_range(&lengths)) {
        (true, range) => range,
        (false, Some(range)) => Some(Both { first: format!("{weights}, {}", range.first), second: range.second }),
        (false, None) => Some(Both { first: weights, second: String::new() }),
    }
}

fn needle_words(shown: &Shown<'_>, needle: &Needle) -> Both {
    let inch = shown.catalogue.studio.settings().inch;
    // A size that charts give to several needles is shown with all of them.
    let rows = needles::rows(&needle.size);
    let mm = rows.iter().map(|row| row.metric).collect::<Vec<_>>();
    let mm = match (&needle.size, mm.as_slice()) {
        (NeedleSize::Metric(mm), _) => mm.show_mm(),
        (_, [only]) => only.show_mm(),
        (_, [low, .., high]) => words::range(&low.show_mm(), &high.show_mm()),
        (_, []) => String::new(),
    };
    let us = rows.first().and_then(|row| row.us.as_ref()).map(|us| format!("US {us}")).unwrap_or_default();
    let uk = rows.first().and_then(|row| row.uk.as_ref()).map(|uk| format!("UK {uk}")).unwrap_or_default();
    // Her own way of naming it comes first where it is not the studio's.
    let order = match (&needle.size, shown.system) {
        (NeedleSize::Us(_), _) | (NeedleSize::Metric(_), System::Imperial) => [us, mm, uk],
        (NeedleSize::Uk(_), _) => [uk, mm, us],
        (NeedleSize::Metric(_), System::Metric) => [mm, us, uk],
    };
    let mut names = order.into_iter().filter(|name| !name.is_empty());
    let mut first = names.next().unwrap_or_else(|| needle.size.show());
    let mut second = names.collect::<Vec<_>>().join(", ");
    if !needle.words.is_empty() {
        first = format!("{first} {}", needle.words);
    }
    if let Some(length) = needle.circular {
        first = format!("{first} {}", length.show(shown.system, inch));
        second = format!("{second}, {}", length.show(shown.system.other(), inch)).trim_start_matches(", ").to_owned();
    }
    Both { first, second }
}
