//! Nothing slips out: marked words in every private place, and a search through every byte of the site.

use crate::support::{readers, studio};

const MARK: &str = "zzsecret";

const PATTERN: &str = "---
title: Saltmarsh Yoke
stage: published
published: 2026-03-14
sizes: S (M, L)
yarn:
  - { colour: MC, yarn: heron-dk, needs: '820 (905, 990) m' }
testers:
  - { name: zzsecret-tester, size: M, yarn: gull-worsted, used: { MC: 901 m }, share: false }
private:
  zzsecret-key: zzsecret-value
---

A yoke. See [the other yoke](pattern:hidden-yoke) and [what comes](note:2026-12-01).
";

const PROJECT: &str = "---
title: Saltmarsh for the ferry
pattern: hidden-yoke
variant: { border: zzsecret-border }
made for: { who: zzsecret-who, household: zzsecret-household, by: 2026-12-24 }
private: [zzsecret-list]
---

On the ferry.
";

const YARNS: &str = "heron-dk:
  title: Heron DK
  on hand: { zzsecret-shade: 6 skeins }
  private: zzsecret-yarn
gull-worsted:
  title: zzsecret-yarn-not-ready
  ready: false
";

/// What would give away a yarn that is not ready: its put-up, its weight, its shade, its maker.
#[test]
fn a_yarn_that_is_not_ready_gives_nothing_away() {
    let yarns = "hidden:\n  title: zzsecret\n  ready: false\n  weight: Lace\n  put-up: 703 m / 45 g\n  shades: { zzsecret-shade: \"#123456\" }\n";
    let pattern = "---\ntitle: Hat\npublished: 2026-03-14\nyarn: [ { yarn: hidden, shade: zzsecret-shade, needs: 700 m } ]\n---\n";
    let project =
        "---\ntitle: Mine\npattern: hat\nyarn: [ { yarn: hidden, shade: zzsecret-shade, used: 45 g } ]\n---\n";
    let site =
        crate::support::site(&[("yarns.yaml", yarns), ("patterns/hat.md", pattern), ("projects/mine.md", project)]);
    for (path, text) in &site {
        assert!(!text.to_lowercase().contains(MARK) && !text.contains("#123456"), "{path}");
        if path.ends_with(".html") {
            assert!(!text.contains("703") && !text.contains("Lace") && !text.contains("1 skein"), "{path}");
        }
    }
}

/// A person who is not ready is named nowhere, not even by key.
#[test]
fn a_person_who_is_not_ready_is_not_named() {
    let people = "zzsecret-bob:\n  title: zzsecret\n  ready: false\n";
    let pattern = "---\ntitle: Hat\npublished: 2026-03-14\nafter: [ { what: reeds, source: zzsecret-bob } ]\nsold at: [ { place: zzsecret-bob, url: \"https://zzsecret.example\", price: 7 GBP } ]\n---\n";
    for (path, text) in crate::support::site(&[("people.yaml", people), ("patterns/hat.md", pattern)]) {
        assert!(!text.contains(MARK), "{path}");
    }
}

const FILES: [(&str, &str); 9] = [
    ("patterns/saltmarsh-yoke.md", PATTERN),
    ("projects/ferry.md", PROJECT),
    ("yarns.yaml", YARNS),
    (
        "patterns/hidden-yoke.md",
        "---\ntitle: zzsecret-title\nready: false\nsummary: zzsecret-summary\npicture: photos/zzsecret.jpg\nalt: zzsecret\n---\n\nzzsecret-body\n",
    ),
    ("patterns/future.md", "---\ntitle: zzsecret-future\nstage: published\npublished: 2027-01-01\n---\n"),
    (
        "patterns/sample.md",
        "---\ntitle: Gansey\nstage: sample\nsizes: S (M)\nyarn: [ { yarn: heron-dk, needs: '111 (222) m' } ]\nnotions: [zzsecret-notion]\n---\n\nzzsecret-draft\n",
    ),
    (
        "journal/2026-12-01.md",
        "---\ntitle: zzsecret-note\nworked on: [ { project: ferry, progress: 99% } ]\n---\n\n<pattern:saltmarsh-yoke> zzsecret\n",
    ),
    ("people.yaml", "mill:\n  title: zzsecret-mill\n  ready: false\n"),
    ("projects/future.md", "---\ntitle: zzsecret-project\nstarted: 2027-01-01\n---\n"),
];

#[test]
fn no_marked_word_is_anywhere_in_the_site() {
    // Any bytes will do for the hidden photo: it must not even be read.
    let files = studio(&FILES).with("photos/zzsecret.jpg", "zzsecret");
    let studied = ballband::study(&files, readers("2026-11-25")).unwrap();
    assert!(studied.findings.is_empty(), "{:?}", studied.findings);
    assert!(studied.photos.is_empty());
    let (site, faults) = ballband::make(&studied);
    assert!(faults.is_empty(), "{faults:?}");
    assert!(site.len() > 20);
    for file in &site {
        let text = String::from_utf8_lossy(&file.bytes).to_lowercase();
        assert!(!text.contains(MARK) && !file.path.contains(MARK), "{}", file.path);
        assert!(!text.contains("household") && !text.contains("99%"), "{}", file.path);
    }
}

/// The same studio a year later holds what was only early: the test would notice if nothing were ever shown.
#[test]
fn what_was_only_early_is_there_when_its_day_comes() {
    let files = studio(&FILES).with("photos/zzsecret.jpg", "zzsecret");
    let studied = ballband::study(&files, readers("2027-11-25")).unwrap();
    let (site, _) = ballband::make(&studied);
    let all: String = site.iter().map(|file| String::from_utf8_lossy(&file.bytes).into_owned()).collect();
    for word in ["zzsecret-future", "zzsecret-note", "zzsecret-project"] {
        assert!(all.contains(word), "{word}");
    }
    for word in [
        "zzsecret-tester",
        "zzsecret-who",
        "zzsecret-household",
        "zzsecret-border",
        "zzsecret-shade",
        "zzsecret-value",
        "zzsecret-title",
    ] {
        assert!(!all.contains(word), "{word}");
    }
}

#[test]
fn a_reference_to_what_is_not_public_shows_plain_words() {
    let site = crate::support::site(
        &FILES[..3]
            .iter()
            .chain(&FILES[6..7])
            .copied()
            .chain([("patterns/hidden-yoke.md", "---\ntitle: Hidden\nready: false\n---\n")])
            .collect::<Vec<_>>(),
    );
    let html = crate::support::page(&site, "patterns/saltmarsh-yoke/index.html");
    assert!(html.contains("See the other yoke and what comes."), "{html}");
}

#[test]
fn a_design_on_the_way_shows_its_stage_and_no_numbers() {
    let site = crate::support::site(&[FILES[2], FILES[5]]);
    let html = crate::support::page(&site, "patterns/on-the-way/index.html");
    assert!(html.contains("Gansey") && html.contains("id=\"sample\""), "{html}");
    assert!(site.iter().all(|(path, text)| !path.contains("patterns/sample") && !text.contains("222 m")));
}

/// What a writer hides in a comment of her text is not in the page's source either, nor in the feed.
#[test]
fn comments_in_a_text_stay_with_her() {
    let note = "---\ntitle: Reeds\n---\n\nIt rained. <!-- zzsecret --> It stopped.\n\n<!--\nzzsecret\n\nzzsecret again\n-->\n\nThe end.\n";
    let site = crate::support::site(&[("journal/2026-11-20.md", note)]);
    assert!(crate::support::page(&site, "journal/2026-11-20/index.html").contains("The end."));
    for (path, text) in &site {
        assert!(!text.contains(MARK), "{path}");
    }
}
