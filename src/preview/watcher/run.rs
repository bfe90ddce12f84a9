//! The thread that waits for events.
#![allow(clippy::disallowed_methods, reason = "how long a burst lasts needs a clock")]

use super::Burst;
use super::change::change;
use super::gather::Gather;
use super::reach::Reach;
use super::root::{Identity, identity};
use notify::{Event, RecommendedWatcher};
use std::io;
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender, channel};
use std::thread::JoinHandle;
use std::time::{Duration, Instant};

/// How long nothing may happen before a burst is told.
const QUIET: Duration = Duration::from_millis(5);

/// How long a burst may last in all.
const MOST: Duration = Duration::from_millis(40);

/// How often the root is looked at while it is there: a folder above it may be moved without any event.
const GLANCE: Duration = Duration::from_secs(1);

/// How often it is looked for while it is gone.
const SEARCH: Duration = Duration::from_millis(100);

/// How long after one loss the next may be told. Reading the studio makes events of its own: if they alone
/// overflow the system's queue, then looking at everything again would never end.
const LOSSES: Duration = Duration::from_secs(2);

enum Message {
    Seen(notify::Result<Event>),
    End,
}

/// A watch that lasts until this is dropped.
#[derive(Debug)]
pub struct Watching {
    sender: Sender<Message>,
    thread: Option<JoinHandle<()>>,
}

impl Drop for Watching {
    fn drop(&mut self) {
        let _ = self.sender.send(Message::End);
        if let Some(thread) = self.thread.take()
            && thread.thread().id() != std::thread::current().id()
        {
            let _ = thread.join();
        }
    }
}

/// Watches a folder tree and hands over bursts of changed paths, on a thread of its own.
///
/// `ours` is asked for a path and before that for each folder above it, so that false for a folder leaves out all
/// in it; paths begin with the root as it was given. What changes after this returns is told: list the folder
/// afterwards, not before. A burst is told after 5 ms without events, or 40 ms after its first.
///
/// # Errors
/// If the root is no folder, or the system lets no more folders be watched.
pub fn watch(
    root: &Path,
    ours: impl Fn(&Path) -> bool + Send + 'static,
    tell: impl FnMut(Burst) + Send + 'static,
) -> io::Result<Watching> {
    let (sender, receiver) = channel();
    let same = identity(root).ok_or_else(|| io::Error::new(io::ErrorKind::NotFound, "the folder is not there"))?;
    let reach = Reach::begin(root, ours, watcher(&sender)).map_err(|(_, error)| error)?;
    let mut run = Run { root: root.to_owned(), sender: sender.clone(), receiver, tell };
    let thread = std::thread::Builder::new().name("watcher".to_owned()).spawn(move || run.run(reach, same))?;
    Ok(Watching { sender, thread: Some(thread) })
}

fn watcher(sender: &Sender<Message>) -> notify::Result<RecommendedWatcher> {
    let sender = sender.clone();
    notify::recommended_watcher(move |seen: notify::Result<Event>| {
        // Events of reading are left out here already, since there is one for every file that a make reads.
        if seen.as_ref().map_or(true, |event| event.need_rescan() || change(event).is_some()) {
            let _ = sender.send(Message::Seen(seen));
        }
    })
}

struct Run<T> {
    root: PathBuf,
    sender: Sender<Message>,
    receiver: Receiver<Message>,
    tell: T,
}

impl<T: FnMut(Burst)> Run<T> {
    /// Watches until told to end, beginning again whenever the root was replaced.
    fn run<F: Fn(&Path) -> bool>(&mut self, mut reach: Reach<F>, mut same: Identity) {
        while self.stay(&mut reach, same) {
            let mut ours = reach.end();
            (self.tell)(Burst { all: true, ..Burst::default() });
            loop {
                if let Some(found) = identity(&self.root) {
                    match Reach::begin(&self.root, ours, watcher(&self.sender)) {
                        Ok(begun) => {
                            (reach, same) = (begun, found);
                            break;
                        }
                        Err((back, _)) => ours = back,
                    }
                }
                // Events of the folder that went are of no use.
                let until = Instant::now() + SEARCH;
                while let Some(left) = until.checked_duration_since(Instant::now()) {
                    match self.receiver.recv_timeout(left) {
                        Ok(Message::Seen(_)) => {}
                        Err(RecvTimeoutError::Timeout) => break,
                        Ok(Message::End) | Err(RecvTimeoutError::Disconnected) => return,
                    }
                }
            }
            (self.tell)(Burst { all: true, ..Burst::default() });
        }
    }

    /// Tells bursts while the root is the same; returns true when it is not, and false to end.
    fn stay<F: Fn(&Path) -> bool>(&mut self, reach: &mut Reach<F>, same: Identity) -> bool {
        let mut gather = Gather::default();
        let mut lost: Option<Instant> = None;
        let mut owed = false;
        loop {
            match self.gather(&mut gather, reach) {
                Some(()) => {}
                None => return false,
            }
            if identity(&self.root) != Some(same) {
                return true;
            }
            let mut burst = gather.burst();
            owed |= burst.all;
            burst.all = owed && lost.is_none_or(|lost| lost.elapsed() >= LOSSES);
            if burst.all {
                owed = false;
                lost = Some(Instant::now());
            }
            if burst.all || !burst.paths.is_empty() {
                (self.tell)(burst);
            }
        }
    }

    /// Waits for a first event and for quiet after it, or for a glance's time; returns nothing to end.
    fn gather<F: Fn(&Path) -> bool>(&self, gather: &mut Gather, reach: &mut Reach<F>) -> Option<()> {
        let mut begun: Option<Instant> = None;
        loop {
            let wait = begun.map_or(GLANCE, |begun| QUIET.min(MOST.saturating_sub(begun.elapsed())));
            match self.receiver.recv_timeout(wait) {
                Ok(Message::Seen(Ok(event))) => gather.add(&event, reach),
                Ok(Message::Seen(Err(_))) => gather.all = true,
                Ok(Message::End) | Err(RecvTimeoutError::Disconnected) => return None,
                Err(RecvTimeoutError::Timeout) => return Some(()),
            }
            if begun.is_none() && !gather.is_empty() {
                begun = Some(Instant::now());
            }
            if begun.is_some_and(|begun| begun.elapsed() >= MOST) {
                return Some(());
            }
        }
    }
}
