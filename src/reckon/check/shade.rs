//! A shade must be one of its yarn's.

use crate::catalogue::Catalogue;
use crate::entry::Placing;
use crate::entry::yaml::Step;
use crate::entry::{Data, Entry, Reference};
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
    for (at, yarn, shade) in shades(entry) {
        let Some(shades) = catalogue.yarn(&yarn).map(|yarn| &yarn.shades).filter(|shades| !shades.0.is_empty()) else {
            continue;
        };
        if shades.get(&shade).is_some() {
            continue;
        }
        let place =
            entry.origin.value(&[Step::Key(Box::from("yarn")), Step::Item(at), Step::Key(Box::from("shade"))], placing);
        let names = || shades.0.iter().map(|(name, _)| name.as_str());
        let help = match nearest(&shade, names()) {
            Some(near) => format!("did you mean `{near}`?"),
            None => format!("it has {}", names().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ")),
        };
        findings.push(Finding::new(&UNKNOWN_SHADE, place, format!("`{yarn}` has no shade `{shade}`")).help(help));
    }
}

/// Returns the yarns an entry names a shade of: the place in its list, the yarn and the shade.
fn shades(entry: &Entry) -> Vec<(usize, Reference, String)> {
    match &entry.data {
        Data::Pattern(pattern) => pattern
            .yarn
            .iter()
            .enumerate()
            .filter_map(|(at, one)| Some((at, one.yarn.as_ref()?.reference(), one.shade.clone()?)))
            .collect(),
        Data::Project(project) => project
            .yarn
            .iter()
            .enumerate()
            .filter_map(|(at, one)| Some((at, one.yarn.as_ref()?.reference(), one.shade.clone()?)))
            .collect(),
        _ => Vec::new(),
    }
}
