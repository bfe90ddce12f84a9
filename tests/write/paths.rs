//! What may be a path inside the site.

use ballband::write::SitePath;
use proptest::prelude::*;

#[test]
fn ordinary_paths_are_taken() {
    for good in [
        "index.html",
        "patterns/saltmarsh-yoke/index.html",
        ".well-known/x",
        ".nojekyll",
        "a b/ü.html",
        "...",
        "a/..b",
        ".ballband2",
    ] {
        let path = SitePath::new(good).unwrap();
        assert_eq!(path.as_str(), good);
    }
}

#[test]
fn paths_that_lead_out_or_mean_something_else_are_refused() {
    let long = "x".repeat(256);
    for (bad, why) in [
        ("", "empty"),
        ("/etc/passwd", "begins with `/`"),
        ("a//b", "part of it is empty"),
        ("a/", "part of it is empty"),
        (".", "`.` or `..`"),
        ("..", "`.` or `..`"),
        ("a/../b", "`.` or `..`"),
        ("a/./b", "`.` or `..`"),
        ("../../x", "`.` or `..`"),
        ("a\\b", "backslash"),
        ("a\0b", "NUL"),
        ("C:/x", "drive"),
        (".ballband/made.json", "own records"),
        (".Ballband/x", "own records"),
        (".ballband", "own records"),
        (long.as_str(), "longer than 255"),
    ] {
        let error = SitePath::new(bad).unwrap_err();
        assert!(error.to_string().contains(why), "{bad:?}: {error}");
    }
}

#[test]
fn the_folders_of_a_path_come_outermost_first() {
    let path = SitePath::new("a/b/c.html").unwrap();
    assert_eq!(path.folders().collect::<Vec<_>>(), ["a", "a/b"]);
    assert_eq!(SitePath::new("c.html").unwrap().folders().count(), 0);
}

proptest! {
    #[test]
    fn no_path_that_is_taken_leads_out_of_its_folder(text in "[a./\\\\:b]{0,12}") {
        if let Ok(path) = SitePath::new(text.clone()) {
            let parts: Vec<_> = std::path::Path::new(path.as_str()).components().collect();
            prop_assert!(parts.iter().all(|part| matches!(part, std::path::Component::Normal(_))));
            prop_assert_eq!(parts.len(), text.split('/').count());
        }
    }
}
