//! Pure arithmetic: what to buy, what was used, how far things have come.
//!
//! Functions take and return typed quantities, never bare floats and never texts for show. Nothing here reads a file,
//! a clock or a page.

mod buy;
mod check;
mod progress;
mod totals;
mod used;

pub use buy::{Purchase, Requirement, Skeins, purchases, skeins, total};
pub use check::check;
pub use progress::latest_progress;
pub use totals::{Year, by_year};
pub use used::{Usage, used};
