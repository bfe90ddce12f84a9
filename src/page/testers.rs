//! What testers used who let it be shown, without their names.

use super::view::{Both, Link};
use super::{Item, Shown};
use crate::entry::{Pattern, Shared, YarnUse};
use crate::measure::{Amount, PutUp};
use schemars::JsonSchema;
use serde::Serialize;

/// What one tester used.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct TesterView {
    /// The size they made; may be empty.
    pub size: String,
    /// The yarn they used; the pattern's own where they say no other; absent where it is not known or not public.
    pub yarn: Option<Item<Link>>,
    /// What they used of each colour.
    pub used: Vec<TesterUse>,
}

/// What one tester used of one colour.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct TesterUse {
    /// The label of the colour: `MC`; empty where the pattern has only one.
    pub colour: String,
    /// How much: a length where it can be told, else as they weighed it.
    pub amount: Both,
}

/// Returns what testers used who share it, by size. One who shares neither a yarn nor what it took has nothing to show.
pub fn testers(shown: &Shown<'_>, pattern: &Pattern) -> Vec<TesterView> {
    let mut all: Vec<(Option<usize>, TesterView)> = pattern
        .testers
        .shared
        .iter()
        .map(|one| (one.size.as_deref().and_then(|size| pattern.sizes.as_ref()?.find(size)), view(shown, pattern, one)))
        .filter(|(_, one)| one.yarn.is_some() || !one.used.is_empty())
        .collect();
    all.sort_by_key(|(size, _)| (size.is_none(), *size));
    all.into_iter().map(|(_, one)| one).collect()
}

fn view(shown: &Shown<'_>, pattern: &Pattern, one: &Shared) -> TesterView {
    // A label that the pattern does not have may be any words of hers, which were not written for readers.
    let line = |label: &str| pattern.yarn.iter().find(|line| line.colour.as_deref() == Some(label));
    let used = one.used.0.iter().filter_map(|(label, amount)| {
        let line = match pattern.yarn.as_slice() {
            [only] => only,
            _ => line(label)?,
        };
        let colour = line.colour.clone().filter(|_| pattern.yarn.len() > 1).unwrap_or_default();
        Some(TesterUse { colour, amount: amount_of(shown, *amount, put_up(shown, one, line)) })
    });
    let own = || match pattern.yarn.as_slice() {
        [first, rest @ ..] => {
            let yarn = first.yarn.as_ref()?.reference();
            let same = |line: &YarnUse| line.yarn.as_ref().is_some_and(|other| other.reference() == yarn);
            rest.iter().all(same).then_some(yarn)
        }
        [] => None,
    };
    let yarn = one.yarn.as_ref().map(|yarn| yarn.reference()).or_else(own);
    TesterView {
        size: one.size.as_deref().and_then(|size| size_of(pattern, size)).unwrap_or_default(),
        yarn: yarn.and_then(|yarn| shown.public_link(&yarn)),
        used: used.collect(),
    }
}

/// Returns a size as the pattern calls it, where it has several.
fn size_of(pattern: &Pattern, size: &str) -> Option<String> {
    let names = pattern.sizes.as_ref().filter(|names| names.len() > 1)?;
    let name = names.get(names.find(size)?)?;
    Some(names.unit().map_or_else(|| name.to_owned(), |unit| format!("{name} {unit}")))
}

fn put_up(shown: &Shown<'_>, one: &Shared, line: &YarnUse) -> Option<PutUp> {
    let yarn = one.yarn.as_ref().or(line.yarn.as_ref())?;
    shown.catalogue.public_yarn(&yarn.reference())?.put_up
}

fn amount_of(shown: &Shown<'_>, amount: Amount, put_up: Option<PutUp>) -> Both {
    match (amount.length(put_up), amount) {
        (Some(length), _) => shown.length(length),
        (None, Amount::Mass(mass)) => shown.mass(mass),
        (None, other) => Both { first: other.show(shown.system), second: String::new() },
    }
}
