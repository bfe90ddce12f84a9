//! A shade must be one of its yarn's.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::Placing;
use crate::entry::yaml::Step;
use crate::entry::{Data, Entry, Held, Reference, YarnUse};
use crate::finding::{Code, Finding, Severity, nearest};

/// A shade its yarn does not have.
pub static UNKNOWN_SHADE: Code = Code {
    name: "unknown-shade",
    severity: Severity::Warning,
    what: "An entry names a shade that its yarn does not list.",
    why: "The ball band would have no colour, and a knitter would look for a shade that is not sold.",
    bad: "yarn: heron-dk\nshade: reedbd",
    good: "yarn: heron-dk\nshade: reedbed",
};

/// Finds the shades of a pattern or project that their yarns do not list; a yarn that lists none is not asked.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    for (way, yarn, shade) in shades(entry) {
        let Some(shades) = catalogue.yarn(&yarn).map(|yarn| &yarn.shades).filter(|shades| !shades.0.is_empty()) else {
            continue;
        };
        if shades.get(&shade).is_some() {
            continue;
        }
        let place = entry.origin.value(&way, placing);
        let names = || shades.0.iter().map(|(name, _)| name.as_str());
        let help = match nearest(&shade, names()) {
            Some(near) => format!("did you mean `{near}`?"),
            None => format!("it has {}", names().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ")),
        };
        findings.push(Finding::new(&UNKNOWN_SHADE, place, format!("`{yarn}` has no shade `{shade}`")).help(help));
    }
}

/// Returns the yarns an entry names a shade of: the way to the shade, the yarn and the shade.
fn shades(entry: &Entry) -> Vec<(Vec<Step>, Reference, String)> {
    let mut all = Vec::new();
    let mut add = |way: Vec<Step>, yarn: Option<Reference>, shade: Option<&String>| {
        all.extend(yarn.zip(shade).map(|(yarn, shade)| (way, yarn, shade.clone())));
    };
    match &entry.data {
        Data::Pattern(pattern) => {
            for (at, one) in pattern.yarn.iter().enumerate() {
                let reference = |line: &YarnUse| line.yarn.as_ref().map(|yarn| yarn.reference());
                add(place::item("yarn", at, &["shade"]), reference(one), one.shade.as_ref());
                for (number, Held(held)) in one.held_with.iter().enumerate() {
                    let mut way = place::item("yarn", at, &["held with"]);
                    way.extend([Step::Item(number), Step::Key(Box::from("shade"))]);
                    add(way, reference(held), held.shade.as_ref());
                }
            }
        }
        Data::Project(project) => {
            for (at, one) in project.yarn.iter().enumerate() {
                let yarn = one.yarn.as_ref().map(|yarn| yarn.reference());
                add(place::item("yarn", at, &["shade"]), yarn, one.shade.as_ref());
            }
        }
        _ => {}
    }
    all
}
