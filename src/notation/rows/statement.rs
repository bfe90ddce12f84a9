//! What a sentence or a labelled row asks for, and what it says of itself.

use super::charts::ChartRows;
use super::name::RowName;
use super::tree::{Item, Number, Reach, Span};
use crate::measure::Problem;
use std::sync::Arc;

/// The side of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// The right side.
    Right,
    /// The wrong side.
    Wrong,
}

impl Side {
    /// Returns the side that comes next where the work is turned.
    pub const fn other(self) -> Self {
        match self {
            Self::Right => Self::Wrong,
            Self::Wrong => Self::Right,
        }
    }
}

/// From which side the row behind a sentence is worked.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum NextSide {
    /// From the other one than the last row.
    #[default]
    Other,
    /// From the side that is said: "ending with a WS row".
    Is(Side),
    /// The words do not tell: "break the yarn", "slide the stitches".
    Unknown,
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
    /// What it is called, where it has a name.
    pub name: Option<RowName>,
    /// How many rows it is that have no numbers, one or the 4 of "Next 4 rows"; nothing where it does not tell.
    pub rows: Option<Number>,
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
    /// That of this name.
    Named(RowName),
}

/// How often something is worked again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Again {
    /// So many times more.
    More(Number),
    /// So many times, which may be meant in all or after the first.
    Times(Number),
    /// So many times or once less, as the one before may be the first of them: "on next and every foll 4th row 5 times".
    Either(Number),
    /// Until so many stitches are left.
    UntilStitches(Number),
    /// Until the work is long enough.
    Unsaid,
}

/// In which rows something is worked again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Every {
    /// In each.
    Row,
    /// In every so manieth: 4 in "every 4th row".
    Rows(Number),
    /// The rows between are not told: "every 2.5 cm", "on next RS row".
    Unsaid,
}

/// A stretch of the work in which something is worked again and again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Spell {
    /// In which rows.
    pub every: Every,
    /// How often.
    pub again: Again,
}

/// Rows that are worked again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Repeated {
    /// Which.
    pub rows: Rows,
    /// When and how often, one spell after another; never empty.
    pub spells: Vec<Spell>,
    /// Where the rows are named.
    pub at: Span,
}

/// Shaping at the ends of rows that a sentence tells.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shaped {
    /// How many stitches at each of these ends.
    pub by: Number,
    /// At how many ends of a row, 1 or 2.
    pub edges: i64,
    /// Whether they are decreased.
    pub less: bool,
    /// When and how often, one spell after another; never empty.
    pub spells: Vec<Spell>,
}

/// Stitches that a sentence puts aside.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PutAside {
    /// How many; all there are where no number stands.
    pub number: Option<Number>,
    /// Whether they are said to be all that remain.
    pub rest: bool,
    /// What they are of, where that is said.
    pub of: Option<String>,
}

/// Stitches that were put aside and come back to the needle.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TakenUp {
    /// How many; all of the pieces where no number stands.
    pub number: Option<Number>,
    /// What they are of, where that is said.
    pub of: Vec<String>,
    /// Where they are named.
    pub at: Span,
    /// How many are picked up or cast on beside them.
    pub more: Option<Number>,
}

/// Rows of a chart that a sentence works, one after another.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Charted {
    /// The chart.
    pub chart: Arc<ChartRows>,
    /// The numbers of its rows, in this order; never empty.
    pub rows: Vec<u32>,
    /// How far each is worked.
    pub reach: Reach,
    /// How often all of them are worked; nothing where the words do not tell it in rows.
    pub times: Option<Number>,
    /// Where the words stand.
    pub at: Span,
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
    PutAside(PutAside),
    /// So many alone are worked from here on; the others wait.
    Over(Number),
    /// Stitches that were put aside come back.
    TakeUp(TakenUp),
    /// Stitches are decreased or increased at both ends, so many times.
    Shape(Shaped),
    /// Rows of a chart are worked.
    Chart(Charted),
    /// Rows are worked again.
    Repeat(Repeated),
    /// Rows that change no count.
    Plain {
        /// How many, if that is said.
        rows: Option<u32>,
    },
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
        /// Its words.
        name: String,
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
    /// From which side the row behind it is worked.
    pub next_side: NextSide,
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
    /// What the headings above it say, from the outermost: the piece that is knitted there.
    pub piece: Option<String>,
    /// Every number in it, for what is asked of all.
    pub numbers: Vec<Number>,
    /// Words that stand for sizes and name none of the pattern's.
    pub unknown_sizes: Vec<Span>,
}
