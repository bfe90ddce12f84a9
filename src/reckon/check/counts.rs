//! Stitches and rows must come to the finished measurements they are for.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::value::Map;
use crate::entry::{Data, Entry, Pattern, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::{Count, FabricLength, Run};
use crate::reckon::gauge::PerLength;

/// Stitches that are not as wide as the finished measurement.
pub static WIDTH_UNLIKE: Code = Code {
    name: "width-unlike",
    severity: Severity::Warning,
    what: "A stitch count at the pattern's gauge is not as wide as the finished measurement.",
    why: "The count, the gauge or the measurement is wrong, and the garment comes out another size.",
    bad: "gauge: { stitches: 22, over: 10 cm }\nfinished: { chest: 100 cm }\nstitch counts: { chest: 210 }",
    good: "gauge: { stitches: 22, over: 10 cm }\nfinished: { chest: 100 cm }\nstitch counts: { chest: 220 }",
};

/// Rows that are not as long as the finished measurement.
pub static LENGTH_UNLIKE: Code = Code {
    name: "length-unlike",
    severity: Severity::Warning,
    what: "A row count at the pattern's gauge is not as long as the finished measurement.",
    why: "The count, the gauge or the measurement is wrong, and the garment comes out another length.",
    bad: "gauge: { stitches: 22, rows: 30, over: 10 cm }\nfinished: { length: 40 cm }\nrow counts: { length: 100 }",
    good: "gauge: { stitches: 22, rows: 30, over: 10 cm }\nfinished: { length: 40 cm }\nrow counts: { length: 120 }",
};

/// What a quarter inch of rounding comes to, in nanometres.
const ROUNDING: u64 = 6_000_000;

/// Sets stitch and row counts against finished measurements, at whichever of the pattern's gauges comes nearest.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    let inch = catalogue.studio.settings().inch;
    let stitches: Vec<PerLength> = pattern.gauge.iter().map(PerLength::stitches).collect();
    let rows: Vec<PerLength> = pattern.gauge.iter().filter_map(PerLength::rows).collect();
    let mut look = |code: &'static Code, field: &str, what: &str, counts: &Map<Run<Count>>, gauges: &[PerLength]| {
        for (name, run) in &counts.0 {
            let Some(finished) = pattern.finished.get(name) else { continue };
            let told = apart(pattern, run, finished, gauges);
            let Some((first, _)) = told.first() else { continue };
            let system = finished.system.unwrap_or_default();
            let those: Vec<String> = told
                .iter()
                .map(|(size, length)| format!("{}{}", length.show(system, inch), place::in_sizes(pattern, &[*size])))
                .collect();
            let way = place::way(&[field, name]);
            let message = format!("the {what} of `{name}` are {} by the gauge", those.join(", "));
            findings.push(
                Finding::new(code, place::value(entry, &way, run, *first, placing), message)
                    .help("look at the count, the gauge and the finished measurement")
                    .also(
                        place::value(entry, &place::way(&["finished", name]), finished, *first, placing),
                        "the finished measurement",
                    ),
            );
        }
    };
    look(&WIDTH_UNLIKE, "stitch counts", "stitches", &pattern.stitch_counts, &stitches);
    look(&LENGTH_UNLIKE, "row counts", "rows", &pattern.row_counts, &rows);
}

/// Returns the sizes whose count is no gauge's measurement, with what it is at the main gauge.
fn apart(
    pattern: &Pattern,
    counts: &Run<Count>,
    finished: &Run<FabricLength>,
    gauges: &[PerLength],
) -> Vec<(usize, FabricLength)> {
    let sizes = pattern.size_count();
    if !counts.values.serves(sizes) || !finished.values.serves(sizes) {
        return Vec::new();
    }
    let one = |size: usize| {
        let (count, finished) = (*counts.values.get(size)?, *finished.values.get(size)?);
        let fits = |gauge: &PerLength| {
            let half = gauge.length_of(Count::from_thousandths(500))?.nanometres().unsigned_abs();
            let length = gauge.length_of(count)?;
            Some(length.nanometres().abs_diff(finished.nanometres()) <= half.max(ROUNDING))
        };
        let main = gauges.first()?.length_of(count)?;
        gauges.iter().all(|gauge| fits(gauge) == Some(false)).then_some((size, main))
    };
    (0..sizes).filter_map(one).collect()
}
