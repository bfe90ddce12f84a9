//! Who listens, and what they were told.

use super::event::{Event, EventKind};
use hyper::body::Bytes;
use std::collections::{BTreeMap, BTreeSet, VecDeque};
use std::hash::{BuildHasher, RandomState};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use tokio::sync::mpsc;

/// How many events are kept for a page that reconnects.
const KEPT: usize = 256;

/// How many events may wait for one listener before it is closed; it reconnects and learns what it missed.
const WAITING: usize = 64;

/// Tells open pages what changed, from any thread and without waiting.
///
/// Each event has a number. A page that reconnects names the last one it got and is told those it missed, or,
/// if they are no longer kept or come from an earlier run, to look again.
#[derive(Debug)]
pub struct Hub {
    run: u64,
    inner: Mutex<Inner>,
}

#[derive(Debug, Default)]
struct Inner {
    last: u64,
    kept: VecDeque<Told>,
    open: BTreeMap<u64, Open>,
    next: u64,
}

#[derive(Debug)]
struct Told {
    number: u64,
    page: Option<String>,
    text: Bytes,
}

#[derive(Debug)]
struct Open {
    page: String,
    sender: mpsc::Sender<Bytes>,
}

impl Default for Hub {
    fn default() -> Self {
        // Chance tells the numbers of one run from those of the one before, without asking a clock.
        Self { run: RandomState::new().hash_one(0), inner: Mutex::default() }
    }
}

impl Hub {
    /// Tells an event to the pages open at a path, or to all of them.
    pub fn tell(&self, page: Option<&str>, event: &Event) {
        let mut inner = self.inner();
        inner.last += 1;
        let number = inner.last;
        let text = Bytes::from(event.text(&self.id(number)));
        inner.open.retain(|_, open| {
            // A listener that is gone or does not keep up is dropped, which ends its stream.
            page.is_some_and(|page| page != open.page) || open.sender.try_send(text.clone()).is_ok()
        });
        if inner.kept.len() == KEPT {
            inner.kept.pop_front();
        }
        inner.kept.push_back(Told { number, page: page.map(str::to_owned), text });
    }

    /// Returns the paths that are open now, each once, in order.
    pub fn listeners(&self) -> Vec<String> {
        let pages: BTreeSet<String> = self.inner().open.values().map(|open| open.page.clone()).collect();
        pages.into_iter().collect()
    }

    /// Returns the id of the last event; ask before a page is made, and hand it on as `seen` of its stream.
    pub fn now(&self) -> String {
        self.id(self.inner().last)
    }

    /// Adds a listener, unless there are too many.
    pub(super) fn join(self: &Arc<Self>, page: String, seen: Option<&str>, most: usize) -> Option<Listener> {
        let mut inner = self.inner();
        inner.open.retain(|_, open| !open.sender.is_closed());
        if inner.open.len() >= most {
            return None;
        }
        // The id alone is no event, but is what the browser names when it reconnects.
        let mut first = format!("retry: 1000\nid: {}\n\n", self.id(inner.last)).into_bytes();
        match seen.map(|seen| self.missed(&inner, seen)) {
            None => {}
            Some(Some(from)) => {
                for told in inner.kept.iter().filter(|told| told.number > from) {
                    if told.page.as_ref().is_none_or(|told| *told == page) {
                        first.extend_from_slice(&told.text);
                    }
                }
            }
            Some(None) => {
                let look = Event { kind: EventKind::Look, data: String::new() };
                first.extend_from_slice(look.text(&self.id(inner.last)).as_bytes());
            }
        }
        let (sender, receiver) = mpsc::channel(WAITING);
        let number = inner.next;
        inner.next += 1;
        inner.open.insert(number, Open { page, sender });
        Some(Listener { first: Some(Bytes::from(first)), receiver, number, hub: Arc::clone(self) })
    }

    /// Ends all streams.
    pub(super) fn hang_up(&self) {
        self.inner().open.clear();
    }

    /// Returns the number after which events were missed, or nothing if that cannot be known.
    fn missed(&self, inner: &Inner, seen: &str) -> Option<u64> {
        let (run, number) = seen.split_once('-')?;
        let number: u64 = number.parse().ok()?;
        let oldest = inner.kept.front().map_or(inner.last + 1, |told| told.number);
        let known = run == format!("{:016x}", self.run) && number <= inner.last && number + 1 >= oldest;
        known.then_some(number)
    }

    fn id(&self, number: u64) -> String {
        format!("{:016x}-{number}", self.run)
    }

    fn inner(&self) -> MutexGuard<'_, Inner> {
        self.inner.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// One open stream; leaves the hub when it is dropped.
#[derive(Debug)]
pub(super) struct Listener {
    /// What it is told first.
    pub first: Option<Bytes>,
    /// What it is told later; ends when the hub hangs up.
    pub receiver: mpsc::Receiver<Bytes>,
    number: u64,
    hub: Arc<Hub>,
}

impl Drop for Listener {
    fn drop(&mut self) {
        self.hub.inner().open.remove(&self.number);
    }
}
