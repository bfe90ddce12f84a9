//! Small studios for tests.

use ballband::catalogue::View;
use ballband::entry::value::Date;
use ballband::source::memory::Memory;
use ballband::{Studied, study};

/// The day tests are on, unless they say otherwise.
pub const TODAY: &str = "2026-11-25";

/// A studio's own file, with nothing but what must be there.
pub const STUDIO: &str = "title: Wrackline\nurl: https://wrackline.example\n";

/// Returns a date.
pub fn day(text: &str) -> Date {
    Date::parse(text).expect("a date")
}

/// Returns what readers see on a day.
pub fn readers(text: &str) -> View {
    View::of_readers(day(text))
}

/// Returns a studio of several files, with a plain `studio.yaml` unless one is given.
pub fn studio(files: &[(&str, &str)]) -> Memory {
    let memory = Memory::default().with("studio.yaml", STUDIO);
    files.iter().fold(memory, |memory, (path, text)| memory.with(path, *text))
}

/// Reads a studio of several files as of [`TODAY`].
pub fn read(files: &[(&str, &str)]) -> Studied {
    study(&studio(files), readers(TODAY)).expect("files in memory can be listed")
}

/// Makes the site of a studio of several files and returns it as paths and texts.
pub fn site(files: &[(&str, &str)]) -> Vec<(String, String)> {
    let studied = read(files);
    let told: Vec<String> =
        studied.findings.iter().map(|finding| format!("{}: {}", finding.code.name, finding.message)).collect();
    assert!(!ballband::finding::any_error(&studied.findings), "{told:?}");
    let (rendered, faults) = ballband::make(&studied);
    assert!(faults.is_empty(), "{faults:?}");
    rendered.into_iter().map(|file| (file.path, String::from_utf8_lossy(&file.bytes).into_owned())).collect()
}

/// Returns one page of a site.
pub fn page<'a>(site: &'a [(String, String)], path: &str) -> &'a str {
    let found = site.iter().find(|(name, _)| name == path);
    &found.unwrap_or_else(|| panic!("no {path} among {:?}", site.iter().map(|(name, _)| name).collect::<Vec<_>>())).1
}
