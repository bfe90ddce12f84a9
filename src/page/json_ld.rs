//! Facts for machines: JSON-LD in the words of schema.org.

use super::pattern::{SaleView, sales};
use super::{Shown, page_path};
use crate::entry::{Entry, Note, Pattern};
use crate::reckon::held_needs;
use serde_json::{Map, Value, json};

/// Returns a note as a `BlogPosting`.
pub fn note(shown: &Shown<'_>, entry: &Entry, note: &Note) -> String {
    let mut facts = common(shown, entry, "BlogPosting");
    facts.insert("headline".to_owned(), json!(entry.common.title));
    if let Some(date) = note.date {
        facts.insert("datePublished".to_owned(), json!(date.to_string()));
    }
    finish(facts)
}

/// Returns a pattern as a `HowTo`: what it yields, what it takes, where it can be had.
pub fn pattern(shown: &Shown<'_>, entry: &Entry, pattern: &Pattern) -> String {
    let mut facts = common(shown, entry, "HowTo");
    facts.insert("name".to_owned(), json!(entry.common.title));
    if let Some(date) = pattern.published {
        facts.insert("datePublished".to_owned(), json!(date.to_string()));
    }
    if let Some(garment) = &pattern.garment {
        facts.insert("yield".to_owned(), json!(garment));
    }
    if let Some(level) = pattern.level {
        facts.insert("educationalLevel".to_owned(), json!(level.name()));
    }
    let supplies: Vec<Value> = supplies(shown, pattern);
    if !supplies.is_empty() {
        facts.insert("supply".to_owned(), Value::Array(supplies));
    }
    let inch = shown.catalogue.studio.settings().inch;
    let tools: Vec<Value> = pattern
        .needles
        .iter()
        .map(|needle| json!({ "@type": "HowToTool", "name": needle.show(shown.system, inch) }))
        .collect();
    if !tools.is_empty() {
        facts.insert("tool".to_owned(), Value::Array(tools));
    }
    let offer = |sale: SaleView| {
        let (url, offer) = (sale.url?, sale.offer?);
        Some(json!({ "@type": "Offer", "url": url, "price": offer.price, "priceCurrency": offer.currency }))
    };
    let offers: Vec<Value> = sales(shown, pattern).into_iter().filter_map(offer).collect();
    if !offers.is_empty() {
        facts.insert("offers".to_owned(), Value::Array(offers));
    }
    finish(facts)
}

fn supplies(shown: &Shown<'_>, pattern: &Pattern) -> Vec<Value> {
    let held = pattern.yarn.iter().flat_map(|line| line.held_with.iter().map(|held| &held.0));
    let needs = shown.needs(pattern);
    let of_held = held_needs(pattern, &needs);
    let yarns = pattern.yarn.iter().zip(&needs).chain(held.zip(&of_held)).filter_map(|(use_of, needs)| {
        let id = use_of.yarn.as_ref()?.reference();
        let name = shown.public_link(&id)?.title;
        let lengths: Vec<_> = needs.iter().filter_map(|told| Some(told.need()?.length)).collect();
        let needs = shown.length_range(&lengths).map(|range| format!(", {}", range.first)).unwrap_or_default();
        Some(json!({ "@type": "HowToSupply", "name": format!("{name}{needs}") }))
    });
    let notions = pattern.notions.iter().map(|notion| json!({ "@type": "HowToSupply", "name": notion }));
    yarns.chain(notions).collect()
}

fn common(shown: &Shown<'_>, entry: &Entry, kind: &str) -> Map<String, Value> {
    let mut facts = Map::new();
    facts.insert("@context".to_owned(), json!("https://schema.org"));
    facts.insert("@type".to_owned(), json!(kind));
    facts.insert("url".to_owned(), json!(shown.addresses.whole(&page_path(&entry.id))));
    facts.insert("inLanguage".to_owned(), json!(shown.catalogue.studio.language()));
    let summary = shown.summary(entry);
    if !summary.is_empty() {
        facts.insert("description".to_owned(), json!(summary));
    }
    if let Some(designer) = &shown.catalogue.studio.designer {
        facts.insert("author".to_owned(), json!({ "@type": "Person", "name": designer }));
    }
    if let Some(picture) = shown.picture(entry) {
        facts.insert("image".to_owned(), json!(shown.whole_url(&picture.src)));
    }
    facts
}

/// Returns the facts as text that cannot end the script element it stands in.
fn finish(facts: Map<String, Value>) -> String {
    Value::Object(facts).to_string().replace('<', "\\u003c").replace('>', "\\u003e").replace('&', "\\u0026")
}
