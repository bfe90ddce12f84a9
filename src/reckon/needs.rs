//! How much yarn a pattern takes: as stated, or worked out from what was weighed.

use super::evidence::{LONG_TAIL_CAST_ON, SwatchStitches, by_stitches, scaled, split};
use super::shape::Shape;
use super::strands::Strands;
use crate::entry::value::PieceShape;
use crate::entry::{Consumed, Dimension, Pattern, Piece, WeighedSwatch, Yarn, YarnUse};
use crate::measure::{Area, Count, FabricLength, Mass, YarnLength};

/// What a length of yarn rests on, the surest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Basis {
    /// Knitted and weighed in this size.
    Weighed,
    /// As the designer states it.
    Stated,
    /// From another size that was weighed, or from the weight of several colours, by the stitches of each.
    Stitches,
    /// From another size that was weighed, by the fabric of both.
    Area,
    /// From a swatch that was weighed.
    Swatch,
}

/// What one line of a pattern takes in one size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Need {
    /// The length, without margin; of all strands together where several are held.
    pub length: YarnLength,
    /// What it rests on.
    pub basis: Basis,
}

/// What is known of a line in one size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Told {
    /// It takes so much.
    Takes(Need),
    /// The size does not use it.
    NotUsed,
    /// It cannot be told.
    Unknown,
}

impl Told {
    /// Returns what it takes, if that is known and anything.
    pub fn need(self) -> Option<Need> {
        match self {
            Self::Takes(need) => Some(need),
            Self::NotUsed | Self::Unknown => None,
        }
    }

    /// Returns the same for another number of strands held together: length ÷ the pattern's strands × hers, rounded up.
    /// One strand where a number is not given; unknown where the length does not fit.
    pub fn in_strands(self, of_pattern: Option<u32>, hers: Option<u32>) -> Self {
        let (Self::Takes(need), Some(hers)) = (self, hers) else { return self };
        match need.length.times_up(hers.into(), of_pattern.unwrap_or(1).into()) {
            Some(length) => Self::Takes(Need { length, ..need }),
            None => Self::Unknown,
        }
    }

    /// Returns what a yarn takes that is held with a line's own: as long as one strand of that, times its own strands, or
    /// times hers. Rounded up; unknown where the length does not fit.
    pub fn held(self, line: &YarnUse, held: &YarnUse, hers: Option<u32>) -> Self {
        self.in_strands(line.strands, Some(hers.or(held.strands).unwrap_or(1)))
    }
}

/// What one line of a pattern takes in each size.
pub type LineNeeds = Vec<Told>;

/// Returns what each line of a pattern takes, in the order of its lines.
///
/// Stated needs are taken as they are. Otherwise, from a sample that was weighed: its own size is what was used; other
/// sizes are that × stitches ÷ the sample's stitches where the line counts its stitches, or × area ÷ the sample's area
/// where the pattern lists its pieces. Without a sample, from a weighed swatch, by stitches or by area alike. Where only
/// the mass of all colours together is known, each has its part by its stitches. A mass becomes a length through the
/// put-up that `yarn` gives, or through those of all yarns held together. What is worked out is rounded up to a whole metre, as patterns print it.
///
/// Practice: Get Knitting and Knit n More for stitches, Colourful Designs and Kephren Knitting Studio for area, Tossing
/// the Stash for the edges of a swatch. Area is right only for colours that keep their share from size to size.
pub fn needs<'a, 'y>(pattern: &'a Pattern, yarn: impl Fn(&'a YarnUse) -> Option<&'y Yarn>) -> Vec<LineNeeds> {
    let size_count = pattern.size_count();
    let one = |(at, line): (usize, &'a YarnUse)| {
        if let Some(stated) = &line.needs {
            let stated = |size| match stated.values.get(size) {
                Some(length) => Told::Takes(Need { length: *length, basis: Basis::Stated }),
                None => Told::NotUsed,
            };
            return (0..size_count).map(stated).collect();
        }
        let strands = Strands::of(line, &yarn);
        let out = |size| worked_out(pattern, at, size, &strands).map_or(Told::Unknown, Told::Takes);
        (0..size_count).map(out).collect()
    };
    pattern.yarn.iter().enumerate().map(one).collect()
}

/// Returns what a line takes in a size from a sample, or else from a swatch.
fn worked_out(pattern: &Pattern, line: usize, size: usize, strands: &Strands) -> Option<Need> {
    let (length, basis) = from_sample(pattern, line, size, strands)
        .or_else(|| Some((from_swatch(pattern, line, size, strands)?, Basis::Swatch)))?;
    Some(Need { length: whole_metres_up(length)?, basis })
}

fn from_sample(pattern: &Pattern, line: usize, size: usize, strands: &Strands) -> Option<(YarnLength, Basis)> {
    let made = sample_size(pattern)?;
    let (used, basis) = sample_length(pattern, line, made, strands)?;
    if made == size {
        return Some((used, basis));
    }
    if let (Some(from), Some(to)) = (stitches(pattern, line, made), stitches(pattern, line, size)) {
        return Some((by_stitches(used, from, to)?, Basis::Stitches));
    }
    Some((scaled(used, area(pattern, made)?, area(pattern, size)?)?, Basis::Area))
}

/// Returns the size that was knitted as the sample, counted from 0; nothing where the pattern has no such size.
pub fn sample_size(pattern: &Pattern) -> Option<usize> {
    let sample = pattern.sample.as_ref()?;
    match &pattern.sizes {
        Some(names) => names.find(&sample.size),
        None => Some(0),
    }
}

/// Returns the length of a line's yarn in the sample: weighed, or its part of what was, by its stitches.
fn sample_length(pattern: &Pattern, line: usize, made: usize, strands: &Strands) -> Option<(YarnLength, Basis)> {
    let all = match pattern.sample.as_ref()?.used.as_ref()? {
        Consumed::ByColour(colours) => {
            let colour = pattern.yarn.get(line)?.colour.as_deref()?;
            return Some((strands.length(*colours.get(colour)?)?, Basis::Weighed));
        }
        Consumed::All(all) => *all,
    };
    if pattern.yarn.len() == 1 {
        return Some((strands.length(all)?, Basis::Weighed));
    }
    // A mass can be shared out among colours of any yarns; skeins and lengths are of one yarn.
    let mass = part_of(all.mass(None)?, pattern, line, made)?;
    Some((strands.length_of(mass)?, Basis::Stitches))
}

/// Returns a line's part of the mass of all colours, by the stitches of each.
fn part_of(all: Mass, pattern: &Pattern, line: usize, size: usize) -> Option<Mass> {
    let shares: Vec<Count> =
        (0..pattern.yarn.len()).map(|line| stitches(pattern, line, size)).collect::<Option<Vec<_>>>()?;
    split(all, &shares)?.get(line).copied()
}

fn stitches(pattern: &Pattern, line: usize, size: usize) -> Option<Count> {
    pattern.yarn.get(line)?.stitches.as_ref()?.values.get(size).copied()
}

fn from_swatch(pattern: &Pattern, line: usize, size: usize, strands: &Strands) -> Option<YarnLength> {
    let swatch = pattern.swatch.as_ref()?;
    let mass = match (swatch_stitches(swatch), stitches(pattern, line, size)) {
        (Some(from), Some(to)) => by_stitches(swatch.weight, from, to)?,
        _ => {
            let fabric = Area::of(swatch.width?, swatch.length?)?;
            let all = scaled(swatch.weight, fabric, area(pattern, size)?)?;
            if pattern.yarn.len() == 1 { all } else { part_of(all, pattern, line, size)? }
        }
    };
    strands.length_of(mass)
}

/// Returns the stitches of a swatch, its edges counted in.
fn swatch_stitches(swatch: &WeighedSwatch) -> Option<Count> {
    let edges = SwatchStitches {
        stitches: swatch.stitches?,
        rows: swatch.rows?,
        cast_on: swatch.cast_on.unwrap_or(LONG_TAIL_CAST_ON),
        cast_off: swatch.cast_off.unwrap_or(Count::from_thousandths(1000)),
    };
    edges.worked()
}

/// Returns the fabric of a size: all pieces of the pattern, each as often as it is made; nothing where it has no pieces,
/// or a side of one is not known.
pub fn area(pattern: &Pattern, size: usize) -> Option<Area> {
    let (first, rest) = pattern.pieces.split_first()?;
    rest.iter()
        .try_fold(piece_area(pattern, first, size)?, |sum, piece| sum.checked_add(piece_area(pattern, piece, size)?))
}

fn piece_area(pattern: &Pattern, piece: &Piece, size: usize) -> Option<Area> {
    shape(pattern, piece, size)?.area()?.times_near(piece.times.unwrap_or(1).into(), 1)
}

fn shape(pattern: &Pattern, piece: &Piece, size: usize) -> Option<Shape> {
    let side = |side: &Option<Dimension>| dimension(pattern, side.as_ref()?, size);
    Some(match piece.shape {
        PieceShape::Rectangle => Shape::Rectangle { width: side(&piece.width)?, height: side(&piece.length)? },
        PieceShape::Trapezium => {
            Shape::Trapezium { top: side(&piece.top)?, bottom: side(&piece.bottom)?, height: side(&piece.length)? }
        }
        PieceShape::Tube => Shape::Tube { girth: side(&piece.girth)?, length: side(&piece.length)? },
        PieceShape::Triangle => Shape::Triangle { edge: side(&piece.edge)?, depth: side(&piece.length)? },
        PieceShape::Circle => Shape::Circle { diameter: side(&piece.diameter)? },
    })
}

fn dimension(pattern: &Pattern, side: &Dimension, size: usize) -> Option<FabricLength> {
    match side {
        Dimension::Finished(name) => pattern.finished.get(name)?.values.get(size).copied(),
        Dimension::Own(run) => run.values.get(size).copied(),
    }
}

/// Returns a length rounded up to a whole metre.
fn whole_metres_up(length: YarnLength) -> Option<YarnLength> {
    YarnLength::from_metres(length.portions_up(YarnLength::from_metres(1)?)?)
}
