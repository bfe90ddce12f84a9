//! How much a client may ask of the server.

use std::time::Duration;

/// How much clients may take, in number and in time.
#[derive(Clone, Copy, Debug)]
pub struct Limits {
    /// Connections open at a time, at least 1; one more closes the one that has been still the longest.
    pub connections: usize,
    /// Event listeners at a time; one more is refused with 503. Keep it well below `connections`.
    pub listeners: usize,
    /// How long the head of a request may take, and how long a kept connection may wait for the next one.
    pub head: Duration,
    /// How long a client may read nothing of an answer.
    pub still: Duration,
    /// How often a listener is sent a comment; one that takes none for three times as long is closed.
    pub heartbeat: Duration,
}

impl Default for Limits {
    fn default() -> Self {
        Self {
            connections: 256,
            listeners: 64,
            head: Duration::from_secs(10),
            still: Duration::from_secs(20),
            heartbeat: Duration::from_secs(15),
        }
    }
}
