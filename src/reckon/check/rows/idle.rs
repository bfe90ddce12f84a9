//! Needles that are listed are used, and a cable needle is listed where there are cables.

use super::Blocks;
use super::needles::sizes;
use crate::entry::{Entry, Pattern, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::{FabricLength, NeedleSize};
use crate::reckon::check::place::{item, key};
use crate::standards::chart_symbols;
use crate::standards::needles::metric;

/// A needle that is listed and never taken up.
pub static NEEDLE_IDLE: Code = Code {
    name: "needle-idle",
    severity: Severity::Warning,
    what: "The rows name needles by their size, and one of the pattern's `needles` is named nowhere, nor is it that of the gauge.",
    why: "A knitter buys a needle that she does not need, or a change of needles is missing from the text.",
    bad: "needles: [3.5 mm circular, 4 mm circular]\nWith 4 mm needle, cast on 96 sts.",
    good: "needles: [3.5 mm circular, 4 mm circular]\nWith 3.5 mm needle, cast on 96 sts. … Change to 4 mm needle.",
};

/// A cable needle without cables, or cables without one.
pub static CABLE_NEEDLE: Code = Code {
    name: "cable-needle",
    severity: Severity::Warning,
    what: "There are cables and no cable needle is among the `notions`, or there is one and nothing is crossed.",
    why: "A knitter has not what she needs, or looks for cables that are not there.",
    bad: "notions: [tapestry needle]\nRow 3: P2, C4F, p2.",
    good: "notions: [cable needle, tapestry needle]\nRow 3: P2, C4F, p2.",
};

/// Finds needles that are listed and not used. Only where rows name a needle can it be known.
pub fn check(entry: &Entry, pattern: &Pattern, blocks: &Blocks, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    if blocks.written.is_empty() {
        return;
    }
    needles(entry, pattern, placing, findings);
    cable_needle(entry, pattern, placing, findings);
}

fn needles(entry: &Entry, pattern: &Pattern, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let listed: Vec<Option<FabricLength>> = pattern.needles.iter().map(|needle| metric(&needle.size)).collect();
    let rows: Vec<&str> = entry.prose.rows.iter().map(|block| block.text.as_str()).collect();
    let named = |text: &str| -> Vec<FabricLength> {
        sizes(text).into_iter().filter_map(|(_, size)| metric(&NeedleSize::parse(size).ok()?)).collect()
    };
    let in_rows: Vec<FabricLength> = rows.iter().flat_map(|rows| named(rows)).collect();
    if !in_rows.iter().any(|named| listed.contains(&Some(*named))) {
        return;
    }
    let text = entry.prose.source().to_lowercase();
    let anywhere = named(entry.prose.source());
    let gauges: Vec<FabricLength> =
        pattern.gauge.iter().filter_map(|gauge| metric(&gauge.needle.as_ref()?.size)).collect();
    let says = |words: &[&str]| words.iter().any(|word| text.contains(&format!("{word} needle")));
    let (least, most) = (listed.iter().flatten().min(), listed.iter().flatten().max());
    let is_idle = |at: &usize| {
        let Some(size) = listed.get(*at).copied().flatten() else { return false };
        let at = *at;
        let first = listed.iter().position(|other| *other == Some(size)) == Some(at);
        let by_words = (least == Some(&size) && says(&["smaller", "smallest"]))
            || (most == Some(&size) && says(&["larger", "largest", "bigger"]));
        first && !by_words && !anywhere.contains(&size) && !gauges.contains(&size)
    };
    let idle: Vec<usize> = (0..listed.len()).filter(is_idle).collect();
    // "Change to 4 mm needle" without another before it: she began with one that goes without saying.
    if idle.len() == 1 && rows.iter().find_map(|rows| begins_with_change(rows)) == Some(true) {
        return;
    }
    for (at, needle) in pattern.needles.iter().enumerate().filter(|(at, _)| idle.contains(at)) {
        let message = format!("the needle of {} is named nowhere in the text", needle.size.show());
        let place = entry.origin.value(&item("needles", at, &[]), placing);
        findings.push(
            Finding::new(&NEEDLE_IDLE, place, message).help("say in the text what it is for, or take it off the list"),
        );
    }
}

/// Whether the first needle that a text names is one that is changed to; nothing where it names none.
fn begins_with_change(text: &str) -> Option<bool> {
    let first = sizes(text).into_iter().map(|(at, _)| at).min()?;
    let before = text.get(..first)?.trim_end().to_lowercase();
    Some(before.ends_with("change to") || before.ends_with("switch to"))
}

fn cable_needle(entry: &Entry, pattern: &Pattern, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let listed = pattern.notions.iter().position(|notion| {
        let notion = notion.to_lowercase();
        notion.contains("cable needle") || notion == "cn"
    });
    let own = pattern.abbreviations.0.iter().flat_map(|(_, own)| [Some(own.what.as_str()), own.rows.as_deref()]);
    let rows = entry.prose.rows.iter().map(|block| block.text.as_str());
    let crossed = rows.chain(own.flatten()).find_map(cable_in);
    let charted = entry.prose.all_charts().into_iter().flat_map(|chart| &chart.chart.key);
    let crossed = crossed.or_else(|| {
        let cable = charted.filter(|sign| sign.stitch.cable.is_some()).map(|sign| sign.stitch.short.clone());
        cable.min()
    });
    let text = entry.prose.source().to_lowercase();
    match (listed, crossed) {
        (None, Some(cable)) if !pattern.notions.is_empty() && !text.contains("without a cable needle") => {
            let message = format!("`{cable}` is worked and no cable needle is listed");
            let help = "add it: `notions: [cable needle, …]`, or say in the text `without a cable needle`";
            findings.push(Finding::new(&CABLE_NEEDLE, key(entry, "notions", placing), message).help(help));
        }
        (Some(at), None) if !["cable", "cross", "twist", "plait"].iter().any(|word| text.contains(word)) => {
            let place = entry.origin.value(&item("notions", at, &[]), placing);
            let message = "a cable needle is listed and nothing is crossed";
            findings
                .push(Finding::new(&CABLE_NEEDLE, place, message).help("take it off the list, or write the cables"));
        }
        _ => {}
    }
}

/// The first cable that a text has: `C4F`, `2/2 LC`, or a stitch that waits on a cable needle.
fn cable_in(text: &str) -> Option<String> {
    let apart = |c: char| c.is_whitespace() || matches!(c, ',' | ';' | '.' | '*' | '(' | ')' | '[' | ']' | ':');
    let words: Vec<&str> = text.split(apart).filter(|word| !word.is_empty()).collect();
    let is_cable = |word: &str| {
        // Of two stitches they are mostly crossed without.
        chart_symbols::find(word).and_then(|stitch| stitch.cable).is_some_and(|cable| cable.over + cable.under > 2)
    };
    let alone =
        words.iter().find(|word| is_cable(word) || word.eq_ignore_ascii_case("cn")).map(|word| (*word).to_owned());
    alone.or_else(|| {
        let pairs = words.windows(2).map(|pair| pair.join(" "));
        pairs.into_iter().find(|pair| is_cable(pair))
    })
}
