//! What written rows say, as a tree whose parts know their bytes.

use crate::measure::{Problem, SizeRun};
use std::ops::Range;

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
            | Self::Turn { at }
            | Self::SameAs { at, .. }
            | Self::Unsaid { at, .. } => at,
        }
    }
}

/// The side of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// The right side.
    Right,
    /// The wrong side.
    Wrong,
}

/// What stands before a row's colon.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Label {
    /// The row's numbers; none of a row with a name.
    pub numbers: Vec<u32>,
    /// A row number like which every other row is this one, even or odd: 2 in "Row 2 and all WS rows".
    pub others: Option<u32>,
    /// The side, where it is said.
    pub side: Option<Side>,
    /// Whether it is a round.
    pub round: bool,
    /// Where it stands.
    pub at: Span,
}

/// Which rows are worked again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Rows {
    /// Those of these numbers, in this order.
    Numbered(Vec<u32>),
    /// The last so many that were worked.
    Last(u32),
}

/// How often rows are worked again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Again {
    /// So many times more.
    More(Number),
    /// So many times, which may be meant in all or after the first.
    Times(Number),
    /// Until so many stitches are left.
    UntilStitches(Number),
    /// Until the work is long enough.
    Unsaid,
}

/// Rows that are worked again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Repeated {
    /// Which.
    pub rows: Rows,
    /// How often.
    pub again: Again,
    /// Where the rows are named.
    pub at: Span,
}

/// Shaping at both ends that a sentence tells.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shaped {
    /// How many stitches at each end.
    pub by: Number,
    /// Whether they are decreased.
    pub less: bool,
    /// How often.
    pub again: Again,
}

/// Stitches that were put aside and come back to the needle.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TakenUp {
    /// How many.
    pub number: Number,
    /// How many are picked up or cast on beside them.
    pub more: Option<Number>,
}

/// A note of how many stitches a row adds or takes away: `2 sts inc'd`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// The change, below nothing for a decrease.
    pub by: Number,
    /// Whether it is a decrease; `by` is then what is taken away.
    pub less: bool,
}

/// What a statement asks for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Doing {
    /// A row or round.
    Row {
        /// Its label, if it has one.
        label: Option<Label>,
        /// What is done.
        items: Vec<Item>,
    },
    /// A beginning: so many stitches are cast on or picked up.
    CastOn(Number),
    /// Stitches are put aside.
    PutAside(Number),
    /// Stitches that were put aside come back.
    TakeUp(TakenUp),
    /// Stitches are decreased or increased at both ends, so many times.
    Shape(Shaped),
    /// Rows are worked again.
    Repeat(Repeated),
    /// Rows that change no count.
    Plain,
    /// Rows as the last ones: as many stitches if those change none.
    Established,
    /// Rows whose stitches the words do not tell.
    Unsaid,
    /// Everything is bound off.
    BindOff,
    /// A heading, from which rows are numbered anew.
    Heading {
        /// Whether it names a chart, whose rows in words come then.
        chart: bool,
    },
    /// A sentence that works no stitch.
    Aside,
}

/// Something in a text that cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Trouble {
    /// A word that is no stitch anybody knows.
    UnknownWord,
    /// Words that say nothing to us.
    Unread,
    /// Brackets behind which nothing says how often.
    Unclear,
    /// A number that is none.
    Number(Box<Problem>),
}

/// The sizes that work something which not all do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Only {
    /// These, counted from 0.
    pub sizes: Vec<usize>,
    /// Whether it is all but these.
    pub except: bool,
    /// Where they are named.
    pub at: Span,
}

impl Only {
    /// Returns whether a size, counted from 0, works it.
    pub fn works(&self, size: usize) -> bool {
        self.sizes.contains(&size) != self.except
    }
}

/// One sentence, or a labelled row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Statement {
    /// What it asks for.
    pub doing: Doing,
    /// For which sizes; `None` for all.
    pub only: Option<Only>,
    /// The stitches it says there are afterwards.
    pub stated: Option<Number>,
    /// How many stitches it says it adds or takes away.
    pub change: Option<Change>,
    /// Whether it speaks of markers without saying where they come.
    pub marks: bool,
    /// What cannot be read in it.
    pub trouble: Option<(Trouble, Span)>,
    /// Where it stands.
    pub at: Span,
}

impl Statement {
    /// Returns whether a size, counted from 0, works it.
    pub fn is_for(&self, size: usize) -> bool {
        self.only.as_ref().is_none_or(|only| only.works(size))
    }
}

/// A text of rows as it was read.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Written {
    /// Its sentences in order.
    pub statements: Vec<Statement>,
    /// Whether the stitch that is on the right needle after binding off is none of those that the next words count.
    pub apart: bool,
    /// Whether the text before it speaks of markers, so that nobody knows which there are.
    pub marked: bool,
    /// Every number in it, for what is asked of all.
    pub numbers: Vec<Number>,
    /// Words that stand for sizes and name none of the pattern's.
    pub unknown_sizes: Vec<Span>,
}
