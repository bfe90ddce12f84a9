//! All tests, in one program. Folders mirror those of `src`; most cases are data.
#![allow(
    clippy::disallowed_methods,
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::print_stdout,
    clippy::string_slice,
    clippy::unwrap_used,
    reason = "a test may stop at the first surprise, and tests are an edge of their own"
)]

mod bench;
mod cases;
mod command;
mod entry;
mod measure;
mod notation;
mod page;
mod preview;
mod reckon;
mod render;
mod rooms;
mod standards;
mod support;
mod write;
