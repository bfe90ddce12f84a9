//! The catalogue of patterns, and patterns on other pages.

use super::designs::ON_THE_WAY;
use super::group;
use crate::entry::value::Stage;
use crate::entry::{Entry, Kind, Pattern, Reference};
use crate::page::view::{Group, Head, Line, PatternItem};
use crate::page::{Item, Shown, pattern, words};
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeMap;

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
