//! How many stitches are worked in each colour of a chart.

use super::{Chart, Worked};
use crate::measure::rounding::divide_near;

/// The stitches of one colour.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ColourCount {
    /// The colour's label.
    pub colour: String,
    /// How many stitches of the repeat, or of the whole chart where none is marked, are worked in it.
    pub stitches: u64,
    /// Its share of all coloured stitches, rounded near to hundredths of a percent.
    pub share: i64,
}

/// Returns the stitches of each colour in the order of the key; cells without a colour count for nothing.
///
/// The share is that of the stitches, and of the yarn as far as all stitches take as much: what floats take comes on top.
pub fn colours(chart: &Chart) -> Vec<ColourCount> {
    let mut counted: Vec<ColourCount> = Vec::new();
    for colour in chart.key.iter().filter_map(|sign| sign.colour.as_ref()) {
        if !counted.iter().any(|known| known.colour == *colour) {
            counted.push(ColourCount { colour: colour.clone(), stitches: 0, share: 0 });
        }
    }
    let repeated = |row: &'_ Vec<Worked>| chart.parts(row).repeat.to_vec();
    for sign in chart.rows.iter().flat_map(repeated).filter_map(|worked| chart.sign(worked)) {
        let place = counted.iter_mut().find(|known| sign.colour.as_ref() == Some(&known.colour));
        if let Some(known) = place {
            known.stitches = known.stitches.saturating_add(sign.stitch.produced.into());
        }
    }
    let all: i128 = counted.iter().map(|known| i128::from(known.stitches)).sum();
    for known in &mut counted {
        let share = divide_near(i128::from(known.stitches).saturating_mul(10_000), all);
        known.share = share.and_then(|share| i64::try_from(share).ok()).unwrap_or(0);
    }
    counted
}
