//! Templates, Markdown, feeds and pictures.

mod blurb;
mod chapters;
mod commonmark;
mod picture;
mod theme;
