//! Rows under one label that are as many rows of a chart: `Rows 1-4: K3, work chart lamps to last 3 sts, k3`.

use super::super::super::statement::Label;
use super::super::super::tree::{Item, Number, Reach};
use crate::measure::SizeRun;

/// Whether a sentence without a label that is only this may work more than one row of the chart, or other stitches beside it.
pub(in super::super) fn is_unsure(items: &[Item]) -> bool {
    let [Item::Chart { rows, reach, .. }] = items else { return false };
    rows.len() != 1 || matches!(reach, Reach::Over(_))
}

/// The items of each of the rows that a label stands for, where they work as many rows of a chart, or a part of them over and
/// over; nothing where they work none.
pub(in super::super) fn row_by_row(label: &Label, items: &[Item]) -> Option<Vec<(Label, Vec<Item>)>> {
    const MOST: i64 = 999;
    if label.others.is_some() {
        return None;
    }
    let said = label.rows.as_ref().filter(|rows| rows.values.is_one()).map(|rows| rows.of(0));
    let count = match label.numbers.len() {
        0 => usize::try_from(said.filter(|rows| *rows <= MOST)?).ok()?,
        numbers => numbers,
    };
    let fits =
        |item: &Item| matches!(item, Item::Chart { rows, .. } if rows.len() > 1 && count.is_multiple_of(rows.len()));
    if count < 2 || !items.iter().any(fits) {
        return None;
    }
    let of = |at: usize| {
        let items = items.iter().map(|item| match item {
            Item::Chart { chart, rows, reach, at: place } if fits(item) => {
                let row = rows.iter().cycle().nth(at.checked_rem(rows.len()).unwrap_or(0)).copied();
                let (chart, reach, at) = (chart.clone(), reach.clone(), place.clone());
                Item::Chart { chart, rows: row.into_iter().collect(), reach, at }
            }
            other => other.clone(),
        });
        let one = label.rows.as_ref().map(|rows| Number { values: SizeRun::one(1), at: rows.at.clone() });
        let numbers = label.numbers.get(at).copied().into_iter().collect();
        (Label { numbers, rows: one, ..label.clone() }, items.collect())
    };
    Some((0..count).map(of).collect())
}
