//! Templates, Markdown, feeds and pictures.

mod commonmark;
mod picture;
mod theme;
