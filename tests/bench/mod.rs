//! The studio for measuring, for tests that want many entries.

mod entries;
mod kinds;
mod prose;
pub mod random;
mod studio;

pub use studio::files;
