//! `blurb`, run as the designer would.

use super::{ballband, err, folder, out};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

const STUDIO: &str = "title: W\nurl: https://w.example\noutlets:\n  film: { limit: 5000 }\n  letter: { limit: 60, counted in: characters }\n";

fn laid_out(name: &str, studio: &str) -> PathBuf {
    let here = folder(name);
    fs::write(here.join("studio.yaml"), studio).unwrap();
    fs::create_dir_all(here.join("journal")).unwrap();
    let write = |file: &str, text: &str| fs::write(here.join("journal").join(file), text).unwrap();
    write("2026-11-06-one.md", "---\ntitle: One\nnumber: 1\nsummary: The first.\n---\n");
    write("2026-11-13-two.md", "---\ntitle: Two\nnumber: 2\nsummary: The second.\nready: false\n---\n");
    here
}

#[test]
fn the_latest_note_is_meant_ready_or_not_and_others_go_by_key_or_number() {
    let here = laid_out("blurb", STUDIO);
    let latest = ballband(&["blurb", "--outlet", "film"], &here);
    assert_eq!(latest.status.code(), Some(0), "{}", err(&latest));
    assert_eq!(out(&latest), "The second.\n\nThe whole note: https://w.example/journal/2026-11-13-two/\n");
    let told = err(&latest);
    assert!(
        told.contains("`note:2026-11-13-two` is not ready")
            && told.contains("film: 71 bytes, 71 characters of 5,000 bytes\n"),
        "{told}"
    );
    assert_eq!(out(&latest).len(), 71);
    for written in ["1", "2026-11-06", "2026-11-06-one", "note:2026-11-06-one"] {
        assert!(out(&ballband(&["blurb", written], &here)).starts_with("The first.\n"), "{written}");
    }
}

#[test]
fn texts_that_differ_follow_each_other_and_each_says_what_it_lacks() {
    let here = laid_out("blurb-outlets", STUDIO);
    let both = ballband(&["blurb", "1"], &here);
    let first = "The first.\n\nThe whole note: https://w.example/journal/2026-11-06-one/\n";
    assert_eq!(out(&both), format!("{first}\nThe first.\n"));
    let lack = "  left out for want of room: The note's own address (The whole note)\n";
    assert!(
        err(&both).contains(&format!("letter: 11 bytes, 11 characters of 60 characters\n{lack}")),
        "{}",
        err(&both)
    );
}

#[test]
fn what_cannot_be_done_is_said_in_a_sentence() {
    let here = laid_out("blurb-wrong", STUDIO);
    for (arguments, why) in [
        (&["blurb", "3"][..], "there is no note `3`; name the key of one"),
        (&["blurb", "2026-11-06-on"], "did you mean `2026-11-06-one`?"),
        (&["blurb", "2026-11-06-oen"], "did you mean `2026-11-06-one`?"),
        (&["blurb", "2026-11"], "did you mean `2026-11-13-two` or `2026-11-06-one`?"),
        (&["blurb", "2026-11-07"], "there is no note `2026-11-07`; "),
        (&["blurb", "--outlet", "flim"], "there is no outlet `flim`; did you mean `film`?"),
        (&["blurb", "--copy"], "the clipboard takes one text: add `--outlet \"film\"` or `--outlet \"letter\"`"),
    ] {
        let tried = ballband(arguments, &here);
        assert_eq!((tried.status.code(), out(&tried).as_str()), (Some(2), ""), "{arguments:?}");
        assert!(err(&tried).contains(why), "{arguments:?}: {}", err(&tried));
    }
    fs::write(here.join("journal/2026-11-20.md"), "---\ntitle: Again\nnumber: 1\n---\n").unwrap();
    let two = ballband(&["blurb", "1"], &here);
    assert!(err(&two).contains("two notes have the number 1: name `2026-11-06-one` or `2026-11-20`"), "{}", err(&two));
    fs::write(here.join("journal/2026-11-06-b.md"), "---\ntitle: Again\n---\n").unwrap();
    let two = ballband(&["blurb", "2026-11-06"], &here);
    assert!(err(&two).contains("2 notes are of 2026-11-06: name `2026-11-06-b` or `2026-11-06-one`"), "{}", err(&two));
    fs::remove_dir_all(here.join("journal")).unwrap();
    let none = ballband(&["blurb"], &here);
    assert!(none.status.code() == Some(2) && err(&none).contains("there is no note yet"), "{}", err(&none));
}

fn with_programs(folder: &Path, here: &Path) -> Output {
    let arguments = ["blurb", "1", "--outlet", "film", "--copy"];
    Command::new(env!("CARGO_BIN_EXE_ballband")).args(arguments).current_dir(here).env("PATH", folder).output().unwrap()
}

#[cfg(unix)]
#[test]
fn the_text_goes_to_the_first_program_that_takes_it() {
    use std::os::unix::fs::PermissionsExt;
    let here = laid_out("blurb-copy", STUDIO);
    let programs = here.join("programs");
    fs::create_dir_all(&programs).unwrap();
    let none = with_programs(&programs, &here);
    assert_eq!((none.status.code(), out(&none).as_str()), (Some(2), ""));
    assert!(err(&none).contains("there is no program here that puts a text on the clipboard"), "{}", err(&none));
    let program = |name: &str, script: String| {
        let file = programs.join(name);
        fs::write(&file, script).unwrap();
        fs::set_permissions(&file, fs::Permissions::from_mode(0o755)).unwrap();
    };
    // As where it is installed and no desktop runs.
    program("wl-copy", "#!/bin/sh\nexit 1\n".to_owned());
    let failed = with_programs(&programs, &here);
    assert!(failed.status.code() == Some(2) && err(&failed).contains("`wl-copy` could not"), "{}", err(&failed));
    let kept = here.join("kept");
    program("xclip", format!("#!/bin/sh\n/bin/cat > '{0}'\necho \"$@\" >> '{0}'\n", kept.display()));
    let copied = with_programs(&programs, &here);
    assert_eq!((copied.status.code(), out(&copied).as_str()), (Some(0), ""), "{}", err(&copied));
    let text = "The first.\n\nThe whole note: https://w.example/journal/2026-11-06-one/\n";
    assert_eq!(fs::read_to_string(&kept).unwrap(), format!("{text}-selection clipboard\n"));
    assert!(err(&copied).contains("of 5,000 bytes; copied"), "{}", err(&copied));
}
