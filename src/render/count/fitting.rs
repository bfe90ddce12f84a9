//! The stitches of a width, or the rows of a length, that a stitch pattern allows.

use super::{Across, Frame, json};
use crate::measure::{Count, FabricLength};
use crate::reckon::gauge::PerLength;
use crate::reckon::multiple::{Multiple, Neighbours, Parity};
use crate::render::decimal::Decimal;
use crate::render::table::table;
use serde::Serialize;

/// Counts for a measurement, size by size.
#[derive(Clone, Debug)]
pub struct Fitting {
    /// For which sizes.
    pub frame: Frame,
    /// What is counted.
    pub across: Across,
    /// The gauge.
    pub gauge: PerLength,
    /// The title of the pattern whose gauge it is, where it is one's.
    pub of: Option<String>,
    /// Which counts are wanted.
    pub multiple: Multiple,
    /// Each size; nothing for one that has no such measurement.
    pub sizes: Vec<Option<FittingSize>>,
}

/// One size.
#[derive(Clone, Copy, Debug)]
pub struct FittingSize {
    /// The measurement.
    pub wanted: FabricLength,
    /// Measurement × gauge.
    pub exact: Count,
    /// The counts that fit on either side.
    pub near: Neighbours,
}

#[derive(Serialize)]
struct Json {
    count: &'static str,
    gauge: Decimal,
    over_cm: Decimal,
    multiple: i64,
    plus: i64,
    parity: Option<&'static str>,
    sizes: Vec<JsonSize>,
}

#[derive(Serialize)]
struct JsonSize {
    size: Option<String>,
    wanted_cm: Option<Decimal>,
    exact: Option<Decimal>,
    below: Option<JsonCount>,
    above: Option<JsonCount>,
    nearest: Option<i64>,
}

#[derive(Serialize)]
struct JsonCount {
    count: i64,
    cm: Option<Decimal>,
}

impl Fitting {
    /// Returns it as a table for people, in both systems.
    pub fn to_text(&self) -> String {
        let (system, inch) = (self.frame.system, self.frame.inch);
        let both =
            |length: FabricLength| format!("{} ({})", length.show(system, inch), length.show(system.other(), inch));
        let none = || "–".to_owned();
        let of = self.of.as_ref().map(|title| format!(", the gauge of {title}")).unwrap_or_default();
        let mut out = format!(
            "{} at {} to {}{of}, in {}\n",
            if self.across == Across::Stitches { "Stitches" } else { "Rows" },
            self.gauge.count.show(),
            both(self.gauge.over),
            self.multiple_in_words(),
        );
        let made = if self.across == Across::Stitches { "width" } else { "length" };
        let heads = ["size", "wanted", "exactly", "below", made, "above", made, "nearest"];
        // One measurement that is for no size in particular needs no column of sizes.
        let first = usize::from(self.sizes.len() == 1);
        let row = |(size, one): (usize, &Option<FittingSize>)| {
            let Some(one) = one else { return vec![self.frame.size(size), "none".to_owned()] };
            let count = |count: Option<i64>| count.map_or_else(none, |count| count.to_string());
            let length = |count: Option<i64>| count.and_then(|count| self.length(count)).map_or_else(none, both);
            vec![
                self.frame.size(size),
                both(one.wanted),
                one.exact.show(),
                count(one.near.below),
                length(one.near.below),
                count(Some(one.near.above)),
                length(Some(one.near.above)),
                one.near.nearest.to_string(),
            ]
        };
        let rows: Vec<Vec<String>> =
            self.sizes.iter().enumerate().map(|one| row(one).into_iter().skip(first).collect()).collect();
        out.push_str(&table(heads.get(first..).unwrap_or_default(), &rows));
        out
    }

    /// Returns it as JSON; what a size does not have is null, and so is `size` where it is for none in particular. Lengths are in centimetres, as exact as they are known.
    pub fn to_json(&self) -> String {
        let one = |(size, one): (usize, &Option<FittingSize>)| {
            let count = |count: i64| JsonCount { count, cm: self.length(count).map(Decimal::centimetres) };
            JsonSize {
                size: self.frame.named(size, self.sizes.len()),
                wanted_cm: one.map(|one| Decimal::centimetres(one.wanted)),
                exact: one.map(|one| Decimal::of(one.exact.thousandths(), 1000)),
                below: one.and_then(|one| one.near.below).map(count),
                above: one.map(|one| count(one.near.above)),
                nearest: one.map(|one| one.near.nearest),
            }
        };
        json::pretty(&Json {
            count: self.across.many(),
            gauge: Decimal::of(self.gauge.count.thousandths(), 1000),
            over_cm: Decimal::centimetres(self.gauge.over),
            multiple: self.multiple.of,
            plus: self.multiple.plus,
            parity: self.multiple.parity.map(parity_word),
            sizes: self.sizes.iter().enumerate().map(one).collect(),
        })
    }

    fn length(&self, count: i64) -> Option<FabricLength> {
        self.gauge.length_of(Count::from_whole(count)?)
    }

    fn multiple_in_words(&self) -> String {
        let Multiple { of, plus, parity } = self.multiple;
        let parity = parity.map(|parity| format!("an {} number", parity_word(parity)));
        let multiple = match plus {
            0 => format!("a multiple of {of}"),
            1.. => format!("a multiple of {of} plus {plus}"),
            _ => format!("a multiple of {of} minus {}", plus.unsigned_abs()),
        };
        match (of, plus, parity) {
            (1, 0, None) => "whole numbers".to_owned(),
            (1, 0, Some(parity)) => parity,
            (_, _, None) => multiple,
            (_, _, Some(parity)) => format!("{multiple} and {parity}"),
        }
    }
}

const fn parity_word(parity: Parity) -> &'static str {
    match parity {
        Parity::Even => "even",
        Parity::Odd => "odd",
    }
}
