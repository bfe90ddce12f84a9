//! Charts: a grid of cells, each a stitch, a colour, or both.
//!
//! [`build()`] makes a [`Chart`] of what was written; [`counts`], [`floats`], [`colours`] and [`written`] are what follows
//! from one. Rows are numbered from 1 at the bottom, and cells are kept from left to right, as they are seen.

pub mod build;
pub mod colours;
pub mod counts;
pub mod floats;
mod marks;
pub mod written;

pub use build::{Draft, Means, Problem, Trouble, build};

use crate::standards::chart_symbols::Stitch;
use std::collections::BTreeMap;
use std::ops::Range;

/// A side of the fabric.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// The one that shows when it is worn.
    Right,
    /// The other.
    Wrong,
}

impl Side {
    /// Returns the trade's letters for it.
    pub fn letters(self) -> &'static str {
        match self {
            Self::Right => "RS",
            Self::Wrong => "WS",
        }
    }

    /// Returns the other side.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Right => Self::Wrong,
            Self::Wrong => Self::Right,
        }
    }
}

/// What one character of a chart stands for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sign {
    /// The character.
    pub character: char,
    /// The stitch; plain knitting where only a colour was given.
    pub stitch: Stitch,
    /// The label of the colour it is worked in, if it has one.
    pub colour: Option<String>,
}

impl Sign {
    /// Returns whether there is no stitch in such a cell.
    pub fn is_nothing(&self) -> bool {
        self.stitch.consumed == 0 && self.stitch.produced == 0
    }
}

/// Where in a row something stands, as it is seen from left to right.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stretch {
    /// Left of the repeat.
    Left,
    /// In the repeat; everywhere where none is marked.
    Repeat,
    /// Right of the repeat.
    Right,
}

/// One stitch of a row, or a cable of several cells.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Worked {
    /// Which of the key's signs it is.
    pub sign: usize,
    /// Its first cell from the left, counted from 0.
    pub cell: usize,
    /// Whether it is repeated, or on which side of the repeat it stands.
    pub stretch: Stretch,
}

/// A chart without contradictions: every row is as wide as the others, every cell has a sign, no cable is cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Chart {
    /// The signs in the order they were written.
    pub key: Vec<Sign>,
    /// The rows from the bottom up, each from left to right.
    pub rows: Vec<Vec<Worked>>,
    /// How many cells a row has.
    pub width: usize,
    /// The cells that are repeated, counted from 0 from the left; `None` where all are worked as they stand.
    pub repeat: Option<Range<usize>>,
    /// The cells that are repeated in rows where they are others, just as many; the row is counted from 0 from the bottom.
    pub shifted: BTreeMap<usize, Range<usize>>,
    /// Whether it is worked in the round.
    pub round: bool,
    /// The side that row 1 is worked from; the right one in the round.
    pub begins: Side,
    /// How the rows between those of the chart are worked, where it shows only every other row.
    pub between: Option<String>,
}

/// The three stretches of a row, as they are seen from left to right.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Parts<'a> {
    /// What stands left of the repeat; empty where there is none.
    pub left: &'a [Worked],
    /// What is repeated; everything where no repeat is marked.
    pub repeat: &'a [Worked],
    /// What stands right of the repeat; empty where there is none.
    pub right: &'a [Worked],
}

impl Chart {
    /// Returns the number of a row as it is printed; `row` is counted from 0 from the bottom.
    pub fn number(&self, row: usize) -> usize {
        if self.between.is_some() { row.saturating_mul(2).saturating_add(1) } else { row.saturating_add(1) }
    }

    /// Returns the side that a row is worked from; `row` is counted from 0 from the bottom.
    pub fn side(&self, row: usize) -> Side {
        if self.round {
            return Side::Right;
        }
        if self.between.is_some() || row.is_multiple_of(2) { self.begins } else { self.begins.other() }
    }

    /// Returns the cells of a row that are repeated, if any are marked; `row` is counted from 0 from the bottom.
    pub fn repeat_in(&self, row: usize) -> Option<&Range<usize>> {
        self.shifted.get(&row).or(self.repeat.as_ref())
    }

    /// Returns what stands left of the repeat, in it and right of it.
    pub fn parts<'a>(&'a self, row: &'a [Worked]) -> Parts<'a> {
        let first = row.partition_point(|worked| worked.stretch < Stretch::Repeat);
        let last = row.partition_point(|worked| worked.stretch <= Stretch::Repeat);
        Parts {
            left: row.get(..first).unwrap_or_default(),
            repeat: row.get(first..last).unwrap_or_default(),
            right: row.get(last..).unwrap_or_default(),
        }
    }

    /// Returns the sign of a stitch.
    pub fn sign(&self, worked: Worked) -> Option<&Sign> {
        self.key.get(worked.sign)
    }

    /// Returns whether a sign stands in a row that is worked from a side.
    pub fn is_worked_from(&self, sign: &Sign, side: Side) -> bool {
        let stands = |worked: &Worked| self.sign(*worked) == Some(sign);
        self.rows.iter().enumerate().any(|(at, row)| self.side(at) == side && row.iter().any(stands))
    }

    /// Returns whether a row has a cell without a stitch.
    pub fn has_gaps(&self) -> bool {
        self.rows.iter().flatten().any(|worked| self.sign(*worked).is_some_and(Sign::is_nothing))
    }

    /// Returns whether any of its signs has a colour.
    pub fn is_coloured(&self) -> bool {
        self.key.iter().any(|sign| sign.colour.is_some())
    }
}
