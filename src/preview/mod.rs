//! `watch`: the studio kept up to date, its pages in memory, the desk, and the server that shows them on this machine only.
//!
//! [`Kept`] reads again what was saved, [`Preview`] makes pages when they are asked for and knows which must be made again,
//! [`Live`] answers the server and tells open pages what changed. None of them touches a disk or a network; they get what
//! they need as arguments. [`server`] and [`watcher`] do, and know nothing of studios.

mod dress;
mod kept;
mod live;
mod pages;
pub mod server;
pub mod watcher;

pub use kept::{Kept, Update};
pub use live::{Changed, Live};
pub use pages::{Look, Preview, Work};
