//! The body of an answer: whole, or a stream of events.

use super::hub::Listener;
use hyper::body::{Bytes, Frame, SizeHint};
use std::convert::Infallible;
use std::pin::Pin;
use std::task::{Context, Poll, ready};
use tokio::time::{Interval, MissedTickBehavior};

/// What is sent after the head.
pub(super) enum Body {
    /// All of it.
    Whole(Bytes),
    /// Events as they are told, and a comment now and then.
    Events(Listener, Interval),
}

impl Body {
    /// Returns the stream of a listener.
    pub fn events(listener: Listener, heartbeat: std::time::Duration) -> Self {
        let mut interval = tokio::time::interval_at(tokio::time::Instant::now() + heartbeat, heartbeat);
        interval.set_missed_tick_behavior(MissedTickBehavior::Delay);
        Self::Events(listener, interval)
    }
}

impl hyper::body::Body for Body {
    type Data = Bytes;
    type Error = Infallible;

    fn poll_frame(self: Pin<&mut Self>, cx: &mut Context<'_>) -> Poll<Option<Result<Frame<Bytes>, Infallible>>> {
        let next = match self.get_mut() {
            Self::Whole(bytes) if bytes.is_empty() => None,
            Self::Whole(bytes) => Some(std::mem::take(bytes)),
            Self::Events(listener, heartbeat) => match listener.first.take() {
                Some(first) => Some(first),
                None => match listener.receiver.poll_recv(cx) {
                    Poll::Ready(told) => told,
                    Poll::Pending => {
                        ready!(heartbeat.poll_tick(cx));
                        Some(Bytes::from_static(b":\n\n"))
                    }
                },
            },
        };
        Poll::Ready(next.map(|bytes| Ok(Frame::data(bytes))))
    }

    fn is_end_stream(&self) -> bool {
        matches!(self, Self::Whole(bytes) if bytes.is_empty())
    }

    fn size_hint(&self) -> SizeHint {
        match self {
            Self::Whole(bytes) => SizeHint::with_exact(bytes.len() as u64),
            Self::Events(..) => SizeHint::default(),
        }
    }
}
