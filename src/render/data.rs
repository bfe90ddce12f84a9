//! The catalogue as data for others: every public pattern's sizes, needs, measurements and gauge.

use super::decimal::Decimal;
use crate::entry::value::Map as Named;
use crate::entry::{Entry, Pattern, YarnUse};
use crate::measure::{FabricLength, Run};
use crate::page::{Shown, page_path};
use crate::reckon::{Told, held_needs};
use serde::{Serialize, Serializer};
use std::collections::BTreeMap;

/// What `catalogue.json` holds. Lengths of yarn are in metres, of fabric in centimetres; a size without a value is null.
#[derive(Serialize)]
struct Data<'a, 's> {
    version: u8,
    site: String,
    patterns: Patterns<'a, 's>,
}

/// Every public pattern, each worked out when its turn comes to be written.
struct Patterns<'a, 's>(&'a Shown<'s>);

impl Serialize for Patterns<'_, '_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.0.catalogue.patterns().map(|(entry, pattern)| one(self.0, entry, pattern)))
    }
}

#[derive(Serialize)]
struct OnePattern<'a> {
    key: &'a str,
    title: &'a str,
    url: String,
    garment: Option<&'a str>,
    published: Option<String>,
    sizes: &'a [String],
    to_fit_cm: BTreeMap<&'a str, Vec<Option<Decimal>>>,
    finished_cm: BTreeMap<&'a str, Vec<Option<Decimal>>>,
    gauge: Option<OneGauge<'a>>,
    yarns: Vec<OneYarn<'a>>,
}

#[derive(Serialize)]
struct OneGauge<'a> {
    stitches: Decimal,
    rows: Option<Decimal>,
    over_cm: Decimal,
    r#in: Option<&'a str>,
}

#[derive(Serialize)]
struct OneYarn<'a> {
    colour: Option<&'a str>,
    yarn: Option<&'a str>,
    shade: Option<&'a str>,
    /// The yarn it is held together with; left out where there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    held_with: Option<&'a str>,
    metres: Option<Vec<Option<Decimal>>>,
}

/// Returns `catalogue.json`, a pattern a line.
pub fn catalogue(shown: &Shown<'_>) -> Vec<u8> {
    let data = Data { version: 1, site: shown.addresses.whole(""), patterns: Patterns(shown) };
    // Texts and numbers under texts always serialise.
    let mut bytes = serde_json::to_vec(&data).unwrap_or_default();
    bytes.push(b'\n');
    bytes
}

fn one<'a>(shown: &Shown<'a>, entry: &'a Entry, pattern: &'a Pattern) -> OnePattern<'a> {
    let title = |line: &YarnUse| {
        let yarn = line.yarn.as_ref().and_then(|yarn| shown.catalogue.public_entry(&yarn.reference()));
        yarn.map(|yarn| yarn.common.title.as_str())
    };
    let held = pattern.yarn.iter().flat_map(|line| line.held_with.iter().map(move |held| (&held.0, Some(line))));
    let all = pattern.yarn.iter().map(|line| (line, None)).chain(held);
    let needs = shown.needs(pattern);
    let of_held = held_needs(pattern, &needs);
    let yarns = all.zip(needs.iter().chain(&of_held)).map(|((use_of, held_with), needs)| {
        let yarn = title(use_of);
        let metres = |told: &Told| told.need().map(|need| Decimal::of(need.length.micrometres(), 1_000_000));
        let metres = needs.iter().any(|told| *told != Told::Unknown).then(|| needs.iter().map(metres).collect());
        OneYarn {
            colour: use_of.colour.as_deref(),
            yarn,
            shade: use_of.shade.as_deref().filter(|_| use_of.yarn.is_none() || yarn.is_some()),
            held_with: held_with.and_then(title),
            metres,
        }
    });
    OnePattern {
        key: entry.id.key.as_str(),
        title: &entry.common.title,
        url: shown.addresses.whole(&page_path(&entry.id)),
        garment: pattern.garment.as_deref(),
        published: pattern.published.map(|date| date.to_string()),
        sizes: pattern.sizes.as_ref().map_or(&[], |names| names.labels()),
        to_fit_cm: measurements(pattern, &pattern.to_fit),
        finished_cm: measurements(pattern, &pattern.finished),
        gauge: gauge(pattern),
        yarns: yarns.collect(),
    }
}

fn measurements<'a>(pattern: &Pattern, named: &'a Named<Run<FabricLength>>) -> BTreeMap<&'a str, Vec<Option<Decimal>>> {
    let values = |run: &Run<FabricLength>| {
        (0..pattern.size_count()).map(|size| run.values.get(size).map(|length| Decimal::centimetres(*length))).collect()
    };
    named.0.iter().map(|(name, run)| (name.as_str(), values(run))).collect()
}

fn gauge(pattern: &Pattern) -> Option<OneGauge<'_>> {
    let gauge = pattern.gauge.first()?;
    Some(OneGauge {
        stitches: Decimal::of(gauge.stitches.thousandths(), 1000),
        rows: gauge.rows.map(|rows| Decimal::of(rows.thousandths(), 1000)),
        over_cm: Decimal::centimetres(gauge.stretch()),
        r#in: gauge.stitch.as_deref(),
    })
}
