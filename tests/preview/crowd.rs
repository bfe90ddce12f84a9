//! Many clients, and slow ones.

use super::serving::{BIG, DEADLINE, Served, wait};
use ballband::preview::server::Limits;
use std::io::{Read, Write};
use std::time::{Duration, Instant};

#[test]
fn idle_connections_cannot_keep_a_browser_out() {
    let served = Served::new();
    let mut crowd: Vec<_> = (0..600).map(|_| served.connect()).collect();
    let begun = Instant::now();
    assert_eq!(served.get("/").status, 200);
    assert!(begun.elapsed() < Duration::from_secs(5), "{:?}", begun.elapsed());
    assert!(crowd[0].is_closed(), "the oldest is closed");
    let last = crowd.last_mut().unwrap();
    last.ask("GET", "/", &format!("Host: localhost:{}\r\n", served.port));
    assert_eq!(last.reply(false).status, 200, "the newest is not");
}

#[test]
fn readers_that_do_not_read_cannot_keep_a_browser_out() {
    let served = Served::within(Limits { connections: 8, still: DEADLINE, ..Limits::default() });
    let mut crowd: Vec<_> = (0..20).map(|_| served.connect()).collect();
    for client in &mut crowd {
        // The first ones are closed by now.
        let _ = write!(client.0.get_mut(), "GET /big.jpg HTTP/1.1\r\nHost: localhost:{}\r\n\r\n", served.port);
    }
    assert_eq!(served.get("/").status, 200);
    assert_eq!(served.get("/big.jpg").body.len(), BIG);
}

#[test]
fn a_head_that_never_ends_is_given_up() {
    let served = Served::within(Limits { head: Duration::from_millis(200), ..Limits::default() });
    let mut client = served.connect();
    client.0.get_mut().write_all(b"GET / HTTP/1.1\r\nX: ").unwrap();
    assert!(client.is_closed());
}

#[test]
fn a_reader_that_stops_is_given_up() {
    let served = Served::within(Limits { still: Duration::from_millis(300), ..Limits::default() });
    let mut client = served.connect();
    client.ask("GET", "/big.jpg", &format!("Host: localhost:{}\r\n", served.port));
    assert_eq!(client.head().status, 200);
    std::thread::sleep(Duration::from_millis(1500));
    let mut got = 0;
    let mut piece = vec![0; 1 << 16];
    while let Ok(read) = client.0.read(&mut piece) {
        if read == 0 {
            break;
        }
        got += read;
    }
    assert!(got < BIG, "{got} bytes came");
}

#[test]
fn listeners_are_limited_and_leave() {
    let served = Served::within(Limits { listeners: 2, ..Limits::default() });
    let first = served.events("/a/", "");
    let second = served.events("/b/", "");
    assert_eq!(served.hub.listeners(), ["/a/", "/b/"]);
    assert_eq!(served.get("/desk/events?page=/c/").status, 503);
    drop(first);
    wait("the first leaves", || served.hub.listeners() == ["/b/"]);
    drop(served.events("/c/", ""));
    drop(second);
}

#[test]
fn a_room_full_of_slow_pages_keeps_no_browser_out() {
    let served = Served::within(Limits { connections: 4, ..Limits::default() });
    let mut crowd: Vec<_> = (0..4).map(|_| served.connect()).collect();
    for client in &mut crowd {
        client.ask("GET", "/slow", &format!("Host: localhost:{}\r\n", served.port));
    }
    assert_eq!(served.get("/").status, 200);
}
