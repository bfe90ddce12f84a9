//! Where a check points, and how it names sizes.

use crate::catalogue::Catalogue;
use crate::entry::yaml::{On, Step};
use crate::entry::{Entry, Pattern, Placing, Yarn, YarnUse};
use crate::measure::{Run, Value};
use crate::reckon::LineNeeds;
use crate::source::Place;

/// Returns a size by its name, or by its number from 1 where the pattern names none.
pub fn size(pattern: &Pattern, size: usize) -> String {
    match pattern.sizes.as_ref().and_then(|names| names.get(size)) {
        Some(name) => format!("`{name}`"),
        None => format!("size {}", size + 1),
    }
}

/// Returns sizes as a message names them.
pub fn sizes(pattern: &Pattern, of: &[usize]) -> String {
    of.iter().map(|at| size(pattern, *at)).collect::<Vec<_>>().join(", ")
}

/// Returns what a message says of sizes behind a figure: " in `S`, `M`", or nothing where there is only one size.
pub fn in_sizes(pattern: &Pattern, of: &[usize]) -> String {
    if pattern.size_count() == 1 { String::new() } else { format!(" in {}", sizes(pattern, of)) }
}

/// Returns the way to keys below an entry.
pub fn way(keys: &[&str]) -> Vec<Step> {
    keys.iter().map(|key| Step::Key(Box::from(*key))).collect()
}

/// Returns the way to keys of an item of a list.
pub fn item(list: &str, at: usize, keys: &[&str]) -> Vec<Step> {
    let mut steps = vec![Step::Key(Box::from(list)), Step::Item(at)];
    steps.extend(way(keys));
    steps
}

/// Returns the place of a run's value for a size; of the whole run where that value cannot be told apart.
pub fn value<T: Value>(entry: &Entry, way: &[Step], run: &Run<T>, size: usize, placing: &Placing<'_>) -> Place {
    let within = if run.ranges.len() > 1 { run.ranges.get(size) } else { None };
    let steps: Vec<Step> = entry.origin.root.iter().chain(way).cloned().collect();
    entry.origin.locate(&steps, On::Value, within, placing)
}

/// Returns the place of a key below an entry, for what is said of all that stands under it.
pub fn key(entry: &Entry, key: &str, placing: &Placing<'_>) -> Place {
    let steps: Vec<Step> = entry.origin.root.iter().cloned().chain(way(&[key])).collect();
    entry.origin.locate(&steps, On::Key, None, placing)
}

/// Returns the yarn of a line of a pattern.
pub fn yarn<'a>(catalogue: &'a Catalogue, line: &YarnUse) -> Option<&'a Yarn> {
    catalogue.yarn(&line.yarn.as_ref()?.reference())
}

/// Returns what each line takes; nothing where stated needs do not fit the sizes, which is told elsewhere.
pub fn needs(catalogue: &Catalogue, pattern: &Pattern) -> Option<Vec<LineNeeds>> {
    let sizes = pattern.size_count();
    let fit = pattern.yarn.iter().all(|line| line.needs.as_ref().is_none_or(|run| run.values.serves(sizes)));
    fit.then(|| crate::reckon::needs(pattern, |line| yarn(catalogue, line)))
}

/// Returns what a message calls a line of a pattern: its colour, or its place in the list.
pub fn line(pattern: &Pattern, at: usize) -> String {
    match pattern.yarn.get(at).and_then(|line| line.colour.as_ref()) {
        Some(colour) => format!("`{colour}`"),
        None if pattern.yarn.len() == 1 => "the yarn".to_owned(),
        None => format!("yarn {}", at + 1),
    }
}
