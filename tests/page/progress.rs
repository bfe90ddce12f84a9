//! What readers see of things through time, of gifts and of others' patterns.

use crate::support::{page, readers, site, studio};

const YARNS: &str = "wool:\n  title: Wool\n  put-up: 100 m / 50 g\n";

fn note(progress: &str) -> String {
    format!("---\ntitle: A week\nnumber: 7\nworked on: [ {{ project: hat, progress: {progress} }} ]\n---\n")
}

/// 200 m in 40 days: from 20% after ten days to 100% after 40 are 160 m in 30 days, 37.3 m a week; in all 200 ÷ 40 × 7 = 35.
#[test]
fn a_project_shows_how_it_came_on_as_a_drawing_and_as_a_list() {
    let project =
        "---\ntitle: Hat\nstarted: 2026-10-01\nfinished: 2026-11-10\nyarn: [ { yarn: wool, used: 100 g } ]\n---\n";
    let files = [("yarns.yaml", YARNS), ("projects/hat.md", project), ("journal/2026-10-11.md", &note("20%"))];
    let site = site(&files);
    let html = page(&site, "projects/hat/index.html");
    assert_eq!(html.matches("<svg class=\"chart\"").count(), 1);
    assert!(
        html.contains("<desc id=\"leaflet-chart-words\">From 0% on 1 October 2026 to 100% on 10 November 2026.</desc>")
    );
    assert!(html.contains("<dt>Took</dt><dd>40 days</dd>"), "{html}");
    assert!(html.contains("About 35\u{a0}m"), "{html}");
    for line in [
        "1 October 2026</time>: 0%",
        "11 October 2026</time>: 20% <span class=\"beside\"><a href=\"/journal/2026-10-11/\">note 7</a>, about 28\u{a0}m",
        "10 November 2026</time>: 100% <span class=\"beside\">finished, about 37\u{a0}m",
    ] {
        assert!(html.contains(line), "{line}: {html}");
    }
}

/// 1,073 m in 47 days are 160 m a week (159.8), and the 10% that were done on the first day are of it; the same without a note.
#[test]
fn the_pace_of_a_thing_is_all_of_it_over_all_its_days() {
    let project =
        "---\ntitle: Hat\nstarted: 2026-10-02\nfinished: 2026-11-18\nyarn: [ { yarn: wool, used: 1073 m } ]\n---\n";
    for notes in [&[("journal/2026-10-02.md", note("10%"))][..], &[]] {
        let mut files = vec![("yarns.yaml", YARNS), ("projects/hat.md", project)];
        files.extend(notes.iter().map(|(path, text)| (*path, text.as_str())));
        let html = page(&site(&files), "projects/hat/index.html").to_owned();
        assert!(html.contains("<dt>Pace</dt><dd>About 160\u{a0}m"), "{html}");
    }
}

/// A title that begins with the number says it once, as those of `jot` do; another stands behind its number.
#[test]
fn a_note_that_is_called_by_its_number_is_not_numbered_twice() {
    let titled = |title: &str| format!("---\ntitle: {title}\nnumber: 17\nworked on: [ {{ project: hat }} ]\n---\n");
    for (title, seen) in [
        ("Note 17, by the stove", ">Note 17, by the stove<"),
        ("Note 17", ">Note 17<"),
        ("Note 170", ">Note 17, Note 170<"),
        ("Reeds", ">Note 17, Reeds<"),
    ] {
        let note = titled(title);
        let site = site(&[("projects/hat.md", "---\ntitle: Hat\n---\n"), ("journal/2026-11-20.md", &note)]);
        let html = page(&site, "projects/hat/index.html");
        assert!(html.contains(seen), "{seen}: {html}");
    }
}

#[test]
fn where_no_note_tells_it_there_is_no_drawing() {
    let project = "---\ntitle: Hat\nstarted: 2026-10-01\nfinished: 2026-11-10\n---\n";
    let hidden = note("20%").replace("title", "ready: false\ntitle");
    let site = site(&[("projects/hat.md", project), ("journal/2026-10-11.md", &hidden)]);
    let html = page(&site, "projects/hat/index.html");
    assert!(!html.contains("<svg class=\"chart\"") && html.contains("40 days"), "{html}");
}

#[test]
fn the_needles_say_how_much_yarn_the_year_took() {
    let project = "---\ntitle: Hat\nfinished: 2026-11-10\nyarn: [ { yarn: wool, used: 100 g } ]\n---\n";
    let site = site(&[("yarns.yaml", YARNS), ("projects/hat.md", project)]);
    for path in ["finished/index.html", "on-the-needles/index.html"] {
        let html = page(&site, path);
        assert!(
            html.contains(
                "So far in 2026: 200\u{a0}m <span class=\"other\">219\u{a0}yd</span> in one thing of yarn finished."
            ),
            "{html}"
        );
    }
}

const SOCKS: &str = "---\ntitle: Sunday socks\npattern: { title: Plain Socks, by: otha, url: \"https://example.com/plain\" }\nyarn: [ { yarn: wool } ]\n---\n";

/// Everywhere a project is listed: its own page, the needles, the front page, the yarn's page, the note.
#[test]
fn somebody_elses_pattern_is_credited_wherever_its_project_is_listed() {
    let own = "---\ntitle: My hat\npattern: cap\nyarn: [ { yarn: wool } ]\n---\n";
    let note =
        "---\ntitle: A week\nwearing: [project:socks]\nworked on: [ { project: socks }, { project: hat } ]\n---\n";
    let site = site(&[
        ("yarns.yaml", YARNS),
        ("people.yaml", "otha: { title: Otha Plimsett }\n"),
        ("patterns/cap.md", "---\ntitle: Cap\npublished: 2026-01-01\n---\n"),
        ("projects/socks.md", SOCKS),
        ("projects/hat.md", own),
        ("journal/2026-11-20.md", note),
    ]);
    let theirs = "<a href=\"https://example.com/plain\">Plain Socks</a> by <a href=\"/people/otha/\">Otha Plimsett</a>";
    let mine = "<a href=\"/patterns/cap/\">Cap</a>, my&nbsp;own";
    for path in ["on-the-needles/index.html", "index.html", "yarns/wool/index.html", "journal/2026-11-20/index.html"] {
        let html = page(&site, path);
        assert!(html.contains(theirs) && html.contains(mine), "{path}: {html}");
    }
    let html = page(&site, "journal/2026-11-20/index.html");
    assert_eq!(html.matches(theirs).count(), 2, "worn and worked on: {html}");
    assert!(html.contains("<span class=\"beside\">from Plain Socks by Otha Plimsett</span>"), "mentioned: {html}");
    assert!(page(&site, "people/otha/index.html").contains("project, from Plain Socks by Otha Plimsett"));
    assert!(page(&site, "projects/socks/index.html").contains(theirs));
    assert!(page(&site, "projects/hat/index.html").contains(mine));
}

/// In the words of schema.org: `isBasedOn` takes an address, `citation` a work with its author.
#[test]
fn what_a_design_builds_on_is_linked_and_said_to_machines() {
    let pattern = "---\ntitle: Cap\npublished: 2026-01-01\nafter: [ { what: the brim, source: otha }, { what: the crown, source: \"https://example.org/crown\" }, { what: a tin, source: a dinner tin }, { what: the shape, source: \"pattern:hat\" } ]\n---\n";
    let site = site(&[
        ("people.yaml", "otha: { title: Otha Plimsett, is: [designer] }\n"),
        ("patterns/cap.md", pattern),
        ("patterns/hat.md", "---\ntitle: Hat\npublished: 2026-01-01\n---\n"),
    ]);
    let html = page(&site, "patterns/cap/index.html");
    assert!(html.contains("<a href=\"https://example.org/crown\">"), "{html}");
    let json = html.split("application/ld+json\">").nth(1).unwrap().split("</script>").next().unwrap();
    let facts: serde_json::Value = serde_json::from_str(json).unwrap();
    let based = serde_json::json!(["https://example.org/crown", "https://wrackline.example/patterns/hat/"]);
    let author = serde_json::json!({ "@type": "Person", "name": "Otha Plimsett", "url": "https://wrackline.example/people/otha/" });
    assert_eq!(facts["isBasedOn"], based);
    assert_eq!(
        facts["citation"],
        serde_json::json!([{ "@type": "CreativeWork", "name": "the brim", "author": author }])
    );
}

#[test]
fn what_is_done_is_no_longer_left_to_do() {
    let project = "---\ntitle: Hat\nleft to do: [{ what: zzbrim, done: 2026-11-20 }, the crown]\n---\n";
    let site = site(&[("projects/hat.md", project)]);
    assert!(page(&site, "projects/hat/index.html").contains("the crown"));
    assert!(site.iter().all(|(_, text)| !text.contains("zzbrim")));
}

const SECRET: &str = "---\ntitle: zzsecret hat\nstarted: 2026-10-01\nreveal: 2026-12-25\nmade for: { who: zzsecret-who, household: zzsecret-house, by: 2026-12-24 }\nyarn: [ { yarn: wool, used: 100 g } ]\n---\n\nzzsecret\n";

/// Before its day nothing of a surprise is in any byte of the site; on its day it is there, and for whom it is never is.
#[test]
fn a_surprise_is_nowhere_before_its_day() {
    let note = "---\ntitle: A week\nwearing: [project:hat]\nworked on: [ { project: hat, progress: 40% } ]\n---\n\nI knitted [something](project:hat).\n";
    let files = studio(&[("yarns.yaml", YARNS), ("projects/hat.md", SECRET), ("journal/2026-11-20.md", note)]);
    for (day, is_seen) in [("2026-12-24", false), ("2026-12-25", true)] {
        let studied = ballband::study(&files, readers(day)).unwrap();
        let (site, faults) = ballband::make(&studied);
        assert!(faults.is_empty() && site.len() > 15);
        let texts: Vec<(String, String)> =
            site.into_iter().map(|file| (file.path, String::from_utf8_lossy(&file.bytes).into_owned())).collect();
        let holds = |what: &str| texts.iter().any(|(path, text)| path.contains(what) || text.contains(what));
        assert_eq!((holds("zzsecret"), holds("projects/hat")), (is_seen, is_seen), "{day}");
        for private in ["zzsecret-who", "zzsecret-house", "2026-12-24", "24 December 2026"] {
            // The day itself is the date of nothing else here.
            assert!(!holds(private), "{private} on {day}");
        }
        assert!(page(&texts, "journal/2026-11-20/index.html").contains("something"));
    }
}
