//! What the pages show, and what they never show.

mod desk;
mod figures;
mod fit;
mod links;
mod privacy;
mod test_knit;
