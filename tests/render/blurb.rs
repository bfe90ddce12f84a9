//! The text under a video: whole, within its limit, and nothing in it that readers may not see.

use crate::support::{TODAY, readers, studio};
use ballband::Joined;
use ballband::catalogue::Visibility;
use ballband::entry::value::Counted;
use ballband::entry::{Data, Entry, Kind, Note, Outlet};
use ballband::page::{PictureSizes, Shown, page_path};
use ballband::render::blurb::{Blurb, PartKind, blurb, blurbs, outlets, size};
use ballband::source::Files;
use ballband::source::disk::Disk;
use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};
use std::path::Path;

fn demo() -> Joined {
    joined(&Disk::at(Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-data")))
}

fn joined(files: &dyn Files) -> Joined {
    ballband::join(files, readers(TODAY)).unwrap()
}

fn notes(joined: &Joined) -> Vec<(&Entry, &Note)> {
    joined.catalogue.of_kind(Kind::Note).iter().map(|entry| (entry, entry.note().unwrap())).collect()
}

fn bytes(limit: u32) -> Outlet {
    Outlet { limit, counted_in: None }
}

fn of(joined: &Joined, at: usize, outlet: &Outlet) -> Blurb {
    let sizes = PictureSizes::new();
    let (entry, note) = notes(joined)[at];
    blurb(&Shown::for_one(&joined.catalogue, &sizes), entry, note, outlet)
}

/// Returns the text of the only note of a small studio, with room enough.
fn only(files: &[(&str, &str)]) -> Blurb {
    of(&joined(&studio(files)), 0, &bytes(50_000))
}

#[test]
fn every_reference_of_every_note_of_the_demo_stands_in_its_text_once() {
    let demo = demo();
    let sizes = PictureSizes::new();
    let shown = Shown::for_one(&demo.catalogue, &sizes);
    let mut seen = 0;
    for (at, (entry, note)) in notes(&demo).into_iter().enumerate() {
        let made = of(&demo, at, &bytes(50_000));
        assert!(made.left_out.is_empty() && !made.has_faulty_chapters, "{}", entry.id);
        let ends = |address: &str| made.text.lines().filter(|line| line.ends_with(&format!(": {address}"))).count();
        for mention in entry.mentions.iter().filter(|mention| !mention.private) {
            let other = demo.catalogue.entry(&mention.to).unwrap();
            let page = format!("https://wrackline.example/{}", page_path(&other.id));
            let address = match &other.data {
                Data::Person(person) => person.url.as_ref().map_or(page, |url| url.as_str().to_owned()),
                _ => page,
            };
            // A design on the way stands with its call or among those on the way; another test says which.
            let wanted = usize::from(demo.catalogue.for_readers(other) == Visibility::Public);
            assert_eq!(ends(&address), wanted, "{} in {}:\n{}", mention.to, entry.id, made.text);
            seen += wanted;
        }
        for heading in entry.prose.headings.iter().filter(|_| note.video.is_some()) {
            let (time, title) = (heading.chapter.unwrap(), shown.worded(&heading.title));
            assert_eq!(made.text.lines().filter(|line| **line == format!("{time} {title}")).count(), 1, "{title}");
        }
        assert_eq!(ends(&format!("https://wrackline.example/{}", page_path(&entry.id))), 1, "{}", made.text);
    }
    assert!(seen > 200, "only {seen} references were seen");
}

/// What the demo's lines of disclosure begin with.
const TOLD: [&str; 4] = ["Ad: ", "Lent to me: ", "Friends of mine: ", "My own shop: "];

/// Whatever the limit, the text keeps it, holds only whole lines of the whole text in their order, and gives up nothing while
/// something less important is still there.
#[test]
fn a_text_keeps_its_limit_and_gives_up_the_least_important_first() {
    let demo = demo();
    let count = notes(&demo).len();
    let whole: Vec<Blurb> = (0..count).map(|at| of(&demo, at, &bytes(50_000))).collect();
    let mut runner = TestRunner::new_with_rng(
        Config { cases: 400, failure_persistence: None, ..Config::default() },
        proptest::test_runner::TestRng::deterministic_rng(proptest::test_runner::RngAlgorithm::ChaCha),
    );
    let outlets = (200_u32..5_000, prop::bool::ANY).prop_map(|(limit, in_bytes)| Outlet {
        limit,
        counted_in: Some(if in_bytes { Counted::Bytes } else { Counted::Characters }),
    });
    runner
        .run(&(0..count, outlets), |(at, outlet)| {
            let made = of(&demo, at, &outlet);
            let counted = outlet.counted_in.unwrap();
            let length = match counted {
                Counted::Bytes => made.text.len(),
                Counted::Characters => made.text.chars().count(),
            };
            prop_assert!(length <= outlet.limit as usize && length == size(&made.text, counted));
            // What is disclosed goes line by line with its things, title by title; another test says how.
            let is_told = |line: &&str| !TOLD.iter().any(|words| line.starts_with(words));
            let mut all = whole[at].text.lines();
            for line in made.text.lines().filter(is_told) {
                prop_assert!(all.any(|one| one == line), "{line}");
            }
            let fits = size(&whole[at].text, counted) <= outlet.limit as usize;
            prop_assert_eq!(made.left_out.is_empty(), fits);
            prop_assert!(made.left_out.iter().all(|left| left.part != PartKind::Disclosures));
            let place = |part: PartKind| PartKind::BY_IMPORTANCE.iter().position(|one| *one == part).unwrap();
            let most_important = made.left_out.iter().map(|left| place(left.part)).min().unwrap_or(usize::MAX);
            for part in PartKind::BY_IMPORTANCE.into_iter().filter(|part| place(*part) > most_important) {
                if let Some(heading) = part.heading() {
                    prop_assert!(!made.text.lines().any(|line| line == heading), "{heading}");
                }
            }
            // What was left out and what stands there are together the whole.
            let gone: usize = made.left_out.iter().map(|left| left.lines.len()).sum();
            let lines = |text: &str| {
                let is_line = |line: &&str| {
                    !line.is_empty()
                        && is_told(line)
                        && !PartKind::BY_IMPORTANCE.iter().any(|part| part.heading() == Some(line))
                };
                text.lines().filter(is_line).count()
            };
            prop_assert_eq!(lines(&made.text) + gone, lines(&whole[at].text));
            Ok(())
        })
        .unwrap();
}

#[test]
fn the_same_studio_gives_the_same_bytes() {
    let (first, second) = (demo(), demo());
    for at in 0..notes(&first).len() {
        assert_eq!(of(&first, at, &bytes(900)), of(&second, at, &bytes(900)));
    }
}

/// An é is two bytes of UTF-8 and one character; a ball of yarn (U+1F9F6) four and one.
#[test]
fn bytes_and_characters_are_counted_apart() {
    let note = "---\ntitle: A week\nsummary: Éééé 🧶\n---\n";
    let studio_yaml = "title: W\nurl: https://w.example\noutlets:\n  film: { limit: 14 }\n  letter: { limit: 14, counted in: characters }\n  post: { limit: 40, counted in: characters }\n";
    let joined = joined(&studio(&[("studio.yaml", studio_yaml), ("journal/2026-11-20.md", note)]));
    let sizes = PictureSizes::new();
    let (entry, note) = notes(&joined)[0];
    let outlets = outlets(&joined.catalogue.studio);
    let made = blurbs(&Shown::for_one(&joined.catalogue, &sizes), entry, note, &outlets);
    // 13 bytes and a line end; the address is far beyond the limit of each.
    let named: Vec<(&str, &str)> =
        made.iter().flat_map(|one| &one.outlets).map(|(name, size)| (name.as_str(), size.as_str())).collect();
    assert_eq!(
        named,
        [
            ("film", "14 bytes, 7 characters of 14 bytes"),
            ("letter", "14 bytes, 7 characters of 14 characters"),
            ("post", "14 bytes, 7 characters of 40 characters")
        ]
    );
    assert_eq!(made.len(), 1, "alike texts are printed once");
    assert_eq!(made[0].blurb.text, "Éééé 🧶\n");
    assert_eq!(of(&joined, 0, &bytes(13)).text, "");
}

#[test]
fn without_outlets_the_limit_of_the_video_counts() {
    let limits = |text: &str| -> Vec<(String, u32)> {
        let joined = joined(&studio(&[("studio.yaml", text)]));
        outlets(&joined.catalogue.studio).into_iter().map(|(name, outlet)| (name, outlet.limit)).collect()
    };
    assert_eq!(limits("title: W\nurl: https://w.example\n"), [("video".to_owned(), 5000)]);
    assert_eq!(limits("title: W\nurl: https://w.example\nvideo: { limit: 900 }\n"), [("video".to_owned(), 900)]);
}

const SECRET: [(&str, &str); 5] = [
    (
        "journal/2026-11-20.md",
        "---\ntitle: A week\nsummary: Of gifts.\nwearing: [project:gift]\nlinks: [ { to: zzsecret-mill, how: paid }, { to: mill, how: gifted } ]\nstory: [ { whose: zzsecret of the hills, leave: 2026-11-18, credit: A reader, text: See <pattern:yoke>. } ]\nprivate: zzsecret\n---\n\nThe [gift](project:gift), [a yoke](pattern:yoke), <person:mill>, [more](note:2026-12-04) and [that](pattern:later).\n",
    ),
    (
        "projects/gift.md",
        "---\ntitle: A hat\npattern: { title: Cap, by: zzsecret-mill, url: 'https://cap.example/' }\nmade for: { who: zzsecret-wyn, household: zzsecret-farm }\nvariant: { brim: zzsecret-brim }\n---\n",
    ),
    ("people.yaml", "zzsecret-mill: { title: zzsecret, ready: false }\nmill: { title: The Mill }\n"),
    ("patterns/yoke.md", "---\ntitle: Reed Yoke\nstage: sample\ntesters: [ { name: zzsecret } ]\n---\nzzsecret\n"),
    ("patterns/later.md", "---\ntitle: zzsecret-later\npublished: 2026-12-24\n---\n"),
];

#[test]
fn nothing_private_is_in_the_text() {
    let early = ("journal/2026-12-04.md", "---\ntitle: zzsecret\n---\n");
    let files: Vec<_> = SECRET.into_iter().chain([early]).collect();
    let made = only(&files);
    assert!(!made.text.contains("zzsecret"), "{}", made.text);
    let wanted = "Of gifts.\n\nGiven to me: The Mill\n\nMy patterns\nReed Yoke, on the way: https://wrackline.example/patterns/on-the-way/#yoke\n\nPatterns by others\nCap: https://cap.example/\n\nProjects\nA hat: https://wrackline.example/projects/gift/\n\nMakers, shops and people\nThe Mill (given to me): https://wrackline.example/people/mill/\n\nStory: A reader\n\nThe whole note: https://wrackline.example/journal/2026-11-20/\n";
    assert_eq!(made.text, wanted);
}

/// A note for Friday speaks of a pattern that is out on Friday: the text goes out with it.
#[test]
fn the_text_is_of_the_notes_own_day() {
    let note = |day: &str| format!("---\ntitle: Out\ndate: {day}\n---\n\n<pattern:later> is out.\n");
    let later = "---\ntitle: Later\npublished: 2026-12-24\n---\n";
    let linked =
        |day: &str| only(&[("patterns/later.md", later), ("journal/out.md", &note(day))]).text.contains("Later: ");
    assert!(linked("2026-12-24") && !linked("2026-12-23") && !linked("2026-11-20"));
}

/// Each of these drops the whole list where videos are watched (see `tests/cases/notes.txt`), so none of it is pasted.
#[test]
fn chapters_with_a_fault_are_left_out_and_it_is_said() {
    let note = |times: [&str; 3], length: &str| {
        let headings: String = times.map(|time| format!("## {time} So\n\n")).concat();
        format!("---\ntitle: A week\nvideo: {{ url: 'https://v.example/1', length: '{length}' }}\n---\n\n{headings}")
    };
    let made = |times, length| only(&[("journal/2026-11-20.md", &note(times, length))]);
    for (times, length) in [
        (["0:01", "2:00", "3:00"], "25:12"),
        (["0:00", "2:00", "2:05"], "25:12"),
        (["0:00", "2:00", "25:12"], "25:12"),
        (["0:00", "3:00", "2:00"], "25:12"),
    ] {
        let made = made(times, length);
        assert!(made.has_faulty_chapters && !made.text.contains("So"), "{times:?}: {}", made.text);
        assert!(made.lacks()[0].contains("the chapters are left out"));
    }
    let two = "---\ntitle: A week\nvideo: { url: 'https://v.example/1' }\n---\n\n## 0:00 So\n\n## 1:00 So\n";
    assert!(only(&[("journal/2026-11-20.md", two)]).has_faulty_chapters);
    // A time in minutes is written as it should be.
    let good = made(["0:00", "2:00", "75:10"], "1:25:12");
    assert!(!good.has_faulty_chapters && good.text.contains("0:00 So\n2:00 So\n1:15:10 So\n"), "{}", good.text);
    // What she has judged for herself is pasted.
    let own = "title: W\nurl: https://w.example\nchecks: { chapters-few: off }\n";
    let judged = only(&[("studio.yaml", own), ("journal/2026-11-20.md", two)]);
    assert!(judged.text.contains("0:00 So\n1:00 So\n"), "{}", judged.text);
}

#[test]
fn what_she_earns_by_comes_first_and_each_thing_says_it_again() {
    let note = "---\ntitle: A week\nsummary: A week of wool.\nlinks:\n  - { to: lane, how: friend }\n  - { to: mill, how: gifted }\n  - { to: shop, how: bought }\n  - { to: far, how: affiliate }\n  - { to: quay, how: own }\n---\n\n[a yarn](https://far.example/heron?by=me), [two\nwords](https://else.example/a%20b), <https://else.example/> and [it again](https://else.example/).\n";
    let people = "lane: { title: Lane }\nmill: { title: Mill }\nshop: { title: Shop }\nfar: { title: Far, url: 'https://far.example' }\nquay: { title: Quay }\n";
    let text = only(&[("people.yaml", people), ("journal/2026-11-20.md", note)]).text;
    assert!(
        text.starts_with("A week of wool.\n\nI earn if you buy through this link: Far\nGiven to me: Mill\nFrom friends of mine: Lane\n\nMakers"),
        "{text}"
    );
    assert!(text.contains("\nShop (bought by me): https://"), "{text}");
    let elsewhere = "Elsewhere\nA yarn (I earn if you buy through this link): https://far.example/heron?by=me\nTwo words: https://else.example/a%20b\nhttps://else.example/\n\n";
    assert!(text.contains(elsewhere), "{text}");
}

/// What is disclosed of a thing goes when the thing's own line does: `this link` would point at nothing. While one thing is left,
/// so is what is said of it, even when the note's own words have gone.
#[test]
fn what_is_disclosed_stays_as_long_as_the_thing() {
    let note = "---\ntitle: A week\nsummary: A week of wool.\nlinks:\n  - { to: far, how: affiliate }\n  - { to: 'pattern:cap', how: affiliate }\n  - { to: 'project:hat', how: gifted }\n---\n";
    let files = [
        ("people.yaml", "far: { title: Far, url: 'https://far.example' }\n"),
        ("patterns/cap.md", "---\ntitle: Cap\npublished: 2026-03-14\n---\n"),
        ("projects/hat.md", "---\ntitle: Hat\npattern: pattern:cap\n---\n"),
        ("journal/2026-11-20.md", note),
    ];
    let joined = joined(&studio(&files));
    let whole = of(&joined, 0, &bytes(5000)).text;
    assert!(
        whole.starts_with(
            "A week of wool.\n\nI earn if you buy through this link: Far, Cap\nGiven to me: Hat\n\nMy patterns\n"
        ),
        "{whole}"
    );
    for limit in 0..=u32::try_from(whole.len()).unwrap() {
        let text = of(&joined, 0, &bytes(limit)).text;
        let told = |words: &str| text.lines().find(|line| line.starts_with(words)).unwrap_or_default().to_owned();
        let things = ["Far (", "Cap ("].map(|thing| text.lines().any(|line| line.starts_with(thing)));
        let wanted = match things {
            [true, true] => "I earn if you buy through this link: Far, Cap",
            [true, false] => "I earn if you buy through this link: Far",
            [false, true] => "I earn if you buy through this link: Cap",
            [false, false] => "",
        };
        assert_eq!(told("I earn"), wanted, "{limit}: {text}");
        assert_eq!(
            told("Given to me:").is_empty(),
            !text.lines().any(|line| line.starts_with("Hat (")),
            "{limit}: {text}"
        );
    }
}

/// A design on the way is read of on the page of its call while one can answer that on the note's day, and among the others else.
#[test]
fn a_design_on_the_way_leads_to_its_call_while_that_is_open() {
    let design = "---\ntitle: Shoal Mittens\nstage: test knit\ntest knit: { opens: 2026-11-20, closes: 2026-12-31, apply: 'https://example.org/apply' }\n---\n";
    let text = |day: &str, design: &str| {
        let note = format!("---\ntitle: Out\ndate: {day}\nsummary: So.\n---\n\n<pattern:shoal> is on the way.\n");
        only(&[("patterns/shoal.md", design), ("journal/out.md", &note)]).text
    };
    let call =
        "My patterns\nShoal Mittens, call for test knitters: https://wrackline.example/patterns/shoal/test-knit/\n";
    let way = "My patterns\nShoal Mittens, on the way: https://wrackline.example/patterns/on-the-way/#shoal\n";
    for (day, wanted) in [("2026-11-25", call), ("2026-12-31", call), ("2027-01-08", way)] {
        assert!(text(day, design).contains(wanted), "{day}: {}", text(day, design));
    }
    let later = design.replace("opens: 2026-11-20", "opens: 2026-12-11");
    assert!(text("2026-11-27", &later).contains(way) && text("2026-12-11", &later).contains(call));
    assert!(text("2026-11-25", &design.replace("test knit\n", "sample\n")).contains(way));
    assert!(!text("2026-11-25", &design.replace("stage", "ready: false\nstage")).contains("Shoal"));
}
