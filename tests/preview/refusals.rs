//! What is refused.

use super::serving::Served;

#[test]
fn only_get_and_head() {
    let served = Served::new();
    for method in ["POST", "PUT", "DELETE", "OPTIONS", "TRACE", "PATCH"] {
        let reply = served.ask(method, "/", "");
        assert_eq!((reply.status, reply.header("allow")), (405, Some("GET, HEAD")), "{method}");
    }
}

#[test]
fn only_this_machines_names() {
    let served = Served::new();
    let port = served.port;
    let status = |host: &str| {
        let mut client = served.connect();
        client.ask("GET", "/", host);
        client.reply(false).status
    };
    for name in ["127.0.0.1", "localhost", "LOCALHOST", "[::1]"] {
        assert_eq!(status(&format!("Host: {name}:{port}\r\n")), 200, "{name}");
        assert_eq!(status(&format!("Host: {name}\r\n")), 200, "{name}");
        assert_eq!(status(&format!("Host: {name}:{}\r\n", port ^ 1)), 403, "{name}");
    }
    for name in ["elsewhere.example", "localhost.elsewhere.example", "127.0.0.1.elsewhere.example", "10.0.0.1", ""] {
        assert_eq!(status(&format!("Host: {name}:{port}\r\n")), 403, "{name}");
    }
    assert_eq!(status(""), 400);
    assert_eq!(status(&format!("Host: localhost:{port}\r\nHost: localhost:{port}\r\n")), 400);
}

#[test]
fn no_address_leads_outside() {
    let served = Served::new();
    for target in [
        "/../x",
        "/a/../x",
        "/a/..",
        "/./x",
        "/%2e%2e/x",
        "/%2E./x",
        "/a%2fb",
        "/a%2Fb",
        "/a%5cb",
        "/a\\b",
        "/a%00b",
        "/a%0db",
        "/a%7fb",
        "/a%c2%85b",
        "//elsewhere.example/",
        "/a//b",
        "/%zz",
        "/%4",
        "/%",
        "/%ff",
        "*",
        "http://elsewhere.example/",
        "http://127.0.0.1:1/",
        "https://127.0.0.1/",
    ] {
        assert_eq!(served.get(target).status, 400, "{target}");
    }
    // Decoded once: this is a name with a percent sign in it.
    assert_eq!(served.get("/%252e%252e/").status, 404);
    assert_eq!(served.get("/x?a=../../b").status, 404);
    assert_eq!(served.get(&format!("http://localhost:{}/", served.port)).status, 200);
}

#[test]
fn no_overlong_heads() {
    let served = Served::new();
    assert_eq!(served.get(&format!("/{}", "a".repeat(2047))).status, 404);
    assert_eq!(served.get(&format!("/{}", "a".repeat(2048))).status, 414);
    assert_eq!(served.get(&format!("/?{}", "a".repeat(4000))).status, 414);
    assert_eq!(served.ask("GET", "/", &"X: y\r\n".repeat(100)).status, 431);
    let long = format!("X: {}\r\n", "y".repeat(12_000));
    assert_eq!(served.ask("GET", "/", &long).status, 200);
}

#[test]
fn events_are_for_our_own_pages() {
    let served = Served::new();
    let status = |more: &str| {
        let mut client = served.connect();
        client.ask("GET", "/desk/events?page=/", &format!("Host: 127.0.0.1:{}\r\n{more}", served.port));
        client.head().status
    };
    assert_eq!(status(""), 200);
    assert_eq!(status("Sec-Fetch-Site: same-origin\r\n"), 200);
    assert_eq!(status("Sec-Fetch-Site: cross-site\r\n"), 403);
    assert_eq!(status("Sec-Fetch-Site: same-site\r\n"), 403);
    assert_eq!(status("Origin: https://elsewhere.example\r\n"), 403);
    assert_eq!(status("Origin: null\r\n"), 403);
    assert_eq!(status(&format!("Origin: http://127.0.0.1:{}\r\n", served.port)), 200);
    assert_eq!(served.get("/desk/events").status, 400);
    assert_eq!(served.get("/desk/events?page=/../").status, 400);
    assert_eq!(served.ask("HEAD", "/desk/events?page=/", "").status, 405);
}
