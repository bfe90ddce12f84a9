//! The trade's tables: yarn weights, needles, project levels, bodies, ease, yardage, abbreviations, chart symbols, cautions.
//!
//! Each table is a CSV beside its reader, with the source of every row; `SOURCES.md` lists the sources.
//! The files are part of the program, so a row that cannot be read is a failing test, never a message to
//! a designer: the readers keep the rows they can read, and the tests insist on all of them. A row that was
//! only remembered says so ([`provenance`]).

pub mod abbreviations;
mod band;
pub use band::Band;
pub mod bodies;
pub mod cautions;
pub mod chart_symbols;
pub mod ease;
pub mod feet;
pub mod garment_lengths;
pub mod grist;
pub mod hands;
pub mod heads;
pub mod levels;
mod near;
pub use near::near;
pub mod needles;
pub mod provenance;
pub mod table;
pub mod wraps;
pub mod yardage;
pub mod yarn_weights;

/// The line that stands wherever one of the council's tables is shown.
///
/// The Craft Yarn Council asks for it. Its tables are the yarn weights, project levels, bodies, fits and lengths of
/// garments, and the schemes of heads, socks and wraps that name it.
pub const CREDIT: &str = "Source: Craft Yarn Council's www.YarnStandards.com";
