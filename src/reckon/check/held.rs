//! Yarns that are held together must be different ones, and knit to a likely gauge.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::yaml::Step;
use crate::entry::{Data, Entry, Held, Pattern, Placing, YarnUse};
use crate::finding::{Code, Finding, Severity};
use crate::measure::{FabricLength, System};
use crate::reckon::Strands;
use crate::reckon::gauge::PerLength;
use crate::standards::grist;

/// A yarn held with itself, or named twice.
pub static HELD_TWICE: Code = Code {
    name: "held-twice",
    severity: Severity::Warning,
    what: "A yarn in one shade is held with itself, or stands twice among those held with another.",
    why: "It would be bought twice over; the second name may have been meant for another yarn.",
    bad: "yarn: { yarn: heron-dk, held with: heron-dk }",
    good: "yarn: { yarn: heron-dk, strands: 2 }",
};

/// Strands that together are another weight than the gauge is of.
pub static TOGETHER_UNLIKE: Code = Code {
    name: "together-unlike",
    severity: Severity::Warning,
    what: "All strands together are of a weight that is knitted to quite another gauge than the pattern's.",
    why: "A strand, a put-up or the gauge is mistyped, and every length that rests on it is wrong.",
    bad: "gauge: { stitches: 28, over: 10 cm }\nyarn: { yarn: heron-dk, held with: gull-worsted }",
    good: "gauge: { stitches: 13, over: 10 cm }\nyarn: { yarn: heron-dk, held with: gull-worsted }",
};

/// Looks at the strands of each line of a pattern.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    for (at, line) in pattern.yarn.iter().enumerate() {
        for (number, Held(held)) in line.held_with.iter().enumerate() {
            let before = line.held_with.iter().take(number).map(|Held(before)| before);
            let Some(other) = std::iter::once(line).chain(before).find(|other| is_same(other, held)) else { continue };
            let Some(yarn) = held.yarn.as_ref().map(|yarn| yarn.reference()) else { continue };
            let message = if std::ptr::eq(other, line) {
                format!("`{yarn}` is held with itself")
            } else {
                format!("`{yarn}` is named twice among the yarns held together")
            };
            let mut way = place::item("yarn", at, &["held with"]);
            way.push(Step::Item(number));
            findings.push(
                Finding::new(&HELD_TWICE, entry.origin.value(&way, placing), message)
                    .help("for several strands of one yarn write `strands: 2`; for two colours give each its `shade`"),
            );
        }
        if let Some((message, help)) = unlike(catalogue, pattern, line) {
            let place = entry.origin.value(&place::item("yarn", at, &[]), placing);
            findings.push(Finding::new(&TOGETHER_UNLIKE, place, message).help(help));
        }
    }
}

/// Returns whether two strands are of one yarn in one shade; a shade that is not given may be any.
fn is_same(one: &YarnUse, other: &YarnUse) -> bool {
    let key = |line: &YarnUse| line.yarn.as_ref().map(|yarn| yarn.key.clone());
    let shades = one.shade.as_ref().zip(other.shade.as_ref());
    key(one).is_some() && key(one) == key(other) && shades.is_none_or(|(one, other)| one == other)
}

/// Returns what is wrong with the gauge of several strands: it is more than a third off the bands of every weight that their
/// length per mass may be of. Fabric may well be looser or tighter than a band, but hardly by so much (our rule).
fn unlike(catalogue: &Catalogue, pattern: &Pattern, line: &YarnUse) -> Option<(String, String)> {
    if !line.has_several_strands() {
        return None;
    }
    let strands = Strands::of(line, |line| place::yarn(catalogue, line));
    let length = strands.grist()?.per_100_g()?;
    let stitches = PerLength::stitches(pattern.gauge.first()?).count_for(FabricLength::TEN_CENTIMETRES)?.thousandths();
    let weights = grist::weights(length);
    let least = i64::from(weights.iter().map(|weight| weight.stitches_min).min()?) * 1000;
    let most = i64::from(weights.iter().map(|weight| weight.stitches_max).max()?) * 1000;
    if (least * 2 / 3..=most * 4 / 3).contains(&stitches) {
        return None;
    }
    let system = catalogue.studio.units.unwrap_or(System::Metric);
    let names: Vec<&str> = weights.iter().map(|weight| weight.name.as_str()).collect();
    let message = format!(
        "the strands together have {} in 100 g, which is not knitted to {} stitches",
        length.show(system),
        pattern.gauge.first()?.stitches.show()
    );
    let help =
        format!("that is as {} has, of {} to {} stitches to 10 cm", names.join(" or "), least / 1000, most / 1000);
    Some((message, help))
}
