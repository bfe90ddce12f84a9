//! One row on so many stitches: what it takes, what it leaves, and whether it comes out.

mod chart;
mod marks;
mod once;
mod repeat;
mod turn;
mod work;

pub(in crate::notation) use once::binds;
pub use once::{net, once};

use super::fault::Fault;
use super::tree::{Item, Span};
use work::Work;

/// The stitches on the needle before or after a row.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Needle {
    /// All of them; `None` where that is not known.
    pub total: Option<i64>,
    /// Those on the needle that is about to be worked, which after a turn are not all.
    pub here: Option<i64>,
}

impl Needle {
    /// Returns a needle with so many stitches, all to be worked.
    pub const fn of(stitches: i64) -> Self {
        Self { total: Some(stitches), here: Some(stitches) }
    }

    /// A needle of which nothing is known.
    pub const UNKNOWN: Self = Self { total: None, here: None };
}

/// What "rep from * 3 times" means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reading {
    /// Three times after the first.
    More,
    /// Three times in all.
    InAll,
}

/// What is in hand as a row begins.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Hand {
    /// The stitches.
    pub needle: Needle,
    /// The markers, in stitches from where the row begins; `None` where that is not known.
    pub marks: Option<Vec<i64>>,
    /// Whether the row is a round, at whose beginning a marker may hang that nobody counts.
    pub round: bool,
    /// Whether the stitch that is on the right needle after binding off is none of those that the next words count.
    pub apart: bool,
}

/// What a row does to a needle.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Outcome {
    /// The stitches afterwards; unknown where the row does not fit.
    pub after: Needle,
    /// What the row adds, below nothing for a decrease; `None` where that depends on what is not known.
    pub change: Option<i64>,
    /// The markers afterwards, in stitches from the end where the row began; `None` where that is not known.
    pub marks: Option<Vec<i64>>,
    /// Whether it speaks of markers that are not known.
    pub strange: bool,
    /// What does not come out.
    pub faults: Vec<(Fault, Span)>,
    /// The first words behind which the count is lost; nothing where it is not, or where a fault breaks the row.
    pub lost: Option<Span>,
    /// How many steps it took to work out.
    pub steps: u32,
}

/// Works a row on a needle, in a size counted from 0; where markers hang is not known.
pub fn count(items: &[Item], needle: Needle, size: usize, reading: Reading) -> Outcome {
    work(items, &Hand { needle, ..Hand::default() }, size, reading)
}

/// Works a row on what is in hand, in a size counted from 0.
pub fn work(items: &[Item], hand: &Hand, size: usize, reading: Reading) -> Outcome {
    let whole = items.first().zip(items.last()).map_or(0..0, |(first, last)| first.at().start..last.at().end);
    let mut work = Work::begin(hand, size, reading);
    work.items(items);
    work.end(whole)
}
