//! Her own abbreviations: each can be counted and is used.

use super::Blocks;
use crate::entry::{Entry, Pattern, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::reckon::check::place;

/// An abbreviation whose stitches cannot be told.
pub static ABBREVIATION_UNCOUNTED: Code = Code {
    name: "abbreviation-uncounted",
    severity: Severity::Warning,
    what: "An abbreviation under `abbreviations` does not say how many stitches it takes and leaves, or says it twice and not alike.",
    why: "The rows that use it cannot be counted.",
    bad: "abbreviations: { MB: { what: make a bobble, uses: 1 } }",
    good: "abbreviations: { MB: { what: make a bobble, uses: 1, makes: 1 } }",
};

/// An abbreviation that no row uses.
pub static ABBREVIATION_UNUSED: Code = Code {
    name: "abbreviation-unused",
    severity: Severity::Warning,
    what: "An abbreviation is explained under `abbreviations`, and no row uses it.",
    why: "A knitter reads ahead and looks for it, or a row calls it something else.",
    bad: "abbreviations: { MB: … } and no `MB` in any `rows` block",
    good: "*K3, MB; rep from * to end.",
};

/// Finds abbreviations that cannot be counted or are not used.
pub fn check(entry: &Entry, pattern: &Pattern, blocks: &Blocks, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    // Also where the row around it cannot be read.
    let rows: String = entry.prose.rows.iter().map(|block| block.text.to_lowercase()).collect();
    for (name, abbreviation) in &pattern.abbreviations.0 {
        let place = || entry.origin.value(&place::way(&["abbreviations", name]), placing);
        if let Some((_, reason)) = blocks.uncounted.iter().find(|(uncounted, _)| uncounted == name) {
            let message = format!("`{name}` cannot be counted: {reason}");
            let help = "give `uses` and `makes`, or `rows` with what is worked in its place";
            findings.push(Finding::new(&ABBREVIATION_UNCOUNTED, place(), message).help(help));
        }
        // One may stand in the rows of another.
        let in_others =
            pattern.abbreviations.0.iter().any(|(other, one)| {
                other != name && one.rows.as_ref().is_some_and(|rows| rows.contains(name.as_str()))
            });
        if !rows.contains(&name.to_lowercase()) && !in_others && !entry.prose.rows.is_empty() {
            let message = format!("no row uses `{name}` ({})", abbreviation.what);
            findings.push(
                Finding::new(&ABBREVIATION_UNUSED, place(), message).help("take it out, or write it so in the rows"),
            );
        }
    }
}
