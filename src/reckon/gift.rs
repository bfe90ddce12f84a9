//! When two gifts are alike. What tells it is private: the desk and the checks may ask, and what makes the site may not.

use crate::entry::{MadeFrom, Project, Reference, slug};
use std::collections::BTreeMap;

/// What a gift was made from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Design {
    /// A pattern of the studio.
    Own(Reference),
    /// Somebody else's, by its title.
    Other(String),
    /// None that is named.
    None,
}

/// Returns what a project is made from.
pub fn design(project: &Project) -> Design {
    match &project.pattern {
        Some(MadeFrom::Own(pattern)) => Design::Own(pattern.reference()),
        Some(MadeFrom::Other(other)) => Design::Other(other.title.clone()),
        None => Design::None,
    }
}

/// Returns whether two projects are for one household or one person, and of one design in one variant.
///
/// Names of people, households and variants are compared as [`plain`] has them. A variant is the same names with the same values, in any order, letters compared without accents and punctuation left out. Two without one are alike
/// too, since nothing sets them apart; sizes and yarns do not count. What is made from no pattern is never alike.
pub fn are_alike(one: &Project, other: &Project) -> bool {
    let (Some(for_one), Some(for_other)) = (one.made_for.for_desk(), other.made_for.for_desk()) else { return false };
    let same = |one: &Option<String>, other: &Option<String>| {
        one.as_deref().zip(other.as_deref()).is_some_and(|(one, other)| plain(one) == plain(other))
    };
    let design = design(one);
    (same(&for_one.household, &for_other.household) || same(&for_one.who, &for_other.who))
        && design != Design::None
        && design == self::design(other)
        && variant(one) == variant(other)
}

/// Returns a project's variant in a form that can be compared.
fn variant(project: &Project) -> BTreeMap<String, String> {
    project.variant.for_desk().0.iter().map(|(name, value)| (plain(name), plain(value))).collect()
}

/// Returns a text in a form in which two that say the same are equal: `Hill Farm` is `hill-farm`, and `Dénzil` is `Denzil`.
///
/// Letters are taken without accents and in one size, and punctuation is left out; a text of signs alone stays as it is.
pub fn plain(text: &str) -> String {
    let plain = slug(text);
    if plain.is_empty() { text.trim().to_owned() } else { plain }
}
