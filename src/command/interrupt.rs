//! Ctrl-C and the system's request to end.

use std::io;

/// Calls `first` at the first Ctrl-C or SIGTERM, and ends the process at the second with status 130.
///
/// Waits on a thread of its own, so that it works while everything else is busy.
///
/// # Errors
/// If the system lets no handler be set.
pub fn on_interrupt(first: impl FnOnce() + Send + 'static) -> io::Result<()> {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_io().build()?;
    let mut signals = {
        let _inside = runtime.enter();
        Signals::new()?
    };
    std::thread::Builder::new().name("interrupt".to_owned()).spawn(move || {
        runtime.block_on(async {
            signals.next().await;
            first();
            signals.next().await;
            std::process::exit(130);
        });
    })?;
    Ok(())
}

#[cfg(unix)]
struct Signals {
    interrupt: tokio::signal::unix::Signal,
    terminate: tokio::signal::unix::Signal,
}

#[cfg(unix)]
impl Signals {
    fn new() -> io::Result<Self> {
        use tokio::signal::unix::{SignalKind, signal};
        Ok(Self { interrupt: signal(SignalKind::interrupt())?, terminate: signal(SignalKind::terminate())? })
    }

    async fn next(&mut self) {
        std::future::poll_fn(|cx| {
            if self.interrupt.poll_recv(cx).is_ready() {
                return std::task::Poll::Ready(());
            }
            self.terminate.poll_recv(cx).map(|_| ())
        })
        .await;
    }
}

#[cfg(not(unix))]
struct Signals;

#[cfg(not(unix))]
impl Signals {
    fn new() -> io::Result<Self> {
        Ok(Self)
    }

    async fn next(&mut self) {
        let _ = tokio::signal::ctrl_c().await;
    }
}
