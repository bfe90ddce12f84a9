//! What is refused, with nothing touched.

use std::fs;
use std::path::Path;

use ballband::write::{SiteFile, Trouble, publish, publish_on};

use super::memory::{MemoryDisk, State, When};
use super::{files, folder, path, quiet};

fn refused(to: &Path, all: Vec<SiteFile<'_>>) -> String {
    publish(to, all, &quiet).unwrap_err().to_string()
}

fn names(at: &Path) -> Vec<String> {
    let mut all: Vec<String> =
        fs::read_dir(at).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    all.sort();
    all
}

#[test]
fn a_folder_with_files_and_no_list_of_ours() {
    let to = folder("not-ours");
    fs::write(to.join("diary.txt"), "hers").unwrap();
    let said = refused(&to, files(&[("a.html", "x")]));
    assert!(said.contains("holds files that ballband did not make"), "{said}");
    assert_eq!(names(&to), ["diary.txt"]);
}

#[test]
fn a_folder_with_our_records_but_no_list() {
    let to = folder("no-list");
    publish(&to, files(&[("a.html", "x")]), &quiet).unwrap();
    fs::remove_file(to.join(".ballband/made.json")).unwrap();
    let said = refused(&to, files(&[("b.html", "x")]));
    assert!(said.contains("holds files that ballband did not make"), "{said}");
    assert!(to.join("a.html").exists());
}

#[test]
fn a_target_that_is_a_file_or_inside_one() {
    let at = folder("file").join("site");
    fs::write(&at, "hers").unwrap();
    let said = refused(&at, files(&[("a.html", "x")]));
    assert!(said.contains("is not a folder"), "{said}");
    let said = refused(&at.join("deeper"), files(&[("a.html", "x")]));
    assert!(said.contains("cannot make the folder"), "{said}");
    assert_eq!(fs::read_to_string(&at).unwrap(), "hers");
}

#[test]
fn a_damaged_list_or_one_of_another_version() {
    let to = folder("damaged");
    publish(&to, files(&[("a.html", "x"), ("b.html", "y")]), &quiet).unwrap();
    let list = to.join(".ballband/made.json");
    let good = fs::read_to_string(&list).unwrap();
    for (bad, what) in [
        (good[..good.len() / 2].to_owned(), "it is damaged"),
        (good.replace("\"version\": 1", "\"version\": 2"), "it is of version 2"),
        (good.replace("a.html", "../a.html"), "it is damaged"),
    ] {
        fs::write(&list, bad).unwrap();
        let said = refused(&to, files(&[("a.html", "new")]));
        assert!(said.contains(what) && said.contains("new folder"), "{said}");
        assert_eq!(fs::read_to_string(to.join("a.html")).unwrap(), "x");
        assert!(to.join("b.html").exists());
    }
}

#[test]
fn a_file_she_put_where_a_page_goes_unless_it_is_the_same() {
    let to = folder("by-hand");
    publish(&to, files(&[("a.html", "x")]), &quiet).unwrap();
    fs::write(to.join("robots.txt"), "hers").unwrap();
    let said = refused(&to, files(&[("a.html", "new"), ("robots.txt", "ours")]));
    assert!(said.contains("robots.txt") && said.contains("did not make"), "{said}");
    assert_eq!(fs::read_to_string(to.join("a.html")).unwrap(), "x");
    assert_eq!(fs::read_to_string(to.join("robots.txt")).unwrap(), "hers");

    let report = publish(&to, files(&[("a.html", "new"), ("robots.txt", "hers")]), &quiet).unwrap();
    assert_eq!((report.written, report.unchanged), (1, 1));
}

#[test]
fn a_costly_file_of_hers_unless_it_is_the_same() {
    let to = folder("costly");
    publish(&to, files(&[("a.html", "x")]), &quiet).unwrap();
    fs::write(to.join("p.webp"), "photo").unwrap();
    let costly = |text: &'static str| {
        let from = ballband::write::Digest::from(1);
        let mut all = files(&[("a.html", "x")]);
        all.push(SiteFile::derived(path("p.webp"), from, move || Ok(text.into())));
        all
    };
    let said = refused(&to, costly("other"));
    assert!(said.contains("p.webp"), "{said}");
    assert_eq!(publish(&to, costly("photo"), &quiet).unwrap().unchanged, 2);
}

#[test]
fn a_file_of_hers_where_a_folder_must_be_and_the_other_way() {
    let to = folder("kinds");
    publish(&to, files(&[("a.html", "x"), ("c/d.html", "y")]), &quiet).unwrap();
    fs::write(to.join("b"), "hers").unwrap();
    fs::write(to.join("c/hers.txt"), "hers").unwrap();
    let said = refused(&to, files(&[("b/x.html", "x")]));
    assert!(said.contains("site") || said.contains("/b`"), "{said}");
    let said = refused(&to, files(&[("c", "x")]));
    assert!(said.contains("hers.txt"), "{said}");
    assert_eq!(fs::read_to_string(to.join("b")).unwrap(), "hers");
    assert_eq!(names(&to.join("c")), ["d.html", "hers.txt"]);
}

#[test]
fn the_same_path_twice_and_twins() {
    let to = folder("twice").join("site");
    for (all, what) in [
        ([("a.html", "x"), ("a.html", "y")], "two pages"),
        ([("a.html", "x"), ("A.html", "y")], "only in capitals"),
        ([("a", "x"), ("a/b", "y")], "a file and a folder"),
    ] {
        let said = refused(&to, files(&all));
        assert!(said.contains(what), "{said}");
        assert!(!to.exists());
    }
}

#[test]
fn a_second_make_at_the_same_time() {
    let to = folder("busy");
    let inner = to.clone();
    let file = SiteFile::derived(path("p"), ballband::write::Digest::from(1), move || {
        // The first make is at work now, and holds the lock.
        let second = publish(&inner, files(&[("a.html", "second")]), &quiet);
        match second {
            Err(trouble @ Trouble::Busy { .. }) => Ok(trouble.to_string().into_bytes()),
            other => Err(format!("the second make said {other:?}")),
        }
    });
    publish(&to, vec![file], &quiet).unwrap();
    let said = fs::read_to_string(to.join("p")).unwrap();
    assert!(said.starts_with("another ballband is writing to"), "{said}");
    assert!(!to.join("a.html").exists());
    assert_eq!(fs::read(to.join(".ballband/lock")).unwrap(), b"");
    publish(&to, files(&[("a.html", "third")]), &quiet).unwrap();
}

#[test]
fn what_the_disk_refuses_is_told_in_one_sentence() {
    let disk = MemoryDisk::new(State::new(false), When::Full(4));
    let trouble = publish_on(&disk, files(&[("a.html", "x")]), &quiet).unwrap_err();
    assert_eq!(
        trouble.to_string(),
        "cannot write `site/.ballband/aside/0`: no space is left on the disk; the site is as it was"
    );
}

#[cfg(unix)]
mod links {
    use std::os::unix::fs::symlink;

    use super::*;

    /// A site with `a/x.html`, and outside it a folder with a file of the same name.
    fn site(name: &str) -> (std::path::PathBuf, std::path::PathBuf) {
        let (to, outside) = (folder(name), folder(name));
        publish(&to, files(&[("a/x.html", "x"), ("b.html", "b")]), &quiet).unwrap();
        fs::write(outside.join("x.html"), "outside").unwrap();
        (to, outside)
    }

    #[test]
    fn a_folder_replaced_by_a_link_is_not_written_through() {
        let (to, outside) = site("through");
        fs::remove_dir_all(to.join("a")).unwrap();
        symlink(&outside, to.join("a")).unwrap();
        let said = refused(&to, files(&[("a/x.html", "new"), ("b.html", "new")]));
        assert!(said.contains("is a link"), "{said}");
        assert_eq!(fs::read_to_string(outside.join("x.html")).unwrap(), "outside");
        assert_eq!(fs::read_to_string(to.join("b.html")).unwrap(), "b");
    }

    #[test]
    fn nothing_is_removed_through_a_link() {
        let (to, outside) = site("removed");
        fs::remove_dir_all(to.join("a")).unwrap();
        symlink(&outside, to.join("a")).unwrap();
        publish(&to, files(&[("b.html", "b")]), &quiet).unwrap();
        assert_eq!(fs::read_to_string(outside.join("x.html")).unwrap(), "outside");
        assert!(to.join("a").is_symlink());
    }

    #[test]
    fn a_page_replaced_by_a_link_is_refused() {
        let (to, outside) = site("page");
        fs::remove_file(to.join("b.html")).unwrap();
        symlink(outside.join("x.html"), to.join("b.html")).unwrap();
        let said = refused(&to, files(&[("b.html", "new")]));
        assert!(said.contains("is a link"), "{said}");
        assert_eq!(fs::read_to_string(outside.join("x.html")).unwrap(), "outside");
    }

    #[test]
    fn our_records_are_not_reached_through_a_link() {
        for name in [".ballband", ".ballband/aside", ".ballband/lock", ".ballband/made.json"] {
            let (to, outside) = site("records");
            let at = to.join(name);
            if name == ".ballband" {
                fs::remove_dir_all(&at).unwrap();
            } else if at.exists() {
                fs::remove_file(&at).unwrap();
            }
            symlink(&outside, &at).unwrap();
            let said = refused(&to, files(&[("b.html", "new")]));
            assert!(said.contains("is not a f"), "{name}: {said}");
            assert_eq!(names(&outside), ["x.html"]);
            assert_eq!(fs::read_to_string(to.join("b.html")).unwrap(), "b");
        }
    }

    #[test]
    fn a_target_that_is_a_link_to_nowhere() {
        let at = folder("nowhere");
        symlink(at.join("missing"), at.join("site")).unwrap();
        let said = refused(&at.join("site"), files(&[("a.html", "x")]));
        assert!(said.contains("is not a folder"), "{said}");
    }
}
