//! What a hat or an adult's sweater takes must be likely.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::value::Wearer;
use crate::entry::{Data, Entry, Pattern, Placing, YarnUse};
use crate::finding::{Code, Finding, Severity};
use crate::measure::{FabricLength, System, YarnLength};
use crate::reckon::gauge::PerLength;
use crate::reckon::total;
use crate::standards::Band;
use crate::standards::yardage::{Item, plausible};

/// A length of yarn that is far from what such a thing usually takes.
pub static YARDAGE_UNLIKELY: Code = Code {
    name: "yardage-unlikely",
    severity: Severity::Warning,
    what: "A size takes much more or much less yarn than such a thing usually does at its gauge.",
    why: "A figure is mistyped, or metres and yards are mistaken.",
    bad: "garment: hat\ngauge: { stitches: 20 }\nyarn: { needs: 1300 m }",
    good: "garment: hat\ngauge: { stitches: 20 }\nyarn: { needs: 130 m }",
};

/// The smallest head of a grown person, in the council's table.
const GROWN_HEAD: FabricLength = FabricLength::from_nanometres(510_000_000);

/// Sets the needs of each size against the approximate bands of a handbook, a tenth wider on either side.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    let Some((item, band)) = usual(pattern) else { return };
    let Some(needs) = place::needs(catalogue, pattern) else { return };
    let told: Vec<(usize, YarnLength)> = total(&needs, pattern.size_count())
        .into_iter()
        .enumerate()
        .filter_map(|(size, length)| Some((size, length?)))
        .filter(|(size, length)| !band.holds(*length) && !is_small(pattern, item, *size))
        .collect();
    if told.is_empty() {
        return;
    }
    let system = pattern.yarn.iter().find_map(|line| line.needs.as_ref()?.system).unwrap_or(System::Metric);
    let those: Vec<String> = told
        .iter()
        .map(|(size, length)| format!("{}{}", length.show(system), place::in_sizes(pattern, &[*size])))
        .collect();
    let ends = [band.min.show(system), band.max.show(system)];
    let message =
        format!("the yarn is {}, and such a thing takes approximately {}", those.join(", "), ends.join(" to "));
    let finding = Finding::new(&YARDAGE_UNLIKELY, place::key(entry, "yarn", placing), message);
    let help =
        format!("look at figures and units; the band is that of one handbook for any {}, a tenth wider", item.name());
    findings.push(finding.help(help));
}

/// Returns whether a size is for a head of a child, whose hat takes less than the table's.
fn is_small(pattern: &Pattern, item: Item, size: usize) -> bool {
    let head = || pattern.to_fit.get("head")?.values.get(size).copied();
    item == Item::Hat && head().is_some_and(|head| head < GROWN_HEAD)
}

/// Returns what a pattern is and the length it usually takes; nothing where no table knows it.
///
/// Scarves are not asked: the handbook has one figure for all, and a scarf may be of any width and length.
fn usual(pattern: &Pattern) -> Option<(Item, Band<YarnLength>)> {
    let garment = pattern.garment.as_ref()?.to_lowercase();
    let is = |words: &[&str]| garment.split_whitespace().any(|word| words.contains(&word));
    let small = matches!(pattern.wearer, Some(Wearer::Child | Wearer::Baby));
    let grown = matches!(pattern.wearer, Some(Wearer::Women | Wearer::Men));
    let item = if is(&["pullover", "cardigan", "sweater", "jumper"]) && grown {
        Item::AdultSweater
    } else if is(&["hat", "beanie", "cap"]) && !small {
        Item::Hat
    } else {
        return None;
    };
    // Strands held together are several lengths in one fabric, which the table does not know.
    if pattern.yarn.iter().any(YarnUse::has_several_strands) {
        return None;
    }
    let gauge = PerLength::stitches(pattern.gauge.first()?);
    let band = plausible(item, gauge.count_for(FabricLength::TEN_CENTIMETRES)?)?;
    Some((item, Band { min: band.min.times_near(9, 10)?, max: band.max.times_near(11, 10)? }))
}
