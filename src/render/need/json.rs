//! What a pattern has one buy, as JSON.

use super::Needed;
use crate::reckon::{Basis, Purchase};
use crate::render::decimal::Decimal;
use serde::Serialize;

#[derive(Serialize)]
struct Json<'a> {
    pattern: &'a str,
    margin: Decimal,
    sizes: Vec<JsonSize<'a>>,
}

#[derive(Serialize)]
struct JsonSize<'a> {
    size: &'a str,
    yarns: Vec<JsonYarn<'a>>,
}

#[derive(Serialize)]
struct JsonYarn<'a> {
    colour: Option<String>,
    yarn: Option<&'a str>,
    shade: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    held_with: Option<String>,
    metres: Option<Decimal>,
    grams: Option<Decimal>,
    exact_skeins: Option<Decimal>,
    skeins: Option<i64>,
    basis: Option<&'static str>,
}

impl Needed<'_> {
    /// Returns it as JSON: `margin` in percent; for each size each yarn it takes, what cannot be told as null.
    /// A yarn that is held together with another has `held_with`, the name of that one and in brackets its colour.
    pub fn to_json(&self) -> String {
        let yarns = |size: usize| self.purchases.iter().filter_map(move |one| self.json_yarn(one, size)).collect();
        let sizes = self.sizes.iter().map(|size| JsonSize { size: self.size_name(*size), yarns: yarns(*size) });
        let json = Json {
            pattern: self.entry.id.key.as_str(),
            margin: Decimal::of(self.margin.hundredths(), 100),
            sizes: sizes.collect(),
        };
        // Texts and numbers always serialise.
        let mut text = serde_json::to_string_pretty(&json).unwrap_or_default();
        text.push('\n');
        text
    }

    fn json_yarn<'n>(&'n self, purchase: &'n Purchase<'_>, size: usize) -> Option<JsonYarn<'n>> {
        let need = purchase.sizes.get(size).copied().flatten();
        if need.is_none() && !purchase.unknown.contains(&size) {
            return None;
        }
        let line = purchase.uses.first()?;
        let colours: Vec<&str> = purchase.uses.iter().filter_map(|line| line.colour.as_deref()).collect();
        let skeins = need.and_then(|need| need.skeins);
        Some(JsonYarn {
            colour: (!colours.is_empty()).then(|| colours.join(", ")),
            yarn: match self.instead_of(purchase) {
                Some(instead) => Some(&instead.title),
                None => line.yarn.as_ref().and_then(|yarn| self.title(&yarn.reference())),
            },
            shade: line.shade.as_deref().filter(|_| self.instead_of(purchase).is_none()),
            held_with: self.held_with(purchase),
            metres: need.map(|need| Decimal::of(need.length.micrometres(), 1_000_000)),
            grams: need.and_then(|need| need.mass).map(|mass| Decimal::of(mass.nanograms(), 1_000_000_000)),
            exact_skeins: skeins.map(|skeins| Decimal::of(skeins.exact.thousandths(), 1000)),
            skeins: skeins.map(|skeins| skeins.whole),
            basis: need.map(|need| basis_word(need.basis)),
        })
    }
}

fn basis_word(basis: Basis) -> &'static str {
    match basis {
        Basis::Weighed => "weighed",
        Basis::Stated => "stated",
        Basis::Stitches => "stitches",
        Basis::Area => "area",
        Basis::Swatch => "swatch",
    }
}
