//! What the pages show, and what they never show.

mod desk;
mod disclosure;
mod figures;
mod fit;
mod links;
mod privacy;
mod progress;
mod rows;
mod story;
mod test_knit;
