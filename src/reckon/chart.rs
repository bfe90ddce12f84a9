//! What a chart comes to at a pattern's gauge.

use super::gauge::PerLength;
use crate::entry::{Gauge, Pattern};
use crate::measure::rounding::divide_near;
use crate::measure::{Count, FabricLength};

/// How wide a cell is taken to be, in the unit that [`cell_height`] is in.
pub const CELL_WIDTH: i64 = 200;

/// The height of a cell where no gauge tells: about two thirds of its width, as of plain knitting (common practice).
const USUAL_HEIGHT: i64 = 133;

/// How flat and how tall a cell may be. No fabric goes beyond; a slip in a gauge does.
const HEIGHTS: std::ops::RangeInclusive<i64> = 60..=400;

/// Returns the gauge that charts of a pattern are drawn at: the first that has rows, or else the first.
pub fn gauge_of_charts(pattern: &Pattern) -> Option<&Gauge> {
    pattern.gauge.iter().find(|gauge| gauge.rows.is_some()).or(pattern.gauge.first())
}

/// Returns the height of a cell [`CELL_WIDTH`] wide: as much as a row is to a stitch, rounded near.
pub fn cell_height(gauge: Option<&Gauge>) -> i64 {
    let told = gauge.and_then(|gauge| {
        let rows = gauge.rows?;
        let above = i128::from(gauge.stitches.thousandths()) * i128::from(CELL_WIDTH);
        i64::try_from(divide_near(above, rows.thousandths().into())?).ok()
    });
    told.filter(|height| HEIGHTS.contains(height)).unwrap_or(USUAL_HEIGHT)
}

/// Returns how long a float over so many stitches is; nothing without a gauge.
pub fn float_length(gauge: Option<&Gauge>, stitches: u32) -> Option<FabricLength> {
    PerLength::stitches(gauge?).length_of(Count::from_whole(stitches.into())?)
}

/// The most stitches of a width that are drawn, beyond any fabric: a gauge that is a slip draws no wall of them.
const MOST_STITCHES: u32 = 2_000;

/// Returns how many whole stitches a width takes, from one to 2,000; nothing without a gauge.
pub fn stitches_over(gauge: Option<&Gauge>, width: FabricLength) -> Option<u32> {
    let count = PerLength::stitches(gauge?).count_for(width)?;
    u32::try_from(divide_near(count.thousandths().into(), 1000)?).ok().map(|count| count.clamp(1, MOST_STITCHES))
}
