//! A small server for this machine only: pages from memory, and a stream that tells open pages what changed.
//!
//! It asks [`Pages`] for every answer and never touches a disk. What it refuses is in `target` (addresses),
//! `host` (other names and sites) and `seats` (too many or too slow connections).

mod answer;
mod body;
mod event;
mod host;
mod hub;
mod limits;
mod line;
mod listen;
mod policy;
mod refusal;
mod run;
mod seats;
mod stop;
mod tag;
mod target;

pub use event::{Event, EventKind};
pub use hub::Hub;
pub use limits::Limits;
pub use listen::listen;
pub use run::{serve, serve_within};
pub use stop::Stop;

use std::sync::Arc;

/// The address of the stream that tells an open page what changed: `/desk/events?page=/patterns/x/`.
///
/// `seen=ID` may be added, with what [`Hub::now`] gave before the page was made: nothing told in between is
/// then missed. A browser that reconnects says so itself, in `Last-Event-ID`.
pub const EVENTS: &str = "/desk/events";

/// What the server asks for pages; an implementation never touches a disk.
pub trait Pages: Send + Sync + 'static {
    /// Returns the answer for a path: decoded, beginning with `/`, without a query, without `.`, `..` or empty parts.
    ///
    /// It is called away from the thread that serves, by two threads at most. A panic in it becomes a plain 500.
    fn answer(&self, path: &str) -> Answer;
}

/// What is sent for one path.
#[derive(Clone, Debug)]
pub struct Answer {
    /// 200; 301 with a location, for a folder asked for without its slash; or 404.
    pub status: u16,
    /// The content type.
    pub kind: &'static str,
    /// The whole body, which is not copied to be sent.
    pub body: Arc<[u8]>,
    /// Where else to look, as a decoded path on this server that begins with `/`.
    pub location: Option<String>,
}
