//! Accepting connections until asked to stop.

use super::Pages;
use super::answer::respond;
use super::hub::Hub;
use super::limits::Limits;
use super::line::Line;
use super::seats::{Seat, Seats};
use super::stop::Stop;
use hyper::server::conn::http1;
use hyper::service::service_fn;
use hyper_util::rt::{TokioIo, TokioTimer};
use std::convert::Infallible;
use std::future::{Future, poll_fn};
use std::io;
use std::net::TcpListener;
use std::pin::pin;
use std::sync::Arc;
use std::time::Duration;
use tokio::net::TcpStream;
use tokio::sync::Semaphore;

/// The most a request's head may take, in bytes; more is answered with 431.
const HEAD: usize = 16 * 1024;

/// The most headers a request may have; more is answered with 431.
const HEADERS: usize = 64;

/// How long answers on their way may take after being asked to stop.
const GRACE: Duration = Duration::from_millis(500);

/// How long to wait before accepting again when the system refuses, as when no more files may be open.
const PAUSE: Duration = Duration::from_millis(50);

/// Threads that make answers.
const MAKERS: usize = 2;

/// What all connections share.
pub(super) struct Room {
    /// Who is asked for pages.
    pub pages: Arc<dyn Pages>,
    /// Who is asked for events.
    pub hub: Arc<Hub>,
    /// The port that is served.
    pub port: u16,
    /// How much is allowed.
    pub limits: Limits,
    /// How many answers may be made at a time; an answer is not begun for a client that went while it waited.
    pub makers: Arc<Semaphore>,
    seats: Seats,
}

/// Serves pages and events until asked to stop, then returns within a second.
///
/// One thread serves all connections; two more make answers, and only while there are any to make.
///
/// # Errors
/// If the listener or the runtime cannot be set up.
pub fn serve(listener: TcpListener, pages: Arc<dyn Pages>, hub: Arc<Hub>, stop: &Stop) -> io::Result<()> {
    serve_within(listener, pages, hub, stop, Limits::default())
}

/// Serves as [`serve`] does, within other limits.
///
/// # Errors
/// If the listener or the runtime cannot be set up.
pub fn serve_within(
    listener: TcpListener,
    pages: Arc<dyn Pages>,
    hub: Arc<Hub>,
    stop: &Stop,
    limits: Limits,
) -> io::Result<()> {
    let port = listener.local_addr()?.port();
    listener.set_nonblocking(true)?;
    let runtime =
        tokio::runtime::Builder::new_current_thread().enable_io().enable_time().max_blocking_threads(MAKERS).build()?;
    let outcome = runtime.block_on(async {
        let listener = tokio::net::TcpListener::from_std(listener)?;
        let room =
            Arc::new(Room { pages, hub, port, limits, makers: Arc::new(Semaphore::new(MAKERS)), seats: Seats::new() });
        let accepting = tokio::spawn(accept(listener, Arc::clone(&room), stop.clone()));
        let sweeping = tokio::spawn(sweep(Arc::clone(&room)));
        stop.asked().await;
        accepting.abort();
        sweeping.abort();
        room.hub.hang_up();
        let _ = tokio::time::timeout(GRACE, empty(&room)).await;
        Ok(())
    });
    // An answer that is still being made is not waited for.
    runtime.shutdown_background();
    outcome
}

async fn accept(listener: tokio::net::TcpListener, room: Arc<Room>, stop: Stop) {
    loop {
        let Ok((stream, _)) = listener.accept().await else {
            tokio::time::sleep(PAUSE).await;
            continue;
        };
        if let Some((number, seat)) = room.seats.take(room.limits.connections.max(1)) {
            let place = Place { number, room: Arc::clone(&room) };
            let task = tokio::spawn(connection(stream, place, seat, stop.clone()));
            room.seats.closed_by(number, task.abort_handle());
        }
    }
}

async fn connection(stream: TcpStream, place: Place, seat: Arc<Seat>, stop: Stop) {
    // Without it an answer in two pieces would wait 40 ms for the client's word that the first arrived.
    let _ = stream.set_nodelay(true);
    let line = Line { io: TokioIo::new(stream), seat: Arc::clone(&seat) };
    let service = service_fn(|request| {
        let answer = respond(request, Arc::clone(&place.room), Arc::clone(&seat));
        async { Ok::<_, Infallible>(answer.await) }
    });
    let mut builder = http1::Builder::new();
    builder
        .timer(TokioTimer::new())
        .header_read_timeout(place.room.limits.head)
        .max_buf_size(HEAD)
        .max_headers(HEADERS);
    let mut serving = pin!(builder.serve_connection(line, service));
    let mut asked = pin!(stop.asked());
    let mut told = false;
    // A client that goes away is no one's mistake, so how it ended does not matter.
    let _ = poll_fn(|cx| {
        if !told && asked.as_mut().poll(cx).is_ready() {
            told = true;
            serving.as_mut().graceful_shutdown();
        }
        serving.as_mut().poll(cx)
    })
    .await;
}

async fn sweep(room: Arc<Room>) {
    let pace = (room.limits.still.min(room.limits.heartbeat) / 4).max(Duration::from_millis(10));
    loop {
        tokio::time::sleep(pace).await;
        room.seats.sweep(&room.limits);
    }
}

async fn empty(room: &Room) {
    while !room.seats.is_empty() {
        tokio::time::sleep(Duration::from_millis(5)).await;
    }
}

/// A connection's place in the room, left when it ends in whatever way.
struct Place {
    number: u64,
    room: Arc<Room>,
}

impl Drop for Place {
    fn drop(&mut self) {
        self.room.seats.leave(self.number);
    }
}
