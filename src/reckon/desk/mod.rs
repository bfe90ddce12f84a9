//! Sums and decisions for the designer's own eyes: what they rest on is partly private.
//!
//! Only the desk may use this room; a test reads the sources for it.

mod gifts;
mod missing;
mod progress_of_yarn;
mod standing;
mod stock;
mod unlinked;

pub use super::gift::Design;
pub use gifts::{Gift, Household, households};
pub use missing::{Missing, missing, next_stage};
pub use progress_of_yarn::{Untold, YarnOfProject, yarn_of_project};
pub use standing::{Since, What, since};
pub use stock::{Comparison, Stock, Want, stock};
pub use unlinked::{Unlinked, unlinked};
