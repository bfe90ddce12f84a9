//! How far a yarn is carried behind the others in a row of a chart in colours.

use super::{Chart, Parts, Worked};

/// The longest stretch in a row over which a colour of the row is carried and not knitted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Float {
    /// The colour that is carried.
    pub colour: String,
    /// Over how many stitches.
    pub stitches: u32,
}

/// Returns the longest float of each row from the bottom up; none in a row of fewer than two colours.
///
/// A float may pass the edge of a repeat, so the repeat is looked at twice; in the round it may pass from the end of the
/// round to its beginning. Of two equally long ones that of the colour that comes first in the key is told.
pub fn floats(chart: &Chart) -> Vec<Option<Float>> {
    chart.rows.iter().map(|row| float(chart, row)).collect()
}

fn float(chart: &Chart, row: &[Worked]) -> Option<Float> {
    let Parts { left, repeat, right } = chart.parts(row);
    // Without a mark the whole chart is repeated in the round, and nothing is when it is worked flat.
    let times = if chart.repeat.is_some() || chart.round { 2 } else { 1 };
    let repeats = std::iter::repeat_n(repeat, times).flatten();
    let worked: Vec<(Option<&str>, u32)> = left
        .iter()
        .chain(repeats)
        .chain(right)
        .filter_map(|worked| chart.sign(*worked))
        .map(|sign| (sign.colour.as_deref(), sign.stitch.produced))
        .collect();
    let mut colours: Vec<&str> = chart.key.iter().filter_map(|sign| sign.colour.as_deref()).collect();
    let mut seen = Vec::new();
    colours.retain(|colour| {
        let new = !seen.contains(colour) && worked.iter().any(|(other, _)| other == &Some(*colour));
        seen.push(colour);
        new
    });
    if colours.len() < 2 {
        return None;
    }
    let mut longest: Option<Float> = None;
    for colour in colours {
        let stitches = gap(&worked, colour, chart.round);
        if stitches > longest.as_ref().map_or(0, |float| float.stitches) {
            longest = Some(Float { colour: colour.to_owned(), stitches });
        }
    }
    longest
}

/// Returns the most stitches of other colours between two of this one.
fn gap(worked: &[(Option<&str>, u32)], colour: &str, round: bool) -> u32 {
    // Nothing hangs before the first stitch of a colour, unless the row goes round.
    let around = if round { worked } else { &[] };
    let mut since: Option<u32> = None;
    let mut most = 0;
    for (other, stitches) in worked.iter().chain(around) {
        if *other == Some(colour) {
            most = most.max(since.unwrap_or(0));
            since = Some(0);
        } else {
            since = since.map(|since| since.saturating_add(*stitches));
        }
    }
    most
}
