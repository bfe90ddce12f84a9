//! Templates, Markdown, feeds and pictures.

mod blurb;
mod calendar;
mod chapters;
mod chart;
mod commonmark;
mod picture;
pub mod rows;
mod stitches;
mod theme;
