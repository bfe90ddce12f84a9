//! Reading entries, beyond what the cases show.

mod schema;

use crate::support::{page, read, site};
use ballband::entry::{Kind, Reference};

fn codes(files: &[(&str, &str)]) -> Vec<String> {
    read(files).findings.iter().map(|finding| finding.code.name.to_owned()).collect()
}

/// Windows line ends are no mistake: the site is the same to the byte.
#[test]
fn windows_line_ends_make_the_same_site() {
    let text = "---\ntitle: Reeds\ndate: 2026-11-20\nsummary: Reeds, at last.\n---\n\n## 0:00 Hello\n\nA line\nand another.\n\n| a | b |\n|---|---|\n| 1 | 2 |\n";
    let windows = text.replace('\n', "\r\n");
    assert_eq!(codes(&[("journal/2026-11-20.md", &windows)]), Vec::<String>::new());
    let (ours, theirs) = (site(&[("journal/2026-11-20.md", text)]), site(&[("journal/2026-11-20.md", &windows)]));
    assert_eq!(
        ours.iter().map(|(path, _)| path).collect::<Vec<_>>(),
        theirs.iter().map(|(path, _)| path).collect::<Vec<_>>()
    );
    let plain = |html: &str| html.replace("\r\n", "\n");
    for ((path, ours), (_, theirs)) in ours.iter().zip(&theirs) {
        assert_eq!(plain(ours), plain(theirs), "{path}");
    }
}

/// Every kind may be kept as files, as a register, or both.
#[test]
fn every_kind_is_read_from_files_and_from_a_register() {
    for kind in Kind::ALL {
        let front = if kind == Kind::Note { "title: One\ndate: 2026-11-20" } else { "title: One" };
        let file = (format!("{}/one.md", kind.folder()), format!("---\n{front}\n---\n"));
        let register = (format!("{}.yaml", kind.folder()), format!("two:\n  {}\n", front.replace('\n', "\n  ")));
        let studied = read(&[(&file.0, &file.1), (&register.0, &register.1)]);
        assert!(studied.findings.is_empty(), "{kind:?}: {:?}", studied.findings);
        let keys: Vec<String> = studied.catalogue.entries.iter().map(|entry| entry.id.to_string()).collect();
        assert_eq!(keys, [format!("{}:one", kind.word()), format!("{}:two", kind.word())]);
    }
}

#[test]
fn an_entry_in_both_a_file_and_the_register_is_told_once_with_both_places() {
    let studied =
        read(&[("yarns.yaml", "heron-dk:\n  title: Heron DK\n"), ("yarns/heron-dk.md", "---\ntitle: Heron DK\n---\n")]);
    let [finding] = studied.findings.as_slice() else { panic!("{:?}", studied.findings) };
    assert_eq!(finding.code.name, "duplicate-entry");
    let (other, _) = finding.also.as_ref().expect("the other place");
    let mut files = [finding.at.file.as_str(), other.file.as_str()];
    files.sort_unstable();
    assert_eq!(files, ["yarns.yaml", "yarns/heron-dk.md"]);
}

/// A reference to an entry that exists and is broken is no second mistake.
#[test]
fn one_mistake_is_told_once() {
    let about = ("pages/about.md", "---\ntitle: About\n---\n\n<yarn:heron-dk> and <pattern:reeds>.\n");
    assert_eq!(
        codes(&[about, ("yarns.yaml", "heron-dk: [\n"), ("patterns/reeds.md", "---\nsummary: no title\n---\n")]),
        ["missing-field", "not-yaml"]
    );
}

#[test]
fn a_note_takes_its_day_from_its_name() {
    let studied = read(&[("journal/2026-11-20-reeds.md", "---\ntitle: Reeds\n---\n")]);
    let id = Reference { kind: Kind::Note, key: ballband::entry::Key::new("2026-11-20-reeds").unwrap() };
    let day = studied.catalogue.entry(&id).unwrap().date().unwrap();
    assert_eq!(day.in_words(), "20 November 2026");
}

#[test]
fn headings_have_the_ids_that_links_to_chapters_use() {
    let note = "---\ntitle: Reeds\ndate: 2026-11-20\n---\n\n## 0:00 Hello\n\nHi.\n\n## 2:35 The reeds\n\n<yarn:heron-dk>\n\n## 9:00 The reeds\n\nBye.\n";
    let site = site(&[("journal/2026-11-20.md", note), ("yarns.yaml", "heron-dk:\n  title: Heron DK\n")]);
    let html = page(&site, "journal/2026-11-20/index.html");
    for id in ["on-hello", "on-the-reeds", "on-the-reeds-2"] {
        assert_eq!(html.matches(&format!("id=\"{id}\"")).count(), 1, "{id}");
        assert!(html.contains(&format!("href=\"#{id}\"")), "{id}");
    }
    assert!(
        page(&site, "yarns/heron-dk/index.html").contains("/journal/2026-11-20/#on-the-reeds"),
        "the back-link leads to the chapter"
    );
}
