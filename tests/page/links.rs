//! References and back-links.

use crate::support::{page, site};

const FILES: [(&str, &str); 7] = [
    (
        "patterns/saltmarsh-yoke.md",
        "---\ntitle: Saltmarsh Yoke\npublished: 2026-03-14\nyarn: [ { yarn: heron-dk, needs: 900 m } ]\ntechniques: [short-rows]\nsold at: [ { place: quay-shop } ]\nafter: [ { what: reed motif, source: quay-shop }, { what: a tin, source: a dinner tin } ]\n---\n",
    ),
    (
        "projects/ferry.md",
        "---\ntitle: Ferry\npattern: saltmarsh-yoke\nyarn: [ { yarn: heron-dk, used: 4 skeins } ]\nfinished: 2026-11-18\n---\n",
    ),
    (
        "projects/other.md",
        "---\ntitle: Other\npattern: { title: Herring Cap, by: quay-shop, url: \"https://example.org/cap\" }\n---\n",
    ),
    (
        "journal/2026-11-20.md",
        "---\ntitle: Reeds\nnumber: 12\nlinks: [ { to: quay-shop, how: gifted } ]\n---\n\n## 12:40 The yoke\n\nI like <pattern:saltmarsh-yoke>, [that yarn](yarn:heron-dk) and [a site](https://example.org/).\n",
    ),
    ("yarns.yaml", "heron-dk:\n  title: Heron DK\n  maker: quay-shop\n  weight: DK\n  put-up: 225 m / 100 g\n"),
    ("people.yaml", "quay-shop:\n  title: Quay Shop\n"),
    ("techniques/short-rows.md", "---\ntitle: Short rows\n---\n"),
];

#[test]
fn a_pattern_knows_who_made_it_and_who_mentions_it() {
    let site = site(&FILES);
    let html = page(&site, "patterns/saltmarsh-yoke/index.html");
    assert!(html.contains("href=\"/projects/ferry/\""));
    assert!(html.contains("href=\"/journal/2026-11-20/#on-the-yoke\""));
    assert!(html.contains("at 12:40"));
    assert!(html.contains("href=\"/techniques/short-rows/\""));
    assert!(html.contains("href=\"/people/quay-shop/\""));
    assert!(html.contains("a dinner tin"));
}

#[test]
fn a_yarn_a_technique_and_a_person_know_where_they_are_used() {
    let site = site(&FILES);
    for (path, links) in [
        (
            "yarns/heron-dk/index.html",
            &[
                "/patterns/saltmarsh-yoke/",
                "/projects/ferry/",
                "/journal/2026-11-20/#on-the-yoke",
                "/people/quay-shop/",
            ][..],
        ),
        ("techniques/short-rows/index.html", &["/patterns/saltmarsh-yoke/"]),
        (
            "people/quay-shop/index.html",
            &["/yarns/heron-dk/", "/journal/2026-11-20/", "/patterns/saltmarsh-yoke/", "/projects/other/"],
        ),
    ] {
        let html = page(&site, path);
        for link in links {
            assert!(html.contains(&format!("href=\"{link}\"")), "{path} lacks {link}");
        }
    }
}

#[test]
fn a_note_collects_what_it_mentions_by_kind() {
    let site = site(&FILES);
    let html = page(&site, "journal/2026-11-20/index.html");
    assert!(html.contains(">Saltmarsh Yoke</a>"), "an autolink shows the title");
    assert!(html.contains(">that yarn</a>"), "a link shows its words");
    let end = html.split("id=\"mentioned-patterns\"").nth(1).expect("patterns are collected");
    for words in ["Saltmarsh Yoke", "Heron DK", "Quay Shop", "given to me", "https://example.org/"] {
        assert!(end.contains(words), "{words}");
    }
}

#[test]
fn other_peoples_patterns_are_credited() {
    let site = site(&FILES);
    let html = page(&site, "projects/other/index.html");
    assert!(html.contains("href=\"https://example.org/cap\"") && html.contains("Quay Shop"), "{html}");
}

/// A site in a folder of its host has that folder in every address of its own.
#[test]
fn a_site_below_a_folder_links_below_it() {
    let mut files: Vec<(&str, &str)> = FILES.to_vec();
    files.push(("studio.yaml", "title: Wrackline\nurl: https://example.org/knit/\n"));
    let site = site(&files);
    for (path, text) in site.iter().filter(|(path, _)| path.ends_with(".html")) {
        for address in text.split("href=\"/").skip(1).chain(text.split("src=\"/").skip(1)) {
            assert!(address.starts_with("knit/"), "{path}: /{}", &address[..address.len().min(40)]);
        }
    }
    assert!(page(&site, "sitemap.xml").contains("<loc>https://example.org/knit/patterns/saltmarsh-yoke/</loc>"));
}

/// The designer's own proof may name what readers do not know of yet, and says so.
#[test]
fn what_is_named_and_not_linked_is_told_with_its_reference() {
    let files = [
        ("patterns/shawl.md", "---\ntitle: Secret Shawl\nready: false\n---\n"),
        ("patterns/hat.md", "---\ntitle: Reed Hat\n---\n"),
        ("yarns.yaml", "reed: { title: Reed Hat }\n"),
        ("pages/about.md", "---\ntitle: About\n---\n\nThe Secret Shawl is wet, and so is the Reed\nHat.\n"),
    ];
    let studied = crate::support::read(&files);
    let told: Vec<(&str, &str)> = studied
        .findings
        .iter()
        .map(|finding| (finding.message.as_str(), finding.help.as_deref().unwrap_or_default()))
        .collect();
    assert_eq!(
        told,
        [
            (
                "`Secret Shawl` is named and not linked",
                "write `<pattern:shawl>` in its place; it is not public yet, so readers get its title as plain words until it is"
            ),
            ("`Reed Hat` is named and not linked", "write `<pattern:hat>` or `<yarn:reed>` in its place"),
        ]
    );
}
