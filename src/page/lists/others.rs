//! The pages of techniques and of people.

use super::group;
use crate::page::view::{Group, Head, Line};
use crate::page::{Shown, words};
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeMap;

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
