//! What a pattern has one buy, for the terminal and as JSON.

mod json;
mod size;
mod text;

use crate::catalogue::Catalogue;
use crate::entry::{Entry, Gauge, Pattern, Reference, YarnUse};
use crate::measure::{Percent, PutUp, System, YarnLength};
use crate::page::{list_in_words, with_colour};
use crate::reckon::Purchase;

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

impl Needed<'_> {
    fn title(&self, id: &Reference) -> Option<&str> {
        self.catalogue.entry(id).map(|entry| entry.common.title.as_str())
    }

    /// Returns what is taken instead of a yarn; nothing instead of one that is only held with another.
    fn instead_of(&self, purchase: &Purchase<'_>) -> Option<&Instead> {
        self.instead.as_ref().filter(|_| purchase.held_with.is_empty())
    }

    /// Returns the names of the yarns that a purchase is held with; nothing where it is knitted by itself.
    fn held_with(&self, purchase: &Purchase<'_>) -> Option<String> {
        let own = |line: &YarnUse| self.title(&line.yarn.as_ref()?.reference()).map(str::to_owned);
        let name = |line: &&YarnUse| match &self.instead {
            Some(instead) => with_colour(Some(instead.title.clone()), line.colour.as_deref()),
            None => with_colour(own(line), line.colour.as_deref()),
        };
        let mut names: Vec<String> = purchase.held_with.iter().map(name).collect();
        names.dedup();
        (!names.is_empty()).then(|| list_in_words(&names))
    }

    fn size_name(&self, size: usize) -> &str {
        self.pattern.sizes.as_ref().and_then(|names| names.get(size)).unwrap_or("One size")
    }

    fn system(&self) -> System {
        self.catalogue.studio.units.unwrap_or_default()
    }
}
