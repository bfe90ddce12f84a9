//! The call for test knitters, and what testers share.

use crate::support::{page, readers, site, studio};
use ballband::render::Rendered;

const YARNS: &str = "heron-dk:\n  title: Heron DK\n  weight: DK\n  put-up: 225 m / 100 g\nsecret:\n  title: zzsecret\n  ready: false\n  put-up: 100 m / 50 g\n";

const MITTENS: &str = "---
title: Shoal Mittens
stage: test knit
garment: mittens
level: easy
sizes: S (M, L, XL)
to fit: { hand: '17 (19, 21, 23) cm' }
finished: { hand: '18 (20, 22, 24) cm' }
gauge: { stitches: 20, rows: 24, over: 10 cm, in: stockinette, needle: 4.5 mm }
needles: [4 mm dpns]
picture: photos/zzsecret.jpg
alt: zzsecret
notions: [zzsecret-notion]
yarn: [ { colour: MC, yarn: heron-dk, needs: '205 (210, 215, 420) m' } ]
sold at: [ { place: shop, url: \"https://zzsecret.example\", price: 7 GBP } ]
test knit:
  opens: 2026-11-13
  closes: 2026-12-31
  check-ins: [2026-12-04]
  sizes wanted: 2 (1, 1, –)
  apply: https://example.org/apply
testers:
  - { name: zzsecret-ann, size: S, share: false }
  - { name: zzsecret-ben, size: M, share: true }
  - { name: zzsecret-cat, size: m, share: true }
private: zzsecret
---

zzsecret-draft
";

const CALL: &str = "patterns/shoal-mittens/test-knit/index.html";

fn made(mittens: &str, day: &str) -> Vec<Rendered> {
    let files =
        [("yarns.yaml", YARNS), ("patterns/shoal-mittens.md", mittens), ("people.yaml", "shop: { title: Shop }\n")];
    let files = studio(&files).with("photos/zzsecret.jpg", "no photo is looked at");
    let studied = ballband::study(&files, readers(day)).unwrap();
    assert!(!ballband::finding::any_error(&studied.findings), "{:?}", studied.findings);
    ballband::make(&studied).0
}

fn text<'a>(site: &'a [Rendered], path: &str) -> Option<&'a str> {
    site.iter().find(|file| file.path == path).map(|file| std::str::from_utf8(&file.bytes).unwrap())
}

/// 205 m and a tenth more are 225.5 m, more than the 225 m of one skein; without the margin one would do.
#[test]
fn a_call_says_what_a_tester_needs_and_nothing_else_is_public() {
    let site = made(MITTENS, "2026-11-25");
    let call = text(&site, CALL).unwrap();
    for words in [
        "<dt>S</dt><dd><strong>one tester wanted</strong></dd>",
        "<dt>M</dt><dd>taken</dd>",
        "<dt>L</dt><dd><strong>one tester wanted</strong></dd>",
        "Applications are open until 31 December 2026.",
        "href=\"https://example.org/apply\"",
        "Check-in <time datetime=\"2026-12-04\">4 December 2026</time>",
        "the yarn you used of each colour, weighed before and after",
        "20 sts and 24 rows to 10 cm",
        "<b>2</b> skeins <small>205\u{a0}m",
        "Easy",
    ] {
        assert!(call.contains(words), "{words}: {call}");
    }
    assert!(!call.contains("<dt>XL</dt>") && !call.contains("noindex"), "{call}");
    assert!(text(&site, "patterns/on-the-way/index.html").unwrap().contains("/patterns/shoal-mittens/test-knit/"));
    assert!(text(&site, "index.html").unwrap().contains("still wanted: S and L, until 31 December 2026"));
    assert!(text(&site, "sitemap.xml").unwrap().contains("/test-knit/"));
    assert!(text(&site, "patterns/shoal-mittens/index.html").is_none());
    assert!(!text(&site, "catalogue.json").unwrap().contains("shoal"));
    for file in &site {
        let text = String::from_utf8_lossy(&file.bytes);
        assert!(!text.contains("zzsecret") && !file.path.contains("zzsecret"), "{}: {text}", file.path);
        let figures = text.contains("205\u{a0}m") || text.contains("stockinette");
        assert!(!figures || file.path == CALL, "{}", file.path);
    }
}

#[test]
fn a_call_has_a_page_from_its_first_day_until_publication() {
    assert!(text(&made(MITTENS, "2026-11-12"), CALL).is_none());
    assert!(text(&made(MITTENS, "2026-11-13"), CALL).is_some());
    assert!(text(&made(MITTENS, "2026-12-31"), CALL).unwrap().contains("Apply to test knit"));
    let closed = made(MITTENS, "2027-01-01");
    let call = text(&closed, CALL).unwrap();
    assert!(
        call.contains("Applications closed on 31 December 2026.")
            && call.contains("<meta name=\"robots\" content=\"noindex\">")
    );
    assert!(!call.contains("Apply") && !call.contains("wanted"), "{call}");
    assert!(!text(&closed, "sitemap.xml").unwrap().contains("test-knit"));
    assert!(!text(&closed, "index.html").unwrap().contains("test-knit"));
    for not_any_more in ["stage: sample", "stage: published\npublished: 2026-11-20", "stage: test knit\nready: false"] {
        let site = made(
            &MITTENS.replace("stage: test knit", not_any_more).replace("picture: photos/zzsecret.jpg\n", ""),
            "2026-11-25",
        );
        assert!(text(&site, CALL).is_none(), "{not_any_more}");
    }
}

#[test]
fn a_call_whose_places_are_all_taken_takes_nobody_on() {
    let taken = MITTENS.replace("2 (1, 1, –)", "1 (2, 0, 0)");
    let site = made(&taken, "2026-11-25");
    let call = text(&site, CALL).unwrap();
    assert!(
        call.contains("Every size has its testers; they are knitting until 31 December 2026.")
            && !call.contains("Apply to"),
        "{call}"
    );
    assert!(call.contains("<dt>M</dt><dd>taken</dd>") && !call.contains("<dt>L</dt>"), "{call}");
    assert!(!text(&site, "index.html").unwrap().contains("test-knit"));
}

/// 54 g of a yarn of 225 m / 100 g are 121.5 m.
#[test]
fn testers_who_share_are_shown_without_a_name_and_others_never() {
    let pattern = "---\ntitle: Yoke\npublished: 2026-03-14\nsizes: S (M, L)\nyarn:\n  - { colour: MC, yarn: heron-dk, needs: '820 (905, 990) m' }\n  - { colour: CC, yarn: heron-dk, needs: 110 m }\ntesters:\n  - { name: zzsecret-ann, size: L, yarn: heron-dk, used: { MC: 901 m, CC: 54 g, zzsecret-label: 3 m }, share: true }\n  - { name: zzsecret-ben, size: S, yarn: secret, used: { MC: 861 m }, share: true }\n  - { name: zzsecret-cat, size: M, yarn: heron-dk, used: { MC: 777 m }, share: false }\n  - { name: zzsecret-dan, size: M, yarn: heron-dk, used: { MC: 777 m } }\n---\n";
    let site = site(&[("yarns.yaml", YARNS), ("patterns/yoke.md", pattern)]);
    let yoke = page(&site, "patterns/yoke/index.html");
    let from = yoke.find("As knitted by testers").unwrap();
    let shared = &yoke[from..from + yoke[from..].find("</section>").unwrap()];
    let large = shared.find("Size L in <a href=\"/yarns/heron-dk/\">Heron DK</a>").unwrap();
    assert!(shared.find("Size S").unwrap() < large, "{shared}");
    for words in ["MC 901\u{a0}m <span class=\"other\">985\u{a0}yd</span>", "CC 122\u{a0}m", "MC 861\u{a0}m"] {
        assert!(shared.contains(words), "{words}: {shared}");
    }
    for (path, text) in &site {
        assert!(!text.contains("zzsecret") && !text.contains("777\u{a0}m"), "{path}");
    }
    let none = pattern.replace("share: true", "share: false");
    let site = crate::support::site(&[("yarns.yaml", YARNS), ("patterns/yoke.md", &none)]);
    assert!(!page(&site, "patterns/yoke/index.html").contains("As knitted by testers"));
}

/// A note that mentions a design leads to its call while one can answer it, and among the designs on the way otherwise.
#[test]
fn a_note_leads_to_an_open_call() {
    let mentioned = |day: &str| {
        let note = "---\ntitle: Mittens\ndate: 2026-11-06\n---\n\nSee <pattern:shoal-mittens>.\n";
        let files = [
            ("yarns.yaml", YARNS),
            ("patterns/shoal-mittens.md", MITTENS),
            ("people.yaml", "shop: { title: Shop }\n"),
            ("journal/mittens.md", note),
        ];
        let files = studio(&files).with("photos/zzsecret.jpg", "no photo is looked at");
        let made = ballband::make(&ballband::study(&files, readers(day)).unwrap()).0;
        let html = text(&made, "journal/mittens/index.html").unwrap().to_owned();
        html.lines().filter(|line| line.contains("Shoal Mittens</a>")).map(str::trim).next_back().unwrap().to_owned()
    };
    assert_eq!(
        mentioned("2026-11-25"),
        "<li><a href=\"/patterns/shoal-mittens/test-knit/\">Shoal Mittens</a> <span class=\"beside\">call for test knitters</span></li>"
    );
    for day in ["2026-11-12", "2027-01-01"] {
        assert_eq!(
            mentioned(day),
            "<li><a href=\"/patterns/on-the-way/#shoal-mittens\">Shoal Mittens</a></li>",
            "{day}"
        );
    }
}
