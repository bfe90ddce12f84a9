//! The sizes of a pattern, in words and as a table.

use crate::entry::Pattern;
use crate::entry::value::Map;
use crate::measure::{FabricLength, Run, Value};
use crate::page::view::{Both, SizeRow, SizeTable};
use crate::page::{Shown, words};

/// Returns how many sizes a pattern has, in words: `nine sizes`.
pub fn sizes_in_words(pattern: &Pattern) -> String {
    words::counted(pattern.size_count(), "size", "sizes")
}

/// Returns the names of a pattern's sizes, empty if it has only one.
pub fn size_labels(pattern: &Pattern) -> Vec<String> {
    match &pattern.sizes {
        Some(names) if names.len() > 1 => (0..names.len())
            .filter_map(|size| names.get(size))
            .map(|name| match names.unit() {
                Some(unit) => format!("{name} {unit}"),
                None => name.to_owned(),
            })
            .collect(),
        _ => Vec::new(),
    }
}

/// Returns the table of a pattern's sizes: to fit, finished, and how that sits.
pub fn size_table(shown: &Shown<'_>, pattern: &Pattern, fit: Vec<SizeRow>) -> SizeTable {
    let rows = |prefix: &'static str, map: &Map<Run<FabricLength>>| -> Vec<SizeRow> {
        map.0.iter().map(|(name, run)| fabric_row(shown, pattern, format!("{prefix} {name}"), run)).collect()
    };
    let mut all = rows("To fit", &pattern.to_fit);
    all.extend(rows("Finished", &pattern.finished));
    all.extend(fit);
    SizeTable { sizes: table_sizes(pattern), rows: all }
}

/// Returns the columns of a table of sizes: a pattern of one size has one, named as it is or not at all.
pub fn table_sizes(pattern: &Pattern) -> Vec<String> {
    let labels = size_labels(pattern);
    if !labels.is_empty() {
        return labels;
    }
    vec![pattern.sizes.as_ref().and_then(|names| names.get(0)).unwrap_or("One size").to_owned()]
}

fn fabric_row(shown: &Shown<'_>, pattern: &Pattern, label: String, run: &Run<FabricLength>) -> SizeRow {
    let inch = shown.catalogue.studio.settings().inch;
    let cells = (0..pattern.size_count())
        .map(|size| match run.values.get(size) {
            // Where she wrote both systems, each is shown as she wrote it.
            Some(length) => shown.both(|system| {
                match &run.other {
                    Some(other) if other.system == system => other.values.get(size).unwrap_or(length),
                    _ => length,
                }
                .page_number(system, inch)
            }),
            None => Both::none(),
        })
        .collect();
    SizeRow { label, cells, units: shown.both(|system| words::unit(system, "cm", "in")) }
}
