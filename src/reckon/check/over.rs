//! What was used must not be more than what a pattern asks for.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::yaml::Step;
use crate::entry::{Consumed, Data, Entry, Pattern, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::{Amount, Mass, System, YarnLength};
use crate::reckon::Strands;

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
                    let strands = strands(catalogue, pattern, at);
                    let Some((used, needs)) = over_line(pattern, at, size, *amount, strands) else { continue };
                    let way = place::way(&["sample", "used", colour]);
                    tell(&way, &who, used, needs, &format!("`{colour}`"), &place::item("yarn", at, &["needs"]));
                }
            }
            None => {}
        }
    }
    // A finding is for the designer's eyes, so what is private may be looked at; no name is told.
    for (number, tester) in pattern.testers.all.for_desk().iter().enumerate() {
        let Some(name) = &tester.size else { continue };
        let Some(size) = size_of(name) else { continue };
        let own = tester.yarn.as_ref().map(|yarn| catalogue.yarn(&yarn.reference()).and_then(|yarn| yarn.put_up));
        for (colour, amount) in &tester.used.0 {
            let Some(at) = line_of(pattern, colour) else { continue };
            let strands = strands(catalogue, pattern, at).map(|strands| match own {
                Some(own) => strands.with(own),
                None => strands,
            });
            let Some((used, needs)) = over_line(pattern, at, size, *amount, strands) else { continue };
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

fn strands(catalogue: &Catalogue, pattern: &Pattern, at: usize) -> Option<Strands> {
    Some(Strands::of(pattern.yarn.get(at)?, |line| place::yarn(catalogue, line)))
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
    used: Amount,
    strands: Option<Strands>,
) -> Option<(YarnOrMass, YarnOrMass)> {
    let strands = strands?;
    let (used, needs) = (strands.length(used)?, stated(pattern, at, size)?);
    let more = used > needs.checked_add(slack(&strands)?)?;
    more.then_some((YarnOrMass::Length(used), YarnOrMass::Length(needs)))
}

/// Returns the length of yarn that a scale can be wrong by; none where a put-up is not known.
fn slack(strands: &Strands) -> Option<YarnLength> {
    Some(strands.length_of(Mass::from_grams(SCALE)?).unwrap_or(YarnLength::ZERO))
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
    if let Amount::Mass(used) = all {
        let masses = lines.iter().map(|(at, length)| strands(catalogue, pattern, *at)?.mass_of(*length));
        let needs = Mass::sum(masses.collect::<Option<Vec<_>>>()?)?;
        let more = used > needs.checked_add(Mass::from_grams(SCALE)?)?;
        return more.then_some((YarnOrMass::Mass(used), YarnOrMass::Mass(needs)));
    }
    let put_up_of = |at: usize| place::yarn(catalogue, pattern.yarn.get(at)?)?.put_up;
    let first = put_up_of(lines.first()?.0);
    let one_put_up = lines.iter().all(|(at, _)| put_up_of(*at) == first);
    let used = all.length(first.filter(|_| one_put_up))?;
    let needs = YarnLength::sum(lines.iter().map(|(_, length)| *length))?;
    let strands = strands(catalogue, pattern, lines.first()?.0)?;
    let more = used > needs.checked_add(slack(&strands)?)?;
    more.then_some((YarnOrMass::Length(used), YarnOrMass::Length(needs)))
}
