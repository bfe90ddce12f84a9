//! What a pattern has one buy, for the terminal and as JSON.

mod json;
mod size;
mod text;

use crate::catalogue::Catalogue;
use crate::entry::{Entry, Gauge, Pattern, Reference};
use crate::measure::{Percent, PutUp, System, YarnLength};
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

    fn size_name(&self, size: usize) -> &str {
        self.pattern.sizes.as_ref().and_then(|names| names.get(size)).unwrap_or("One size")
    }

    fn system(&self) -> System {
        self.catalogue.studio.units.unwrap_or_default()
    }
}
