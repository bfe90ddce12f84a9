//! What a pattern has one buy, as a table for people.

use super::Needed;
use crate::entry::{Gauge, Reference};
use crate::measure::{Grist, YarnLength};
use crate::page::{basis_in_words, length_apart, list_in_words};
use crate::reckon::{Basis, Purchase, Requirement};
use crate::render::table::table;
use std::fmt::Write as _;

impl Needed<'_> {
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
            .filter(|purchase| purchase.held_with.is_empty())
            .filter_map(|purchase| Some(purchase.uses.first()?.yarn.as_ref()?.reference()))
            .collect();
        for id in &ids {
            let (false, Some(title), Some(yarn)) = (told.contains(&id), self.title(id), self.catalogue.yarn(id)) else {
                continue;
            };
            told.push(id);
            let grists = yarn.put_up.and_then(Grist::of).zip(Grist::of(instead.put_up));
            let apart = grists.and_then(|(own, other)| own.apart(other));
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
        let mut heading = match self.instead_of(purchase) {
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
        if let Some(names) = self.held_with(purchase) {
            let _ = write!(heading, ", held with {names}");
        }
        if let Some(at_hand) = at_hand {
            let _ = write!(heading, ", {} at hand", at_hand.show(self.system()));
        }
        heading
    }

    fn row(&self, purchase: &Purchase<'_>, size: usize) -> Vec<String> {
        let mut row = vec![self.size_name(size).to_owned()];
        let Some(need) = purchase.sizes.get(size).copied().flatten() else {
            row.push(if purchase.unknown.contains(&size) { "not known" } else { "none" }.to_owned());
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
}
