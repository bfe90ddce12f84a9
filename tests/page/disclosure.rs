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

/// The link to a shop's own site earns as much on the shop's page as in a note: what the latest public note says counts.
#[test]
fn a_persons_own_page_tells_what_she_earns_by_the_link_to_their_site() {
    let people = "far: { title: Far, url: 'https://far.example/shop' }\n";
    let note = |links: &str| format!("---\ntitle: A note\n{links}---\n\nOf [them](person:far).\n");
    let told = |notes: &[(&str, &str)]| {
        let notes: Vec<(String, String)> =
            notes.iter().map(|(day, links)| (format!("journal/{day}.md"), note(links))).collect();
        let notes = notes.iter().map(|(path, text)| (path.as_str(), text.as_str()));
        let own =
            format!("{}disclosure: {{ paid: 'Ad: <paid>' }}\nchecks: {{ undisclosed: off }}\n", crate::support::STUDIO);
        let files: Vec<_> = [("studio.yaml", own.as_str()), ("people.yaml", people)].into_iter().chain(notes).collect();
        page(&site(&files), "people/far/index.html").to_owned()
    };
    let link = |html: &str| html.lines().find(|line| line.contains("https://far.example/shop")).unwrap().to_owned();
    let plain = "<p class=\"onward\"><a href=\"https://far.example/shop\">far.example/shop</a></p>";
    let earns = "<p class=\"onward\"><a href=\"https://far.example/shop\" rel=\"sponsored\">far.example/shop</a> <span class=\"how\">(I earn if you buy through this link)</span></p>";
    let (affiliate, silent) = ("links: [ { to: far, how: affiliate } ]\n", "");
    assert_eq!(link(&told(&[])), plain);
    assert_eq!(link(&told(&[("2026-11-13", affiliate)])), earns);
    // A later note that does not say leaves it so, and one that says otherwise does not; one still to come says nothing yet.
    assert_eq!(link(&told(&[("2026-11-13", affiliate), ("2026-11-20", silent)])), earns);
    assert_eq!(
        link(&told(&[("2026-11-13", affiliate), ("2026-11-20", "links: [ { to: far, how: bought } ]\n")])),
        plain
    );
    assert_eq!(link(&told(&[("2026-12-18", affiliate)])), plain);
    let paid = link(&told(&[("2026-11-13", "links: [ { to: far, how: gifted }, { to: far, how: paid } ]\n")]));
    assert!(paid.contains("rel=\"sponsored\"") && paid.contains("(given to me; Ad: &lt;paid&gt;)"), "{paid}");
    assert_eq!(link(&told(&[("2026-11-13", "links: [ { to: far, how: gifted } ]\n")])), plain);
}
