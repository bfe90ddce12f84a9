//! Thousands of random edits: after each, what the preview holds is what a clean make gives, byte for byte.

use super::grow;
use crate::bench::random::Random;
use crate::support::day;
use ballband::catalogue::{Eyes, View};
use ballband::finding::{any_error, to_json};
use ballband::preview::{Preview, Work};
use ballband::source::memory::Memory;
use ballband::source::{FilePath, Files};
use std::collections::{BTreeMap, BTreeSet};

/// How many edits in all: the figure agreed for a release build; fewer where the code is slow.
const EDITS: usize = if cfg!(debug_assertions) { 60 } else { 5_000 };

/// How many studios they are made in; each begins anew.
const STUDIOS: usize = 10;

/// Returns every file of a site that is made at once.
fn clean(files: &dyn Files, view: View) -> (BTreeMap<String, Vec<u8>>, String) {
    let studied = ballband::study(files, view).unwrap();
    let sizes = studied.sizes();
    let made = studied.renderer(&sizes).files().iter().map(|file| (file.path.clone(), file.make().unwrap())).collect();
    (made, to_json(&studied.findings, &studied.texts))
}

#[test]
fn after_any_edit_the_preview_is_what_a_clean_make_gives() {
    let (mut compared, mut broken) = (0, 0);
    let (mut looked_at, mut worked_out, mut filled, mut differed) = (0, 0, 0, 0);
    for studio in 0..STUDIOS {
        let random = &mut Random::new(7, studio);
        let eyes = if studio % 2 == 0 { Eyes::Readers } else { Eyes::Designer };
        let view = View { today: day("2026-11-25"), eyes };
        let mut files = Memory::default();
        for (path, text) in grow::begin(random) {
            files = files.with(&path, text);
        }
        let mut preview = Preview::new(&files, view).unwrap();
        let mut story: Vec<String> = Vec::new();
        let mut before: BTreeMap<String, Vec<u8>> = BTreeMap::new();
        let mut work = Work::default();
        for _ in 0..EDITS / STUDIOS {
            let mut changed = BTreeSet::new();
            // Mostly one file is saved, sometimes a few at once.
            for _ in 0..1 + random.below(12) / 10 {
                let (path, text) = grow::edit(random);
                let file = FilePath::new(&path).unwrap();
                story.push(format!("{path}: {text:?}"));
                match text {
                    Some(text) => drop(files.files.insert(file.clone(), text.into_bytes())),
                    None => drop(files.files.remove(&file)),
                }
                changed.insert(file);
            }
            preview.update(&files, &changed, view).unwrap();
            if preview.kept.is_any_old() {
                // What was good before the last mistake stays, which a clean make cannot know of; she is told.
                assert!(any_error(&preview.findings()));
                broken += 1;
                continue;
            }
            let last = story.last().unwrap().clone();
            let (wanted, findings) = clean(&files, view);
            compared += 1;
            let told = to_json(&preview.findings(), &preview.kept.texts);
            assert_eq!(told, findings, "after {last}");
            let names: BTreeSet<String> = preview.names().into_iter().collect();
            assert_eq!(names, wanted.keys().cloned().collect());
            for (path, bytes) in &wanted {
                let made = preview.file(path).unwrap().unwrap();
                assert!(*made == **bytes, "{path} differs after {last}");
            }
            let now = preview.work();
            // A studio's own settings may change what pages see and not what they show of it.
            let settings = std::mem::take(&mut story).iter().any(|edit| edit.starts_with("studio.yaml"));
            if now.dressed == work.dressed && !settings {
                let is_page = |path: &&String| path.ends_with(".html");
                let pages = wanted.keys().filter(is_page).count();
                let others =
                    wanted.keys().filter(is_page).filter(|path| before.get(*path) != wanted.get(*path)).count();
                looked_at += pages;
                worked_out += now.worked_out - work.worked_out;
                filled += now.filled - work.filled;
                differed += others;
            }
            work = now;
            before = wanted;
        }
    }
    assert!(compared > EDITS / 2, "{compared} of {EDITS} compared, {broken} broken");
    // A page may see what it does not show, such as a mention that it leaves out.
    assert!(filled < differed + differed / 4, "{filled} pages were filled again and only {differed} differed");
    println!("{looked_at} pages asked for, {worked_out} worked out again, {filled} filled again, {differed} differed");
    println!("{EDITS} edits: {compared} compared with a clean make, {broken} with mistakes, 0 differences");
}
