//! The list of what a make wrote.

use ballband::write::{Digest, Made, Manifest, Unreadable};
use proptest::prelude::*;

use super::path;

fn example() -> Manifest {
    let made = Made { from: Digest::from(1), out: Digest::from(0xabc) };
    let files = [(path("photos/yoke.webp"), Some(made)), (path("index.html"), None)];
    Manifest { files: files.into_iter().collect() }
}

#[test]
fn the_list_is_sorted_and_holds_paths_and_digests_only() {
    let text = String::from_utf8(example().to_bytes()).unwrap();
    assert_eq!(
        text,
        r#"{
  "about": "What ballband wrote here. Please leave it: without it ballband cannot know which files it may replace.",
  "version": 1,
  "files": {
    "index.html": null,
    "photos/yoke.webp": {
      "from": "00000000000000000000000000000001",
      "made": "00000000000000000000000000000abc"
    }
  }
}
"#
    );
}

#[test]
fn the_list_is_read_as_it_was_written() {
    assert_eq!(Manifest::read(&example().to_bytes()), Ok(example()));
    assert_eq!(Manifest::read(&Manifest::default().to_bytes()), Ok(Manifest::default()));
}

#[test]
fn a_list_of_another_version_is_told_from_a_damaged_one() {
    let text = String::from_utf8(example().to_bytes()).unwrap();
    let later = text.replace("\"version\": 1", "\"version\": 7");
    assert_eq!(Manifest::read(later.as_bytes()), Err(Unreadable::Version(7)));
    let other_fields = br#"{ "version": 2, "entries": [] }"#;
    assert_eq!(Manifest::read(other_fields), Err(Unreadable::Version(2)));
}

#[test]
fn a_list_cut_short_anywhere_is_damaged() {
    let bytes = example().to_bytes();
    // The last two bytes are the closing bracket and the line end, which may go.
    for end in 0..bytes.len() - 1 {
        let read = Manifest::read(&bytes[..end]);
        assert!(matches!(read, Err(Unreadable::Damaged(_))), "{end}: {read:?}");
    }
}

#[test]
fn a_list_that_names_a_path_outside_the_site_is_damaged() {
    let text = String::from_utf8(example().to_bytes()).unwrap();
    for outside in ["../index.html", "/etc/passwd", ".ballband/lock", "a/../../b"] {
        let read = Manifest::read(text.replace("index.html", outside).as_bytes());
        assert!(matches!(read, Err(Unreadable::Damaged(_))), "{outside}: {read:?}");
    }
}

proptest! {
    #[test]
    fn no_bytes_make_reading_a_list_panic(bytes: Vec<u8>) {
        prop_assert!(Manifest::read(&bytes).is_err());
    }
}
