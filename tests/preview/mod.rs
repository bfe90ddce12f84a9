//! The preview: what it keeps against a clean make, its server over real sockets, its watcher in real folders.

mod crowd;
mod edits;
mod grow;
mod listening;
mod refusals;
mod requests;
mod reuse;
mod serving;
mod watching;
