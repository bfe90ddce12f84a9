//! The studio's other yarns that may do for a pattern.

use super::pattern::table_sizes;
use super::view::{Both, Link, SizeRow, SizeTable};
use super::{Item, Shown, words};
use crate::entry::{Entry, Pattern, Reference, Yarn};
use crate::measure::{Grist, Percent};
use crate::reckon::{Purchase, skeins};
use schemars::JsonSchema;
use serde::Serialize;

/// How far a yarn's length per weight may be from the pattern's, in hundredths of a percent; beyond that it is another
/// weight of yarn (common practice, and only a first sieve: the swatch decides).
const FAR: u64 = 2000;

/// How many are listed.
const MOST: usize = 4;

/// Another yarn of the studio that may do.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct OtherYarn {
    /// The yarn.
    pub yarn: Item<Link>,
    /// How it is sold.
    pub put_up: Both,
    /// How far it is from the pattern's yarn: `4% less length in the same weight; its band says 21 stitches`.
    pub apart: String,
    /// Whole skeins for each size, a row for each yarn of the pattern.
    pub skeins: SizeTable,
}

/// Returns the studio's other yarns that may do for a pattern made in one yarn, the nearest in length per weight first.
///
/// They are public, still made, of the same standard weight, and no further than a fifth from its length per weight.
pub fn other_yarns(shown: &Shown<'_>, pattern: &Pattern, purchases: &[Purchase<'_>]) -> Vec<OtherYarn> {
    let Some((id, own)) = only_yarn(shown, pattern) else { return Vec::new() };
    let Some(grist) = own.put_up.and_then(Grist::of) else { return Vec::new() };
    if !purchases.iter().all(|purchase| purchase.is_known) {
        return Vec::new();
    }
    let near = |entry: &'_ Entry, yarn: &Yarn| -> Option<Percent> {
        let weight = |yarn: &Yarn| yarn.weight.as_ref().map(|weight| weight.category.number);
        if entry.id == id || yarn.discontinued == Some(true) || weight(yarn)? != weight(own)? {
            return None;
        }
        let apart = grist.apart(Grist::of(yarn.put_up?)?)?;
        (apart.hundredths().unsigned_abs() <= FAR).then_some(apart)
    };
    let mut found: Vec<(Percent, &Entry, &Yarn)> =
        shown.catalogue.yarns().filter_map(|(entry, yarn)| Some((near(entry, yarn)?, entry, yarn))).collect();
    found.sort_by(|a, b| {
        let far = |apart: Percent| apart.hundredths().unsigned_abs();
        far(a.0).cmp(&far(b.0)).then_with(|| a.1.id.cmp(&b.1.id))
    });
    found.truncate(MOST);
    found.into_iter().filter_map(|(apart, entry, yarn)| view(shown, pattern, purchases, apart, entry, yarn)).collect()
}

/// Returns the yarn of a pattern that is made in one yarn throughout.
fn only_yarn<'a>(shown: &Shown<'a>, pattern: &Pattern) -> Option<(Reference, &'a Yarn)> {
    let id = pattern.yarn.first()?.yarn.as_ref()?.reference();
    let same = |line: &crate::entry::YarnUse| {
        line.held_with.is_empty() && line.yarn.as_ref().is_some_and(|yarn| yarn.reference() == id)
    };
    if !pattern.yarn.iter().all(same) {
        return None;
    }
    let yarn = shown.catalogue.public_yarn(&id)?;
    Some((id, yarn))
}

fn view(
    shown: &Shown<'_>,
    pattern: &Pattern,
    purchases: &[Purchase<'_>],
    apart: Percent,
    entry: &Entry,
    yarn: &Yarn,
) -> Option<OtherYarn> {
    let put_up = yarn.put_up?;
    let margin = shown.margin(pattern);
    let cell = |need: &Option<crate::reckon::Requirement>| {
        let whole = need.and_then(|need| skeins(need.length, margin, put_up)).map(|skeins| skeins.whole);
        Both { first: whole.map_or_else(|| "–".to_owned(), |whole| whole.to_string()), second: String::new() }
    };
    let row = |purchase: &Purchase<'_>| {
        let colours: Vec<&str> = purchase.uses.iter().filter_map(|line| line.colour.as_deref()).collect();
        let label =
            if colours.is_empty() { "Skeins".to_owned() } else { format!("Skeins of {}", colours.join(" and ")) };
        SizeRow { label, cells: purchase.sizes.iter().map(cell).collect(), units: Both::default() }
    };
    Some(OtherYarn {
        yarn: shown.own_link(entry),
        put_up: shown.put_up(put_up),
        apart: in_words(apart, yarn),
        skeins: SizeTable { sizes: table_sizes(pattern), rows: purchases.iter().map(row).collect() },
    })
}

fn in_words(apart: Percent, yarn: &Yarn) -> String {
    let length = words::length_apart(apart);
    match &yarn.gauge {
        Some(gauge) => format!("{length}; its band says {} stitches", gauge.stitches.show()),
        None => length,
    }
}
