//! A place that a text about a note is pasted into, and how much text it takes.

use super::field::record;
use super::value::Counted;

record! {
    /// A place that a text is pasted into.
    pub struct Outlet: "an outlet" {
        /// The most it takes.
        "limit" => limit: u32 = "5000",
        /// What is counted: `bytes` or `characters`; bytes if it is not given.
        "counted in" => counted_in: Option<Counted>,
    }
}

impl Outlet {
    /// The outlet of a studio that names none: under a video, 5,000 bytes (common practice of large video hosts, whose
    /// interfaces for programs count bytes; from memory).
    pub const USUAL: Self = Self { limit: 5000, counted_in: None };

    /// Returns what is counted.
    pub fn counted(&self) -> Counted {
        self.counted_in.unwrap_or(Counted::Bytes)
    }
}
