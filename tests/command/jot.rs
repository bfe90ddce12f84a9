//! `jot`: what a note begins with, that it is read without findings, and that nothing is ever written over.

use super::{ballband, err, folder, out, small_studio, tree};
use std::fs;
use std::path::Path;

/// Copies the demo studio, which must not be written into.
fn demo(name: &str) -> std::path::PathBuf {
    let here = folder(name);
    let from = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-data");
    for (path, bytes) in tree(&from) {
        let to = here.join(&path);
        fs::create_dir_all(to.parent().unwrap()).unwrap();
        fs::write(to, bytes).unwrap();
    }
    here
}

#[test]
fn a_note_of_the_demo_is_begun_and_read_without_findings() {
    let here = demo("jot-demo");
    let begun = ballband(&["jot", "--date", "2026-11-27"], &here);
    assert_eq!(begun.status.code(), Some(0), "{}", err(&begun));
    assert!(out(&begun).contains("began `journal/2026-11-27.md`"), "{}", out(&begun));
    let text = fs::read_to_string(here.join("journal/2026-11-27.md")).unwrap();
    for line in [
        "title: Note 17\ndate: 2026-11-27\nnumber: 17\nready: false\n# video: { url: , length: }\nworked on:\n",
        "  - { project: gannet-sample, progress: 74% }\n    # left to do: second sleeve; neckband; weave in ends; weigh what is left\n",
        "  - { project: second-storm }\n    # left to do: the lamps; the crown; weave in ends\n",
        "\n## 0:00 Hello\n\n## On the needles\n\n## Finished\n",
    ] {
        assert!(text.contains(line), "{line}: {text}");
    }
    assert!(!text.contains("first sleeve"), "{text}");
    let before = tree(&here);
    let proof = ballband(&["proof", "--as-of", "2026-11-27"], &here);
    assert!(out(&proof).ends_with("no findings\n"), "{}", out(&proof));
    let again = ballband(&["jot", "--date", "2026-11-27"], &here);
    assert_eq!(again.status.code(), Some(0));
    assert!(out(&again).starts_with("`journal/2026-11-27.md` is there already"), "{}", out(&again));
    // A note of that day by any name is that day's note.
    let named = ballband(&["jot", "--date", "2026-11-20"], &here);
    assert!(out(&named).starts_with("`journal/2026-11-20-reeds.md` is there already"), "{}", out(&named));
    assert!(tree(&here) == before);
}

#[test]
fn what_was_finished_or_published_since_the_last_note_is_listed_as_references() {
    let here = folder("jot-since");
    small_studio(&here);
    for (path, text) in [
        ("journal/2026-11-13.md", "---\ntitle: A week\n---\n\n# What's *new*?\n\n## <project:done>\n\n## A_b #1 & c\n"),
        ("projects/done.md", "---\ntitle: Done\nfinished: 2026-11-15\n---\n"),
        ("projects/old.md", "---\ntitle: Old\nfinished: 2026-11-13\n---\n"),
        ("projects/secret.md", "---\ntitle: Secret\nfinished: 2026-11-15\nreveal: 2026-12-25\n---\n"),
        ("projects/2026.md", "---\ntitle: A year\nleft to do: ['one\n\n    two', three]\n---\n"),
        ("patterns/cap.md", "---\ntitle: Cap\npublished: 2026-11-20\n---\n"),
        (
            "patterns/vest.md",
            "---\ntitle: Vest\nstage: tech edit\nreached: { sample: 2026-10-01, tech edit: 2026-11-18 }\n---\n",
        ),
        ("patterns/scarf.md", "---\ntitle: Scarf\nstage: sample\nreached: { sample: 2026-11-10 }\n---\n"),
        ("patterns/later.md", "---\ntitle: Later\npublished: 2026-11-21\n---\n"),
    ] {
        fs::create_dir_all(here.join(path).parent().unwrap()).unwrap();
        fs::write(here.join(path), text).unwrap();
    }
    let begun = ballband(&["jot", "--date", "2026-11-20"], &here);
    assert_eq!(begun.status.code(), Some(0), "{}", err(&begun));
    let text = fs::read_to_string(here.join("journal/2026-11-20.md")).unwrap();
    let expected = "---\ntitle: Note of 20 November 2026\ndate: 2026-11-20\nready: false\nworked on:\n  - { project: \"2026\" }\n    # left to do: one two; three\n---\n\nFinished since the last note:\n\n- <project:done>\n\nPublished since the last note:\n\n- <pattern:cap>\n\nAt another stage since the last note:\n\n- <pattern:vest>, tech edit\n\n# What's new?\n\n## A\\_b \\#1 \\& c\n";
    assert_eq!(text, expected);
    let proof = ballband(&["proof", "--as-of", "2026-11-20"], &here);
    assert!(out(&proof).ends_with("no findings\n"), "{}", out(&proof));
    // What it wrote it reads as the same headings.
    assert_eq!(ballband(&["jot", "--date", "2026-11-27"], &here).status.code(), Some(0));
    let next = fs::read_to_string(here.join("journal/2026-11-27.md")).unwrap();
    assert!(next.ends_with("# What's new?\n\n## A\\_b \\#1 \\& c\n"), "{next}");
}

#[test]
fn the_first_note_of_a_studio_is_number_one() {
    let here = folder("jot-first");
    small_studio(&here);
    assert_eq!(ballband(&["jot", "--date", "2026-11-20"], &here).status.code(), Some(0));
    let text = fs::read_to_string(here.join("journal/2026-11-20.md")).unwrap();
    assert_eq!(text, "---\ntitle: Note 1\ndate: 2026-11-20\nnumber: 1\nready: false\n---\n");
    // A note that cannot be read is that day's note all the same, and stays as it is.
    fs::write(here.join("journal/2026-11-27-half.md"), "---\ntitle: [half\n---\n").unwrap();
    let again = ballband(&["jot", "--date", "2026-11-27"], &here);
    assert!(out(&again).starts_with("`journal/2026-11-27-half.md` is there already"), "{}", out(&again));
    assert_eq!(fs::read_to_string(here.join("journal/2026-11-27-half.md")).unwrap(), "---\ntitle: [half\n---\n");
}
