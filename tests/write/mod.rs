//! What publishing promises.

mod digests;
mod kill;
mod manifest;
mod memory;
mod paths;
mod plan;
mod publish;
mod refuse;

use std::path::PathBuf;
use std::sync::atomic::{AtomicUsize, Ordering};

use ballband::write::{SiteFile, SitePath};

/// A path that is known to be a good one.
fn path(text: &str) -> SitePath {
    SitePath::new(text).unwrap()
}

/// Files of these texts; every second one is made when its turn comes.
fn files(all: &[(&str, &str)]) -> Vec<SiteFile<'static>> {
    let file = |(number, (at, text)): (usize, &(&str, &str))| {
        let text = text.to_string();
        if number % 2 == 0 {
            SiteFile::new(path(at), text)
        } else {
            SiteFile::made(path(at), move || Ok(text.clone().into()))
        }
    };
    all.iter().enumerate().map(file).collect()
}

/// A new empty folder for one test.
fn folder(name: &str) -> PathBuf {
    static NEXT: AtomicUsize = AtomicUsize::new(0);
    let number = NEXT.fetch_add(1, Ordering::Relaxed);
    let at = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(format!("write-{name}-{}-{number}", std::process::id()));
    let _ = std::fs::remove_dir_all(&at);
    std::fs::create_dir_all(&at).unwrap();
    at
}

fn quiet(_: ballband::write::Progress) {}
