//! Every size takes about as much yarn for its fabric.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::{Data, Entry, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::YarnLength;
use crate::measure::rounding::divide_near;
use crate::reckon::{area, total};

/// A size whose yarn does not go with its fabric.
pub static NEEDS_AREA: Code = Code {
    name: "needs-area",
    severity: Severity::Warning,
    what: "The yarn a size takes for its fabric is more than 5 % from that of the middle size.",
    why: "Yarn grows as fabric does: a size that stands out is mostly a slip in its figure.",
    bad: "finished: { width: 40 (60) cm, length: 100 cm }\npieces: { shape: rectangle, width: width, length: length }\nyarn: { needs: 200 (400) m }",
    good: "finished: { width: 40 (60) cm, length: 100 cm }\npieces: { shape: rectangle, width: width, length: length }\nyarn: { needs: 200 (300) m }",
};

/// How far a size may be from the middle one, in hundredths of a percent.
const SLACK: i128 = 500;

/// Finds the sizes whose needs for each piece of fabric stand out; a pattern without pieces is not asked.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    if pattern.pieces.is_empty() {
        return;
    }
    let Some(needs) = place::needs(catalogue, pattern) else { return };
    let lengths = total(&needs, pattern.size_count());
    let share = |(size, length): (usize, &Option<YarnLength>)| {
        // Micrometres for each square metre.
        let above = i128::from((*length)?.micrometres()).checked_mul(1_000_000_000_000)?;
        Some((size, divide_near(above, area(pattern, size)?.square_micrometres().into())?))
    };
    let shares: Vec<(usize, i128)> = lengths.iter().enumerate().filter_map(share).collect();
    let mut ordered = shares.clone();
    ordered.sort_by_key(|(size, share)| (*share, *size));
    let Some((middle, usual)) = ordered.get(ordered.len().saturating_sub(1) / 2).copied() else { return };
    let apart = |(size, share): &(usize, i128)| {
        let more = divide_near((share - usual).checked_mul(10_000)?, usual)?;
        (more.abs() > SLACK).then(|| {
            let how = if more > 0 { "more" } else { "less" };
            let percent = divide_near(more.abs(), 100).unwrap_or(0);
            format!("{percent}% {how} in {}", place::size(pattern, *size))
        })
    };
    let told: Vec<String> = shares.iter().filter_map(apart).collect();
    if told.is_empty() {
        return;
    }
    let message =
        format!("set against {}, the yarn for as much fabric is {}", place::size(pattern, middle), told.join(", "));
    let place = place::key(entry, "yarn", placing);
    findings.push(
        Finding::new(&NEEDS_AREA, place, message)
            .help("look at the needs and the measurements of these sizes")
            .also(place::key(entry, "pieces", placing), "the fabric"),
    );
}
