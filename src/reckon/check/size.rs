//! A size must be one of its pattern's.

use crate::catalogue::Catalogue;
use crate::entry::Placing;
use crate::entry::yaml::Step;
use crate::entry::{Data, Entry, MadeFrom, Pattern};
use crate::finding::{Code, Finding, Severity, nearest};
use crate::measure::SizeNames;
use crate::source::Place;

/// A size its pattern does not have.
pub static UNKNOWN_SIZE: Code = Code {
    name: "unknown-size",
    severity: Severity::Warning,
    what: "A project, a sample, a tester or the rows name a size that the pattern does not have.",
    why: "What was used could not be set against what that size needs, and nobody knits such rows.",
    bad: "sizes: S (M, L)\nsample: { size: XL }",
    good: "sizes: S (M, L)\nsample: { size: L }",
};

/// Finds the sizes that a pattern's sample and testers, or a project of its own, name and the pattern does not.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    match &entry.data {
        Data::Pattern(pattern) => {
            // A finding is for the designer's eyes, so what is private may be looked at.
            for (at, tester) in pattern.testers.all.for_desk().iter().enumerate() {
                let way = [Step::Key(Box::from("testers")), Step::Item(at), Step::Key(Box::from("size"))];
                let place = || entry.origin.value(&way, placing);
                findings.extend(tester.size.as_ref().and_then(|size| one(pattern, size, place)));
            }
            if let Some(sample) = &pattern.sample {
                findings.extend(one(pattern, &sample.size, || entry.origin.field(&["sample", "size"], placing)));
            }
        }
        Data::Project(project) => {
            let Some(MadeFrom::Own(of)) = &project.pattern else { return };
            let (Some(pattern), Some(size)) = (catalogue.pattern(&of.reference()), &project.size) else { return };
            findings.extend(one(pattern, size, || entry.origin.field(&["size"], placing)));
        }
        _ => {}
    }
}

fn one(pattern: &Pattern, size: &str, place: impl Fn() -> Place) -> Option<Finding> {
    let names = pattern.sizes.as_ref()?;
    if names.find(size).is_some() {
        return None;
    }
    Some(Finding::new(&UNKNOWN_SIZE, place(), format!("the pattern has no size `{size}`")).help(advice(names, size)))
}

/// Returns what to do about a size that is none of these.
pub fn advice(names: &SizeNames, size: &str) -> String {
    match nearest(size, names.labels().iter().map(String::as_str)) {
        Some(near) => format!("did you mean `{near}`?"),
        None => format!("its sizes are {}", names.show()),
    }
}
