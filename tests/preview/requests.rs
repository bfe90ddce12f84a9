//! What is answered.

use super::serving::{DEADLINE, Served};
use ballband::preview::server::listen;
use std::time::{Duration, Instant};

#[test]
fn pages_come_with_their_headers() {
    let served = Served::new();
    let reply = served.get("/");
    assert_eq!((reply.status, reply.body.as_slice()), (200, b"<p>home</p>".as_slice()));
    assert_eq!(reply.header("content-type"), Some("text/html; charset=utf-8"));
    for path in ["/", "/nothing", "/%2e%2e/", "/gr%C3%B6%C3%9Fe", "/broken"] {
        let reply = served.get(path);
        assert_eq!(reply.header("x-content-type-options"), Some("nosniff"), "{path}");
        assert_eq!(reply.header("x-frame-options"), Some("DENY"), "{path}");
        assert_eq!(reply.header("referrer-policy"), Some("no-referrer"), "{path}");
        assert_eq!(reply.header("cross-origin-resource-policy"), Some("same-origin"), "{path}");
        assert_eq!(reply.header("cache-control"), Some("no-cache"), "{path}");
        assert!(reply.header("content-security-policy").unwrap().starts_with("default-src 'self';"), "{path}");
    }
}

#[test]
fn a_panic_in_a_page_is_a_plain_500_and_the_next_page_comes() {
    let served = Served::new();
    assert_eq!(served.get("/broken").status, 500);
    assert_eq!(served.get("/").status, 200);
}

#[test]
fn a_tag_saves_sending_a_page_again() {
    let served = Served::new();
    let tag = served.get("/").header("etag").unwrap().to_owned();
    for asked in [tag.clone(), format!("W/{tag}"), format!("\"x\", {tag}"), "*".to_owned()] {
        let reply = served.ask("GET", "/", &format!("If-None-Match: {asked}\r\n"));
        assert_eq!((reply.status, reply.header("etag")), (304, Some(tag.as_str())), "{asked}");
    }
    assert_eq!(served.ask("GET", "/", "If-None-Match: \"x\"\r\n").status, 200);
    assert_eq!(served.ask("GET", "/nothing", "If-None-Match: *\r\n").status, 404);
}

#[test]
fn head_has_the_length_and_no_body() {
    let served = Served::new();
    let mut client = served.connect();
    let host = format!("Host: localhost:{}\r\n", served.port);
    client.ask("HEAD", "/", &host);
    assert_eq!(client.reply(true).header("content-length"), Some("11"));
    client.ask("GET", "/", &host);
    assert_eq!(client.reply(false).status, 200);
}

#[test]
fn a_folder_without_its_slash_leads_on_and_never_elsewhere() {
    let served = Served::new();
    let reply = served.get("/gr%C3%B6%C3%9Fe");
    assert_eq!((reply.status, reply.header("location")), (301, Some("/gr%C3%B6%C3%9Fe/")));
    assert_eq!(served.get("/away").header("location"), Some("/elsewhere.example/"));
}

#[test]
fn a_kept_connection_does_not_stall() {
    let served = Served::new();
    let mut client = served.connect();
    let host = format!("Host: 127.0.0.1:{}\r\n", served.port);
    let mut times: Vec<Duration> = (0..100)
        .map(|_| {
            let begun = Instant::now();
            client.ask("GET", "/", &host);
            assert_eq!(client.reply(false).status, 200);
            begun.elapsed()
        })
        .collect();
    times.sort();
    assert!(times[50] < Duration::from_millis(20), "{:?}", times[50]);
}

#[test]
fn a_slow_page_holds_up_no_other() {
    let served = Served::new();
    let mut slow = served.connect();
    slow.ask("GET", "/slow", &format!("Host: 127.0.0.1:{}\r\n", served.port));
    let begun = Instant::now();
    assert_eq!(served.get("/").status, 200);
    assert!(begun.elapsed() < Duration::from_millis(1000), "{:?}", begun.elapsed());
    assert_eq!(slow.reply(false).status, 200);
}

#[test]
fn the_next_free_port_is_taken() {
    let first = listen(0).unwrap();
    let port = first.local_addr().unwrap().port();
    let next = listen(port).unwrap().local_addr().unwrap();
    assert!(next.ip().is_loopback());
    assert!(next.port() > port && next.port() <= port.saturating_add(20));
}

#[test]
fn stopping_takes_under_a_second_with_listeners_and_a_page_being_made() {
    let served = Served::new();
    let mut listener = served.events("/", "");
    listener.until("id: ");
    let mut idle = served.connect();
    let mut slow = served.connect();
    slow.ask("GET", "/slow", &format!("Host: 127.0.0.1:{}\r\n", served.port));
    let begun = Instant::now();
    served.stop.stop();
    served.join();
    assert!(begun.elapsed() < Duration::from_secs(1), "{:?}", begun.elapsed());
    assert!(begun.elapsed() < DEADLINE && listener.is_closed() && idle.is_closed());
}
