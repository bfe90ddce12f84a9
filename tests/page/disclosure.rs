//! How she came by a thing is told at each mention of it.

use crate::support::{page, site};

const PEOPLE: &str = "mill: { title: Mill, url: 'https://mill.example/' }\nlane: { title: Lane, url: 'https://lane.example/shop' }\nquay: { title: Quay }\n";

const NOTE: &str = "---
title: Reeds
wearing: [yarn:heron]
links:
  - { to: mill, how: gifted }
  - { to: lane, how: affiliate }
  - { to: 'yarn:heron', how: gifted }
  - { to: 'yarn:heron', how: paid }
  - { to: quay, how: own }
---

## In [the mill](person:mill)

From <person:mill>, again <person:mill>, [their site](https://mill.example), and <person:quay>.

See <person:lane>, [a yarn](https://lane.example/shop/heron?from=me 'At \"Lane\"') and [another](https://lane.example/shops). In <yarn:heron>.
";

fn html(studio: &str) -> (String, String) {
    let site = site(&[
        ("studio.yaml", studio),
        ("people.yaml", PEOPLE),
        ("yarns.yaml", "heron: { title: Heron }\n"),
        ("journal/2026-11-20.md", NOTE),
    ]);
    (page(&site, "journal/2026-11-20/index.html").to_owned(), page(&site, "feed.json").to_owned())
}

#[test]
fn words_stand_at_each_mention_and_earning_links_say_so_to_machines() {
    let (html, feed) = html(crate::support::STUDIO);
    for wanted in [
        "<h2 id=\"on-in-the-mill\">In <a href=\"/people/mill/\">the mill</a> <span class=\"how\">(given to me)</span></h2>",
        "From <a href=\"/people/mill/\">Mill</a> <span class=\"how\">(given to me)</span>, again <a href=\"/people/mill/\">Mill</a> <span class=\"how\">(given to me)</span>,",
        "<a href=\"https://mill.example\">their site</a> <span class=\"how\">(given to me)</span>, and <a href=\"/people/quay/\">Quay</a>.",
        "<a href=\"/people/lane/\" rel=\"sponsored\">Lane</a> <span class=\"how\">(I earn if you buy through this link)</span>,",
        "<a href=\"https://lane.example/shop/heron?from=me\" rel=\"sponsored\" title=\"At &quot;Lane&quot;\">a yarn</a> <span class=\"how\">(I earn",
        "<a href=\"https://lane.example/shops\">another</a>. In <a href=\"/yarns/heron/\" rel=\"sponsored\">Heron</a> <span class=\"how\">(given to me; I was paid to mention this)</span>.",
        // What she wears, and the list of all that is mentioned.
        "<li><a href=\"/yarns/heron/\" rel=\"sponsored\">Heron</a> <span class=\"beside\">given to me; I was paid to mention this</span></li>",
        "<li><a href=\"/people/lane/\" rel=\"sponsored\">Lane</a> <span class=\"beside\">I earn if you buy through this link</span></li>",
    ] {
        assert!(html.contains(wanted), "{wanted}\n{html}");
    }
    assert_eq!(html.matches("<span class=\"how\">(given to me)</span>").count(), 4);
    assert_eq!(feed.matches("(given to me)</span>").count(), 4, "{feed}");
}

#[test]
fn a_studio_has_words_of_its_own() {
    let own = format!("{}disclosure: {{ own: 'my <own>', gifted: 'Ad: a gift' }}\n", crate::support::STUDIO);
    let (html, _) = html(&own);
    assert!(html.contains("Quay</a> <span class=\"how\">(my &lt;own&gt;)</span>"), "{html}");
    assert!(html.contains("<span class=\"how\">(Ad: a gift)</span>") && !html.contains("given to me"), "{html}");
    assert!(html.contains("(I earn if you buy through this link)"), "{html}");
}

/// A thing that readers may not know of has no link, and nothing is told of it; a link to its own site is another matter.
#[test]
fn nothing_is_told_of_what_is_not_public_but_where_readers_can_follow() {
    let site = site(&[
        ("people.yaml", "mill: { title: Mill, ready: false, url: 'https://mill.example/' }\n"),
        (
            "journal/2026-11-20.md",
            "---\ntitle: Reeds\nlinks: [ { to: mill, how: paid } ]\n---\n\nFrom <person:mill> and [a site](https://mill.example/).\n",
        ),
    ]);
    let html = page(&site, "journal/2026-11-20/index.html");
    let wanted = "From Mill and <a href=\"https://mill.example/\" rel=\"sponsored\">a site</a> <span class=\"how\">(I was paid to mention this)</span>.";
    assert!(html.contains(wanted), "{html}");
    assert_eq!(html.matches("paid to mention").count(), 2, "{html}");
}
