//! What is made again after a save, counted.

use crate::support::{STUDIO, day};
use ballband::catalogue::{Eyes, View};
use ballband::preview::server::Pages;
use ballband::preview::{Live, Preview, Update};
use ballband::source::FilePath;
use ballband::source::memory::Memory;
use std::collections::BTreeSet;
use std::sync::Arc;

const VIEW: fn() -> View = || View { today: day("2026-11-25"), eyes: Eyes::Designer };

fn note(at: usize, title: &str, words: &str) -> String {
    format!("---\ntitle: {title}\n---\n\nOn the needles this week, <pattern:hat-{at}>. {words}\n")
}

/// A studio of twenty notes, each of which mentions a pattern of its own.
fn studio() -> Memory {
    let mut files = Memory::default().with("studio.yaml", STUDIO);
    for at in 1..=20 {
        let pattern = format!("---\ntitle: Hat {at}\npublished: 2026-01-{at:02}\n---\n");
        files = files.with(&format!("patterns/hat-{at}.md"), pattern);
        files = files.with(&format!("journal/2026-10-{at:02}.md"), note(at, &format!("Note {at}"), ""));
    }
    files
}

/// Asks for every page and returns the names of those whose bytes are others than before.
fn ask_for_all(preview: &mut Preview, before: &mut Vec<(String, Vec<u8>)>) -> Vec<String> {
    let names = preview.names().into_iter().filter(|name| name.ends_with(".html"));
    let now: Vec<(String, Vec<u8>)> =
        names.map(|name| (name.clone(), preview.file(&name).unwrap().unwrap().to_vec())).collect();
    let other = now.iter().filter(|page| !before.contains(page)).map(|(name, _)| name.clone()).collect();
    *before = now;
    other
}

/// Saves a file, asks for every page, and returns those that differ, how many were filled, and how many worked out.
fn save(
    preview: &mut Preview,
    files: &mut Memory,
    before: &mut Vec<(String, Vec<u8>)>,
    path: &str,
    text: String,
) -> (Vec<String>, usize, usize) {
    let file = FilePath::new(path).unwrap();
    files.files.insert(file.clone(), text.into_bytes());
    let work = preview.work();
    preview.update(files, &BTreeSet::from([file]), VIEW()).unwrap();
    let other = ask_for_all(preview, before);
    let now = preview.work();
    (other, now.filled - work.filled, now.worked_out - work.worked_out)
}

#[test]
fn a_saved_note_makes_again_only_what_shows_it() {
    let mut files = studio();
    let mut preview = Preview::new(&files, VIEW()).unwrap();
    let before = &mut Vec::new();
    let pages = ask_for_all(&mut preview, before).len();
    assert_eq!((preview.work().filled, pages), (50, 50), "40 entries and 10 pages of the site's own");

    // Other words in the text are seen on the note's own page; its opening stands in lists too, the end of it does not.
    let long = "Words enough for a summary to end before they do, so that what is written after them stands nowhere \
                else on the site, however much more of it there may be in the weeks to come. ";
    let words = |end: &str| note(7, "Note 7", &format!("{long}{end}"));
    save(&mut preview, &mut files, before, "journal/2026-10-07.md", words("One."));
    let (other, filled, worked_out) =
        save(&mut preview, &mut files, before, "journal/2026-10-07.md", words("Another."));
    assert_eq!(other, ["journal/2026-10-07/index.html"]);
    assert_eq!(filled, 1);
    // Looked into: what lists notes, the notes in their order, and the pattern it mentions.
    assert!(worked_out <= 24, "{worked_out} of {pages}");

    // Another title is seen in the journal, at its neighbours and at the pattern that it mentions.
    let (other, filled, _) =
        save(&mut preview, &mut files, before, "journal/2026-10-07.md", note(7, "Reeds", &format!("{long}Another.")));
    assert_eq!(
        other,
        [
            "journal/index.html",
            "patterns/hat-7/index.html",
            "journal/2026-10-06/index.html",
            "journal/2026-10-07/index.html",
            "journal/2026-10-08/index.html"
        ]
    );
    assert_eq!(filled, 5);

    // The same bytes again are nothing at all.
    let same = FilePath::new("journal/2026-10-07.md").unwrap();
    assert_eq!(preview.update(&files, &BTreeSet::from([same]), VIEW()).unwrap(), Update::Nothing);
}

#[test]
fn a_half_typed_file_leaves_the_last_good_page() {
    let mut files = studio();
    let mut preview = Preview::new(&files, VIEW()).unwrap();
    let page = "patterns/hat-3/index.html";
    let good = preview.file(page).unwrap().unwrap();
    let file = FilePath::new("patterns/hat-3.md").unwrap();
    let save = |preview: &mut Preview, files: &mut Memory, text: &str| {
        files.files.insert(file.clone(), text.as_bytes().to_vec());
        preview.update(files, &BTreeSet::from([file.clone()]), VIEW()).unwrap();
    };
    save(&mut preview, &mut files, "---\ntitle: Hat three\npublshed: 2026-01-03\n---\n");
    assert_eq!(preview.file(page).unwrap().unwrap(), good);
    let told: Vec<_> = preview.findings().iter().map(|finding| finding.code.name).collect();
    assert_eq!(told, ["unknown-key"]);
    assert!(preview.kept.is_any_old());
    // Another mistake in a file that comes first by name: what was saved last is told first.
    let other = FilePath::new("journal/2026-10-01.md").unwrap();
    let both = files.clone().with("journal/2026-10-01.md", "---\ntitle: One\nwaering: []\n---\n");
    preview.update(&both, &BTreeSet::from([other.clone()]), VIEW()).unwrap();
    let first = |preview: &Preview| preview.first_error(&preview.findings()).unwrap().at.file.to_string();
    assert_eq!(first(&preview), "journal/2026-10-01.md");
    preview.update(&files, &BTreeSet::from([other]), VIEW()).unwrap();
    assert_eq!(first(&preview), "patterns/hat-3.md");
    save(&mut preview, &mut files, "---\ntitle: Hat three\npublished: 2026-01-03\n---\n");
    assert!(preview.findings().is_empty());
    assert!(String::from_utf8_lossy(&preview.file(page).unwrap().unwrap()).contains("Hat three"));
    assert!(!preview.kept.is_any_old());
}

#[test]
fn what_readers_cannot_see_is_there_with_a_ribbon() {
    let files = Memory::default()
        .with("studio.yaml", STUDIO)
        .with("patterns/early.md", "---\ntitle: Early\nstage: sample\n---\n")
        .with("patterns/later.md", "---\ntitle: Later\npublished: 2027-01-05\n---\n")
        .with("projects/gift.md", "---\ntitle: Later still\nstarted: 2026-10-01\nreveal: 2026-12-25\n---\n")
        .with("pages/aside.md", "---\ntitle: Aside\nready: false\n---\n")
        .with("pages/about.md", "---\ntitle: About\n---\n");
    let mut preview = Preview::new(&files, VIEW()).unwrap();
    let ribbon = |file: &str| preview.ribbon(file);
    assert_eq!(ribbon("patterns/early/index.html").unwrap(), "Not on the site: a design at the stage sample");
    assert_eq!(ribbon("patterns/later/index.html").unwrap(), "Not on the site before 5 January 2027");
    assert_eq!(ribbon("projects/gift/index.html").unwrap(), "Not on the site before 25 December 2026");
    assert_eq!(ribbon("aside/index.html").unwrap(), "Not on the site: it is not ready");
    assert_eq!(ribbon("about/index.html"), None);
    assert_eq!(preview.hidden(), ["/patterns/early/", "/patterns/later/", "/projects/gift/", "/aside/"]);
    assert!(preview.file("patterns/early/index.html").unwrap().is_some());
    let studied = ballband::study(&files, View::of_readers(day("2026-11-25"))).unwrap();
    for file in ballband::make(&studied).0 {
        let text = String::from_utf8_lossy(&file.bytes).into_owned();
        assert!(!text.contains("Later") && !text.contains("Aside") && !text.contains("ballband-live"), "{}", file.path);
    }
}

#[test]
fn a_template_that_fails_leaves_the_last_good_page_until_it_is_mended() {
    let mut files = studio();
    let mut preview = Preview::new(&files, VIEW()).unwrap();
    let page = "patterns/hat-3/index.html";
    let good = preview.file(page).unwrap().unwrap();
    let template = "themes/leaflet/templates/pattern.html";
    let mut save = |preview: &mut Preview, path: &str, text: Option<&str>| {
        let file = FilePath::new(path).unwrap();
        match text {
            Some(text) => drop(files.files.insert(file.clone(), text.as_bytes().to_vec())),
            None => drop(files.files.remove(&file)),
        }
        preview.update(&files, &BTreeSet::from([file]), VIEW()).unwrap();
    };
    let told = |preview: &Preview| preview.findings().iter().map(|finding| finding.code.name).collect::<Vec<_>>();
    let failing = "{% extends \"frame.html\" %}{% block main %}{{ nobody.knows }}{% endblock %}";
    save(&mut preview, template, Some(failing));
    // It is known of every page before any is asked for.
    let message = preview.findings()[0].message.clone();
    assert!(message.ends_with("; 19 more pages the same"), "{message}");
    let look = preview.look(page);
    assert_eq!(preview.file(page).unwrap().unwrap(), good);
    assert_eq!(told(&preview), ["template-fault"]);
    assert_eq!(preview.look(page), look, "the same page is no news");
    // A photo comes: everything is looked at again, the page shows what it showed, and the fault is still one.
    save(&mut preview, "photos/new.txt", Some("-"));
    assert_eq!(preview.file(page).unwrap().unwrap(), good);
    assert_eq!(told(&preview), ["template-fault"]);
    // Mended, it is told no more, whether or not anybody asks for the page.
    save(&mut preview, template, None);
    assert_eq!(told(&preview), Vec::<&str>::new());
    assert_eq!(preview.file(page).unwrap().unwrap(), good);
}

#[test]
fn a_file_that_is_no_text_leaves_the_last_good_page() {
    let mut files = studio();
    let mut preview = Preview::new(&files, VIEW()).unwrap();
    let page = "patterns/hat-3/index.html";
    let good = preview.file(page).unwrap().unwrap();
    let file = FilePath::new("patterns/hat-3.md").unwrap();
    let mut save = |preview: &mut Preview, bytes: &[u8]| {
        files.files.insert(file.clone(), bytes.to_vec());
        preview.update(&files, &BTreeSet::from([file.clone()]), VIEW()).unwrap();
        preview.findings().iter().map(|finding| finding.code.name).collect::<Vec<_>>()
    };
    // Latin-1, then words without front matter, then good again.
    assert_eq!(save(&mut preview, b"---\ntitle: Hat pl\xe9\n---\n"), ["not-utf-8"]);
    assert_eq!(preview.file(page).unwrap().unwrap(), good);
    assert!(preview.kept.is_any_old());
    assert_eq!(save(&mut preview, b"words\n").len(), 1);
    assert_eq!(preview.file(page).unwrap().unwrap(), good);
    assert_eq!(save(&mut preview, b"---\ntitle: Hat again\npublished: 2026-01-03\n---\n"), [""; 0]);
    assert!(String::from_utf8_lossy(&preview.file(page).unwrap().unwrap()).contains("Hat again"));
    assert!(!preview.kept.is_any_old());
}

#[test]
fn a_studio_whose_own_file_goes_is_told_of_and_shown_as_it_was() {
    let mut files = studio();
    let mut preview = Preview::new(&files, VIEW()).unwrap();
    let page = "index.html";
    let good = preview.file(page).unwrap().unwrap();
    files.files.remove(&FilePath::studio());
    preview.update(&files, &BTreeSet::from([FilePath::studio()]), VIEW()).unwrap();
    assert_eq!(preview.findings()[0].code.name, "studio-missing");
    assert!(preview.kept.is_any_old());
    assert_eq!(preview.file(page).unwrap().unwrap(), good);
}

#[test]
fn a_file_without_entries_is_told_of() {
    let files = studio();
    let mut preview = Preview::new(&files, VIEW()).unwrap();
    let stray = FilePath::new("aside.md").unwrap();
    let with = files.clone().with("aside.md", "Words.\n");
    assert_ne!(preview.update(&with, &BTreeSet::from([stray.clone()]), VIEW()).unwrap(), Update::Nothing);
    assert_eq!(preview.findings().len(), 1);
    assert_ne!(preview.update(&files, &BTreeSet::from([stray]), VIEW()).unwrap(), Update::Nothing);
    assert!(preview.findings().is_empty());
}

#[test]
fn a_site_in_a_folder_of_its_host_is_shown_there() {
    let files = studio().with("studio.yaml", "title: Wrackline\nurl: https://host.example/knit\n");
    let live = Live::new(files, Arc::default(), VIEW()).unwrap();
    let asked = |path: &str| {
        let answer = live.answer(path);
        (answer.status, answer.location)
    };
    assert_eq!(live.home(), "/knit/");
    assert_eq!(asked("/"), (301, Some("/knit/".to_owned())));
    assert_eq!(asked("/knit/patterns/hat-3/"), (200, None));
    assert_eq!(asked("/knit/patterns/hat-3"), (301, Some("/knit/patterns/hat-3/".to_owned())));
    assert_eq!(asked("/patterns/hat-3/"), (404, None));
    assert_eq!(asked("/desk"), (301, Some("/desk/".to_owned())));
    assert_eq!(asked("/desk/"), (200, None));
}

/// The desk's calendar is the designer's own: it is served here and is in no site. A call that is not open yet can be looked at.
#[test]
fn the_desks_calendar_and_a_coming_call_are_only_here() {
    let gift = "---\ntitle: Scarf\nmade for: { who: Ann, by: 2026-12-24 }\n---\n";
    let call = "---\ntitle: Fish\nstage: test knit\ntest knit: { opens: 2026-12-01, closes: 2026-12-31, sizes wanted: 2, apply: \"https://example.org/a\" }\n---\n";
    let files = studio().with("projects/scarf.md", gift).with("patterns/fish.md", call);
    let live = Live::new(files.clone(), Arc::default(), VIEW()).unwrap();
    let asked = |path: &str| {
        let answer = live.answer(path);
        (answer.status, answer.kind, String::from_utf8_lossy(&answer.body).into_owned())
    };
    let (status, kind, calendar) = asked("/desk/calendar.ics");
    assert_eq!((status, kind), (200, "text/calendar; charset=utf-8"));
    assert!(calendar.contains("SUMMARY:Scarf for Ann must be there") && calendar.contains("Test knit of Fish opens"));
    let (_, _, public) = asked("/calendar.ics");
    assert!(!public.contains("Scarf") && !public.contains("Fish") && public.contains("Hat 3 is published"), "{public}");
    let (status, _, page) = asked("/patterns/fish/test-knit/");
    assert!(status == 200 && page.contains("Not on the site before 1 December 2026"), "{page}");
    assert!(page.contains("Applications open on 1 December 2026."), "{page}");
    let studied = ballband::study(&files, View::of_readers(day("2026-11-25"))).unwrap();
    let (site, _) = ballband::make(&studied);
    assert!(!site.iter().any(|file| file.path.contains("test-knit") || file.path.contains("desk")));
}

/// Whom a thing is for is looked for anew in texts that say it, whatever they link.
#[test]
fn a_new_private_name_is_found_in_texts_that_were_not_saved() {
    let about = "---\ntitle: About\n---\n\nI knit for Carys *Ollerton* and others.\n";
    let mut files = studio().with("pages/about.md", about);
    let mut preview = Preview::new(&files, VIEW()).unwrap();
    let mut told = |path: &str, text: &str| {
        let file = FilePath::new(path).unwrap();
        files.files.insert(file.clone(), text.as_bytes().to_vec());
        preview.update(&files, &BTreeSet::from([file]), VIEW()).unwrap();
        let findings = preview.findings();
        findings.iter().map(|finding| format!("{} {}", finding.code.name, finding.at.file)).collect::<Vec<_>>()
    };
    let secret = |who: &str| format!("---\ntitle: Socks\nmade for: {{ who: {who} }}\n---\n");
    let named = ["gift-named pages/about.md"];
    assert!(told("projects/socks.md", &secret("Wyn Pask")).is_empty());
    assert_eq!(told("projects/socks.md", &secret("Carys Ollerton")), named);
    assert!(told("people.yaml", "carys: { title: Carys Ollerton }\n").iter().all(|told| !told.starts_with("gift")));
    assert_eq!(told("people.yaml", "carys: { title: Carys Olver }\n"), named);
    assert!(told("projects/socks.md", &secret("Wyn Pask")).is_empty());
}

/// A title that changes is looked for anew in the texts that may name it; a change of anything else is not.
#[test]
fn a_new_title_is_found_in_texts_that_were_not_saved() {
    let about = "---\ntitle: About\n---\n\nI like the Big Reed Cowl.\n";
    let mut files = studio().with("pages/about.md", about).with("yarns.yaml", "dk: { title: Heron }\n");
    let mut preview = Preview::new(&files, VIEW()).unwrap();
    let mut told = |text: &str| {
        let file = FilePath::new("patterns/hat-3.md").unwrap();
        files.files.insert(file.clone(), text.as_bytes().to_vec());
        preview.update(&files, &BTreeSet::from([file]), VIEW()).unwrap();
        preview
            .findings()
            .iter()
            .map(|finding| format!("{} {}", finding.code.name, finding.at.file))
            .collect::<Vec<_>>()
    };
    let unlinked = ["unlinked pages/about.md"];
    assert_eq!(told("---\ntitle: Big Reed Cowl\npublished: 2026-01-03\n---\n"), unlinked);
    assert_eq!(told("---\ntitle: Big Reed Cowl\npublished: 2026-01-04\n---\n"), unlinked);
    assert!(told("---\ntitle: Big Reed Shawl\npublished: 2026-01-04\n---\n").is_empty());
}
