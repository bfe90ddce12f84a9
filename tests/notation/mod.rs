//! Rows and charts that are read and counted.

mod again;
mod aside;
mod begun;
mod blocks;
mod chart;
mod charted;
mod colours;
mod compare;
mod every;
mod examples;
mod faults;
mod hold;
mod joins;
mod labels;
mod lost;
mod markers;
mod named;
mod natural;
mod pieces;
mod places;
mod random;
mod shorthand;
mod sides;
mod silent;
mod sizes;
mod spellings;
mod spoken;
mod time;
mod turned;

use ballband::measure::RunStyle;
use ballband::notation::rows::{Doing, Item, Lexicon, Statement, Written, read};

/// Reads a text with the trade's words alone.
fn written(text: &str) -> Written {
    read(text, &Lexicon::default(), RunStyle::default())
}

/// Reads one row that has no trouble.
fn row(text: &str) -> (Statement, Vec<Item>) {
    let mut written = written(text);
    assert_eq!(written.statements.len(), 1, "{text}: {written:#?}");
    let statement = written.statements.remove(0);
    assert_eq!(statement.trouble, None, "{text}");
    let Doing::Row { items, .. } = statement.doing.clone() else { panic!("{text} is no row: {statement:#?}") };
    (statement, items)
}
