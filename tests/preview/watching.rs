//! What the watcher tells of real folders.

use super::serving::{DEADLINE, wait};
use ballband::preview::watcher::{Burst, Watching, watch};
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU32, Ordering};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

static NUMBER: AtomicU32 = AtomicU32::new(0);

struct Place {
    top: PathBuf,
    root: PathBuf,
    told: Arc<Mutex<Vec<Burst>>>,
    watching: Option<Watching>,
}

impl Place {
    /// Makes a studio with a note in it.
    fn new() -> Self {
        let name = format!("preview-{}-{}", std::process::id(), NUMBER.fetch_add(1, Ordering::Relaxed));
        let top = std::env::temp_dir().join(name);
        let root = top.join("studio");
        fs::create_dir_all(root.join("journal")).unwrap();
        fs::create_dir_all(root.join("site")).unwrap();
        fs::create_dir_all(top.join("elsewhere")).unwrap();
        fs::write(root.join("journal/a.md"), "a").unwrap();
        Self { top, root, told: Arc::default(), watching: None }
    }

    fn watched(mut self) -> Self {
        let told = Arc::clone(&self.told);
        let ours = |path: &Path| !path.ends_with("site");
        self.watching = Some(watch(&self.root, ours, move |burst| told.lock().unwrap().push(burst)).unwrap());
        self
    }

    fn path(&self, path: &str) -> PathBuf {
        self.root.join(path)
    }

    fn told(&self) -> BTreeSet<String> {
        let told = self.told.lock().unwrap();
        let paths = told.iter().flat_map(|burst| &burst.paths);
        paths.map(|path| path.strip_prefix(&self.root).unwrap().to_str().unwrap().to_owned()).collect()
    }

    fn all(&self) -> bool {
        self.told.lock().unwrap().iter().any(|burst| burst.all)
    }

    /// Waits until a file written last is told, and returns all that was told up to then besides.
    fn all_told(&self) -> Vec<String> {
        fs::write(self.path("journal/last.md"), "last").unwrap();
        wait("the last file", || self.told().contains("journal/last.md"));
        self.told().into_iter().filter(|path| path != "journal/last.md").collect()
    }
}

impl Drop for Place {
    fn drop(&mut self) {
        self.watching = None;
        let _ = fs::remove_dir_all(&self.top);
    }
}

#[test]
fn a_file_written_straight_is_told() {
    let place = Place::new().watched();
    fs::write(place.path("journal/a.md"), "b").unwrap();
    assert_eq!(place.all_told(), ["journal/a.md"]);
}

#[test]
fn a_file_written_aside_and_moved_over_is_told_alone() {
    let place = Place::new().watched();
    for aside in ["journal/a.md.tmp", "journal/.a.md.swp", "journal/a.md~", "journal/#a.md#", "journal/4913"] {
        fs::write(place.path(aside), "b").unwrap();
    }
    fs::rename(place.path("journal/a.md"), place.path("journal/a.md~")).unwrap();
    fs::rename(place.path("journal/a.md.tmp"), place.path("journal/a.md")).unwrap();
    assert_eq!(place.all_told(), ["journal/a.md"]);
}

#[test]
fn a_file_gone_is_told() {
    let place = Place::new().watched();
    fs::remove_file(place.path("journal/a.md")).unwrap();
    assert_eq!(place.all_told(), ["journal/a.md"]);
}

#[test]
fn a_file_moved_out_or_in_is_told() {
    let place = Place::new().watched();
    let out = place.top.join("elsewhere/a.md");
    fs::rename(place.path("journal/a.md"), &out).unwrap();
    fs::rename(&out, place.path("journal/b.md")).unwrap();
    assert_eq!(place.all_told(), ["journal/a.md", "journal/b.md"]);
}

#[test]
fn files_written_straight_into_new_nested_folders_are_never_missed() {
    let place = Place::new().watched();
    let mut made = BTreeSet::new();
    for number in 0..100 {
        let name = format!("patterns/{number}/deep/er/x.md");
        fs::create_dir_all(place.path(&name).parent().unwrap()).unwrap();
        fs::write(place.path(&name), "x").unwrap();
        made.insert(name);
    }
    wait("all 100", || place.told().is_superset(&made));
    fs::write(place.path("patterns/50/deep/er/y.md"), "y").unwrap();
    wait("a later one", || place.told().contains("patterns/50/deep/er/y.md"));
}

#[test]
fn a_folder_moved_is_told_under_both_names_and_watched_under_the_new_one() {
    let place = Place::new();
    fs::create_dir_all(place.path("patterns/x")).unwrap();
    fs::write(place.path("patterns/x/x.md"), "x").unwrap();
    let place = place.watched();
    fs::rename(place.path("patterns"), place.path("projects")).unwrap();
    assert_eq!(place.all_told(), ["patterns", "projects/x/x.md"]);
    fs::write(place.path("projects/x/y.md"), "y").unwrap();
    wait("the new name", || place.told().contains("projects/x/y.md"));
}

#[test]
fn a_folder_moved_in_or_deleted_is_told() {
    let place = Place::new().watched();
    let out = place.top.join("elsewhere/photos");
    fs::create_dir_all(&out).unwrap();
    fs::write(out.join("x.jpg"), "x").unwrap();
    fs::rename(&out, place.path("photos")).unwrap();
    wait("moved in", || place.told().contains("photos/x.jpg"));
    fs::remove_dir_all(place.path("photos")).unwrap();
    wait("deleted", || place.told().contains("photos"));
}

#[test]
fn a_linked_folder_is_watched_and_a_loop_of_links_ends() {
    let place = Place::new();
    let out = place.top.join("elsewhere");
    std::os::unix::fs::symlink(&out, place.path("photos")).unwrap();
    std::os::unix::fs::symlink(&place.root, out.join("back")).unwrap();
    let place = place.watched();
    fs::write(out.join("x.jpg"), "x").unwrap();
    wait("through the link", || place.told().contains("photos/x.jpg"));
}

#[test]
fn a_folder_with_two_names_is_told_under_both_and_still_when_one_is_gone() {
    use std::os::unix::fs::symlink;
    let place = Place::new().watched();
    symlink("journal", place.path("old-journal")).unwrap();
    symlink("..", place.path("journal/loop")).unwrap();
    wait("the link", || place.told().contains("old-journal/a.md"));
    fs::write(place.path("journal/b.md"), "b").unwrap();
    wait("both names", || place.told().contains("journal/b.md") && place.told().contains("old-journal/b.md"));
    assert!(!place.told().iter().any(|path| path.contains("loop/")), "{:?}", place.told());
    fs::remove_file(place.path("journal/loop")).unwrap();
    wait("the loop gone", || place.told().contains("journal/loop"));
    fs::remove_file(place.path("old-journal")).unwrap();
    wait("the link gone", || place.told().contains("old-journal") && place.all());
    fs::write(place.path("journal/c.md"), "c").unwrap();
    wait("after the links", || place.told().contains("journal/c.md"));
    assert!(!place.told().contains("old-journal/c.md"));
}

#[test]
fn what_is_not_ours_is_not_told() {
    let place = Place::new().watched();
    fs::write(place.path("site/index.html"), "x").unwrap();
    fs::create_dir(place.path(".git")).unwrap();
    fs::write(place.path(".git/index"), "x").unwrap();
    assert_eq!(place.all_told(), [""; 0]);
}

#[test]
fn reading_is_not_told() {
    let place = Place::new().watched();
    for _ in 0..50 {
        fs::read_dir(place.path("journal")).unwrap().for_each(|entry| drop(fs::read(entry.unwrap().path())));
    }
    assert_eq!(place.all_told(), [""; 0]);
}

#[test]
fn a_root_that_goes_and_comes_back_is_watched_again() {
    let place = Place::new().watched();
    fs::rename(&place.root, place.top.join("away")).unwrap();
    wait("gone", || place.all());
    place.told.lock().unwrap().clear();
    fs::create_dir_all(place.path("journal")).unwrap();
    wait("back", || place.all());
    fs::write(place.path("journal/new.md"), "x").unwrap();
    wait("watched again", || place.told().contains("journal/new.md"));
}

#[test]
fn a_folder_above_the_root_that_is_moved_is_noticed() {
    let place = Place::new().watched();
    let away = place.top.with_extension("away");
    fs::rename(&place.top, &away).unwrap();
    wait("gone", || place.all());
    fs::rename(&away, &place.top).unwrap();
    wait("back", || place.told.lock().unwrap().iter().filter(|burst| burst.all).count() >= 2);
}

#[test]
fn a_stream_of_writes_is_told_before_it_ends() {
    let place = Place::new().watched();
    let begun = Instant::now();
    while place.told.lock().unwrap().is_empty() {
        fs::write(place.path("journal/a.md"), "b").unwrap();
        std::thread::sleep(Duration::from_millis(1));
        assert!(begun.elapsed() < DEADLINE, "told while being written");
    }
}
