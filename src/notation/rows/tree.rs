//! What is done in a row, as a tree whose parts know their bytes.

use super::charts::ChartRows;
use super::name::RowName;
use crate::measure::SizeRun;
use std::ops::Range;
use std::sync::Arc;

/// A range of bytes in the text that was read.
pub type Span = Range<usize>;

/// A whole number for each size, such as the `6 (7, 8)` of `k6 (7, 8)`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Number {
    /// The numbers; `None` where a dash or a lone `0` stands.
    pub values: SizeRun<i64>,
    /// Where it stands.
    pub at: Span,
}

impl Number {
    /// Returns the number of a size, counted from 0; a dash is nothing.
    pub fn of(&self, size: usize) -> i64 {
        self.values.get(size).copied().unwrap_or(0)
    }
}

/// How far something is worked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Until {
    /// To the end of the row or round.
    End,
    /// To the last so many stitches.
    Last(Number),
    /// To a marker, or to so many stitches before or past it.
    Marker(To),
    /// Until so many are on the right needle since the last were bound off.
    There(Number),
}

/// Which marker is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    /// The next one.
    Next,
    /// The last one of the row.
    Last,
    /// So many from where the row begins, 1 for the first.
    Number(usize),
    /// No marker, but something else on the needle that the words do not place: a gap, a wrapped stitch.
    Unknown,
}

/// A place at a marker.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct To {
    /// Which marker.
    pub which: Which,
    /// How many stitches from it.
    pub by: Number,
    /// Whether these are past it, not before.
    pub past: bool,
}

/// What is done with a marker.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// It is put on the needle.
    Place,
    /// It goes from one needle to the other.
    Slip,
    /// It is taken away.
    Remove,
}

/// How often the inside of a repeat is worked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum How {
    /// So many times in all: `[k2, p2] 3 times`.
    Times(Number),
    /// Once, and so many times more: `rep from * 3 times more`.
    More(Number),
    /// `rep from * 3 times`, which some houses mean of all and others of what comes after the first.
    Again(Number),
    /// As often as it goes.
    Until(Until),
}

/// How far a row of a chart is worked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Reach {
    /// Up to here, with the repeat as often as it goes.
    Until(Until),
    /// Over so many stitches, with the repeat as often as it goes.
    Over(Number),
    /// With the repeat so many times.
    Times(Number),
    /// The words do not say: up to what follows, with the repeat as often as it goes.
    Rest,
}

/// One thing that is done in a row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Item {
    /// A stitch or a group of them, so many times.
    Work {
        /// The stitches it takes, once.
        takes: i64,
        /// The stitches it leaves, once; below nothing where finished ones are passed over.
        leaves: i64,
        /// How often.
        times: Number,
        /// Whether it binds off.
        binds: bool,
        /// Where it stands.
        at: Span,
    },
    /// Several things, several times.
    Repeat {
        /// What is repeated.
        items: Vec<Item>,
        /// How often.
        how: How,
        /// Where it stands.
        at: Span,
    },
    /// Several things worked into the same stitch or stitches.
    Into {
        /// What is worked.
        items: Vec<Item>,
        /// Into how many stitches together.
        of: Number,
        /// Where it stands.
        at: Span,
    },
    /// Stitches worked one by one as far as is said, or bound off.
    Even {
        /// How far.
        until: Until,
        /// Whether they are bound off.
        binds: bool,
        /// Where it stands.
        at: Span,
    },
    /// A marker.
    Mark {
        /// What is done with it.
        mark: Mark,
        /// Where it stands.
        at: Span,
    },
    /// Stitches that are put aside, off the needle.
    Hold {
        /// How many; nothing where it is all that remain, without a number.
        number: Option<Number>,
        /// Whether they are said to be all that remain.
        rest: bool,
        /// What they are of, where that is said: `left sleeve`.
        of: Option<String>,
        /// Where it stands.
        at: Span,
    },
    /// Stitches that were put aside and are worked from where they wait.
    FromHold {
        /// How many.
        number: Number,
        /// What they are of, where that is said.
        of: Option<String>,
        /// Where it stands.
        at: Span,
    },
    /// Stitches of a piece that is named: "k across 62 back sts". Whether they are on the needle the words do not say.
    Piece {
        /// How many; all of the piece where no number stands.
        number: Option<Number>,
        /// What they are of.
        of: String,
        /// Where it stands.
        at: Span,
    },
    /// What follows is worked in a colour.
    Colour {
        /// The colour's label; nothing where from here on no one is said.
        label: Option<String>,
        /// Where it stands.
        at: Span,
    },
    /// The work is turned before the row's end.
    Turn {
        /// Where it stands.
        at: Span,
    },
    /// The same as in another row.
    SameAs {
        /// The number of the row.
        row: u32,
        /// Where it stands.
        at: Span,
    },
    /// The same as in a row that has a name.
    SameNamed {
        /// The name.
        name: RowName,
        /// Where it stands.
        at: Span,
    },
    /// A row of a chart of the same text.
    Chart {
        /// The chart.
        chart: Arc<ChartRows>,
        /// The numbers of the rows that may be meant; of several, as of "chart A" in any row, nobody knows which.
        rows: Vec<u32>,
        /// How far it is worked.
        reach: Reach,
        /// Where it stands.
        at: Span,
    },
    /// Something whose stitches the words do not tell: "as established".
    Unsaid {
        /// Whether it is as in the rows before.
        as_before: bool,
        /// Where it stands.
        at: Span,
    },
}

impl Item {
    /// Returns where it stands.
    pub fn at(&self) -> &Span {
        match self {
            Self::Work { at, .. }
            | Self::Repeat { at, .. }
            | Self::Into { at, .. }
            | Self::Even { at, .. }
            | Self::Mark { at, .. }
            | Self::Hold { at, .. }
            | Self::FromHold { at, .. }
            | Self::Piece { at, .. }
            | Self::Colour { at, .. }
            | Self::Turn { at }
            | Self::SameAs { at, .. }
            | Self::SameNamed { at, .. }
            | Self::Chart { at, .. }
            | Self::Unsaid { at, .. } => at,
        }
    }
}
