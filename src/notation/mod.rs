//! What is written for a knitter to work: rows and charts, read, counted and held against each other.
//!
//! Nothing here knows of files, entries or pages. A place is a range of bytes in the text that was given.

pub mod chart;
pub mod compare;
pub mod rows;
