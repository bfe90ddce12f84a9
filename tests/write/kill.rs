//! A make that is stopped, or has no space, at each of its operations in turn.

use std::collections::{BTreeMap, BTreeSet};

use ballband::write::{Batch, Digest, Left, SiteFile, Trouble, publish_on};

use super::memory::{MemoryDisk, Node, State, When};
use super::{files, path, quiet};

type Site = Vec<SiteFile<'static>>;

fn photos(of: &str) -> Site {
    let name = of.to_owned();
    let batch =
        Batch::new(move |parts| Ok(parts.iter().map(|part| format!("{name} in size {part}").into_bytes()).collect()));
    (0..2)
        .map(|part| {
            let at = path(&format!("photos/yoke-{part}.webp"));
            SiteFile::part(at, Digest::of_parts(&[of.as_bytes(), &[part]]), &batch, part.into())
        })
        .collect()
}

fn old_site() -> Site {
    let mut site = files(&[
        ("index.html", "the first page, old"),
        ("keep.html", "the same in both"),
        ("gone/deep/x.html", "a page to be removed"),
        ("gone/y.html", "another page to be removed"),
        ("swap", "a file where a folder will be"),
        ("back/b/c.html", "a page in a folder where a file will be"),
        ("About.html", "in capitals"),
        ("Notes/1.html", "in a folder in capitals"),
        ("Notes/2.html", "removed from a folder in capitals"),
    ]);
    site.extend(photos("the old photo"));
    site
}

fn new_site() -> Site {
    let mut site = files(&[
        ("index.html", "the first page, new and longer"),
        ("keep.html", "the same in both"),
        ("new/deep/z.html", "a new page"),
        ("swap/a.html", "a page in a folder where a file was"),
        ("swap/deep/b.html", "a page in a new folder in a folder where a file was"),
        ("back", "a file where a folder was"),
        ("about.html", "in small letters"),
        ("notes/1.html", "in a folder in small letters"),
        ("notes/new/3.html", "in a new folder in a folder in small letters"),
    ]);
    site.extend(photos("the new photo"));
    site
}

fn hers(state: &mut State) {
    state.by_hand("hers.txt", "a file of hers");
    state.by_hand("gone/hers.txt", "another, in a folder of ours");
}

fn put(site: Site, state: State, when: When) -> (Result<(), Trouble>, State, usize) {
    let disk = MemoryDisk::new(state, when);
    let done = publish_on(&disk, site, &quiet).map(|_| ());
    let operations = disk.operations();
    (done, disk.into_state(), operations)
}

/// The old site as it was made, with her files in it.
fn before(folds: bool) -> State {
    let (done, mut state, _) = put(old_site(), State::new(folds), When::Never);
    done.unwrap();
    hers(&mut state);
    state
}

/// The new site as made into a new folder, with her files in it.
fn clean(site: Site, folds: bool) -> State {
    let (done, mut state, _) = put(site, State::new(folds), When::Never);
    done.unwrap();
    hers(&mut state);
    state
}

/// On one thread the operations come in one order, so each number is a different moment.
fn on_one_thread(test: impl FnOnce() + Send) {
    rayon::ThreadPoolBuilder::new().num_threads(1).build().unwrap().install(test);
}

fn texts(state: &State) -> BTreeMap<&str, &Vec<u8>> {
    state
        .site()
        .into_iter()
        .filter_map(|(at, node)| match node {
            Node::File(bytes) => Some((at, bytes)),
            _ => None,
        })
        .collect()
}

/// Every page is the old or the new one, hers are as they were, and what both have is there.
fn check_whole(now: &State, old: &State, new: &State, moment: &str) {
    let (now, old, new) = (texts(now), texts(old), texts(new));
    for (at, bytes) in &now {
        assert!(
            old.get(at) == Some(bytes) || new.get(at) == Some(bytes),
            "{moment}: `{at}` is neither the old nor the new one: {:?}",
            String::from_utf8_lossy(bytes)
        );
    }
    for at in old.keys().filter(|at| new.contains_key(*at)) {
        assert!(now.contains_key(at), "{moment}: `{at}` is in both and is missing");
    }
}

/// Stops at every operation, and checks each state it leaves.
fn at_every_operation(folds: bool, check: impl Fn(State, &str)) {
    let (done, _, operations) = put(new_site(), before(folds), When::Never);
    done.unwrap();
    assert!(operations > 30, "the scenario has only {operations} operations");
    for number in 0..operations {
        let (_, state, _) = put(new_site(), before(folds), When::Dies(number));
        check(state, &format!("stopped at operation {number} of {operations}"));
    }
}

#[test]
fn a_kill_at_any_moment_leaves_every_page_whole() {
    on_one_thread(|| {
        for folds in [false, true] {
            let (old, new) = (before(folds), clean(new_site(), folds));
            at_every_operation(folds, |state, moment| check_whole(&state, &old, &new, moment));
        }
    });
}

#[test]
fn the_make_after_a_kill_ends_as_a_clean_one() {
    on_one_thread(|| {
        for folds in [false, true] {
            let whole = clean(new_site(), folds);
            at_every_operation(folds, |state, moment| {
                let (done, state, _) = put(new_site(), state, When::Never);
                done.unwrap_or_else(|trouble| panic!("{moment}: {trouble}"));
                assert_eq!(state, whole, "{moment}");
            });
        }
    });
}

#[test]
fn the_old_site_can_be_made_again_after_a_kill() {
    on_one_thread(|| {
        for folds in [false, true] {
            let whole = before(folds);
            at_every_operation(folds, |state, moment| {
                let (done, state, _) = put(old_site(), state, When::Never);
                done.unwrap_or_else(|trouble| panic!("{moment}: {trouble}"));
                assert_eq!(state, whole, "{moment}");
            });
        }
    });
}

#[test]
fn a_kill_of_the_make_after_a_kill_does_no_harm_either() {
    on_one_thread(|| {
        let (old, new) = (before(false), clean(new_site(), false));
        at_every_operation(false, |state, moment| {
            let (done, _, operations) = put(new_site(), state.clone(), When::Never);
            done.unwrap();
            for second in 0..operations {
                let moment = format!("{moment}, then at {second} of {operations}");
                let (_, state, _) = put(new_site(), state.clone(), When::Dies(second));
                check_whole(&state, &old, &new, &moment);
                let (done, state, _) = put(new_site(), state, When::Never);
                done.unwrap_or_else(|trouble| panic!("{moment}: {trouble}"));
                assert_eq!(state, new, "{moment}");
            }
        });
    });
}

#[test]
fn a_first_make_that_is_killed_is_taken_up_again() {
    on_one_thread(|| {
        let (done, whole, operations) = put(new_site(), State::new(false), When::Never);
        done.unwrap();
        for number in 0..operations {
            let (_, state, _) = put(new_site(), State::new(false), When::Dies(number));
            let (done, state, _) = put(new_site(), state, When::Never);
            done.unwrap_or_else(|trouble| panic!("stopped at {number}: {trouble}"));
            assert_eq!(state, whole, "stopped at {number}");
        }
    });
}

#[test]
fn a_kill_on_several_threads_leaves_every_page_whole() {
    // The order differs from run to run; each is one that can happen.
    let (old, new) = (before(false), clean(new_site(), false));
    at_every_operation(false, |state, moment| {
        check_whole(&state, &old, &new, moment);
        let (done, state, _) = put(new_site(), state, When::Never);
        done.unwrap();
        assert_eq!(state, new, "{moment}");
    });
}

#[test]
fn out_of_space_loses_nothing_and_cleans_up() {
    on_one_thread(|| {
        let (old, new) = (before(false), clean(new_site(), false));
        let (_, _, operations) = put(new_site(), old.clone(), When::Never);
        let mut untouched = 0;
        for number in 0..operations {
            for when in [When::Fails(number), When::Full(number)] {
                let (done, state, _) = put(new_site(), old.clone(), when);
                check_whole(&state, &old, &new, &format!("{when:?}"));
                if let Err(trouble) = done {
                    let Trouble::Disk { left, .. } = &trouble else { panic!("{trouble}") };
                    assert!(trouble.to_string().contains("no space is left"), "{trouble}");
                    if *left == Left::AsItWas {
                        untouched += 1;
                        assert_eq!(state, old, "{when:?}: {trouble}");
                    } else {
                        assert!(!aside_holds_anything(&state) || when == When::Fails(number));
                    }
                }
                let (done, state, _) = put(new_site(), state, When::Never);
                done.unwrap();
                assert_eq!(state, new, "{when:?}");
            }
        }
        assert!(untouched > 10, "only {untouched} of the failures came before a page was touched");
    });
}

fn aside_holds_anything(state: &State) -> bool {
    state.all().keys().any(|at| at.starts_with(".ballband/aside/"))
}

#[test]
fn her_files_are_never_touched() {
    on_one_thread(|| {
        at_every_operation(false, |state, moment| {
            let kept: BTreeSet<&str> = texts(&state).into_keys().filter(|at| at.contains("hers")).collect();
            assert_eq!(kept, BTreeSet::from(["hers.txt", "gone/hers.txt"]), "{moment}");
        });
    });
}
