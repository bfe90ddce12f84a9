//! The page of yarns by weight.

use crate::page::view::{Band, Head};
use crate::page::{Shown, yarn};
use crate::standards::yarn_weights;
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeMap;

/// What `yarns.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct YarnsContext {
    /// The page's head.
    pub head: Head,
    /// The yarns by standard weight, the finest first, those of unknown weight last.
    pub weights: Vec<YarnGroup>,
}

/// The yarns of one weight.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct YarnGroup {
    /// The weight: `Light`.
    pub title: String,
    /// An id for it, unique on the page.
    pub id: String,
    /// The yarns, by title.
    pub bands: Vec<Band>,
}

/// Returns the context of the page of yarns.
pub fn yarns(shown: &Shown<'_>) -> YarnsContext {
    let mut weights: BTreeMap<u8, Vec<Band>> = BTreeMap::new();
    let mut all: Vec<_> = shown.catalogue.yarns().collect();
    all.sort_by_key(|(entry, _)| entry.common.title.to_lowercase());
    for (entry, one) in all {
        let number = one.weight.as_ref().map_or(u8::MAX, |weight| weight.category.number);
        weights.entry(number).or_default().push(yarn::list_band(shown, entry, one));
    }
    let group = |(number, bands): (u8, Vec<Band>)| {
        let title = yarn_weights::by_number(number)
            .map_or_else(|| "Of unknown weight".to_owned(), |weight| weight.name.clone());
        YarnGroup { id: format!("weight-{}", crate::entry::slug(&title)), title, bands }
    };
    YarnsContext {
        head: shown.head(
            "Yarns",
            "Yarns by standard weight, and what is knitted in each.",
            "yarns/",
            "yarns",
            "website",
            None,
        ),
        weights: weights.into_iter().map(group).collect(),
    }
}
