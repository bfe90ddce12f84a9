//! The trade's tables: yarn weights, needle sizes, project levels.
//!
//! Each table is a CSV beside its reader, with the source of every row; `SOURCES.md` lists the sources.
//! The files are part of the program, so a row that cannot be read is a failing test, never a message to
//! a designer: the readers keep the rows they can read, and the tests insist on all of them.

pub mod grist;
pub mod levels;
mod near;
pub use near::near;
pub mod needles;
pub mod table;
pub mod yarn_weights;
