//! The preview against a clean make.

mod edits;
mod grow;
#[path = "../bench/random.rs"]
mod random;
