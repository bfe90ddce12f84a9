//! Where something was weighed, the yarn of each size must follow from it.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::{Consumed, Data, Entry, Held, Pattern, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::Amount;
use crate::reckon::{Told, needs, sample_size};

/// Yarn that cannot be worked out from what was weighed.
pub static NEEDS_UNKNOWN: Code = Code {
    name: "needs-unknown",
    severity: Severity::Warning,
    what: "A sample or a swatch was weighed, and still a line of yarn cannot be worked out for some size.",
    why: "The page can only say that it is not known.",
    bad: "yarn: [ { colour: MC, yarn: heron-dk }, { colour: CC, yarn: heron-dk } ]\nsample: { size: M, used: 412 g }",
    good: "yarn: [ { colour: MC, yarn: heron-dk }, { colour: CC, yarn: heron-dk } ]\nsample: { size: M, used: { MC: 350 g, CC: 62 g } }",
};

/// Finds the lines of yarn without needs that a sample or swatch does not reach, each with what is missing.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    let sampled = pattern.sample.as_ref().is_some_and(|sample| sample.used.is_some());
    if !sampled && pattern.swatch.is_none() {
        return;
    }
    for (at, told) in needs(pattern, |line| place::yarn(catalogue, line)).iter().enumerate() {
        let unknown: Vec<usize> = (0..told.len()).filter(|size| told.get(*size) == Some(&Told::Unknown)).collect();
        let nothing = pattern.yarn.get(at).is_some_and(|line| line.needs.is_none())
            && told.iter().filter_map(|told| told.need()).any(|need| need.length.is_zero());
        if unknown.is_empty() && !nothing {
            continue;
        }
        let place = entry.origin.value(&place::item("yarn", at, &[]), placing);
        let (message, help) = if nothing {
            (
                "the yarn comes out as nothing".to_owned(),
                "weigh sample or swatch again: one is given as nothing".to_owned(),
            )
        } else {
            let sizes = place::in_sizes(pattern, &unknown);
            (format!("the yarn cannot be worked out{sizes}"), missing(catalogue, pattern, at))
        };
        findings.push(Finding::new(&NEEDS_UNKNOWN, place, message).help(help));
    }
}

/// Returns what is missing to work a line out.
fn missing(catalogue: &Catalogue, pattern: &Pattern, at: usize) -> String {
    let line = pattern.yarn.get(at);
    if line.and_then(|line| place::yarn(catalogue, line)).is_none_or(|yarn| yarn.put_up.is_none()) {
        return "give its yarn a `put-up`: a weight becomes a length through it".to_owned();
    }
    let bare = |Held(held): &&Held| place::yarn(catalogue, held).is_none_or(|yarn| yarn.put_up.is_none());
    if let Some(Held(held)) = line.and_then(|line| line.held_with.iter().find(bare)) {
        let yarn = held.yarn.as_ref().map(|yarn| yarn.reference().to_string()).unwrap_or_default();
        return format!("give `{yarn}`, which is held with it, a `put-up`: the weight is of both, or state `needs`");
    }
    let others = "or state `needs`";
    let reach = "give each line of yarn `stitches` for each size, or the pattern `pieces`";
    let Some(used) = pattern.sample.as_ref().and_then(|sample| sample.used.as_ref()) else {
        return format!(
            "a swatch takes `width` and `length` with `pieces`, or `stitches` and `rows` with `stitches` of each line; {others}"
        );
    };
    match used {
        Consumed::ByColour(colours) => {
            let colour = line.and_then(|line| line.colour.as_deref());
            match colour {
                Some(colour) if colours.get(colour).is_none() => {
                    format!("what the sample used has no `{colour}`: add it, {others}")
                }
                None => format!("give the line the `colour` that the sample used names, {others}"),
                Some(_) if sample_size(pattern).is_none() => "give the sample a size of the pattern".to_owned(),
                Some(_) => format!("{reach}, {others}"),
            }
        }
        Consumed::All(_) if sample_size(pattern).is_none() => "give the sample a size of the pattern".to_owned(),
        Consumed::All(_) if pattern.yarn.len() == 1 => format!("{reach}, {others}"),
        Consumed::All(Amount::Mass(_)) => {
            format!(
                "one weight is of several colours: weigh each, as in `used: {{ MC: 350 g }}`, or give each its `stitches`; {others}"
            )
        }
        Consumed::All(_) => format!("give the weight of what all colours used in grams, or each by itself; {others}"),
    }
}
