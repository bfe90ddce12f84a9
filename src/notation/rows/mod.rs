//! Written rows: the trade's shorthand read into a tree, and its stitches counted in every size.
//!
//! [`read`](read()) makes [`Statement`]s of a text, [`follow`] works through them as a knitter would and tells where the
//! stitches do not come out. [`count`](count()) is one row on so many stitches.

mod charts;
mod colours;
mod count;
mod fault;
mod follow;
mod lexicon;
mod name;
mod read;
mod statement;
mod tree;

pub use charts::{ChartRows, RowKind, Stretches};
pub use colours::{Named, is_letter, is_trade};
pub(super) use count::binds;
pub use count::{Hand, Needle, Outcome, Reading, count, net, once, work};
pub use fault::{Fault, Misfit};
pub use follow::{Followed, Seen, Told, follow};
pub use lexicon::{Counts, Lexicon};
pub use name::RowName;
pub use read::{is_even, lines, read, read_items, speaks_of_markers};
pub use statement::{
    Again, Change, Charted, Doing, Every, Label, NextSide, Only, PutAside, Repeated, Rows, Shaped, Side, Spell,
    Statement, TakenUp, Trouble, Written,
};
pub use tree::{How, Item, Mark, Number, Reach, Span, To, Until, Which};
