//! Templates, Markdown, feeds and pictures.

mod chapters;
mod commonmark;
mod picture;
mod theme;
