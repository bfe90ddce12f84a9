//! Deciding, on values alone.

use ballband::write::{Existing, Found, Manifest, Plan, Refusal, SitePath, plan};

use super::path;

fn existing(made: &[&str], found: &[(&str, Found)]) -> Existing {
    Existing {
        manifest: Manifest { files: made.iter().map(|at| (path(at), None)).collect() },
        found: found.iter().map(|(at, what)| ((*at).to_owned(), *what)).collect(),
        folds: false,
    }
}

fn paths(all: &[&str]) -> Vec<SitePath> {
    all.iter().map(|at| path(at)).collect()
}

#[test]
fn into_an_empty_folder_everything_is_written() {
    let plan = plan(&existing(&[], &[]), &paths(&["a/b/c.html", "index.html"])).unwrap();
    let whole = ["a".to_owned()].into();
    assert_eq!(plan, Plan { write: vec![0, 1], whole, ..Plan::default() });
    assert!(plan.goes_along("a/b/c.html") && plan.goes_along("a/b"));
    assert!(!plan.goes_along("a") && !plan.goes_along("index.html"));
}

#[test]
fn only_a_folder_where_nothing_is_is_moved_whole() {
    let there = existing(&["a/old.html"], &[("a", Found::Folder), ("a/old.html", Found::Same)]);
    let plan = plan(&there, &paths(&["a/b/c/d.html", "a/b/e.html", "a/new.html", "a/old.html"])).unwrap();
    assert_eq!(plan.whole, ["a/b".to_owned()].into());
    assert_eq!((plan.write.as_slice(), plan.keep.as_slice()), ([0, 1, 2].as_slice(), [3].as_slice()));
    assert!(plan.folders.is_empty() && plan.goes_along("a/b/c/d.html") && !plan.goes_along("a/new.html"));
}

#[test]
fn only_what_differs_is_written_and_only_what_was_made_is_removed() {
    let there = existing(
        &["a/new.html", "a/old.html", "a/same.html", "b/old.html", "missing.html"],
        &[
            ("a", Found::Folder),
            ("a/new.html", Found::Differs),
            ("a/old.html", Found::Differs),
            ("a/same.html", Found::Same),
            ("b", Found::Folder),
            ("b/old.html", Found::Differs),
        ],
    );
    let plan = plan(&there, &paths(&["a/new.html", "a/same.html"])).unwrap();
    assert_eq!(plan.write, [0]);
    assert_eq!(plan.keep, [1]);
    assert_eq!(plan.remove, paths(&["a/old.html", "b/old.html"]));
    assert_eq!(plan.emptied, ["b"]);
    assert!(plan.clear.is_empty() && plan.folders.is_empty());
}

#[test]
fn nothing_to_do_is_an_empty_plan() {
    let there = existing(&["a.html"], &[("a.html", Found::Same)]);
    assert!(plan(&there, &paths(&["a.html"])).unwrap().is_empty());
    assert!(!plan(&there, &[]).unwrap().is_empty());
}

#[test]
fn a_file_of_ours_gives_way_to_a_folder() {
    let there = existing(&["a"], &[("a", Found::Differs)]);
    let plan = plan(&there, &paths(&["a/b.html"])).unwrap();
    assert_eq!(plan.clear, paths(&["a"]));
    assert_eq!(plan.folders, ["a"]);
    assert!(plan.remove.is_empty());
}

#[test]
fn a_folder_of_ours_gives_way_to_a_file() {
    let there = existing(
        &["a/b/c.html", "a/d.html"],
        &[("a", Found::Folder), ("a/b", Found::Folder), ("a/b/c.html", Found::Differs), ("a/d.html", Found::Differs)],
    );
    let plan = plan(&there, &paths(&["a"])).unwrap();
    assert_eq!(plan.clear, paths(&["a/b/c.html", "a/d.html"]));
    assert_eq!(plan.clear_folders, ["a/b", "a"]);
    assert_eq!(plan.write, [0]);
}

#[test]
fn what_is_hers_is_refused_by_name() {
    let cases = [
        (existing(&[], &[("a", Found::Differs)]), "a", Refusal::HerFile("a".into())),
        (existing(&[], &[("a", Found::Differs)]), "a/b", Refusal::HerFile("a".into())),
        (existing(&[], &[("a", Found::Folder)]), "a", Refusal::HerFolder("a".into())),
        (existing(&["a/b"], &[("a", Found::Folder), ("a/x", Found::Differs)]), "a", Refusal::HerFolder("a/x".into())),
        (existing(&["a/b"], &[("a", Found::Folder), ("a/x", Found::Folder)]), "a", Refusal::HerFolder("a/x".into())),
        (existing(&["a"], &[("a", Found::Other)]), "a", Refusal::Link("a".into())),
        (existing(&["a/b"], &[("a", Found::Other)]), "a/b", Refusal::Link("a".into())),
    ];
    for (there, wanted, why) in cases {
        assert_eq!(plan(&there, &paths(&[wanted])), Err(why), "{there:?}");
    }
}

#[test]
fn a_file_of_hers_with_the_same_bytes_is_kept() {
    let there = existing(&[], &[("a.html", Found::Same)]);
    assert_eq!(plan(&there, &paths(&["a.html"])).unwrap().keep, [0]);
}

#[test]
fn an_old_path_that_is_now_a_folder_or_link_of_hers_is_left() {
    for what in [Found::Folder, Found::Other] {
        let there = existing(&["a.html"], &[("a.html", what)]);
        assert!(plan(&there, &[]).unwrap().is_empty());
    }
}

#[test]
fn a_page_spelt_in_other_capitals_is_cleared_before_it_comes_again() {
    // As seen on a disk that takes both spellings for one.
    let mut there = existing(
        &["Notes/About.html", "Notes/x.html"],
        &[
            ("Notes", Found::Folder),
            ("notes", Found::Folder),
            ("Notes/About.html", Found::Differs),
            ("Notes/x.html", Found::Differs),
            ("notes/about.html", Found::Same),
        ],
    );
    there.folds = true;
    let plan = plan(&there, &paths(&["notes/about.html"])).unwrap();
    assert_eq!(plan.clear, paths(&["Notes/About.html", "Notes/x.html"]));
    assert_eq!(plan.write, [0], "what is to be cleared is not to be kept");
    assert!(plan.remove.is_empty());
}

#[test]
fn a_file_of_hers_in_other_capitals_than_ours_is_hers() {
    let found = [("About.html", Found::Differs), ("about.html", Found::Differs)];
    let there = existing(&["About.html"], &found);
    let refused = plan(&there, &paths(&["about.html"]));
    assert_eq!(refused, Err(Refusal::HerFile("about.html".into())));
}

#[test]
fn paths_that_cannot_stand_together_are_refused() {
    let none = existing(&[], &[]);
    let refused = |all: &[&str]| plan(&none, &paths(all)).unwrap_err();
    assert_eq!(refused(&["a", "b", "a"]), Refusal::Twice(path("a")));
    assert_eq!(refused(&["About", "about"]), Refusal::Twins("about".into(), "About".into()));
    assert_eq!(refused(&["Ä/x", "ä/y"]), Refusal::Twins("ä".into(), "Ä".into()));
    assert_eq!(refused(&["a", "a/b"]), Refusal::FileAndFolder(path("a")));
    assert!(matches!(refused(&["A", "a/b"]), Refusal::Twins(..)));
}
