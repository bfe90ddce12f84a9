//! A studio's folder of Markdown and YAML becomes a linked site.
//!
//! `source` reads the files, `entry` turns each into typed fields and references, `catalogue` joins them and settles what is
//! public, `reckon` works out what a knitter needs, `page` puts that into contexts, `render` makes pages of them, and
//! `write` brings the folder in line. Each stage knows only those before it; what is wrong is collected in `finding`s
//! all along the way. `command` is the edge that walks these stages for a person at a terminal.

pub mod measure;
pub mod standards;
pub mod source;
pub mod finding;
pub mod entry;
pub mod catalogue;
pub mod reckon;
pub mod page;
