//! The catalogue as data for others: every public pattern's sizes, needs, measurements and gauge.

use super::Rendered;
use super::feeds::pretty;
use crate::entry::value::Map as Named;
use crate::entry::{Entry, Pattern};
use crate::measure::{FabricLength, Run};
use crate::page::{Shown, page_path};
use serde_json::{Map, Value, json};

/// Returns `catalogue.json`. Lengths of yarn are in metres, of fabric in centimetres; a size without a value is null.
pub fn catalogue(shown: &Shown<'_>) -> Rendered {
    let patterns: Vec<Value> = shown.catalogue.patterns().map(|(entry, pattern)| one(shown, entry, pattern)).collect();
    let all = json!({ "version": 1, "site": shown.addresses.whole(""), "patterns": patterns });
    Rendered { path: "catalogue.json".to_owned(), bytes: pretty(&all).into_bytes() }
}

fn one(shown: &Shown<'_>, entry: &Entry, pattern: &Pattern) -> Value {
    let mut out = Map::new();
    let mut put = |key: &str, value: Value| {
        if !value.is_null() {
            out.insert(key.to_owned(), value);
        }
    };
    put("key", json!(entry.id.key.as_str()));
    put("title", json!(entry.common.title));
    put("url", json!(shown.addresses.whole(&page_path(&entry.id))));
    put("garment", json!(pattern.garment));
    put("published", json!(pattern.published.map(|date| date.to_string())));
    put("sizes", json!(pattern.sizes.as_ref().map(|names| names.labels().to_vec()).unwrap_or_default()));
    put("to_fit_cm", measurements(pattern, &pattern.to_fit));
    put("finished_cm", measurements(pattern, &pattern.finished));
    put("gauge", gauge(pattern));
    put("yarns", Value::Array(pattern.yarn.iter().map(|use_of| {
        let yarn = use_of.yarn.as_ref().and_then(|yarn| shown.catalogue.public_entry(&yarn.reference()));
        let metres = use_of.needs.as_ref().map(|needs| (0..pattern.size_count()).map(|size| needs.values.get(size).map(|length| decimal(length.micrometres(), 1_000_000))).collect::<Vec<_>>());
        json!({ "colour": use_of.colour, "yarn": yarn.map(|yarn| yarn.common.title.as_str()), "shade": use_of.shade, "metres": metres })
    }).collect()));
    Value::Object(out)
}

fn measurements(pattern: &Pattern, named: &Named<Run<FabricLength>>) -> Value {
    if named.0.is_empty() {
        return Value::Null;
    }
    let values = |run: &Run<FabricLength>| {
        (0..pattern.size_count())
            .map(|size| run.values.get(size).map(|length| centimetres(*length)))
            .collect::<Vec<_>>()
    };
    Value::Object(named.0.iter().map(|(name, run)| (name.clone(), json!(values(run)))).collect())
}

fn gauge(pattern: &Pattern) -> Value {
    let Some(gauge) = &pattern.gauge else { return Value::Null };
    let over = gauge.over.unwrap_or(FabricLength::from_nanometres(100_000_000));
    json!({
        "stitches": decimal(gauge.stitches.thousandths(), 1000),
        "rows": gauge.rows.map(|rows| decimal(rows.thousandths(), 1000)),
        "over_cm": centimetres(over),
        "in": gauge.stitch,
    })
}

fn centimetres(length: FabricLength) -> Value {
    decimal(length.nanometres(), 10_000_000)
}

/// Returns a whole number of small units as a JSON number of large ones. JSON has no other numbers than decimals, and the
/// nearest double prints with all the digits these have.
fn decimal(small: i64, per_large: i64) -> Value {
    if small % per_large == 0 {
        return json!(small / per_large);
    }
    #[expect(clippy::cast_precision_loss, reason = "quantities are far below 2^53 small units")]
    let number = small as f64 / per_large as f64;
    json!(number)
}
