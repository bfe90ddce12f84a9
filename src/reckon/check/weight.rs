//! A yarn must be of the weight it is said to be.

use crate::catalogue::Catalogue;
use crate::entry::{Data, Entry, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::{Count, FabricLength, System, YarnLength};
use crate::reckon::gauge::PerLength;
use crate::standards::grist::widest;

/// A yarn whose put-up or gauge is not that of its weight.
pub static WEIGHT_UNLIKE: Code = Code {
    name: "weight-unlike",
    severity: Severity::Warning,
    what: "A yarn's put-up or the gauge on its label is outside every band of its stated weight.",
    why: "The weight or a figure is mistyped, and a substitute bought by it would not fit.",
    bad: "weight: DK\nput-up: 225 m / 50 g",
    good: "weight: DK\nput-up: 225 m / 100 g",
};

/// Half a stitch, in thousandths: labels print whole stitches.
const HALF_A_STITCH: i64 = 500;

/// Finds the yarns that their weight's widest bands do not hold.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Yarn(yarn) = &entry.data else { return };
    let Some(weight) = &yarn.weight else { return };
    let category = weight.category;
    let (least, most) = widest(category.number);
    let length = yarn.put_up.and_then(|put_up| put_up.length_in_100_g());
    let long =
        length.filter(|length| least.is_some_and(|least| *length < least) || most.is_some_and(|most| *length > most));
    let gauge =
        yarn.gauge.as_ref().and_then(|gauge| PerLength::stitches(gauge).count_for(FabricLength::TEN_CENTIMETRES));
    let [fewest, greatest] = [category.stitches_min, category.stitches_max].map(|whole| i64::from(whole) * 1000);
    let off = gauge
        .filter(|gauge| gauge.thousandths() < fewest - HALF_A_STITCH || gauge.thousandths() > greatest + HALF_A_STITCH);
    if long.is_none() && off.is_none() {
        return;
    }
    let system = catalogue.studio.units.unwrap_or(System::Metric);
    let has: Vec<String> = [
        long.map(|length| format!("{} in 100 g", length.show(system))),
        off.map(|gauge| format!("{} stitches to 10 cm", tenths(gauge))),
    ]
    .into_iter()
    .flatten()
    .collect();
    let message = format!("`{}` is not like {}", weight.words, has.join(" and "));
    let help = format!(
        "{} has {} in 100 g and {} to {} stitches to 10 cm",
        category.name,
        band(least, most, system),
        category.stitches_min,
        category.stitches_max
    );
    findings.push(Finding::new(&WEIGHT_UNLIKE, entry.origin.field(&["weight"], placing), message).help(help));
}

fn band(least: Option<YarnLength>, most: Option<YarnLength>, system: System) -> String {
    match (least, most) {
        (Some(least), Some(most)) => format!("{} to {}", least.show(system), most.show(system)),
        (Some(least), None) => format!("{} or more", least.show(system)),
        (None, Some(most)) => format!("{} or less", most.show(system)),
        (None, None) => "any length".to_owned(),
    }
}

/// A gauge to a tenth of a stitch: one over 4 in is seldom whole over 10 cm.
fn tenths(gauge: Count) -> String {
    gauge.times_near(1, 100).and_then(|tenths| tenths.times_near(100, 1)).unwrap_or(gauge).show()
}
