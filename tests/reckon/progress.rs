//! How projects come on through time. The sums are worked by hand beside each.

use crate::support::{TODAY, day, read, readers, studio};
use ballband::catalogue::Catalogue;
use ballband::entry::{Entry, Key, Kind, Reference};
use ballband::measure::YarnLength;
use ballband::reckon::{Sum, ThisYear, ToldBy, history, part, per_week, this_year, whole_length};

const YARNS: &str = "wool:\n  title: Wool\n  put-up: 100 m / 50 g\nloose:\n  title: A leftover\n";
const SHAWL: &str = "---\ntitle: Shawl\npublished: 2026-01-01\nyarn: [ { yarn: wool, needs: 600 m } ]\n---\n";

fn entry<'a>(catalogue: &'a Catalogue, kind: Kind, key: &str) -> &'a Entry {
    catalogue.entry(&Reference { kind, key: Key::new(key).unwrap() }).unwrap()
}

fn note(project: &str, progress: &str) -> String {
    format!("---\ntitle: A week\nworked on: [ {{ project: {project}, progress: {progress} }} ]\n---\n")
}

fn metres(metres: i64) -> YarnLength {
    YarnLength::from_metres(metres).unwrap()
}

/// Begun on the day of a note, so that the note stands for the day; finished on the day of another, likewise. A note that is
/// not ready, or of a day outside those of the project, is left out.
#[test]
fn the_days_of_a_project_go_from_cast_on_to_cast_off() {
    let notes = [
        ("journal/2026-09-25.md", note("hat", "90%")),
        ("journal/2026-10-02.md", note("hat", "5%")),
        ("journal/2026-10-09.md", note("hat", "42.5%")),
        ("journal/2026-10-16.md", note("hat", "120%")),
        ("journal/2026-10-23.md", note("hat", "100%")),
        ("journal/2026-10-12.md", note("hat", "50%").replace("worked", "ready: false\nworked")),
    ];
    let project = "---\ntitle: Hat\nstarted: 2026-10-02\nfinished: 2026-10-23\n---\n";
    let mut files = vec![("projects/hat.md", project)];
    files.extend(notes.iter().map(|(path, text)| (*path, text.as_str())));
    let studied = read(&files);
    let history = history(&studied.catalogue, entry(&studied.catalogue, Kind::Project, "hat"));
    let told: Vec<(String, String)> = history.iter().map(|one| (one.day.to_string(), one.progress.show())).collect();
    let expected = [("2026-10-02", "5%"), ("2026-10-09", "42.5%"), ("2026-10-16", "100%"), ("2026-10-23", "100%")];
    assert_eq!(told, expected.map(|(day, progress)| (day.to_owned(), progress.to_owned())));
    assert_eq!(history.last().unwrap().told, ToldBy::CastOff);
    assert!(matches!(&history[0].told, ToldBy::Note(note) if note.key.as_str() == "2026-10-02"));
}

/// 600 m × 35% = 210 m; in ten days that is 147 m a week, and in none it is taken for one day: 1,470 m.
#[test]
fn a_part_of_a_length_over_its_days_is_so_much_a_week() {
    let percent = ballband::measure::Percent::parse("35%").unwrap();
    let step = part(metres(600), percent).unwrap();
    assert_eq!(step, metres(210));
    assert_eq!(per_week(step, 10), Some(metres(147)));
    assert_eq!(per_week(step, 0), Some(metres(1470)));
}

/// A finished thing is as long as what went into it; one on the needles takes what its pattern says, or else what went into
/// it so far over how far it is: 120 m at 30% are 400 m.
#[test]
fn the_whole_length_is_what_was_used_or_what_the_pattern_takes() {
    let studied = read(&[
        ("yarns.yaml", YARNS),
        ("patterns/shawl.md", SHAWL),
        (
            "projects/done.md",
            "---\ntitle: Done\npattern: shawl\nfinished: 2026-10-01\nyarn: [ { yarn: wool, used: 290 g } ]\n---\n",
        ),
        (
            "projects/unweighed.md",
            "---\ntitle: Unweighed\npattern: shawl\nfinished: 2026-10-01\nyarn: [ { yarn: wool } ]\n---\n",
        ),
        ("projects/going.md", "---\ntitle: Going\npattern: shawl\nyarn: [ { yarn: wool, used: 10 g } ]\n---\n"),
        ("projects/hers.md", "---\ntitle: Hers\nyarn: [ { yarn: wool, used: 60 g } ]\n---\n"),
        ("projects/unknown.md", "---\ntitle: Unknown\nyarn: [ { yarn: loose, used: 60 g } ]\n---\n"),
        ("journal/2026-11-20.md", &note("hers", "30%")),
    ]);
    let of = |key: &str| whole_length(&studied.catalogue, entry(&studied.catalogue, Kind::Project, key));
    assert_eq!(of("done"), Some(metres(580)));
    assert_eq!(of("unweighed"), Some(metres(600)));
    assert_eq!(of("going"), Some(metres(600)));
    assert_eq!(of("hers"), Some(metres(400)));
    assert_eq!(of("unknown"), None);
}

/// 2026: 580 m of `done`; of `over`, 600 m less the 25% of December, 450 m. On the needles 40% of 600 m, 240 m, and 30 m that
/// were weighed. One thing's length is not known; the quilt has no yarn, and what was finished in 2025 is of that year.
#[test]
fn a_year_has_the_yarn_that_went_into_things_in_it() {
    let finished = |day: &str, more: &str| format!("---\ntitle: A thing\npattern: shawl\nfinished: {day}\n{more}---\n");
    let files = [
        ("yarns.yaml", YARNS.to_owned()),
        ("patterns/shawl.md", SHAWL.to_owned()),
        ("projects/done.md", finished("2026-10-01", "yarn: [ { yarn: wool, used: 290 g } ]\n")),
        ("projects/over.md", finished("2026-02-01", "started: 2025-12-01\n")),
        ("projects/old.md", finished("2025-06-01", "")),
        ("projects/going.md", "---\ntitle: Going\npattern: shawl\n---\n".to_owned()),
        ("projects/weighed.md", "---\ntitle: Weighed\nyarn: [ { yarn: wool, used: 30 m } ]\n---\n".to_owned()),
        ("projects/unknown.md", "---\ntitle: Unknown\nyarn: [ { yarn: loose } ]\n---\n".to_owned()),
        ("projects/quilt.md", "---\ntitle: Quilt\ncraft: quilting\n---\n".to_owned()),
        ("journal/2025-12-19.md", note("over", "25%")),
        ("journal/2026-11-20.md", note("going", "40%")),
    ];
    let files: Vec<(&str, &str)> = files.iter().map(|(path, text)| (*path, text.as_str())).collect();
    let studied = read(&files);
    let expected = ThisYear {
        finished: Sum { things: 2, length: metres(580 + 450), is_least: false },
        needles: Sum { things: 2, length: metres(240 + 30), is_least: false },
        unknown: 1,
    };
    assert_eq!(this_year(&studied.catalogue), expected);
    assert_eq!(studied.catalogue.view, readers(TODAY));
    let later = ballband::study(&studio(&files), readers("2027-01-05")).unwrap();
    assert_eq!(this_year(&later.catalogue).finished, Sum::default());
    assert_eq!(day(TODAY).year(), 2026);
}

/// What she says she used goes before the share: 100 m, and not 40% of 600 m. Of a thing at 20% last year and at 50% now,
/// 3/5 of the 100 m are of this year: 60 m. Of one with a yarn that is not known the other counts, 50 m, and makes it the least.
#[test]
fn what_she_says_she_used_goes_before_a_share() {
    let going =
        |yarn: &str| format!("---\ntitle: Going\npattern: shawl\nyarn: [ {{ yarn: wool, used: 50 g }}{yarn} ]\n---\n");
    let files = [
        ("yarns.yaml", YARNS.to_owned()),
        ("patterns/shawl.md", SHAWL.to_owned()),
        ("projects/going.md", going("")),
        ("projects/older.md", going("")),
        ("projects/partly.md", "---\ntitle: P\nfinished: 2026-10-01\nyarn: [ { yarn: wool, used: 25 g }, { yarn: loose, used: 9 g } ]\n---\n".to_owned()),
        ("journal/2025-12-19.md", note("older", "20%")),
        ("journal/2026-11-19.md", note("older", "50%")),
        ("journal/2026-11-20.md", note("going", "40%")),
    ];
    let files: Vec<(&str, &str)> = files.iter().map(|(path, text)| (*path, text.as_str())).collect();
    let expected = ThisYear {
        finished: Sum { things: 1, length: metres(50), is_least: true },
        needles: Sum { things: 2, length: metres(100 + 60), is_least: false },
        unknown: 0,
    };
    assert_eq!(this_year(&read(&files).catalogue), expected);
}

/// 700 m in 49, 35 and 25 days are 100, 140 and 196 m a week, and the middle one is 140. Of 600 m, 40% are left: 240 m over
/// eight days are 210 m a week. In yards, to the whole one: 210 ÷ 0.9144 = 229.66 and 140 ÷ 0.9144 = 153.11.
#[test]
fn a_deadline_is_set_against_the_median_and_says_both() {
    let done = |from: &str, to: &str| {
        format!("---\ntitle: A thing\nstarted: {from}\nfinished: {to}\nyarn: [ {{ yarn: wool, used: 700 m }} ]\n---\n")
    };
    let told = |units: &str, used: &str, progress: &str| {
        let files = [
            ("studio.yaml", format!("title: W\nurl: https://wrackline.example\nunits: {units}\n")),
            ("yarns.yaml", YARNS.to_owned()),
            ("patterns/shawl.md", SHAWL.to_owned()),
            ("projects/one.md", done("2026-01-01", "2026-02-19")),
            ("projects/two.md", done("2026-01-01", "2026-02-05")),
            ("projects/three.md", done("2026-01-01", "2026-01-26")),
            (
                "projects/fast.md",
                format!("---\ntitle: Fast\npattern: shawl\nmade for: {{ by: 2026-12-03 }}\n{used}---\n"),
            ),
            ("journal/2026-11-20.md", progress.to_owned()),
        ];
        let files: Vec<(&str, &str)> = files.iter().map(|(path, text)| (*path, text.as_str())).collect();
        read(&files).findings.iter().map(|finding| finding.message.clone()).collect::<Vec<_>>()
    };
    let words = |wanted: &str, median: &str| {
        [format!(
            "needs {wanted} a week to be there by 3 December 2026; your median is {median} a week over 3 projects"
        )]
    };
    assert_eq!(told("metric", "", &note("fast", "60%")), words("210 m", "140 m"));
    assert_eq!(told("imperial", "", &note("fast", "60%")), words("230 yd", "153 yd"));
    // Without a note, what is left is 600 m less the 360 m of 180 g, or all of it: 600 m over eight days are 525 m a week.
    let nothing = "---\ntitle: A week\n---\n";
    assert_eq!(told("metric", "yarn: [ { yarn: wool, used: 180 g } ]\n", nothing), words("210 m", "140 m"));
    assert_eq!(told("metric", "", nothing), words("525 m", "140 m"));
}
