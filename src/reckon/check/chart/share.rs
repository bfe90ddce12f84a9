//! Where a chart shows everything, its colours share the yarn as the needs do.

use super::super::place as places;
use super::place;
use crate::catalogue::Catalogue;
use crate::entry::{ChartBlock, Entry, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::Percent;
use crate::measure::rounding::divide_near;
use crate::notation::chart::colours::colours;

/// Needs that do not share out as the chart's stitches do.
pub static CHART_SHARE: Code = Code {
    name: "chart-share",
    severity: Severity::Warning,
    what: "A chart that covers everything has a colour whose share of the stitches is more than a tenth from its share of the yarn.",
    why: "A knitter runs out of the one colour and is left with the other.",
    bad: "covers: everything, half of the cells in CC, and needs of 300 m of MC and 100 m of CC",
    good: "needs of 200 m of MC and 200 m of CC",
};

/// How far a share of the yarn may be from that of the stitches, in hundredths of a percent of the latter.
const SLACK: i128 = 1000;

/// Finds colours whose needs, added over all sizes, do not go with the chart. All its colours must be known to need
/// something; what is worked out from the chart itself is not asked.
pub fn check(
    catalogue: &Catalogue,
    entry: &Entry,
    block: &ChartBlock,
    placing: &Placing<'_>,
    findings: &mut Vec<Finding>,
) {
    let Some(pattern) = entry.pattern().filter(|_| block.covers_everything) else { return };
    let Some(needs) = places::needs(catalogue, pattern) else { return };
    let counted = colours(&block.chart);
    let length = |colour: &str| {
        let lines = pattern.yarn.iter().zip(&needs).filter(|(line, _)| line.colour.as_deref() == Some(colour));
        let lengths = lines.flat_map(|(_, needs)| needs).filter_map(|told| Some(told.need()?.length));
        let sum = lengths.fold(0_i128, |sum, length| sum.saturating_add(i128::from(length.micrometres())));
        (sum > 0).then_some(sum)
    };
    let lengths: Option<Vec<i128>> = counted.iter().map(|one| length(&one.colour)).collect();
    let Some(lengths) = lengths.filter(|lengths| lengths.len() > 1) else { return };
    let all: i128 = lengths.iter().fold(0, |sum, length| sum.saturating_add(*length));
    let mut told = Vec::new();
    for (one, length) in counted.iter().zip(&lengths) {
        let Some(share) = length.checked_mul(10_000).and_then(|above| divide_near(above, all)) else { continue };
        let stitches = i128::from(one.share);
        if (share - stitches).abs().saturating_mul(10_000) > stitches.saturating_mul(SLACK) {
            let percent = |share: i128| {
                let whole = divide_near(share, 100).and_then(|whole| i64::try_from(whole).ok()).unwrap_or(0);
                Percent::from_hundredths(whole.saturating_mul(100)).show()
            };
            told.push(format!(
                "`{}` has {} of the stitches and {} of the yarn",
                one.colour,
                percent(stitches),
                percent(share)
            ));
        }
    }
    if told.is_empty() {
        return;
    }
    let finding = Finding::new(&CHART_SHARE, place(entry, block.value("covers")), told.join(", "));
    findings.push(
        finding
            .help("look at the needs of these colours, or take `covers` away if there is fabric besides the chart")
            .also(places::key(entry, "yarn", placing), "the needs"),
    );
}
