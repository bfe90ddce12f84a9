//! Which size of a pattern to make, as a table for people.

use super::Needed;
use crate::measure::{Count, FabricLength};
use crate::reckon::fit::{Between, Fitted};
use crate::render::table::table;
use crate::standards::provenance::Provenance;
use crate::standards::{CREDIT, ease};
use std::fmt::Write as _;

impl Needed<'_> {
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
        if let Some(Between { smaller, larger }) = fitted.between {
            let off = |(size, by): (usize, FabricLength)| (self.size_name(size), both(by));
            let ((small, less), (large, more)) = (off(smaller), off(larger));
            let _ = writeln!(
                out,
                "With {} of ease that is between two sizes: {small} comes out {less} smaller, {large} {more} larger.",
                both(fitted.wanted),
            );
        }
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
            let memory = if memory { "; this one from memory, so check it" } else { "" };
            let _ = writeln!(out, "Names of fits: {}{memory}.", CREDIT.trim_start_matches("Source: "));
        }
        out.push('\n');
        out
    }
}
