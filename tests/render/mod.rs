//! Templates, Markdown, feeds and pictures.

mod chart;
mod commonmark;
mod picture;
mod theme;
