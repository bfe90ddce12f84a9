//! What the pages show, and what they never show.

mod figures;
mod links;
mod privacy;
