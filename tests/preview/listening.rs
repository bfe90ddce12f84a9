//! What open pages are told.

use super::serving::Served;
use ballband::preview::server::{Event, EventKind, Limits};
use std::time::Duration;

fn event(data: &str) -> Event {
    Event { kind: EventKind::Page, data: data.to_owned() }
}

#[test]
fn each_page_is_told_its_own_events_and_those_for_all() {
    let served = Served::new();
    let mut a = served.events("/a/", "");
    let mut b = served.events("%2Fb%2F", "");
    assert_eq!(served.hub.listeners(), ["/a/", "/b/"]);
    served.hub.tell(Some("/a/"), &event("one"));
    served.hub.tell(None, &Event { kind: EventKind::Style, data: String::new() });
    assert_eq!((a.until("event: "), a.until("data: ")), ("page".into(), "one".into()));
    assert_eq!(a.until("event: "), "style");
    assert_eq!(b.until("event: "), "style");
}

#[test]
fn a_line_end_in_the_data_does_not_end_the_event() {
    let served = Served::new();
    let mut page = served.events("/", "");
    page.until("id: ");
    served.hub.tell(None, &event("one\r\ntwo\rid: 9\n"));
    page.until("event: page");
    let lines: Vec<String> = (0..5).map(|_| page.line()).collect();
    assert_eq!(lines, ["data: one", "data: two", "data: id: 9", "data:", ""]);
}

#[test]
fn a_page_that_reconnects_learns_what_it_missed() {
    let served = Served::new();
    let seen = served.hub.now();
    served.hub.tell(Some("/a/"), &event("one"));
    served.hub.tell(Some("/b/"), &event("not for a"));
    served.hub.tell(None, &event("two"));
    for mut page in
        [served.events("/a/", &format!("Last-Event-ID: {seen}\r\n")), served.events(&format!("/a/&seen={seen}"), "")]
    {
        assert_eq!((page.until("data: "), page.until("data: ")), ("one".into(), "two".into()));
    }
}

#[test]
fn what_cannot_be_known_means_look_again() {
    let served = Served::new();
    let seen = served.hub.now();
    for number in 0..300 {
        served.hub.tell(None, &event(&number.to_string()));
    }
    for id in [seen.as_str(), "0000000000000000-299", "nonsense"] {
        let mut page = served.events("/a/", &format!("Last-Event-ID: {id}\r\n"));
        assert_eq!(page.until("event: "), "look", "{id}");
    }
}

#[test]
fn a_quiet_stream_has_a_heartbeat() {
    let served = Served::within(Limits { heartbeat: Duration::from_millis(50), ..Limits::default() });
    let mut page = served.events("/", "");
    page.until(":");
    page.until(":");
}
