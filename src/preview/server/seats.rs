//! Open connections, and which of them must go when there are too many.
//!
//! Instead of waiting for a place, a new connection takes that of the one that has been still the longest, so
//! ten thousand idle ones cannot keep a browser out.

use super::limits::Limits;
use std::collections::BTreeMap;
use std::sync::atomic::{AtomicU8, AtomicU64, Ordering::Relaxed};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::Duration;
use tokio::task::AbortHandle;
use tokio::time::Instant;

/// What a connection waits for.
#[derive(Clone, Copy, PartialEq, Eq)]
#[repr(u8)]
pub(super) enum Waits {
    /// For its client, to ask or to read.
    Client,
    /// For an answer of ours.
    Answer,
    /// For events.
    Events,
}

/// One connection.
pub(super) struct Seat {
    begun: Instant,
    moved: AtomicU64,
    waits: AtomicU8,
}

impl Seat {
    /// Notes that the client took or sent something.
    pub fn moved(&self) {
        self.moved.store(millis(self.begun), Relaxed);
    }

    /// Notes what it waits for from now on.
    pub fn waits(&self, what: Waits) {
        self.waits.store(what as u8, Relaxed);
        self.moved();
    }

    /// Returns whether it waits for this.
    pub fn waits_for(&self, what: Waits) -> bool {
        self.waits.load(Relaxed) == what as u8
    }
}

type Taken = BTreeMap<u64, (Arc<Seat>, Option<AbortHandle>)>;

/// All connections.
pub(super) struct Seats {
    begun: Instant,
    taken: Mutex<(u64, Taken)>,
}

impl Seats {
    /// Returns a room with nobody in it.
    pub fn new() -> Self {
        Self { begun: Instant::now(), taken: Mutex::default() }
    }

    /// Returns a seat, for which another may have been closed; nothing if all are listeners.
    pub fn take(&self, most: usize) -> Option<(u64, Arc<Seat>)> {
        let mut taken = self.taken();
        if taken.1.len() >= most {
            let stillest = taken
                .1
                .iter()
                .filter(|(_, (seat, _))| !seat.waits_for(Waits::Events))
                // Those that wait for us go last, or a few slow pages would fill the room.
                .min_by_key(|(_, (seat, _))| (seat.waits_for(Waits::Answer), seat.moved.load(Relaxed)))
                .map(|(number, _)| *number)?;
            close(taken.1.remove(&stillest));
        }
        let number = taken.0;
        taken.0 += 1;
        let seat = Arc::new(Seat {
            begun: self.begun,
            moved: AtomicU64::new(millis(self.begun)),
            waits: AtomicU8::new(Waits::Client as u8),
        });
        taken.1.insert(number, (Arc::clone(&seat), None));
        Some((number, seat))
    }

    /// Says how a seat's connection is closed.
    pub fn closed_by(&self, number: u64, handle: AbortHandle) {
        if let Some(place) = self.taken().1.get_mut(&number) {
            place.1 = Some(handle);
        }
    }

    /// Frees a seat.
    pub fn leave(&self, number: u64) {
        self.taken().1.remove(&number);
    }

    /// Returns whether nobody is left.
    pub fn is_empty(&self) -> bool {
        self.taken().1.is_empty()
    }

    /// Closes connections whose client has been still for too long.
    pub fn sweep(&self, limits: &Limits) {
        let now = millis(self.begun);
        let over = |since: u64, limit: Duration| u128::from(now.saturating_sub(since)) > limit.as_millis();
        self.taken().1.retain(|_, (seat, handle)| {
            let since = seat.moved.load(Relaxed);
            let gone = (seat.waits_for(Waits::Client) && over(since, limits.still))
                || (seat.waits_for(Waits::Events) && over(since, limits.heartbeat * 3));
            if gone && let Some(handle) = handle {
                handle.abort();
            }
            !gone
        });
    }

    fn taken(&self) -> MutexGuard<'_, (u64, Taken)> {
        self.taken.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

fn close(place: Option<(Arc<Seat>, Option<AbortHandle>)>) {
    if let Some((_, Some(handle))) = place {
        handle.abort();
    }
}

fn millis(since: Instant) -> u64 {
    u64::try_from(since.elapsed().as_millis()).unwrap_or(u64::MAX)
}
