//! The calendar against what RFC 5545 says of lines, texts and days; `tests/outside/feeds.py` reads it with a program of others.

use crate::support::{TODAY, day, readers, studio};
use ballband::catalogue::{Eyes, View};
use ballband::page::Shown;
use ballband::render::calendar::calendar;

/// Joins folded lines and takes them apart (RFC 5545, 3.1), with texts as they were before they were escaped (3.3.11).
fn unfold(bytes: &[u8]) -> Vec<(String, String)> {
    let text = std::str::from_utf8(bytes).unwrap();
    assert!(text.ends_with("\r\n") && !text.replace("\r\n", "").contains(['\r', '\n']), "line ends are not CRLF");
    for line in text.split("\r\n") {
        assert!(line.len() <= 75, "{} octets: {line}", line.len());
    }
    let whole = text.replace("\r\n ", "");
    let property = |line: &str| {
        let (name, value) = line.split_once(':').unwrap();
        let mut out = String::new();
        let mut rest = value.chars();
        while let Some(c) = rest.next() {
            match (c, if c == '\\' { rest.next() } else { None }) {
                ('\\', Some('n' | 'N')) => out.push('\n'),
                ('\\', Some(escaped)) => out.push(escaped),
                (c, _) => out.push(c),
            }
        }
        (name.to_owned(), out)
    };
    whole.split("\r\n").filter(|line| !line.is_empty()).map(property).collect()
}

fn values<'a>(all: &'a [(String, String)], name: &str) -> Vec<&'a str> {
    all.iter().filter(|(known, _)| known == name).map(|(_, value)| value.as_str()).collect()
}

const HAT: &str = "---\ntitle: \"Ünruhige, wåvy; Hat \\\\ with a title that goes on – and on – until no line of seventy-five octets can hold it\"\npublished: 2026-03-14\n---\n";
const OLD: &str = "---\ntitle: Old\npublished: 2025-11-23\n---\n";
const PLANNED: &str = "---\ntitle: Gansey\nstage: sample\nreached: { sketch: 2026-03-01, sample: 2026-09-06, tech edit: 2027-02-12, published: 2027-05-01 }\npublished: 2027-05-01\n---\n";
const CALL: &str = "---\ntitle: Shoal\nstage: test knit\ntest knit: { opens: 2026-11-13, closes: 2026-12-31, sizes wanted: 2, apply: \"https://example.org/a\", check-ins: [2026-12-04, 2026-12-18] }\n---\n";
const COMING: &str = "---\ntitle: Dune\nstage: test knit\ntest knit: { opens: 2026-12-13, closes: 2026-12-31, sizes wanted: 2, apply: \"https://example.org/a\" }\n---\n";
const HIDDEN: &str = "---\ntitle: zzsecret\nready: false\npublished: 2027-05-01\nstage: sample\n---\n";
const LATER: &str = "---\ntitle: zzsecret\npublished: 2027-05-02\n---\n";
const GIFT: &str = "---\ntitle: A hat\nmade for: { who: \"Ann, the elder\", by: 2026-12-24 }\n---\n";
const GIVEN: &str = "---\ntitle: Given\nfinished: 2026-11-01\nmade for: { who: Ben, by: 2026-12-24 }\n---\n";

const FILES: [(&str, &str); 9] = [
    ("patterns/hat.md", HAT),
    ("patterns/old.md", OLD),
    ("patterns/gansey.md", PLANNED),
    ("patterns/shoal.md", CALL),
    ("patterns/dune.md", COMING),
    ("patterns/hidden.md", HIDDEN),
    ("patterns/later.md", LATER),
    ("projects/gift.md", GIFT),
    ("projects/given.md", GIVEN),
];

fn public(files: &[(&str, &str)]) -> Option<Vec<u8>> {
    let studied = ballband::study(&studio(files), readers(TODAY)).unwrap();
    ballband::make(&studied).0.into_iter().find(|file| file.path == "calendar.ics").map(|file| file.bytes)
}

#[test]
fn readers_get_the_days_that_are_public() {
    let bytes = public(&FILES).unwrap();
    let all = unfold(&bytes);
    assert_eq!(
        values(&all, "SUMMARY"),
        [
            "Ünruhige, wåvy; Hat \\ with a title that goes on – and on – until no line of seventy-five octets can hold it is published",
            "Test knit of Shoal opens",
            "Test knit of Shoal closes",
            "Gansey is planned to be published",
        ]
    );
    assert_eq!(values(&all, "DTSTART;VALUE=DATE"), ["20260314", "20261113", "20261231", "20270501"]);
    // Stamped with its own day and not with the clock.
    assert_eq!(
        values(&all, "DTSTAMP"),
        ["20260314T000000Z", "20261113T000000Z", "20261231T000000Z", "20270501T000000Z"]
    );
    assert_eq!(
        values(&all, "UID"),
        [
            "pattern-hat-published@wrackline.example",
            "pattern-shoal-test-knit-opens@wrackline.example",
            "pattern-shoal-test-knit-closes@wrackline.example",
            "pattern-gansey-published@wrackline.example",
        ]
    );
    assert_eq!(values(&all, "URL")[3], "https://wrackline.example/patterns/on-the-way/#gansey");
    assert_eq!((all.first().unwrap().1.as_str(), all.last().unwrap().1.as_str()), ("VCALENDAR", "VCALENDAR"));
    assert!(!String::from_utf8(bytes).unwrap().contains("zzsecret"));
}

#[test]
fn the_designers_own_has_deadlines_plans_and_check_ins_besides() {
    let view = View { today: day(TODAY), eyes: Eyes::Designer };
    let studied = ballband::study(&studio(&FILES), view).unwrap();
    let sizes = studied.sizes();
    let shown = Shown::for_one(&studied.catalogue, &sizes);
    let all = unfold(&calendar(&shown, "The desk", &ballband::page::desk::events(&shown)).unwrap());
    let told = values(&all, "SUMMARY");
    for one in [
        "A hat for Ann, the elder must be there",
        "Gansey: tech edit planned",
        "Test knit of Shoal: check-in",
        "Test knit of Dune opens",
        "Test knit of Shoal closes",
    ] {
        assert!(told.contains(&one), "{one}: {told:?}");
    }
    assert!(
        !told.iter().any(|one| one.contains("Given") || one.contains("zzsecret") || one.contains("sketch")),
        "{told:?}"
    );
    let uids = values(&all, "UID");
    let mut once = uids.clone();
    once.sort_unstable();
    once.dedup();
    assert_eq!(once.len(), uids.len(), "{uids:?}");
}

/// A calendar must hold a component (RFC 5545, 3.6), so there is none without a day, and no page leads to it.
#[test]
fn without_a_day_there_is_no_calendar() {
    let files = [("patterns/old.md", OLD)];
    assert_eq!(public(&files), None);
    let site = crate::support::site(&files);
    assert!(!crate::support::page(&site, "patterns/on-the-way/index.html").contains("calendar"));
    let site = crate::support::site(&FILES);
    let page = crate::support::page(&site, "patterns/on-the-way/index.html");
    assert!(
        page.contains("<link rel=\"alternate\" type=\"text/calendar\"") && page.contains("<a href=\"/calendar.ics\"")
    );
}

/// Titles hold no line ends, so the page's own text is asked what it makes of them.
#[test]
fn a_line_end_in_a_text_is_escaped() {
    let studied = ballband::study(&studio(&FILES), readers(TODAY)).unwrap();
    let sizes = studied.sizes();
    let shown = Shown::for_one(&studied.catalogue, &sizes);
    let event = |summary: &str| ballband::page::Event {
        day: day(TODAY),
        key: "k".to_owned(),
        summary: summary.to_owned(),
        url: None,
    };
    let wild = "one\r\ntwo\nthree, four; fünf \\n \u{1f9f6}\u{1f9f6}\u{1f9f6}\u{1f9f6}\u{1f9f6}\u{1f9f6}\u{1f9f6}\u{1f9f6}\u{1f9f6}\u{1f9f6}\u{1f9f6}\u{1f9f6}\u{1f9f6}\u{1f9f6}\u{1f9f6}\u{1f9f6}";
    let all = unfold(&calendar(&shown, "n", &[event(wild)]).unwrap());
    assert_eq!(values(&all, "SUMMARY"), [wild.replace("\r\n", "\n")]);
}
