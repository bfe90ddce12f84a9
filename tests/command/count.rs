//! `count`, as a designer asks it: `count.txt` is read as a list of commands with what they print.

use super::{ballband, err, folder, out};
use std::path::Path;

/// One command with what is expected of it.
struct Case {
    arguments: Vec<String>,
    prints: String,
    refused: bool,
}

/// Splits a command as a shell does, double quotes and nothing else considered.
fn words(line: &str) -> Vec<String> {
    let mut all = Vec::new();
    for (at, part) in line.split('"').enumerate() {
        if at % 2 == 1 {
            all.push(part.to_owned());
        } else {
            all.extend(part.split_whitespace().map(str::to_owned));
        }
    }
    all
}

/// Reads the cases: `$` begins a command, `#` a remark; a line after `!` is what a refused one says.
fn cases() -> Vec<Case> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/command/count.txt");
    let mut all: Vec<Case> = Vec::new();
    for line in std::fs::read_to_string(path).unwrap().lines() {
        if let Some(command) = line.strip_prefix("$ ") {
            all.push(Case { arguments: words(command), prints: String::new(), refused: false });
        } else if line.starts_with('#') || line.is_empty() {
        } else if let Some(why) = line.strip_prefix("! ") {
            let case = all.last_mut().unwrap();
            case.refused = true;
            case.prints = format!("ballband: {why}\n");
        } else {
            let case = all.last_mut().unwrap();
            case.prints.push_str(line);
            case.prints.push('\n');
        }
    }
    all
}

#[test]
fn every_sum_is_printed_as_written_down() {
    let nowhere = folder("count");
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-data");
    let cases = cases();
    assert!(cases.len() >= 30, "only {} cases", cases.len());
    for case in cases {
        let arguments: Vec<&str> = case.arguments.iter().map(String::as_str).collect();
        // Only a pattern needs a studio; all else is asked where there is none.
        let here = if arguments.contains(&"--pattern") { demo.as_path() } else { nowhere.as_path() };
        let output = ballband(&arguments, here);
        let (printed, status) = if case.refused { (err(&output), 2) } else { (out(&output), 0) };
        assert_eq!(printed, case.prints, "{arguments:?}");
        assert_eq!(output.status.code(), Some(status), "{arguments:?}: {}", err(&output));
    }
}

#[test]
fn the_inch_and_the_brackets_are_those_of_the_studio_where_there_is_one() {
    let here = folder("count-inch");
    let asked = ["count", "stitches", "40 in", "--gauge", "5 sts / 1 in", "--format", "json"];
    let wanted = |output: &std::process::Output| {
        let json: serde_json::Value = serde_json::from_str(&out(output)).unwrap();
        (json["sizes"][0]["wanted_cm"].clone(), json["sizes"][0]["exact"].clone())
    };
    assert_eq!(wanted(&ballband(&asked, &here)), (100.into(), 200.into()));
    let studio = crate::support::STUDIO.to_owned() + "inch: 2.54\nsizes in: round\n";
    std::fs::write(here.join("studio.yaml"), studio).unwrap();
    assert_eq!(wanted(&ballband(&asked, &here)), (101.6.into(), 200.into()));
    let square = ballband(&["count", "spread", "8", "--over", "96 [104, 112]"], &here);
    assert_eq!(square.status.code(), Some(2), "{}", out(&square));
    assert!(err(&square).contains("sizes in"), "{}", err(&square));
    // A studio that was named must be there.
    assert_eq!(
        ballband(&["count", "shape", "38", "60", "--rows", "80", "--studio", "nowhere"], &here).status.code(),
        Some(2)
    );
}

#[test]
fn json_has_the_agreed_keys() {
    let here = folder("count-json");
    let json = |arguments: &[&str]| -> serde_json::Value {
        let output = ballband(&[arguments, &["--format", "json"]].concat(), &here);
        assert_eq!(output.status.code(), Some(0), "{}", err(&output));
        serde_json::from_str(&out(&output)).unwrap()
    };
    let stitches = json(&["count", "stitches", "84 (–, 104) cm", "--gauge", "22", "--multiple", "6 + 2", "--even"]);
    let expected = serde_json::json!({
        "count": "stitches", "gauge": 22, "over_cm": 10, "multiple": 6, "plus": 2, "parity": "even",
        "sizes": [
            { "size": "1", "wanted_cm": 84, "exact": 184.8, "below": { "count": 182, "cm": 82.727_272_7 },
              "above": { "count": 188, "cm": 85.454_545_5 }, "nearest": 182 },
            { "size": "2", "wanted_cm": null, "exact": null, "below": null, "above": null, "nearest": null },
            { "size": "3", "wanted_cm": 104, "exact": 228.8, "below": { "count": 224, "cm": 101.818_181_8 },
              "above": { "count": 230, "cm": 104.545_454_5 }, "nearest": 230 },
        ],
    });
    assert_eq!(stitches, expected);
    let spread = json(&["count", "spread", "4", "--over", "51"]);
    let expected = serde_json::json!({
        "change": "increase", "edges": "halves",
        "sizes": [{
            "size": null, "stitches": 51, "changes": 4, "after": 55,
            "gaps": [{ "stitches": 6, "times": 1 }, { "stitches": 13, "times": 3 }, { "stitches": 6, "times": 1 }],
            "words": "k6, increase; (k13, increase) 3 times; k6",
        }],
    });
    assert_eq!(spread, expected);
    let shape = json(&["count", "shape", "38", "60", "--rows", "80"]);
    let expected = serde_json::json!({
        "worked": "round",
        "sizes": [{
            "size": null, "from": 38, "to": 60, "rows": 80,
            "every": [{ "rows": 7, "times": 8 }, { "rows": 8, "times": 3 }], "plain": 0,
            "words": "increase 1 at each side every 7th round 8 times, then every 8th round 3 times; 0 rounds plain",
        }],
    });
    assert_eq!(shape, expected);
}

#[test]
fn every_sum_has_help_with_an_example() {
    let here = folder("count-help");
    for sum in ["stitches", "rows", "spread", "shape"] {
        let help = ballband(&["count", sum, "--help"], &here);
        assert!(out(&help).contains(&format!("Example:\n  ballband count {sum}")), "{}", out(&help));
    }
}
