//! Templates, Markdown, feeds and pictures.

mod blurb;
mod chapters;
mod chart;
mod commonmark;
mod picture;
mod stitches;
mod theme;
