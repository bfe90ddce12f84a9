//! Templates, Markdown, feeds and pictures.

mod calendar;
mod commonmark;
mod picture;
mod theme;
