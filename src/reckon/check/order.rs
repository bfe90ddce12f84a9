//! A larger size must not be smaller.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::{Data, Entry, Pattern, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::{FabricLength, Inch, Run};

/// A girth that does not grow from one size to the next.
pub static GIRTH_ORDER: Code = Code {
    name: "girth-order",
    severity: Severity::Warning,
    what: "A measurement round the body or across the piece is not larger in the larger size.",
    why: "A figure is mistyped or two have changed places, and a knitter makes the wrong size.",
    bad: "finished: { chest: 90 (110, 100) cm }",
    good: "finished: { chest: 90 (100, 110) cm }",
};

/// A length that falls from one size to the next.
pub static LENGTH_ORDER: Code = Code {
    name: "length-order",
    severity: Severity::Warning,
    what: "A finished length is shorter in the larger size.",
    why: "A figure is mistyped or two have changed places.",
    bad: "finished: { length: 54 (65, 56) cm }",
    good: "finished: { length: 54 (55, 56) cm }",
};

/// Measurements that sizes are told apart by.
const GIRTHS: [&str; 13] = [
    "chest",
    "bust",
    "waist",
    "hip",
    "hips",
    "head",
    "foot",
    "hand",
    "wrist",
    "ankle",
    "circumference",
    "girth",
    "width",
];

/// Words that make a length of any measurement: a foot length need not grow.
const LENGTHS: [&str; 4] = ["length", "height", "depth", "drop"];

fn is_girth(name: &str) -> bool {
    let name = name.to_lowercase();
    let has = |words: &[&str]| name.split_whitespace().any(|word| words.contains(&word));
    (has(&GIRTHS) || name.contains("upper arm")) && !has(&LENGTHS)
}

/// Finds girths that do not grow and finished lengths that fall.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    let inch = catalogue.studio.settings().inch;
    for (field, map) in [("to fit", &pattern.to_fit), ("finished", &pattern.finished)] {
        for (name, run) in &map.0 {
            let girth = is_girth(name);
            if (!girth && field == "to fit") || run.values.len() != pattern.size_count() {
                continue;
            }
            findings.extend(one(entry, pattern, [field, name], run, girth, inch, placing));
        }
    }
}

/// Finds the first size of a run that is smaller than the one before it.
fn one(
    entry: &Entry,
    pattern: &Pattern,
    keys: [&str; 2],
    run: &Run<FabricLength>,
    girth: bool,
    inch: Inch,
    placing: &Placing<'_>,
) -> Option<Finding> {
    let there: Vec<(usize, FabricLength)> =
        run.values.iter().enumerate().filter_map(|(size, length)| Some((size, *length?))).collect();
    let wrong = there.windows(2).find_map(|pair| match pair {
        [(before, small), (size, large)] if large < small || (girth && large == small) => {
            Some((*before, *small, *size, *large))
        }
        _ => None,
    });
    let (before, small, size, large) = wrong?;
    let [_, name] = keys;
    let [larger, smaller] = [size, before].map(|size| place::size(pattern, size));
    let show = |length: FabricLength| length.show(run.system.unwrap_or_default(), inch);
    let message = if large == small {
        format!("`{name}` is {} in {larger}, no more than in {smaller}", show(large))
    } else {
        format!("`{name}` is {} in {larger}, less than the {} of {smaller}", show(large), show(small))
    };
    let code = if girth { &GIRTH_ORDER } else { &LENGTH_ORDER };
    let way = place::way(&keys);
    Some(
        Finding::new(code, place::value(entry, &way, run, size, placing), message)
            .help("sizes go from the smallest to the largest: look for a slip in either figure")
            .also(place::value(entry, &way, run, before, placing), format!("that of {smaller}")),
    )
}
