//! How a pattern sits: ease for each size, its named fit, and the standard sizes it answers to.

use super::view::{Both, SizeRow};
use super::{Shown, body_parts, words};
use crate::entry::Pattern;
use crate::entry::value::Wearer;
use crate::measure::{FabricLength, SizeRun, Value};
use crate::reckon::ease::{by_size, range};
use crate::standards::bodies::{self, Body};
use crate::standards::provenance::Provenance;
use crate::standards::{CREDIT, ease};

/// How a pattern sits, for its table of sizes and its facts.
#[derive(Debug, Default)]
pub struct FitView {
    /// Rows for the table of sizes: ease for each measurement that has a body, and the standard size.
    pub rows: Vec<SizeRow>,
    /// The ease at the chest in words: `Classic fit, 8 to 9 cm of ease at the chest`.
    pub fact: Option<Both>,
    /// Where names of fits and sizes come from; empty where there are none.
    pub credit: String,
}

/// Returns how a pattern sits.
pub fn fit(shown: &Shown<'_>, pattern: &Pattern) -> FitView {
    let mut view = FitView::default();
    let mut from_memory = false;
    let mut from_council = false;
    for (name, body) in &pattern.to_fit.0 {
        let Some(finished) = pattern.finished.get(name) else { continue };
        let Some(eases) = by_size(&body.values, &finished.values) else { continue };
        view.rows.push(row(shown, pattern, format!("Ease at the {name}"), &eases));
        if !ease::applies_to(name) || view.fact.is_some() {
            continue;
        }
        let Some(ends) = range(&eases) else { continue };
        let (Some(least), Some(most)) = (ease::named(ends.least), ease::named(ends.most)) else { continue };
        from_council = true;
        from_memory |= [least, most].iter().any(|row| row.provenance == Provenance::Memory);
        let fits = words::range(least.fit.name(), most.fit.name());
        let lengths = shown.fabric_range(&[ends.least, ends.most]).unwrap_or_default();
        view.fact = Some(Both {
            first: format!("{} fit, {} of ease at the {name}", words::sentence(&fits), lengths.first),
            second: lengths.second,
        });
    }
    if let Some((standard, memory)) = standard_sizes(pattern) {
        from_council = true;
        from_memory |= memory;
        view.rows.push(standard);
    }
    if from_council {
        let memory = if from_memory { ", in part from memory and to be checked" } else { "" };
        view.credit = format!("Names of fits and standard sizes: {}{memory}.", CREDIT.trim_start_matches("Source: "));
    }
    body_parts::add(pattern, &mut view);
    view
}

fn row(shown: &Shown<'_>, pattern: &Pattern, label: String, eases: &SizeRun<FabricLength>) -> SizeRow {
    let inch = shown.catalogue.studio.settings().inch;
    let cell = |size| match eases.get(size) {
        Some(ease) => shown.both(|system| ease.page_number(system, inch).replace('-', "\u{2212}")),
        None => Both::none(),
    };
    SizeRow {
        label,
        cells: (0..pattern.size_count()).map(cell).collect(),
        units: shown.both(|system| words::unit(system, "cm", "in")),
    }
}

/// Returns the council's size that each size's chest is nearest to, and whether any of it is from memory.
fn standard_sizes(pattern: &Pattern) -> Option<(SizeRow, bool)> {
    let body = body_of(pattern.wearer?);
    let run = pattern.to_fit.0.iter().find(|(name, _)| ease::applies_to(name)).map(|(_, run)| run)?;
    let mut memory = false;
    let mut cell = |size| {
        let near = run.values.get(size).and_then(|length| bodies::nearest(body, bodies::girth(body), *length));
        match near.filter(|near| !near.beyond) {
            Some(near) => {
                memory |= near.row.provenance == Provenance::Memory;
                Both { first: near.row.size.clone(), second: String::new() }
            }
            None => Both { first: "–".to_owned(), second: String::new() },
        }
    };
    let cells = (0..pattern.size_count()).map(&mut cell).collect();
    Some((SizeRow { label: "Standard size".to_owned(), cells, units: Both::default() }, memory))
}

/// Returns the body table of a wearer.
fn body_of(wearer: Wearer) -> Body {
    match wearer {
        Wearer::Women => Body::Women,
        Wearer::Men => Body::Men,
        Wearer::Youth => Body::Youth,
        Wearer::Child => Body::Child,
        Wearer::Baby => Body::Baby,
    }
}
