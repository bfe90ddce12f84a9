//! Yarn at hand against what planned and current work still takes.

use super::progress_of_yarn::{Untold, needs, no_need, yarn_of_project};
use crate::catalogue::Catalogue;
use crate::entry::value::{Margin, Stage};
use crate::entry::{Data, Entry, Kind, MadeFrom, Pattern, Reference};
use crate::measure::{Percent, PutUp, YarnLength};
use crate::reckon::pace::size_of;
use crate::reckon::skeins_beside;
use std::collections::{BTreeMap, BTreeSet};

/// A yarn in one shade, each as far as it is chosen.
type InShade = (Option<Reference>, Option<String>);

/// One thing that takes a yarn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Want {
    /// A project, or a design whose sample is still to be made.
    pub of: Reference,
    /// What it still takes, without margin; nothing where that cannot be told.
    pub length: Option<YarnLength>,
    /// Why that cannot be told.
    pub untold: Option<Untold>,
    /// What is added before whole skeins are bought.
    pub margin: Percent,
}

/// Whether what is at hand suffices.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Comparison {
    /// It is short by so much, without margin.
    Short(YarnLength),
    /// It is enough, and not for the margin too.
    Bare,
    /// It cannot be told, since something is not known.
    Unknown,
    /// It is enough, margin included.
    Enough,
    /// Nothing planned takes it.
    Free,
}

/// One yarn in one shade.
#[derive(Clone, Debug)]
pub struct Stock {
    /// The yarn; nothing where a design does not name it yet.
    pub yarn: Option<Reference>,
    /// The shade; nothing where it is not chosen yet, or the yarn has none.
    pub shade: Option<String>,
    /// Whether a shade must still be chosen.
    pub awaits_shade: bool,
    /// What is at hand: none where none is written down, nothing where its length cannot be told.
    pub at_hand: Option<YarnLength>,
    /// What takes it, in the order of keys, projects after designs.
    pub wants: Vec<Want>,
    /// All that is wanted together, as far as it is known.
    pub wanted: YarnLength,
    /// Whether it suffices.
    pub comparison: Comparison,
    /// Whole skeins to buy, margin included; nothing where that cannot be told.
    pub skeins: Option<i64>,
}

/// Returns what is at hand and what is wanted, the shortest first, then what is bare, what cannot be told, what is enough,
/// and what nothing takes.
///
/// Wanted is what projects that are not finished still take: the needs of their pattern in their size less what was used,
/// which cannot be told where the pattern is none of the studio's; and what the sample takes of a design before its tech edit, unless it was weighed already or a project stands for it.
/// At hand is taken for what lies there now, so what was used is not in it.
pub fn stock(catalogue: &Catalogue) -> Vec<Stock> {
    let mut all: BTreeMap<InShade, Vec<Want>> = BTreeMap::new();
    let mut begun: BTreeSet<Reference> = BTreeSet::new();
    let today = catalogue.view.today;
    for entry in catalogue.of_kind(Kind::Project) {
        let Some(project) = entry.project() else { continue };
        let own = match &project.pattern {
            Some(MadeFrom::Own(pattern)) => catalogue.pattern(&pattern.reference()).map(|data| (pattern, data)),
            _ => None,
        };
        begun.extend(own.map(|(pattern, _)| pattern.reference()));
        if project.finished_by(today).is_some() {
            continue;
        }
        let margin = own.map_or_else(
            || catalogue.studio.margin.unwrap_or(Margin::USUAL).share(),
            |(_, pattern)| catalogue.studio.margin(pattern),
        );
        for line in yarn_of_project(catalogue, project) {
            let (length, untold) = (line.left(), line.untold);
            let want = Want { of: entry.id.clone(), length, untold, margin };
            all.entry((line.yarn, line.shade)).or_default().push(want);
        }
    }
    for entry in catalogue.of_kind(Kind::Pattern) {
        if let Some(pattern) = entry.pattern().filter(|pattern| awaits_sample(pattern) && !begun.contains(&entry.id)) {
            for (yarn, want) in of_sample(catalogue, entry, pattern) {
                all.entry(yarn).or_default().insert(0, want);
            }
        }
    }
    for entry in catalogue.of_kind(Kind::Yarn) {
        if let Some(yarn) = entry.yarn() {
            for shade in yarn.on_hand.for_desk().shades() {
                all.entry((Some(entry.id.clone()), shade.map(str::to_owned))).or_default();
            }
        }
    }
    let mut all: Vec<Stock> =
        all.into_iter().map(|((yarn, shade), wants)| compare(catalogue, yarn, shade, wants)).collect();
    all.sort_by_key(|one| match one.comparison {
        Comparison::Short(by) => (0, -by.micrometres()),
        Comparison::Bare => (1, 0),
        Comparison::Unknown => (2, 0),
        Comparison::Enough => (3, 0),
        Comparison::Free => (4, 0),
    });
    all
}

fn awaits_sample(pattern: &Pattern) -> bool {
    matches!(pattern.stage(), Stage::Sketch | Stage::Swatch | Stage::Sample)
        && pattern.sample.as_ref().is_none_or(|sample| sample.used.is_none())
}

/// Returns what a design's sample will take, in the size she names for it or the only one.
fn of_sample(catalogue: &Catalogue, entry: &Entry, pattern: &Pattern) -> Vec<(InShade, Want)> {
    let size = size_of(pattern, pattern.sample.as_ref().map(|sample| sample.size.as_str()));
    let margin = catalogue.studio.margin(pattern);
    let mut all = Vec::new();
    for purchase in needs(catalogue, pattern) {
        let Some(line) = purchase.uses.first() else { continue };
        let length = size.and_then(|size| *purchase.sizes.get(size)?).map(|one| one.length);
        let untold = length.is_none().then(|| no_need(size));
        let want = Want { of: entry.id.clone(), length, untold, margin };
        all.push(((line.yarn.as_ref().map(|yarn| yarn.reference()), line.shade.clone()), want));
    }
    all
}

fn compare(catalogue: &Catalogue, yarn: Option<Reference>, shade: Option<String>, wants: Vec<Want>) -> Stock {
    let data = yarn.as_ref().and_then(|id| match &catalogue.entry(id)?.data {
        Data::Yarn(yarn) => Some(yarn),
        _ => None,
    });
    let put_up: Option<PutUp> = data.and_then(|yarn| yarn.put_up);
    let amount = data.and_then(|yarn| yarn.on_hand.for_desk().of(shade.as_deref()));
    let awaits_shade = shade.is_none() && data.is_some_and(|yarn| !yarn.shades.0.is_empty());
    let at_hand = match (amount, data) {
        (Some(amount), _) => amount.length(put_up),
        // What lies there of other shades may or may not be what is meant.
        (None, Some(_)) if !awaits_shade => Some(YarnLength::ZERO),
        (None, _) => None,
    };
    let wanted = YarnLength::sum(wants.iter().filter_map(|want| want.length)).unwrap_or_default();
    let known = wants.iter().all(|want| want.length.is_some());
    let margin = wants.iter().map(|want| want.margin).max().unwrap_or(Percent::ZERO);
    let skeins = at_hand
        .zip(put_up)
        .filter(|_| known && !wants.is_empty())
        .and_then(|(at_hand, put_up)| skeins_beside(wanted, margin, put_up, at_hand))
        .map(|skeins| skeins.whole);
    let comparison = match at_hand {
        _ if wants.is_empty() => Comparison::Free,
        // What is known to be wanted may be too much already.
        Some(at_hand) if wanted > at_hand => Comparison::Short(wanted.checked_sub(at_hand).unwrap_or(YarnLength::ZERO)),
        Some(_) if !known => Comparison::Unknown,
        Some(at_hand) if !covers(at_hand, wanted, margin) => Comparison::Bare,
        Some(_) => Comparison::Enough,
        None => Comparison::Unknown,
    };
    Stock { yarn, shade, awaits_shade, at_hand, wants, wanted, comparison, skeins }
}

/// Returns whether so much is at hand as is wanted with a margin; what does not fit is not covered.
fn covers(at_hand: YarnLength, wanted: YarnLength, margin: Percent) -> bool {
    margin.on_top().and_then(|(above, below)| wanted.times_up(above, below)).is_some_and(|wanted| wanted <= at_hand)
}
