//! How many stitches each row of a chart takes and leaves.

use super::{Chart, Worked};

/// The stitches of a row, or of a stretch of it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Stitches {
    /// How many are taken from the row below.
    pub consumed: u32,
    /// How many there are afterwards.
    pub produced: u32,
}

/// The stitches of one row.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct RowCount {
    /// Those of the whole row, the repeat once.
    pub all: Stitches,
    /// Those of the repeat; of everything where none is marked.
    pub repeat: Stitches,
}

/// Returns the stitches of each row from the bottom up; cells without a stitch count for nothing.
pub fn counts(chart: &Chart) -> Vec<RowCount> {
    let of = |row: &Vec<Worked>| RowCount { all: sum(chart, row), repeat: sum(chart, chart.parts(row).repeat) };
    chart.rows.iter().map(of).collect()
}

/// Returns the stitches of a stretch of a row.
pub fn sum(chart: &Chart, stretch: &[Worked]) -> Stitches {
    stretch.iter().filter_map(|worked| chart.sign(*worked)).fold(Stitches::default(), |sum, sign| Stitches {
        consumed: sum.consumed.saturating_add(sign.stitch.consumed),
        produced: sum.produced.saturating_add(sign.stitch.produced),
    })
}
