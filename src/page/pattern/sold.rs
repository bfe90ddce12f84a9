//! Where a pattern can be had, where it comes from, and what was corrected in it.

use crate::entry::value::{Stage, Web, Words};
use crate::entry::{Key, Kind, Pattern, Reference, Sale};
use crate::page::view::Link;
use crate::page::{Item, Shown};
use schemars::JsonSchema;
use serde::Serialize;

/// One place that sells a pattern.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct SaleView {
    /// The shop.
    pub place: Item<Link>,
    /// The pattern's page there.
    pub url: Option<String>,
    /// What it costs: `£7.00`.
    pub price: Option<String>,
    /// The same for machines.
    pub offer: Option<Offer>,
}

/// A price as schema.org has it.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Offer {
    /// The amount: `7.00`.
    pub price: String,
    /// The currency (ISO 4217): `GBP`.
    pub currency: String,
}

/// One correction.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ErratumView {
    /// Its day in words.
    pub date: String,
    /// Its day as ISO 8601 has it.
    pub iso_date: String,
    /// What was wrong and what is right.
    pub text: String,
}

pub(super) fn errata(shown: &Shown<'_>, pattern: &Pattern) -> Vec<ErratumView> {
    let mut errata: Vec<_> =
        pattern.errata.iter().filter(|erratum| erratum.date <= shown.catalogue.view.today).collect();
    errata.sort_by_key(|erratum| std::cmp::Reverse(erratum.date));
    errata
        .into_iter()
        .map(|erratum| ErratumView {
            date: erratum.date.in_words(),
            iso_date: erratum.date.to_string(),
            text: erratum.text.clone(),
        })
        .collect()
}

/// Returns where a pattern can be had, as far as readers may know; nowhere once it is retired.
pub fn sales(shown: &Shown<'_>, pattern: &Pattern) -> Vec<SaleView> {
    if pattern.stage() == Stage::Retired {
        return Vec::new();
    }
    let sale = |sale: &Sale| {
        Some(SaleView {
            place: shown.public_link(&sale.place.reference())?,
            url: sale.url.as_ref().map(|url| url.as_str().to_owned()),
            price: sale.price.as_ref().map(|price| price.show()),
            offer: sale.price.as_ref().map(|price| Offer { price: price.number(), currency: price.currency.clone() }),
        })
    };
    pattern.sold_at.iter().filter_map(sale).collect()
}

/// Returns the entry whose idea something is; nothing where plain words say it.
pub fn source_entry(shown: &Shown<'_>, source: &Words) -> Option<Reference> {
    match source {
        Words::Reference(id) => Some(id.clone()),
        Words::Plain(text) => {
            let person = Key::new(text).map(|key| Reference { kind: Kind::Person, key });
            person.filter(|id| shown.catalogue.entry(id).is_some())
        }
    }
}

/// Returns the address of a page that stands in the place of a source.
pub fn source_address(source: &Words) -> Option<Web> {
    match source {
        Words::Plain(text) if text.starts_with("http") => Web::parse(text),
        _ => None,
    }
}

/// Returns whose idea something is: a link where it is an entry or an address, else words; nothing for an entry that
/// readers may not know of.
pub(super) fn source(shown: &Shown<'_>, source: &Words) -> Option<Item<Link>> {
    if let Some(id) = source_entry(shown, source) {
        return shown.public_link(&id);
    }
    let Words::Plain(text) = source else { return None };
    let url = source_address(source).map(|address| address.as_str().to_owned());
    Some(Item::from(Link { title: text.clone(), url }))
}
