//! What the pages show, and what they never show.

mod figures;
mod fit;
mod links;
mod privacy;
