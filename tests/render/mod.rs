//! Templates, Markdown, feeds and pictures.

mod blurb;
mod calendar;
mod chapters;
mod chart;
mod commonmark;
mod picture;
pub mod rows;
mod stitches;
mod stitches_box;
mod stitches_fabric;
mod theme;
