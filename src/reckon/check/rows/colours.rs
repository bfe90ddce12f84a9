//! Colours that rows name are those of the pattern.

use super::super::place as places;
use super::{Blocks, place};
use crate::entry::{Entry, Pattern, Placing};
use crate::finding::{Code, Finding, Severity, nearest};
use crate::notation::rows::{Doing, Item, Named, Span, Statement, is_letter, is_trade};

/// A colour in a row that no yarn of the pattern has.
pub static COLOUR_UNKNOWN: Code = Code {
    name: "colour-unknown",
    severity: Severity::Warning,
    what: "A row names a colour, `CC3`, that is no label of a yarn of the pattern, whose yarns have such labels.",
    why: "A knitter looks for a yarn that is not on the list.",
    bad: "yarn: [ { colour: MC }, { colour: CC1 } ]\nRow 1: *K1 MC, k3 CC2; rep from * to end.",
    good: "yarn: [ { colour: MC }, { colour: CC1 } ]\nRow 1: *K1 MC, k3 CC1; rep from * to end.",
};

/// Finds colours that rows name by the trade's short words and the pattern has not, each once. One whose yarns have no such
/// labels is not asked.
pub fn check(entry: &Entry, pattern: &Pattern, blocks: &Blocks, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let labels = || pattern.yarn.iter().filter_map(|line| line.colour.as_deref());
    if !labels().any(is_trade) {
        return;
    }
    let mut told: Vec<String> = Vec::new();
    for (block, (written, fenced)) in blocks.written.iter().zip(&entry.prose.rows).enumerate() {
        for (named, at) in written
            .statements
            .iter()
            .flat_map(|statement| named(statement, &fenced.text, blocks))
            .filter(|(one, _)| !one.own)
        {
            if told.contains(&named.label) {
                continue;
            }
            let message = format!("`{}` is no colour of the pattern's yarn", named.label);
            let all: Vec<String> = labels().map(|label| format!("`{label}`")).collect();
            let help = match nearest(&named.label, labels()) {
                Some(near) => format!("did you mean `{near}`?"),
                None => format!("it has {}; give a line of `yarn` that `colour`, or write one of them", all.join(", ")),
            };
            let finding = Finding::new(&COLOUR_UNKNOWN, place(entry, block, &at), message);
            findings.push(finding.help(help).also(places::key(entry, "yarn", placing), "the yarns"));
            told.push(named.label);
        }
    }
}

/// The colours that a sentence surely names: behind a stitch any, elsewhere no single letter.
fn named(statement: &Statement, text: &str, blocks: &Blocks) -> Vec<(Named, Span)> {
    let mut all = Vec::new();
    let mut look = |at: &Span, stitch: bool| {
        let words = text.get(at.clone()).unwrap_or_default();
        let named = if stitch { blocks.lexicon.colours_behind(words) } else { blocks.lexicon.colours_in(words) };
        let sure = named.into_iter().filter(|named| stitch || !is_letter(&named.label));
        all.extend(sure.map(|named| (named.clone(), at.start + named.at.start..at.start + named.at.end)));
    };
    if let Doing::Row { label: Some(label), .. } = &statement.doing {
        // `Row 5 (CC):`
        look(&label.at, false);
    }
    match &statement.doing {
        Doing::Row { items, .. } if statement.trouble.is_none() => behind_stitches(items, &mut look),
        Doing::Plain { .. } => look(&statement.at, false),
        _ => {}
    }
    all
}

fn behind_stitches(items: &[Item], look: &mut impl FnMut(&Span, bool)) {
    for item in items {
        match item {
            Item::Work { at, .. } | Item::Even { at, .. } | Item::FromHold { at, .. } => look(at, true),
            Item::Colour { at, .. } => look(at, false),
            Item::Repeat { items, .. } | Item::Into { items, .. } => behind_stitches(items, look),
            _ => {}
        }
    }
}
