//! A row of a chart, written out in the order it is worked.

use super::super::chart::{Chart, Parts, Side, Worked};
use super::Step;
use super::name::Name;

/// Returns the stitches of a row with its repeat worked so often; cells without a stitch are left out.
pub(super) fn steps(chart: &Chart, row: usize, times: i64) -> Vec<Step> {
    let Some(worked) = chart.rows.get(row) else { return Vec::new() };
    let side = chart.side(row);
    let Parts { left, repeat, right } = chart.parts(worked);
    let times = usize::try_from(times).unwrap_or(1);
    let (first, last) = if side == Side::Right { (right, left) } else { (left, right) };
    let mut all = stretch(chart, first, side);
    let again = stretch(chart, repeat, side);
    all.extend(std::iter::repeat_n(again, times).flatten());
    all.extend(stretch(chart, last, side));
    all
}

fn stretch(chart: &Chart, worked: &[Worked], side: Side) -> Vec<Step> {
    let step = |worked: &Worked| {
        let sign = chart.sign(*worked).filter(|sign| !sign.is_nothing())?;
        let stitch = &sign.stitch;
        let word = if side == Side::Right { &stitch.short } else { stitch.ws_short.as_ref().unwrap_or(&stitch.short) };
        let name = Name::of(word, stitch.consumed.into(), stitch.produced.into());
        Some(Step { name, colour: sign.colour.clone(), at: 0..0 })
    };
    match side {
        Side::Right => worked.iter().rev().filter_map(step).collect(),
        Side::Wrong => worked.iter().filter_map(step).collect(),
    }
}
