//! A row of a chart held against the same row in words, stitch by stitch in the order they are worked.
//!
//! Both are written out on as many stitches as so many repeats of the chart have, so where a repeat begins and how it is
//! put does not matter.

mod charted;
mod name;
mod worded;

use super::chart::Chart;
use super::chart::counts::sum;
use super::rows::{Hand, How, Item, Lexicon, Needle, Reading, Span, Until, binds, once, work};
use name::Name;

/// Where the words are first another than the chart.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unlike {
    /// At a stitch.
    Stitch {
        /// Which, counted from 1 as it is worked.
        number: usize,
        /// What the chart has there; nothing where it ends before.
        chart: Option<String>,
        /// What the words have there; nothing where they end before.
        words: Option<String>,
        /// Where in the words.
        at: Span,
        /// Where they are alike if the stitch that is on the right needle after binding off is counted otherwise than the
        /// studio does: whether it is then the first of the next ones.
        bound_off: Option<bool>,
    },
    /// In how many stitches are repeated.
    Repeat {
        /// In the chart.
        chart: i64,
        /// In the words.
        words: i64,
        /// Where in the words.
        at: Span,
    },
}

/// The words of a row, with what it takes to understand them.
#[derive(Clone, Copy, Debug)]
pub struct Words<'a> {
    /// What is done.
    pub items: &'a [Item],
    /// The text that the items' places are bytes of.
    pub text: &'a str,
    /// The pattern's own words.
    pub lexicon: &'a Lexicon,
}

/// One stitch as it is worked.
#[derive(Clone, Debug)]
struct Step {
    name: Name,
    colour: Option<String>,
    at: Span,
}

/// More stitches than any row has.
const MANY: i64 = 1_000_000;

/// How many numbers of repeats are tried until the words fit one.
const TRIED: i64 = 24;

/// The most repeats that words may ask for.
const MOST: i64 = 400;

/// Compares a row of a chart, counted from 0 from the bottom, with its words in a size; nothing where they agree, or where
/// the words do not tell their stitches.
///
/// Colours are compared where the words name them. A word of the pattern's own that no chart knows is held against the
/// stitches that it takes and leaves.
///
/// The stitch left from binding off is counted as the studio does ([`Lexicon::leave_bound_off`]); words that are alike only
/// in the other way are told of as such.
pub fn compare(chart: &Chart, row: usize, words: Words<'_>, size: usize) -> Option<Unlike> {
    let apart = words.lexicon.is_apart();
    let mut unlike = reading(chart, row, words, size, apart)?;
    if let Unlike::Stitch { bound_off, .. } = &mut unlike
        && binds(words.items) > 0
        && reading(chart, row, words, size, !apart).is_none()
    {
        *bound_off = Some(apart);
    }
    Some(unlike)
}

/// Compares them in one reading of what binding off leaves.
fn reading(chart: &Chart, row: usize, words: Words<'_>, size: usize, apart: bool) -> Option<Unlike> {
    let worked = chart.rows.get(row)?;
    let unit = i64::from(sum(chart, chart.parts(worked).repeat).consumed);
    let edges = i64::from(sum(chart, worked).consumed).saturating_sub(unit);
    let times = repeats(chart, words, size, unit, edges, apart);
    let wanted = charted::steps(chart, row, times);
    let on = |edges: i64| {
        let said = worded::steps(words, edges.saturating_add(unit.saturating_mul(times)), size, apart)?;
        let number = wanted.iter().zip(&said).take_while(|(chart, words)| alike(chart, words)).count();
        Some((number, said))
    };
    let (mut number, mut said) = on(edges)?;
    if number == wanted.len() && number == said.len() {
        return None;
    }
    // With edges that take more or less the words may be worked as often on other stitches; the reading that is alike
    // for longer tells the mistake.
    if let Some((longer, other)) = fixed(words.items, size, apart).and_then(on).filter(|(other, _)| *other > number) {
        (number, said) = (longer, other);
    }
    let (charted, worded) = (wanted.get(number), said.get(number));
    if let Some((takes, at)) = repeat_of(words.items, size, apart)
        && chart.repeat.is_some()
        && unit > 0
        && takes % unit != 0
        && unit % takes != 0
    {
        return Some(Unlike::Repeat { chart: unit, words: takes, at });
    }
    let end = words.items.last().map_or(0..0, |last| last.at().clone());
    let show = |step: &Step, beside: Option<&Step>| {
        let other = beside.and_then(|beside| beside.colour.as_ref()).is_some();
        match &step.colour {
            Some(colour) if other => format!("{} {colour}", step.name.show()),
            _ => step.name.show().to_owned(),
        }
    };
    Some(Unlike::Stitch {
        number: number.saturating_add(1),
        chart: charted.map(|step| show(step, worded)),
        words: worded.map(|step| show(step, charted)),
        at: worded.map_or(end, |step| step.at.clone()),
        bound_off: None,
    })
}

/// Returns whether rows of words that stand between those of a chart are worked as the chart says of them, on so many stitches;
/// nothing where either does not tell its stitches.
pub fn same(words: Words<'_>, other: Words<'_>, stitches: i64, size: usize) -> Option<bool> {
    let steps = |words: Words<'_>| worded::steps(words, stitches, size, words.lexicon.is_apart());
    let (one, two) = (steps(words)?, steps(other)?);
    Some(one.len() == two.len() && one.iter().zip(&two).all(|(one, two)| alike(one, two)))
}

/// How often the chart's repeat is worked for a comparison, as the words say or as often as they fit.
fn repeats(chart: &Chart, words: Words<'_>, size: usize, unit: i64, edges: i64, apart: bool) -> i64 {
    // Two show that the second goes on where the first ended.
    let least = if chart.repeat.is_some() { 2 } else { 1 };
    if unit <= 0 {
        return 1;
    }
    if let Some(takes) = worded::takes(words, size, apart) {
        let times = takes.saturating_sub(edges);
        let fits = times >= unit && times % unit == 0;
        return if fits { (times / unit).min(MOST) } else { least };
    }
    let fits = |times: &i64| {
        let needle = Needle::of(edges.saturating_add(unit.saturating_mul(*times)));
        let hand = Hand { needle, apart, ..Hand::default() };
        work(words.items, &hand, size, Reading::More).faults.is_empty()
    };
    (least..least.saturating_add(TRIED)).find(fits).unwrap_or(least)
}

/// The stitches of all that is not worked as far as there are any; nothing where that is not known.
fn fixed(items: &[Item], size: usize, apart: bool) -> Option<i64> {
    let goes_far = |item: &&Item| matches!(item, Item::Even { .. } | Item::Repeat { how: How::Until(_), .. });
    let others = items.iter().filter(|item| !goes_far(item));
    let takes: Option<i64> =
        others.map(|item| once(std::slice::from_ref(item), size, Reading::More).map(|counts| counts.takes)).sum();
    let bound = |item: &Item| matches!(item, Item::Work { binds: true, .. });
    let left = items.windows(2).filter(|pair| matches!(pair, [one, next] if bound(one) && !bound(next))).count();
    let left = if apart { i64::try_from(left).ok()? } else { 0 };
    takes?.checked_add(left)
}

/// The stitches of the first repeat that goes as far as there are stitches, and where it stands.
fn repeat_of(items: &[Item], size: usize, apart: bool) -> Option<(i64, Span)> {
    items.iter().find_map(|item| match item {
        Item::Repeat { items, how: How::Until(Until::End | Until::Last(_)), at } => {
            let left = if apart { binds(items) } else { 0 };
            let takes = once(items, size, Reading::More)?.takes.checked_add(left)?;
            (takes > 0).then(|| (takes, at.clone()))
        }
        _ => None,
    })
}

fn alike(chart: &Step, words: &Step) -> bool {
    let coloured = match (&chart.colour, &words.colour) {
        (Some(chart), Some(words)) => chart.to_lowercase() == words.to_lowercase(),
        _ => true,
    };
    coloured && chart.name.is(&words.name)
}
