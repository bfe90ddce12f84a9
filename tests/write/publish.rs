//! Publishing into real folders.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::sync::Arc;
use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::{Duration, SystemTime};

use ballband::write::{Batch, Digest, Progress, SiteFile, Stage, publish};

use super::{files, folder, path, quiet};

/// Every file and folder below one, our records too, with what the files hold.
fn everything(root: &Path) -> BTreeMap<String, Option<Vec<u8>>> {
    let mut all = BTreeMap::new();
    let mut todo = vec![root.to_owned()];
    while let Some(at) = todo.pop() {
        for entry in fs::read_dir(at).unwrap() {
            let at = entry.unwrap().path();
            let name = at.strip_prefix(root).unwrap().to_str().unwrap().to_owned();
            if at.is_dir() {
                todo.push(at);
                all.insert(name, None);
            } else {
                all.insert(name, Some(fs::read(at).unwrap()));
            }
        }
    }
    all
}

/// Sets a file's time back, so that any write shows.
fn long_ago(at: &Path) -> SystemTime {
    let then = SystemTime::UNIX_EPOCH + Duration::from_secs(1_000_000);
    fs::File::options().write(true).open(at).unwrap().set_modified(then).unwrap();
    then
}

#[test]
fn a_missing_folder_is_made_with_those_it_lies_in() {
    let to = folder("missing").join("a/b/site");
    let report = publish(&to, files(&[("x/index.html", "hello")]), &quiet).unwrap();
    assert_eq!(fs::read_to_string(to.join("x/index.html")).unwrap(), "hello");
    assert_eq!((report.written, report.unchanged, report.removed), (1, 0, 0));
    assert_eq!(report.changed, [path("x/index.html")]);
}

#[test]
fn two_makes_in_different_folders_are_byte_identical() {
    let all = || {
        let mut all = files(&[("index.html", "a"), ("b/c.html", "b"), ("empty.txt", "")]);
        all.push(SiteFile::derived(path("p.webp"), Digest::from(5), || Ok(b"photo".to_vec())));
        all
    };
    let (one, two) = (folder("one"), folder("two").join("deeper"));
    publish(&one, all(), &quiet).unwrap();
    // The second comes to the same by another way, and in another order.
    publish(&two, files(&[("index.html", "old"), ("gone/x.html", "x")]), &quiet).unwrap();
    let mut backwards = all();
    backwards.reverse();
    publish(&two, backwards, &quiet).unwrap();
    assert_eq!(everything(&one), everything(&two));
    let names: Vec<String> = everything(&one).into_keys().collect();
    assert_eq!(
        names,
        [".ballband", ".ballband/lock", ".ballband/made.json", "b", "b/c.html", "empty.txt", "index.html", "p.webp"]
    );
}

#[test]
fn only_what_differs_is_written() {
    let to = folder("differs");
    publish(&to, files(&[("a.html", "same"), ("b.html", "old"), ("c.html", "gone")]), &quiet).unwrap();
    let then = long_ago(&to.join("a.html"));
    let report = publish(&to, files(&[("a.html", "same"), ("b.html", "new")]), &quiet).unwrap();
    assert_eq!((report.written, report.unchanged, report.removed), (1, 1, 1));
    assert_eq!(report.changed, [path("b.html")]);
    assert_eq!(report.gone, [path("c.html")]);
    assert_eq!(fs::metadata(to.join("a.html")).unwrap().modified().unwrap(), then);
    assert_eq!(fs::read_to_string(to.join("b.html")).unwrap(), "new");
    assert!(!to.join("c.html").exists());
}

#[test]
fn nothing_changed_touches_nothing() {
    let to = folder("nothing");
    let all = || files(&[("a/x.html", "x"), ("b.html", "b")]);
    publish(&to, all(), &quiet).unwrap();
    let then = long_ago(&to.join(".ballband/made.json"));
    let report = publish(&to, all(), &quiet).unwrap();
    assert_eq!((report.written, report.unchanged, report.removed), (0, 2, 0));
    assert_eq!(fs::metadata(to.join(".ballband/made.json")).unwrap().modified().unwrap(), then);
}

#[test]
fn a_page_changed_by_hand_is_put_right() {
    let to = folder("by-hand");
    publish(&to, files(&[("a.html", "right")]), &quiet).unwrap();
    fs::write(to.join("a.html"), "wrong").unwrap();
    let report = publish(&to, files(&[("a.html", "right")]), &quiet).unwrap();
    assert_eq!(report.written, 1);
    assert_eq!(fs::read_to_string(to.join("a.html")).unwrap(), "right");
}

#[test]
fn emptied_folders_go_and_hers_stay() {
    let to = folder("emptied");
    publish(&to, files(&[("a/b/c.html", "x"), ("d/e.html", "x"), ("f.html", "x")]), &quiet).unwrap();
    fs::write(to.join("d/hers.txt"), "hers").unwrap();
    fs::create_dir(to.join("her folder")).unwrap();
    publish(&to, files(&[("f.html", "x")]), &quiet).unwrap();
    assert!(!to.join("a").exists());
    assert!(!to.join("d/e.html").exists());
    assert_eq!(fs::read_to_string(to.join("d/hers.txt")).unwrap(), "hers");
    assert!(to.join("her folder").is_dir());
}

#[test]
fn a_file_becomes_a_folder_and_a_folder_a_file() {
    let to = folder("swap");
    publish(&to, files(&[("a", "file"), ("b/c/d.html", "inside")]), &quiet).unwrap();
    publish(&to, files(&[("a/x.html", "inside"), ("b", "file")]), &quiet).unwrap();
    assert_eq!(fs::read_to_string(to.join("a/x.html")).unwrap(), "inside");
    assert_eq!(fs::read_to_string(to.join("b")).unwrap(), "file");
}

/// A costly file that counts how often it is made.
fn counted(count: &Arc<AtomicUsize>, from: u128, text: &'static str) -> SiteFile<'static> {
    let count = Arc::clone(count);
    SiteFile::derived(path("photos/p.webp"), Digest::from(from), move || {
        count.fetch_add(1, Ordering::Relaxed);
        Ok(text.as_bytes().to_vec())
    })
}

#[test]
fn a_costly_file_is_made_only_when_what_it_comes_from_changed() {
    let to = folder("costly");
    let count = Arc::new(AtomicUsize::new(0));
    let made = || count.load(Ordering::Relaxed);

    publish(&to, vec![counted(&count, 1, "photo")], &quiet).unwrap();
    assert_eq!(made(), 1);
    let report = publish(&to, vec![counted(&count, 1, "photo")], &quiet).unwrap();
    assert_eq!((made(), report.unchanged), (1, 1));

    // Another digest and the same bytes: made, and left alone.
    let then = long_ago(&to.join("photos/p.webp"));
    let report = publish(&to, vec![counted(&count, 2, "photo")], &quiet).unwrap();
    assert_eq!((made(), report.unchanged), (2, 1));
    assert_eq!(fs::metadata(to.join("photos/p.webp")).unwrap().modified().unwrap(), then);
    publish(&to, vec![counted(&count, 2, "photo")], &quiet).unwrap();
    assert_eq!(made(), 2, "the new digest was not kept");

    // The file on disk is no longer what was made.
    fs::write(to.join("photos/p.webp"), "phot0").unwrap();
    let report = publish(&to, vec![counted(&count, 2, "photo")], &quiet).unwrap();
    assert_eq!((made(), report.written), (3, 1));
    assert_eq!(fs::read_to_string(to.join("photos/p.webp")).unwrap(), "photo");
}

#[test]
fn the_parts_of_a_batch_that_are_needed_are_asked_for_at_once() {
    let to = folder("batch");
    let asked = Arc::new(Mutex::new(Vec::new()));
    let all = |last: u128| {
        let log = Arc::clone(&asked);
        let batch = Batch::new(move |parts| {
            log.lock().unwrap().push(parts.to_vec());
            Ok(parts.iter().map(|part| vec![*part as u8; 3]).collect())
        });
        [("x/1", 1), ("x/2", 2), ("a/3", last)]
            .into_iter()
            .enumerate()
            .map(|(part, (at, from))| SiteFile::part(path(at), Digest::from(from), &batch, part))
            .collect::<Vec<_>>()
    };
    publish(&to, all(3), &quiet).unwrap();
    publish(&to, all(3), &quiet).unwrap();
    publish(&to, all(4), &quiet).unwrap();
    // In the order of their paths: once all, then none, then the one whose digest changed.
    assert_eq!(*asked.lock().unwrap(), [vec![2, 0, 1], vec![2]]);
    assert_eq!(fs::read(to.join("x/2")).unwrap(), [1, 1, 1]);
    assert_eq!(fs::read(to.join("a/3")).unwrap(), [2, 2, 2]);
}

#[test]
fn a_batch_that_makes_too_few_parts_is_an_error() {
    let batch = Batch::new(|_| Ok(Vec::new()));
    let file = SiteFile::part(path("a"), Digest::from(1), &batch, 0);
    let trouble = publish(&folder("few"), vec![file], &quiet).unwrap_err();
    assert!(trouble.to_string().contains("1 parts were asked for and 0 were made"), "{trouble}");
}

#[test]
fn a_file_that_cannot_be_made_leaves_the_site_as_it_was() {
    let to = folder("cannot");
    publish(&to, files(&[("a.html", "old")]), &quiet).unwrap();
    let before = everything(&to);
    let mut all = files(&[("a.html", "new")]);
    all.push(SiteFile::derived(path("p.webp"), Digest::from(1), || Err("it is torn".into())));
    let trouble = publish(&to, all, &quiet).unwrap_err();
    assert_eq!(trouble.to_string(), "cannot make `p.webp`: it is torn; the site is as it was");
    assert_eq!(everything(&to), before);
}

#[test]
fn a_leftover_of_a_killed_make_is_cleaned_up() {
    let to = folder("leftover");
    publish(&to, files(&[("a.html", "x")]), &quiet).unwrap();
    let before = everything(&to);
    fs::create_dir(to.join(".ballband/aside")).unwrap();
    fs::write(to.join(".ballband/aside/0"), "half a pa").unwrap();
    fs::create_dir_all(to.join(".ballband/aside/new/notes/deep")).unwrap();
    fs::write(to.join(".ballband/aside/new/notes/deep/1.html"), "half a pa").unwrap();
    publish(&to, files(&[("a.html", "x")]), &quiet).unwrap();
    assert_eq!(everything(&to), before);
}

#[test]
fn a_folder_that_comes_while_pages_are_made_is_filled_and_what_is_in_it_stays() {
    let root = folder("meanwhile");
    let notes = root.join("notes");
    let page = SiteFile::made(path("notes/deep/1.html"), move || {
        fs::create_dir_all(notes.join("deep")).unwrap();
        fs::write(notes.join("hers.txt"), "hers").unwrap();
        Ok(b"a page".to_vec())
    });
    publish(&root, vec![page], &quiet).unwrap();
    assert_eq!(fs::read(root.join("notes/deep/1.html")).unwrap(), b"a page");
    assert_eq!(fs::read(root.join("notes/hers.txt")).unwrap(), b"hers");
    assert!(!root.join(".ballband/aside").exists());
}

#[test]
fn a_file_of_hers_that_comes_while_pages_are_made_is_not_replaced() {
    let root = folder("hers-meanwhile");
    let notes = root.join("notes");
    let page = SiteFile::made(path("notes/1.html"), move || {
        fs::create_dir_all(&notes).unwrap();
        fs::write(notes.join("1.html"), "hers").unwrap();
        Ok(b"a page".to_vec())
    });
    let trouble = publish(&root, vec![page], &quiet).unwrap_err().to_string();
    assert!(trouble.contains("1.html"), "{trouble}");
    assert_eq!(fs::read(root.join("notes/1.html")).unwrap(), b"hers");
}

#[test]
fn progress_counts_every_file_written() {
    let told = Mutex::new(Vec::new());
    let tell = |progress: Progress| told.lock().unwrap().push(progress);
    publish(&folder("progress"), files(&[("a", "1"), ("b", "2"), ("c", "3")]), &tell).unwrap();
    let told = told.into_inner().unwrap();
    let mut written: Vec<usize> =
        told.iter().filter(|progress| progress.stage == Stage::Writing).map(|progress| progress.done).collect();
    written.sort_unstable();
    assert_eq!(written, [0, 1, 2, 3]);
    assert_eq!(told.first().map(|progress| progress.stage), Some(Stage::Comparing));
}

#[cfg(unix)]
#[test]
fn a_site_folder_that_is_a_link_is_followed() {
    let real = folder("linked");
    let link = folder("links").join("site");
    std::os::unix::fs::symlink(&real, &link).unwrap();
    publish(&link, files(&[("a.html", "x")]), &quiet).unwrap();
    assert_eq!(fs::read_to_string(real.join("a.html")).unwrap(), "x");
}
