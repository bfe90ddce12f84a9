//! Facts for machines: JSON-LD in the words of schema.org.

use super::pattern::{SaleView, sales, source_address, source_entry};
use super::{Shown, page_path};
use crate::entry::{After, Data, Entry, Kind, Note, Pattern, Person};
use crate::reckon::{LineNeeds, held_needs};
use serde::Serialize;

/// What is said of a page, in the order it is written.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Facts<'a> {
    #[serde(rename = "@context")]
    context: &'static str,
    #[serde(rename = "@type")]
    of_type: &'static str,
    url: String,
    in_language: &'a str,
    #[serde(skip_serializing_if = "String::is_empty")]
    description: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    author: Option<Named<&'a str>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    image: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    headline: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    name: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    date_published: Option<String>,
    #[serde(rename = "yield", skip_serializing_if = "Option::is_none")]
    yields: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    educational_level: Option<&'static str>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    supply: Vec<Named<String>>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    tool: Vec<Named<String>>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    offers: Vec<Offer>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    is_based_on: Vec<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    citation: Vec<Cited<'a>>,
}

/// A thing of which only the name is said.
#[derive(Serialize)]
struct Named<T> {
    #[serde(rename = "@type")]
    of_type: &'static str,
    name: T,
}

/// Something of somebody's that was taken up.
#[derive(Serialize)]
struct Cited<'a> {
    #[serde(rename = "@type")]
    of_type: &'static str,
    name: &'a str,
    author: Author<'a>,
}

/// Whoever has a page of the site.
#[derive(Serialize)]
struct Author<'a> {
    #[serde(rename = "@type")]
    of_type: &'static str,
    name: &'a str,
    url: String,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Offer {
    #[serde(rename = "@type")]
    of_type: &'static str,
    url: String,
    price: String,
    price_currency: String,
}

/// Returns a note as a `BlogPosting`.
pub fn note(shown: &Shown<'_>, entry: &Entry, note: &Note) -> String {
    written(&Facts {
        headline: Some(&entry.common.title),
        date_published: note.date.map(|date| date.to_string()),
        ..common(shown, entry, "BlogPosting")
    })
}

/// Returns a pattern as a `HowTo`: what it yields, what it takes, where it can be had; `needs` are those of each line.
pub fn pattern(shown: &Shown<'_>, entry: &Entry, pattern: &Pattern, needs: &[LineNeeds]) -> String {
    let inch = shown.catalogue.studio.settings().inch;
    let tools = pattern.needles.iter().map(|needle| needle.show(shown.system, inch));
    let offer = |sale: SaleView| {
        let (url, offer) = (sale.url?, sale.offer?);
        Some(Offer { of_type: "Offer", url, price: offer.price, price_currency: offer.currency })
    };
    written(&Facts {
        name: Some(&entry.common.title),
        date_published: pattern.published.map(|date| date.to_string()),
        yields: pattern.garment.as_deref(),
        educational_level: pattern.level.map(|level| level.name()),
        supply: supplies(shown, pattern, needs),
        tool: tools.map(|name| Named { of_type: "HowToTool", name }).collect(),
        offers: sales(shown, pattern).into_iter().filter_map(offer).collect(),
        is_based_on: pattern.after.iter().filter_map(|after| based_on(shown, after)).collect(),
        citation: pattern.after.iter().filter_map(|after| cited(shown, after)).collect(),
        ..common(shown, entry, "HowTo")
    })
}

/// Returns the address of what a design builds on: one that she gives, or that of an entry which is no person.
fn based_on(shown: &Shown<'_>, after: &After) -> Option<String> {
    match source_entry(shown, &after.source) {
        Some(id) if id.kind == Kind::Person => None,
        Some(id) => shown.catalogue.public_entry(&id).map(|entry| shown.addresses.whole(&page_path(&entry.id))),
        None => source_address(&after.source).map(|address| address.as_str().to_owned()),
    }
}

/// Returns what a design took up from somebody who has a page.
fn cited<'a>(shown: &'a Shown<'_>, after: &'a After) -> Option<Cited<'a>> {
    let entry = shown.catalogue.public_entry(&source_entry(shown, &after.source)?)?;
    let Data::Person(person) = &entry.data else { return None };
    let url = shown.addresses.whole(&page_path(&entry.id));
    let author = Author { of_type: person_type(person), name: &entry.common.title, url };
    Some(Cited { of_type: "CreativeWork", name: &after.what, author })
}

/// Returns what schema.org calls somebody: a business by what it is, and anyone else a person.
fn person_type(person: &Person) -> &'static str {
    let business = ["maker", "mill", "shop", "event"];
    if person.is.iter().any(|is| business.contains(&is.as_str())) { "Organization" } else { "Person" }
}

fn supplies(shown: &Shown<'_>, pattern: &Pattern, needs: &[LineNeeds]) -> Vec<Named<String>> {
    let held = pattern.yarn.iter().flat_map(|line| line.held_with.iter().map(|held| &held.0));
    let of_held = held_needs(pattern, needs);
    let yarns = pattern.yarn.iter().zip(needs).chain(held.zip(&of_held)).filter_map(|(use_of, needs)| {
        let mut name = shown.public_link(&use_of.yarn.as_ref()?.reference())?.title.clone();
        let lengths: Vec<_> = needs.iter().filter_map(|told| Some(told.need()?.length)).collect();
        if let Some(range) = shown.length_range(&lengths) {
            name.push_str(", ");
            name.push_str(&range.first);
        }
        Some(name)
    });
    yarns.chain(pattern.notions.iter().cloned()).map(|name| Named { of_type: "HowToSupply", name }).collect()
}

fn common<'a>(shown: &Shown<'a>, entry: &Entry, of_type: &'static str) -> Facts<'a> {
    let studio = &shown.catalogue.studio;
    Facts {
        context: "https://schema.org",
        of_type,
        url: shown.addresses.whole(&page_path(&entry.id)),
        in_language: studio.language(),
        description: shown.summary(entry),
        author: studio.designer.as_deref().map(|name| Named { of_type: "Person", name }),
        image: shown.picture(entry).map(|picture| shown.whole_url(&picture.src)),
        headline: None,
        name: None,
        date_published: None,
        yields: None,
        educational_level: None,
        supply: Vec::new(),
        tool: Vec::new(),
        offers: Vec::new(),
        is_based_on: Vec::new(),
        citation: Vec::new(),
    }
}

/// Returns the facts as text that cannot end the script element it stands in.
fn written(facts: &Facts<'_>) -> String {
    // Texts under texts always serialise.
    let json = serde_json::to_string(facts).unwrap_or_default();
    let mut safe = String::with_capacity(json.len());
    let mut rest = json.as_str();
    while let Some((before, sign)) = rest.find(['<', '>', '&']).and_then(|at| rest.split_at_checked(at)) {
        safe.push_str(before);
        safe.push_str(match sign.as_bytes().first() {
            Some(b'<') => "\\u003c",
            Some(b'>') => "\\u003e",
            _ => "\\u0026",
        });
        rest = sign.get(1..).unwrap_or_default();
    }
    safe + rest
}
