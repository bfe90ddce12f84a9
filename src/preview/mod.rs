//! `watch`: the studio kept up to date, its pages in memory, the desk, and the server that shows them on this machine only.
//!
//! [`Kept`] reads again what was saved, [`Preview`] makes pages when they are asked for and knows which must be made again.
//! Neither touches a disk or a network; both get what they need as arguments.

mod kept;
mod pages;

pub use kept::{Kept, Update};
pub use pages::{Look, Preview, Work};
