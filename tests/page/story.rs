//! What somebody else wrote stands on the page under its credit, and whose it is stays with her.

use crate::support::{page, read, readers, site, studio};
use ballband::finding::Severity;

const NOTE: &str = "---
title: Reeds
links: [ { to: mill, how: gifted } ]
story:
  - whose: zzsecret of the hills
    leave: 2026-11-18
    credit: a reader & friend
    text: |
      I cast on, from <person:mill>.

      And *wept*.
  - { whose: zzsecret-two, leave: 2026-11-18, credit: anonymous, text: So did I. }
---

The text.
";

#[test]
fn a_story_is_a_quote_with_its_credit() {
    let site = site(&[("people.yaml", "mill: { title: Mill }\n"), ("journal/2026-11-20.md", NOTE)]);
    let html = page(&site, "journal/2026-11-20/index.html");
    let wanted = "<blockquote>\n<p>I cast on, from <a href=\"/people/mill/\">Mill</a> <span class=\"how\">(given to me)</span>.</p>\n<p>And <em>wept</em>.</p>\n\n</blockquote>\n<figcaption>a reader &amp; friend</figcaption>";
    assert!(html.contains(wanted), "{html}");
    assert!(html.contains("<figcaption>Anonymous</figcaption>"), "{html}");
    let feed = page(&site, "feed.json");
    assert!(
        feed.contains("https://wrackline.example/people/mill/") && feed.contains("a reader &amp; friend"),
        "{feed}"
    );
    for (path, text) in &site {
        assert!(!text.contains("zzsecret") && !text.contains("2026-11-18"), "{path}");
    }
    // A link in a story counts as any other.
    assert!(page(&site, "people/mill/index.html").contains("href=\"/journal/2026-11-20/\""));
}

/// The same note without leave: an error once readers would have it, a warning while there is time, nothing while it is not ready.
#[test]
fn leave_is_asked_for_as_long_as_it_matters() {
    let open = "---\ntitle: Reeds\nstory: [ { credit: anonymous, text: I wept. } ]\n---\n";
    let told = |path: &str, text: &str| -> Vec<(&str, Severity)> {
        read(&[(path, text)]).findings.iter().map(|finding| (finding.code.name, finding.severity)).collect()
    };
    assert_eq!(told("journal/2026-11-20.md", open), [("story-leave", Severity::Error)]);
    assert_eq!(told("journal/2026-12-04.md", open), [("story-leave", Severity::Warning)]);
    assert_eq!(told("journal/2026-11-20.md", &open.replace("---\ntitle", "---\nready: false\ntitle")), []);
    let files = studio(&[("journal/2026-12-04.md", open)]);
    let later = ballband::study(&files, readers("2026-12-04")).unwrap();
    assert!(ballband::finding::any_error(&later.findings));
}
