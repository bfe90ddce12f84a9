//! What was used must not be more than what a pattern asks for.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::yaml::Step;
use crate::entry::{Consumed, Data, Entry, Pattern, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::{Amount, Mass, PutUp, System, YarnLength};

/// More used than the pattern asks for.
pub static SAMPLE_OVER: Code = Code {
    name: "sample-over",
    severity: Severity::Warning,
    what: "The sample, or a tester, used more yarn than the pattern states for that size.",
    why: "Whoever knits as they did runs out of yarn.",
    bad: "yarn: { needs: 820 (905) m }\nsizes: S (M)\nsample: { size: S, used: 840 m }",
    good: "yarn: { needs: 860 (945) m }\nsizes: S (M)\nsample: { size: S, used: 840 m }",
};

/// How much more than stated still agrees: a kitchen scale reads to the gram (common practice).
const SCALE: i64 = 1;

/// Sets what the sample and the testers used against the stated needs of their sizes.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    let size_of = |name: &str| match &pattern.sizes {
        Some(names) => names.find(name),
        None => Some(0),
    };
    let mut tell = |way: &[Step], who: &str, used: YarnOrMass, needs: YarnOrMass, what: &str, also: &[Step]| {
        let message = format!("{who} used {} of {what}, and {} are stated", used.show(), needs.show());
        findings.push(
            Finding::new(&SAMPLE_OVER, entry.origin.value(way, placing), message)
                .help("state more, or look for a slip in what was used")
                .also(entry.origin.value(also, placing), "what is stated"),
        );
    };
    if let Some(sample) = &pattern.sample
        && let Some(size) = size_of(&sample.size)
    {
        let who = format!("the sample of size `{}`", sample.size);
        let way = place::way(&["sample", "used"]);
        match &sample.used {
            Some(Consumed::All(all)) => {
                if let Some((used, needs)) = over_all(catalogue, pattern, size, *all) {
                    let what = if pattern.yarn.len() == 1 { "the yarn" } else { "all yarns" };
                    tell(&way, &who, used, needs, what, &place::way(&["yarn"]));
                }
            }
            Some(Consumed::ByColour(colours)) => {
                for (colour, amount) in &colours.0 {
                    let Some(at) = line_of(pattern, colour) else { continue };
                    let put_up = put_up(catalogue, pattern, at);
                    let Some((used, needs)) = over_line(pattern, at, size, amount.length(put_up), put_up) else {
                        continue;
                    };
                    let way = place::way(&["sample", "used", colour]);
                    tell(&way, &who, used, needs, &format!("`{colour}`"), &place::item("yarn", at, &["needs"]));
                }
            }
            None => {}
        }
    }
    // A finding is for the designer's eyes, so what is private may be looked at; no name is told.
    for (number, tester) in pattern.testers.for_desk().iter().enumerate() {
        let Some(name) = &tester.size else { continue };
        let Some(size) = size_of(name) else { continue };
        let own = tester.yarn.as_ref().map(|yarn| catalogue.yarn(&yarn.reference()).and_then(|yarn| yarn.put_up));
        for (colour, amount) in &tester.used.0 {
            let Some(at) = line_of(pattern, colour) else { continue };
            let put_up = own.unwrap_or_else(|| put_up(catalogue, pattern, at));
            let Some((used, needs)) = over_line(pattern, at, size, amount.length(put_up), put_up) else { continue };
            let way = place::item("testers", number, &["used", colour]);
            let who = format!("a tester of size `{name}`");
            tell(&way, &who, used, needs, &format!("`{colour}`"), &place::item("yarn", at, &["needs"]));
        }
    }
}

/// Yarn by its length or by its mass, whichever two amounts have in common.
#[derive(Clone, Copy)]
enum YarnOrMass {
    Length(YarnLength),
    Mass(Mass),
}

impl YarnOrMass {
    fn show(self) -> String {
        match self {
            Self::Length(length) => length.show(System::Metric),
            Self::Mass(mass) => mass.show(System::Metric),
        }
    }
}

fn line_of(pattern: &Pattern, colour: &str) -> Option<usize> {
    pattern.yarn.iter().position(|line| line.colour.as_deref() == Some(colour))
}

fn put_up(catalogue: &Catalogue, pattern: &Pattern, at: usize) -> Option<PutUp> {
    place::yarn(catalogue, pattern.yarn.get(at)?)?.put_up
}

fn stated(pattern: &Pattern, at: usize, size: usize) -> Option<YarnLength> {
    pattern.yarn.get(at)?.needs.as_ref()?.values.get(size).copied()
}

/// Returns what was used and what is stated, where it is more than a scale can be wrong by; without a put-up, where it is
/// more at all.
fn over_line(
    pattern: &Pattern,
    at: usize,
    size: usize,
    used: Option<YarnLength>,
    put_up: Option<PutUp>,
) -> Option<(YarnOrMass, YarnOrMass)> {
    let (used, needs) = (used?, stated(pattern, at, size)?);
    let more = used > needs.checked_add(slack(put_up)?)?;
    more.then_some((YarnOrMass::Length(used), YarnOrMass::Length(needs)))
}

/// Returns the length of yarn that a scale can be wrong by.
fn slack(put_up: Option<PutUp>) -> Option<YarnLength> {
    put_up.map_or(Some(YarnLength::ZERO), |put_up| put_up.length_of(Mass::from_grams(SCALE)?))
}

/// The same for all lines together, as length or as mass; skeins can be told only where all lines have one put-up.
fn over_all(catalogue: &Catalogue, pattern: &Pattern, size: usize, all: Amount) -> Option<(YarnOrMass, YarnOrMass)> {
    // A line that this size does not use counts for nothing; one that states nothing cannot be told.
    let lines: Vec<(usize, YarnLength)> = pattern
        .yarn
        .iter()
        .enumerate()
        .map(|(at, line)| {
            let needs = line.needs.as_ref()?;
            Some((at, needs.values.get(size).copied().unwrap_or(YarnLength::ZERO)))
        })
        .collect::<Option<_>>()?;
    if lines.is_empty() {
        return None;
    }
    let put_up_of = |at: usize| put_up(catalogue, pattern, at);
    if let Amount::Mass(used) = all {
        let masses = lines.iter().map(|(at, length)| put_up_of(*at)?.mass_of(*length));
        let needs = Mass::sum(masses.collect::<Option<Vec<_>>>()?)?;
        let more = used > needs.checked_add(Mass::from_grams(SCALE)?)?;
        return more.then_some((YarnOrMass::Mass(used), YarnOrMass::Mass(needs)));
    }
    let first = put_up_of(lines.first()?.0);
    let one_put_up = lines.iter().all(|(at, _)| put_up_of(*at) == first);
    let used = all.length(first.filter(|_| one_put_up))?;
    let needs = YarnLength::sum(lines.iter().map(|(_, length)| *length))?;
    let more = used > needs.checked_add(slack(first)?)?;
    more.then_some((YarnOrMass::Length(used), YarnOrMass::Length(needs)))
}
