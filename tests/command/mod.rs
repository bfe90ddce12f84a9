//! Whole commands, run as a person would.

mod blurb;
mod count;
mod editor;
mod jot;
mod links;
mod quick;

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::atomic::{AtomicUsize, Ordering};

/// Returns a new folder for one test.
fn folder(name: &str) -> PathBuf {
    static NEXT: AtomicUsize = AtomicUsize::new(0);
    let number = NEXT.fetch_add(1, Ordering::Relaxed);
    let at = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(format!("command-{name}-{}-{number}", std::process::id()));
    let _ = fs::remove_dir_all(&at);
    fs::create_dir_all(&at).unwrap();
    at
}

fn ballband(arguments: &[&str], here: &Path) -> Output {
    Command::new(env!("CARGO_BIN_EXE_ballband")).args(arguments).current_dir(here).output().unwrap()
}

fn out(output: &Output) -> String {
    String::from_utf8_lossy(&output.stdout).into_owned()
}

fn err(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

fn small_studio(at: &Path) {
    fs::write(at.join("studio.yaml"), crate::support::STUDIO).unwrap();
    fs::create_dir_all(at.join("pages")).unwrap();
    fs::write(at.join("pages/about.md"), "---\ntitle: About\n---\n\nHello.\n").unwrap();
}

/// Returns every file below a folder with its bytes.
fn tree(folder: &Path) -> Vec<(String, Vec<u8>)> {
    let mut all = Vec::new();
    for entry in walkdir::WalkDir::new(folder).sort_by_file_name() {
        let entry = entry.unwrap();
        if entry.file_type().is_file() {
            let path = entry.path().strip_prefix(folder).unwrap().to_string_lossy().into_owned();
            all.push((path, fs::read(entry.path()).unwrap()));
        }
    }
    all
}

#[test]
fn start_lays_out_a_studio_that_has_no_findings_and_can_be_made() {
    let here = folder("start");
    let started = ballband(&["start", "studio"], &here);
    assert_eq!(started.status.code(), Some(0), "{}", err(&started));
    let proof = ballband(&["proof", "--studio", "studio"], &here);
    assert_eq!(proof.status.code(), Some(0), "{}", out(&proof));
    assert!(out(&proof).ends_with("no findings\n"), "{}", out(&proof));
    let made = ballband(&["make", "--studio", "studio", "--to", "site"], &here);
    assert_eq!(made.status.code(), Some(0), "{}", err(&made));
    assert!(here.join("site/index.html").is_file());
    let again = ballband(&["start", "studio"], &here);
    assert_eq!(again.status.code(), Some(2));
    assert!(err(&again).contains("is not empty"), "{}", err(&again));
}

#[test]
fn everything_in_the_content_folder_is_laid_out() {
    let here = folder("content");
    assert_eq!(ballband(&["start", "studio"], &here).status.code(), Some(0));
    let (mut laid_out, content) =
        (tree(&here.join("studio")), tree(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")));
    // The schemas are generated; `editor` has the tests of them.
    laid_out.retain(|(name, _)| !name.starts_with(".schemas/"));
    let names = |tree: &[(String, Vec<u8>)]| tree.iter().map(|(name, _)| name.clone()).collect::<Vec<_>>();
    assert_eq!(names(&laid_out), names(&content));
    assert!(laid_out == content);
}

#[test]
fn a_second_make_changes_nothing_and_two_folders_are_alike() {
    let here = folder("twice");
    small_studio(&here);
    for site in ["one", "two"] {
        let made = ballband(&["make", "--to", site, "--as-of", "2026-11-25"], &here);
        assert_eq!(made.status.code(), Some(0), "{}", err(&made));
    }
    assert_eq!(tree(&here.join("one")), tree(&here.join("two")));
    let again = ballband(&["make", "--to", "one", "--as-of", "2026-11-25"], &here);
    assert!(out(&again).contains(": 0 changed;"), "{}", out(&again));
}

#[test]
fn an_error_leaves_the_old_site_untouched() {
    let here = folder("untouched");
    small_studio(&here);
    assert_eq!(ballband(&["make", "--to", "site"], &here).status.code(), Some(0));
    let before = tree(&here.join("site"));
    fs::write(here.join("pages/about.md"), "---\ntitle: About\n---\n\nSee <pattern:nowhere>.\n").unwrap();
    let made = ballband(&["make", "--to", "site"], &here);
    assert_eq!(made.status.code(), Some(1));
    assert!(err(&made).contains("error[unknown-reference]: there is no `pattern:nowhere`"), "{}", err(&made));
    assert_eq!(tree(&here.join("site")), before);
}

#[test]
fn a_template_that_fails_leaves_the_old_site_untouched_and_tells_of_every_page() {
    let here = folder("template");
    small_studio(&here);
    fs::write(here.join("pages/contact.md"), "---\ntitle: Contact\n---\n\nWrite.\n").unwrap();
    assert_eq!(ballband(&["make", "--to", "site"], &here).status.code(), Some(0));
    let before = tree(&here.join("site"));
    fs::create_dir_all(here.join("themes/leaflet/templates")).unwrap();
    fs::write(here.join("themes/leaflet/templates/page.html"), "<h1>{{ nothing.here }}</h1>").unwrap();
    let made = ballband(&["make", "--to", "site"], &here);
    assert_eq!(made.status.code(), Some(1));
    for page in ["page:about", "page:contact"] {
        assert!(err(&made).contains(page), "{page}: {}", err(&made));
    }
    assert_eq!(tree(&here.join("site")), before);
}

#[test]
fn a_removed_entry_takes_its_page_along_and_nothing_else() {
    let here = folder("removed");
    small_studio(&here);
    fs::write(here.join("pages/old.md"), "---\ntitle: Old\n---\n").unwrap();
    assert_eq!(ballband(&["make", "--to", "site"], &here).status.code(), Some(0));
    assert!(here.join("site/old/index.html").is_file());
    fs::write(here.join("site/hers.txt"), "put here by hand").unwrap();
    fs::remove_file(here.join("pages/old.md")).unwrap();
    let made = ballband(&["make", "--to", "site"], &here);
    assert_eq!(made.status.code(), Some(0), "{}", err(&made));
    assert!(!here.join("site/old").exists());
    assert_eq!(fs::read_to_string(here.join("site/hers.txt")).unwrap(), "put here by hand");
}

#[test]
fn a_folder_with_other_things_in_it_is_refused() {
    let here = folder("not-ours");
    small_studio(&here);
    fs::create_dir_all(here.join("letters")).unwrap();
    fs::write(here.join("letters/one.txt"), "dear").unwrap();
    let made = ballband(&["make", "--to", "letters"], &here);
    assert_eq!(made.status.code(), Some(2));
    assert_eq!(err(&made).lines().count(), 1, "{}", err(&made));
    assert!(err(&made).contains("ballband did not make"), "{}", err(&made));
    assert_eq!(tree(&here.join("letters")).len(), 1);
}

#[test]
fn no_studio_is_one_clear_sentence() {
    let here = folder("nowhere");
    for arguments in [&["make", "--studio", "missing"][..], &["proof", "--studio", "."], &["make"]] {
        // The test's folder lies below no studio, so looking upwards ends at the root.
        let output = ballband(arguments, &here);
        assert_eq!(output.status.code(), Some(2), "{arguments:?}: {}", err(&output));
        assert_eq!(err(&output).lines().count(), 1, "{}", err(&output));
        assert!(err(&output).contains("ballband start DIR"), "{}", err(&output));
    }
}

/// An editor's lock on an open file is a hidden link that leads nowhere; it must not stop anything. Any other such link is
/// told of.
#[cfg(unix)]
#[test]
fn links_that_lead_nowhere_do_not_end_the_reading() {
    let here = folder("links");
    small_studio(&here);
    std::os::unix::fs::symlink("somebody@somewhere.1", here.join("pages/.#about.md")).unwrap();
    let proof = ballband(&["proof"], &here);
    assert_eq!(out(&proof), "1 entry read: no findings\n", "{}", err(&proof));
    std::os::unix::fs::symlink("nowhere.md", here.join("pages/gone.md")).unwrap();
    std::os::unix::fs::symlink("..", here.join("pages/loop")).unwrap();
    let proof = ballband(&["proof"], &here);
    assert_eq!(proof.status.code(), Some(1));
    assert_eq!(out(&proof).matches("error[unreadable-file]").count(), 2, "{}", out(&proof));
}

#[test]
fn a_studio_is_found_from_a_folder_inside_it() {
    let here = folder("inside");
    small_studio(&here);
    let proof = ballband(&["proof"], &here.join("pages"));
    assert_eq!(proof.status.code(), Some(0), "{}", err(&proof));
    assert_eq!(out(&proof), "1 entry read: no findings\n");
}

#[test]
fn proof_prints_one_json_object_a_line() {
    let here = folder("json");
    small_studio(&here);
    fs::write(here.join("pages/about.md"), "---\ntitle: About\ntitel: About us\n---\n").unwrap();
    let proof = ballband(&["proof", "--format", "json"], &here);
    assert_eq!(proof.status.code(), Some(1));
    let lines: Vec<serde_json::Value> = out(&proof).lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    let expected = serde_json::json!({
        "code": "unknown-key", "severity": "error", "file": "pages/about.md", "line": 3, "column": 1,
        "message": "`titel` is not a key of a page", "help": "did you mean `title`?",
    });
    assert_eq!(lines, [expected]);
}

#[test]
fn a_finding_reads_well_in_print() {
    let here = folder("print");
    small_studio(&here);
    fs::write(here.join("yarns.yaml"), "heron-dk:\n  title: Heron DK\n  put-up: 225 / 100 g\n").unwrap();
    let proof = ballband(&["proof"], &here);
    let expected = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/command/print.txt")).unwrap();
    assert_eq!(out(&proof), expected);
}

#[test]
fn every_command_has_help_with_an_example() {
    let here = folder("help");
    for command in ["start", "make", "proof", "jot", "completions", "manual"] {
        let help = ballband(&[command, "--help"], &here);
        assert_eq!(help.status.code(), Some(0));
        assert!(out(&help).contains(&format!("Example:\n  ballband {command}")), "{}", out(&help));
    }
    let version = ballband(&["--version"], &here);
    assert_eq!(out(&version), format!("ballband {}\n", env!("CARGO_PKG_VERSION")));
    assert_eq!(ballband(&["mend"], &here).status.code(), Some(2));
    assert_eq!(ballband(&["make", "--as-of", "soon"], &here).status.code(), Some(2));
}

/// Returns what `need` prints of the demo studio, which must go well.
fn need(arguments: &[&str]) -> String {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-data");
    let asked: Vec<&str> = ["need"].iter().chain(arguments).copied().collect();
    let output = ballband(&asked, &demo);
    assert_eq!(output.status.code(), Some(0), "{}", err(&output));
    out(&output)
}

#[test]
fn need_prints_the_yarn_of_each_size() {
    let text = need(&["saltmarsh-yoke"]);
    // 990 m and a tenth are 1,089 m: 4.84 skeins of 225 m, so 5; 990 m weigh 440 g.
    let line = text.lines().find(|line| line.trim_start().starts_with("M ")).unwrap();
    assert_eq!(line.split_whitespace().collect::<Vec<_>>(), ["M", "990", "m", "1,083", "yd", "440", "g", "4.84", "5"]);
    assert!(text.contains("Lengths are as stated by the designer."));
    assert!(text.contains("one dye lot"));
}

#[test]
fn need_takes_another_yarn_margin_and_strands() {
    let text = need(&["saltmarsh-yoke", "--size", "m", "--with", "210 yd / 100 g", "--margin", "0%"]);
    // 1,082.7 yd are 5.16 skeins of 210 yd, rounded up to hundredths as to whole skeins.
    assert!(text.contains("5.16       6"), "{text}");
    assert!(text.contains("15% less length in the same weight, beside Heron DK") && text.contains("swatch"), "{text}");
    let double = need(&["saltmarsh-yoke", "--size", "M", "--strands", "2", "--margin", "0%"]);
    assert!(double.contains("1,980 m") && double.contains("every yarn held double"), "{double}");
}

#[test]
fn need_tells_the_size_for_a_body_and_a_gauge() {
    let plain = need(&["saltmarsh-yoke", "--chest", "41in"]);
    assert!(plain.starts_with("For a chest of 102.5 cm (41 in): size L"), "{plain}");
    assert!(!plain.contains("No size is meant"));
    assert!(need(&["saltmarsh-yoke", "--chest", "300cm"]).contains("No size is meant for such a body"));
    assert!(need(&["saltmarsh-yoke", "--chest", "60cm"]).contains("No size is meant for such a body"));
    let other = need(&["saltmarsh-yoke", "--chest", "41in", "--gauge", "21"]);
    assert!(other.starts_with("For a chest of 102.5 cm (41 in): size M"), "{other}");
    // 104 cm at 22 stitches are 108.95 cm at 21.
    assert!(other.contains("at your gauge") && other.contains("109 cm"), "{other}");
    assert_eq!(other.lines().filter(|line| line.trim_start().starts_with("M ") && line.contains('m')).count(), 3);
}

#[test]
fn need_says_when_a_body_is_between_two_sizes() {
    // 104 + 8 cm, as L has on 107: M is 104 and L 115.
    let between = need(&["saltmarsh-yoke", "--chest", "104cm"]);
    let told = "With 8 cm (3¼ in) of ease that is between two sizes: M comes out 8 cm (3¼ in) smaller, L 3 cm (1¼ in) larger.\n";
    assert!(between.contains(told), "{between}");
    assert!(!need(&["saltmarsh-yoke", "--chest", "107cm"]).contains("between two sizes"));
    // A size that comes out within half a centimetre is as good as wanted; beyond the ends there is nothing between.
    assert!(!need(&["saltmarsh-yoke", "--chest", "106.6cm"]).contains("between two sizes"));
    assert!(!need(&["saltmarsh-yoke", "--chest", "300cm"]).contains("between two sizes"));
    // With an ease of her own it is that which counts: 104 + 11 cm are L itself.
    assert!(!need(&["saltmarsh-yoke", "--chest", "104cm", "--ease", "11cm"]).contains("between two sizes"));
    let hat = need(&["lantern-hat", "--body", "head=54cm"]);
    assert!(hat.starts_with("For a head of 54 cm (21½ in): size Adult"), "{hat}");
    assert!(hat.contains("Child comes out 2 cm (¾ in) smaller, Adult 2 cm (¾ in) larger."), "{hat}");
}

#[test]
fn need_is_json_with_the_agreed_keys() {
    let json: serde_json::Value = serde_json::from_str(&need(&["saltmarsh-yoke", "--format", "json"])).unwrap();
    assert_eq!(json["pattern"], "saltmarsh-yoke");
    assert_eq!(json["margin"], 10);
    assert_eq!(json["sizes"].as_array().unwrap().len(), 9);
    let yarn = &json["sizes"][2]["yarns"][0];
    let expected = serde_json::json!({
        "colour": "MC", "yarn": "Heron DK", "shade": "reedbed", "metres": 990, "grams": 440, "exact_skeins": 4.84,
        "skeins": 5, "basis": "stated"
    });
    assert_eq!(*yarn, expected);
}

#[test]
fn need_lists_a_yarn_that_is_held_with_another() {
    let text = need(&["driftwood-cowl", "--size", "Short"]);
    assert!(text.contains("Egret Lace, foam (400 m / 50 g), held with Cormorant Bulky (CC)\n"), "{text}");
    let json: serde_json::Value =
        serde_json::from_str(&need(&["driftwood-cowl", "--size", "Short", "--format", "json"])).unwrap();
    let yarns = &json["sizes"][0]["yarns"];
    // 81 g of 110 m to 100 g and 800 m to 100 g together are 78.3 m of each.
    let of = |at: usize| (&yarns[at]["yarn"], &yarns[at]["metres"], &yarns[at]["skeins"]);
    assert_eq!(of(1), (&"Cormorant Bulky".into(), &79.into(), &1.into()));
    assert_eq!(of(2), (&"Egret Lace".into(), &79.into(), &1.into()));
    assert_eq!((&yarns[2]["held_with"], yarns[1].get("held_with")), (&"Cormorant Bulky (CC)".into(), None));
    let instead = need(&["driftwood-cowl", "--size", "Short", "--with", "yarn:eider-chunky"]);
    assert!(instead.contains("Egret Lace, foam (400 m / 50 g), held with Eider Chunky (CC)\n"), "{instead}");
}

#[test]
fn need_tells_what_is_not_known_from_what_is_not_used() {
    let here = folder("unknown");
    small_studio(&here);
    fs::create_dir_all(here.join("patterns")).unwrap();
    fs::write(here.join("yarns.yaml"), "wool: { title: Wool, put-up: 200 m / 100 g }\n").unwrap();
    let lines = "  - { colour: MC, yarn: wool }\n  - { colour: CC, yarn: wool, needs: '– (40) m' }\n";
    let text = format!(
        "---\ntitle: Hat\nstage: sample\nsizes: S (M)\nsample: {{ size: M, used: {{ MC: 100 g }} }}\nyarn:\n{lines}---\n"
    );
    fs::write(here.join("patterns/hat.md"), text).unwrap();
    let plain = out(&ballband(&["need", "hat"], &here));
    let small: Vec<&str> = plain.lines().map(str::trim).filter(|line| line.starts_with("S ")).collect();
    assert!(matches!(*small, [one, two] if one.ends_with("not known") && two.ends_with("none")), "{plain}");
    let json = out(&ballband(&["need", "hat", "--format", "json"], &here));
    let json: serde_json::Value = serde_json::from_str(&json).unwrap();
    let small = json["sizes"][0]["yarns"].as_array().unwrap();
    assert_eq!(small.len(), 1, "{json}");
    assert_eq!((&small[0]["colour"], &small[0]["metres"], &small[0]["skeins"]), (&"MC".into(), &().into(), &().into()));
}

#[test]
fn need_says_in_a_sentence_what_is_wrong() {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-data");
    for (arguments, told) in [
        (vec!["saltmarsh-yolk"], "did you mean `saltmarsh-yoke`?"),
        (vec!["saltmarsh-yoke", "--size", "XXS"], "its sizes are XS (S"),
        (vec!["saltmarsh-yoke", "--with", "yarn:gull-worstd"], "did you mean `yarn:gull-worsted`?"),
        (vec!["saltmarsh-yoke", "--with", "210"], "unit"),
        (vec!["saltmarsh-yoke", "--chest", "41"], "unit"),
        (vec!["saltmarsh-yoke", "--body", "head"], "NAME=LENGTH"),
        (vec!["saltmarsh-yoke", "--body", "head=56cm"], "no finished `head`"),
        (vec!["saltmarsh-yoke", "--gauge", "21"], "takes a body"),
        (vec!["saltmarsh-yoke", "--margin", "10"], "10%"),
        (vec!["saltmarsh-yoke", "--margin", "250%"], "`100%`"),
    ] {
        let asked: Vec<&str> = ["need"].into_iter().chain(arguments.iter().copied()).collect();
        let output = ballband(&asked, &demo);
        assert_eq!(output.status.code(), Some(2), "{arguments:?}");
        assert!(err(&output).contains(told), "{arguments:?}: {}", err(&output));
    }
}
