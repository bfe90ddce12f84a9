//! The gauges of one pattern must agree, and be gauges.

use super::place;
use crate::entry::{Data, Entry, Gauge, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::Count;
use crate::reckon::gauge::PerLength;

/// Two gauges of one stitch that are not the same.
pub static GAUGE_DISAGREES: Code = Code {
    name: "gauge-disagrees",
    severity: Severity::Warning,
    what: "Two gauges of one pattern, in one stitch on one needle, are not the same.",
    why: "A knitter gets the one and misses the other, and cannot tell which her size rests on.",
    bad: "gauge: [ { stitches: 22, over: 10 cm }, { stitches: 6, over: 1 in } ]",
    good: "gauge: [ { stitches: 22, over: 10 cm }, { stitches: 5.5, over: 1 in } ]",
};

/// A gauge over a stretch nobody counts over, or of nothing.
pub static GAUGE_UNLIKELY: Code = Code {
    name: "gauge-unlikely",
    severity: Severity::Warning,
    what: "A gauge is over less than 2 cm or more than 20 cm, or its count is nothing.",
    why: "A unit has been mistaken, and every stitch count that rests on it is wrong.",
    bad: "gauge: { stitches: 22, over: 10 mm }",
    good: "gauge: { stitches: 22, over: 10 cm }",
};

/// The shortest and the longest stretch that a gauge is counted over, in nanometres.
const STRETCH: std::ops::RangeInclusive<i64> = 20_000_000..=200_000_000;

/// Finds the gauges of a pattern that disagree, and those of a pattern or yarn that are not likely.
pub fn check(entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    match &entry.data {
        Data::Pattern(pattern) => {
            for (at, gauge) in pattern.gauge.iter().enumerate() {
                let way = place::item("gauge", at, &[]);
                if let Some(message) = unlikely(gauge) {
                    let finding = Finding::new(&GAUGE_UNLIKELY, entry.origin.value(&way, placing), message);
                    findings.push(finding.help("give what was counted on a swatch, mostly over 10 cm (4 in)"));
                    continue;
                }
                let before = pattern.gauge.iter().take(at).enumerate();
                let Some((other, what)) =
                    before.filter_map(|(other, before)| Some((other, apart(before, gauge)?))).next()
                else {
                    continue;
                };
                let message = match &gauge.stitch {
                    Some(stitch) => format!("two gauges in {stitch} differ in their {what}"),
                    None => format!("two gauges differ in their {what}"),
                };
                let also = entry.origin.value(&place::item("gauge", other, &[]), placing);
                findings.push(
                    Finding::new(&GAUGE_DISAGREES, entry.origin.value(&way, placing), message)
                        .help("leave one of them out, or say with `in` or `needle` what sets them apart")
                        .also(also, "the other gauge"),
                );
            }
        }
        Data::Yarn(yarn) => {
            if let Some(message) = yarn.gauge.as_ref().and_then(unlikely) {
                let finding = Finding::new(&GAUGE_UNLIKELY, entry.origin.field(&["gauge"], placing), message);
                findings.push(finding.help("give what was counted on a swatch, mostly over 10 cm (4 in)"));
            }
        }
        _ => {}
    }
}

fn unlikely(gauge: &Gauge) -> Option<String> {
    if gauge.stitches == Count::ZERO || gauge.rows == Some(Count::ZERO) {
        return Some("a gauge of nothing".to_owned());
    }
    let over = gauge.over?;
    (!STRETCH.contains(&over.nanometres())).then(|| format!("a gauge over {}", over.show_mm()))
}

/// Returns what two gauges of one fabric differ in; nothing for gauges of two fabrics.
fn apart(one: &Gauge, other: &Gauge) -> Option<&'static str> {
    if one.stitch != other.stitch || one.needle != other.needle {
        return None;
    }
    let differ = |one: Option<PerLength>, other: Option<PerLength>| one?.same(other?).map(|same| !same);
    if differ(Some(PerLength::stitches(one)), Some(PerLength::stitches(other))) == Some(true) {
        return Some("stitches");
    }
    (differ(PerLength::rows(one), PerLength::rows(other)) == Some(true)).then_some("rows")
}
