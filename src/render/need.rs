//! What a pattern has one buy, for the terminal and as JSON.

use super::decimal::Decimal;
use crate::catalogue::Catalogue;
use crate::entry::{Entry, Gauge, Pattern, Reference};
use crate::measure::{Count, FabricLength, Grist, Percent, PutUp, System, YarnLength};
use crate::page::{basis_in_words, length_apart, list_in_words};
use crate::reckon::fit::Fitted;
use crate::reckon::{Basis, Purchase, Requirement};
use crate::standards::ease;
use crate::standards::provenance::Provenance;
use serde::Serialize;
use std::fmt::Write as _;

/// What is to be told.
#[derive(Debug)]
pub struct Needed<'a> {
    /// All entries.
    pub catalogue: &'a Catalogue,
    /// The pattern's entry.
    pub entry: &'a Entry,
    /// The pattern.
    pub pattern: &'a Pattern,
    /// What is added to needs.
    pub margin: Percent,
    /// What is bought.
    pub purchases: Vec<Purchase<'a>>,
    /// The sizes to tell of, counted from 0.
    pub sizes: Vec<usize>,
    /// How many strands are held together, where she says.
    pub strands: Option<u32>,
    /// What is taken instead of the pattern's yarns.
    pub instead: Option<Instead>,
    /// What is at hand of each purchase and was subtracted from what is to buy.
    pub at_hand: Vec<Option<YarnLength>>,
}

/// A yarn that is taken instead of the pattern's.
#[derive(Debug)]
pub struct Instead {
    /// What it is called.
    pub title: String,
    /// How it is sold.
    pub put_up: PutUp,
    /// The gauge on its band, where it is known.
    pub gauge: Option<Gauge>,
}

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
    metres: Decimal,
    grams: Option<Decimal>,
    exact_skeins: Option<Decimal>,
    skeins: Option<i64>,
    basis: &'static str,
}

impl Needed<'_> {
    /// Returns it as JSON: `margin` in percent; for each size each yarn it takes, what cannot be told as null.
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
        let need = purchase.sizes.get(size).copied().flatten()?;
        let line = purchase.uses.first()?;
        let colours: Vec<&str> = purchase.uses.iter().filter_map(|line| line.colour.as_deref()).collect();
        Some(JsonYarn {
            colour: (!colours.is_empty()).then(|| colours.join(", ")),
            yarn: match &self.instead {
                Some(instead) => Some(&instead.title),
                None => line.yarn.as_ref().and_then(|yarn| self.title(&yarn.reference())),
            },
            shade: line.shade.as_deref().filter(|_| self.instead.is_none()),
            metres: Decimal::of(need.length.micrometres(), 1_000_000),
            grams: need.mass.map(|mass| Decimal::of(mass.nanograms(), 1_000_000_000)),
            exact_skeins: need.skeins.map(|skeins| Decimal::of(skeins.exact.thousandths(), 1000)),
            skeins: need.skeins.map(|skeins| skeins.whole),
            basis: basis_word(need.basis),
        })
    }

    /// Returns it as a table for people, in both systems, the studio's first.
    pub fn to_text(&self) -> String {
        let strands = match self.strands {
            None | Some(1) => String::new(),
            Some(2) => ", every yarn held double".to_owned(),
            Some(strands) => format!(", {strands} strands of every yarn held together"),
        };
        let mut out = format!("{}: yarn to buy, {} to spare{strands}\n", self.entry.common.title, self.margin.show());
        for (purchase, at_hand) in self.purchases.iter().zip(&self.at_hand) {
            let _ = writeln!(out, "\n{}", self.heading(purchase, *at_hand));
            let rows: Vec<Vec<String>> = self.sizes.iter().map(|size| self.row(purchase, *size)).collect();
            if purchase.is_known {
                out.push_str(&table(&["size", "length", "", "weight", "skeins", "to buy"], &rows));
            } else {
                out.push_str("  How much it takes is not known yet.\n");
            }
            if purchase.is_known && purchase.put_up.is_none() {
                out.push_str("  How it is sold is not known, so skeins cannot be told.\n");
            }
        }
        if self.purchases.is_empty() {
            out.push_str("\nThe pattern names no yarn.\n");
        }
        self.notes(&mut out);
        out
    }

    fn notes(&self, out: &mut String) {
        let mut all: Vec<Basis> = Vec::new();
        for purchase in &self.purchases {
            all.extend(self.sizes.iter().filter_map(|size| Some(purchase.sizes.get(*size).copied()??.basis)));
        }
        all.sort_unstable();
        all.dedup();
        let rests: Vec<String> = all.into_iter().map(|basis| basis_in_words(basis).to_owned()).collect();
        if !rests.is_empty() {
            let _ = writeln!(out, "\nLengths are {}.", list_in_words(&rests));
        }
        let several = |one: &Requirement| one.skeins.is_some_and(|skeins| skeins.whole > 1);
        let of = |purchase: &Purchase<'_>| {
            self.sizes.iter().any(|size| purchase.sizes.get(*size).copied().flatten().is_some_and(|one| several(&one)))
        };
        self.compare(out);
        if self.purchases.iter().any(of) {
            out.push_str("Buy a shade in one dye lot; one skein to spare of it is common advice.\n");
        }
    }

    /// Tells how far another yarn is from the pattern's, in length per weight and in gauge.
    fn compare(&self, out: &mut String) {
        let Some(instead) = &self.instead else { return };
        let mut told: Vec<&Reference> = Vec::new();
        let ids: Vec<Reference> = self
            .purchases
            .iter()
            .filter_map(|purchase| Some(purchase.uses.first()?.yarn.as_ref()?.reference()))
            .collect();
        for id in &ids {
            let (false, Some(title), Some(yarn)) = (told.contains(&id), self.title(id), self.catalogue.yarn(id)) else {
                continue;
            };
            told.push(id);
            let grist = |put_up: PutUp| Grist::of(put_up);
            let apart =
                yarn.put_up.and_then(grist).zip(grist(instead.put_up)).and_then(|(own, other)| own.apart(other));
            if let Some(apart) = apart {
                let _ = writeln!(out, "{} has {}, beside {title}.", instead.title, length_apart(apart));
            }
        }
        let gauge = |gauge: &Gauge| {
            let inch = self.catalogue.studio.settings().inch;
            format!("{} stitches to {}", gauge.stitches.show(), gauge.stretch().show(self.system(), inch))
        };
        if let (Some(own), Some(band)) = (self.pattern.gauge.first(), &instead.gauge) {
            let _ = writeln!(out, "Its band says {}; the pattern is at {}.", gauge(band), gauge(own));
        }
        out.push_str("Gauge comes first: knit a swatch before you buy.\n");
    }

    fn heading(&self, purchase: &Purchase<'_>, at_hand: Option<YarnLength>) -> String {
        let mut words: Vec<String> = purchase.uses.iter().filter_map(|line| line.colour.clone()).collect();
        let first = purchase.uses.first();
        let yarn = first.and_then(|line| line.yarn.as_ref()).and_then(|yarn| self.title(&yarn.reference()));
        let yarn = yarn.unwrap_or("a yarn not named").to_owned();
        let shade = first.and_then(|line| line.shade.clone());
        let put_up = purchase.put_up.map(|put_up| format!(" ({})", put_up.show(self.system()))).unwrap_or_default();
        let mut heading = match &self.instead {
            None => {
                words.push(yarn);
                words.extend(shade);
                format!("{}{put_up}", words.join(", "))
            }
            Some(instead) => {
                words.push(instead.title.clone());
                let of = shade.map(|shade| format!(", {shade}")).unwrap_or_default();
                format!("{}{put_up} instead of {yarn}{of}", words.join(", "))
            }
        };
        if let Some(at_hand) = at_hand {
            let _ = write!(heading, ", {} at hand", at_hand.show(self.system()));
        }
        heading
    }

    fn row(&self, purchase: &Purchase<'_>, size: usize) -> Vec<String> {
        let mut row = vec![self.size_name(size).to_owned()];
        let Some(need) = purchase.sizes.get(size).copied().flatten() else {
            row.push("–".to_owned());
            return row;
        };
        let (system, other) = (self.system(), self.system().other());
        row.push(need.length.show(system));
        row.push(need.length.show(other));
        row.push(need.mass.map_or_else(String::new, |mass| mass.show(system)));
        row.push(need.skeins.map_or_else(String::new, |skeins| skeins.exact.show_hundredths_up()));
        row.push(need.skeins.map_or_else(String::new, |skeins| skeins.whole.to_string()));
        row
    }

    /// Returns which size to make, and every size as it comes out, as a table for people.
    pub fn fit_to_text(&self, measurement: &str, body: FabricLength, fitted: &Fitted, gauge: Option<Count>) -> String {
        let inch = self.catalogue.studio.settings().inch;
        let (system, other) = (self.system(), self.system().other());
        let both = |length: FabricLength| format!("{} ({})", length.show(system, inch), length.show(other, inch));
        let named = ease::named(fitted.ease);
        let fit = named.map(|row| row.fit.name()).unwrap_or_default();
        let memory = named.is_some_and(|row| row.provenance == Provenance::Memory);
        let mut out = format!(
            "For a {measurement} of {}: size {}, with {} of ease{}\n",
            both(body),
            self.size_name(fitted.best),
            both(fitted.ease),
            if ease::applies_to(measurement) && !fit.is_empty() { format!(" ({fit} fit)") } else { String::new() },
        );
        let mut heads = vec!["size", "to fit", "finished"];
        if gauge.is_some() {
            heads.push("at your gauge");
        }
        heads.push("ease");
        let cell = |length: Option<FabricLength>| length.map_or_else(|| "–".to_owned(), both);
        let rows = fitted.sizes.iter().enumerate().map(|(size, one)| {
            let mut row = vec![self.size_name(size).to_owned(), cell(one.to_fit), cell(one.designed)];
            if gauge.is_some() {
                row.push(cell(one.made));
            }
            row.push(cell(one.made.and_then(|made| made.checked_sub(body))));
            row
        });
        out.push_str(&table(&heads, &rows.collect::<Vec<_>>()));
        if fitted.is_beyond(body) {
            out.push_str("No size is meant for such a body; the one named is only the nearest.\n");
        }
        if gauge.is_some() {
            out.push_str("Yarn is told for the pattern's gauge; at another the fabric takes more or less.\n");
        }
        if ease::applies_to(measurement) && !fit.is_empty() {
            out.push_str("Names of fits: Craft Yarn Council's www.YarnStandards.com");
            out.push_str(if memory { "; this one from memory, so check it.\n" } else { ".\n" });
        }
        out.push('\n');
        out
    }

    fn title(&self, id: &Reference) -> Option<&str> {
        self.catalogue.entry(id).map(|entry| entry.common.title.as_str())
    }

    fn size_name(&self, size: usize) -> &str {
        self.pattern.sizes.as_ref().and_then(|names| names.get(size)).unwrap_or("One size")
    }

    fn system(&self) -> System {
        self.catalogue.studio.units.unwrap_or_default()
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

/// Sets rows under heads, the first column to the left and all others to the right.
fn table(heads: &[&str], rows: &[Vec<String>]) -> String {
    let width = |column: usize| {
        let cells = rows.iter().filter_map(|row| row.get(column)).map(|cell| cell.chars().count());
        cells.chain(heads.get(column).map(|head| head.chars().count())).max().unwrap_or(0)
    };
    let widths: Vec<usize> = (0..heads.len()).map(width).collect();
    let mut out = String::new();
    let heads: Vec<String> = heads.iter().map(|head| (*head).to_owned()).collect();
    for row in std::iter::once(&heads).chain(rows) {
        let mut line = String::from(" ");
        for (column, (cell, width)) in row.iter().zip(&widths).enumerate() {
            let _ = if column == 0 { write!(line, " {cell:<width$}") } else { write!(line, "  {cell:>width$}") };
        }
        out.push_str(line.trim_end());
        out.push('\n');
    }
    out
}
