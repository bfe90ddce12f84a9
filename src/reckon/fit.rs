//! Which size to make: for a body, an ease, and a gauge that is not the pattern's.

use super::ease::{ease, which_size};
use super::gauge::PerLength;
use crate::entry::Pattern;
use crate::entry::value::Map;
use crate::measure::{Count, FabricLength, Run, SizeRun};

/// What a knitter says of herself.
#[derive(Clone, Copy, Debug)]
pub struct Wanted<'a> {
    /// Which measurement of the body: `chest`.
    pub measurement: &'a str,
    /// How large that is.
    pub body: FabricLength,
    /// How much room she wants; what the pattern gives her size if she does not say.
    pub ease: Option<FabricLength>,
    /// The stitches of her own gauge over the pattern's stretch, where it is not the pattern's.
    pub stitches: Option<Count>,
}

/// One size of a pattern, as it would come out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Outcome {
    /// The body it is meant for.
    pub to_fit: Option<FabricLength>,
    /// The finished measurement as designed.
    pub designed: Option<FabricLength>,
    /// The finished measurement at her gauge.
    pub made: Option<FabricLength>,
}

/// What a pattern offers to a body.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fitted {
    /// Every size, as it would come out.
    pub sizes: Vec<Outcome>,
    /// The size to make, counted from 0.
    pub best: usize,
    /// The ease of that size on this body; below nothing where it is to stretch.
    pub ease: FabricLength,
    /// The ease that was aimed at: hers, or the pattern's.
    pub wanted: FabricLength,
    /// The sizes on either side, where no size comes out as it was aimed at.
    pub between: Option<Between>,
}

/// Two sizes with what is wanted between them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Between {
    /// The larger of those that come out smaller, counted from 0, and by how much.
    pub smaller: (usize, FabricLength),
    /// The smaller of those that come out larger, counted from 0, and by how much.
    pub larger: (usize, FabricLength),
}

/// How near a size is as good as wanted: half a centimetre, as measurements are shown.
const AS_WANTED: i64 = 5_000_000;

/// How far a body may be from the outermost sizes and still be theirs: half a step between sizes, 5 cm (common practice
/// is 10 cm between chests).
const BEYOND: FabricLength = FabricLength::from_nanometres(50_000_000);

impl Fitted {
    /// Returns whether a body is smaller or larger than any that the pattern is meant for.
    pub fn is_beyond(&self, body: FabricLength) -> bool {
        let bodies = || self.sizes.iter().filter_map(|one| one.to_fit);
        let above = |max: FabricLength| max.checked_add(BEYOND).is_some_and(|edge| body > edge);
        let below = |min: FabricLength| min.checked_sub(BEYOND).is_some_and(|edge| body < edge);
        bodies().max().is_some_and(above) || bodies().min().is_some_and(below)
    }
}

/// Why a size cannot be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoFit {
    /// The pattern has no such finished measurement.
    NotFinished,
    /// The pattern has no gauge to compare with.
    NoGauge,
    /// A measurement or a gauge of nothing, or beyond all measure.
    Beyond,
}

/// Returns which size of a pattern to make for a body.
///
/// The finished measurement aimed at is body + ease; without an ease wanted, the ease is that which the pattern gives to the
/// size whose body is nearest (the larger of two as near), and nothing where it says no body. At another gauge each size
/// comes out as finished × the pattern's stitches ÷ hers, and the size nearest to the aim is taken, the larger of two as
/// near.
///
/// # Errors
/// [`NoFit`] says what is missing.
pub fn fit(pattern: &Pattern, wanted: Wanted<'_>) -> Result<Fitted, NoFit> {
    let named = |map: &Map<Run<FabricLength>>| map.get(wanted.measurement).map(|run| run.values.clone());
    if wanted.body <= FabricLength::ZERO {
        return Err(NoFit::Beyond);
    }
    let designed = named(&pattern.finished).ok_or(NoFit::NotFinished)?;
    let to_fit = named(&pattern.to_fit);
    let made = match wanted.stitches {
        None => designed.clone(),
        Some(stitches) => {
            let meant = PerLength::stitches(pattern.gauge.first().ok_or(NoFit::NoGauge)?);
            let hers = PerLength { count: stitches, ..meant };
            designed.try_map(|length| meant.finished_at(hers, *length)).ok_or(NoFit::Beyond)?
        }
    };
    let room = match wanted.ease {
        Some(ease) => ease,
        None => designed_ease(wanted.body, to_fit.as_ref(), &designed).unwrap_or(FabricLength::ZERO),
    };
    let sizes = pattern.size_count();
    let every = |size| Outcome {
        to_fit: to_fit.as_ref().and_then(|run| run.get(size).copied()),
        designed: designed.get(size).copied(),
        made: made.get(size).copied(),
    };
    let outcomes: Vec<Outcome> = (0..sizes).map(every).collect();
    // A lone value serves every size; then they differ in nothing and the first is as good as any.
    let all = SizeRun::from_values(outcomes.iter().map(|one| one.made).collect());
    let best = which_size(wanted.body, room, &all).ok_or(NoFit::Beyond)?;
    let finished = outcomes.get(best).and_then(|one| one.made).ok_or(NoFit::Beyond)?;
    let between = wanted.body.checked_add(room).and_then(|aim| between(&outcomes, aim));
    let ease = ease(wanted.body, finished).ok_or(NoFit::Beyond)?;
    Ok(Fitted { sizes: outcomes, best, ease, wanted: room, between })
}

/// Returns the sizes on either side of a finished measurement; nothing where one is as good as that, or there is none on one
/// side.
fn between(sizes: &[Outcome], aim: FabricLength) -> Option<Between> {
    // How much larger than the aim each size comes out.
    let off = |(size, one): (usize, &Outcome)| Some((size, one.made?.checked_sub(aim)?.nanometres()));
    let all = || sizes.iter().enumerate().filter_map(off);
    if all().any(|(_, off)| off.abs() < AS_WANTED) {
        return None;
    }
    // Of equal ones the first.
    let (smaller, less) =
        all().filter(|(_, off)| *off < 0).max_by_key(|(size, off)| (*off, std::cmp::Reverse(*size)))?;
    let (larger, more) = all().filter(|(_, off)| *off > 0).min_by_key(|(_, off)| *off)?;
    let length = FabricLength::from_nanometres;
    Some(Between { smaller: (smaller, length(-less)), larger: (larger, length(more)) })
}

/// Returns the ease that a pattern gives to the size whose body is nearest.
fn designed_ease(
    body: FabricLength,
    to_fit: Option<&SizeRun<FabricLength>>,
    designed: &SizeRun<FabricLength>,
) -> Option<FabricLength> {
    let to_fit = to_fit?;
    let size = which_size(body, FabricLength::ZERO, to_fit)?;
    ease(*to_fit.get(size)?, *designed.get(size)?)
}
