//! Asking the server to stop.

use tokio::sync::watch;

/// Asks a server to stop, from any thread; clones ask the same one.
#[derive(Clone, Debug)]
pub struct Stop(watch::Sender<bool>);

impl Default for Stop {
    fn default() -> Self {
        Self(watch::Sender::new(false))
    }
}

impl Stop {
    /// Asks it to stop; asking twice does no harm.
    pub fn stop(&self) {
        self.0.send_replace(true);
    }

    /// Returns when it was asked, at once if it was already.
    pub(super) async fn asked(&self) {
        // Cannot fail while `self` holds the sending end.
        let _ = self.0.subscribe().wait_for(|asked| *asked).await;
    }
}
