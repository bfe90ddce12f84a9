//! The examples of the CommonMark specification 0.31.2, through our own Markdown stage.
//!
//! They come from the npm package `commonmark-spec`; `tests/all` dumps them and names the file in
//! `BALLBAND_COMMONMARK`. What our stage adds on purpose is taken away before comparing.

use ballband::entry::Reference;
use ballband::render::markdown::{Resolve, Target, to_html};

struct Nothing;

impl Resolve for Nothing {
    fn entry(&self, _: &Reference) -> Option<Target> {
        None
    }

    fn picture(&self, _: &str, _: &str) -> Option<String> {
        None
    }
}

/// Takes away the ids of headings and the key stop of code, both ours, and writes quotes one way.
fn plain(html: &str) -> String {
    let mut out = String::new();
    for (at, piece) in html.split("<h").enumerate() {
        if at > 0 {
            out.push_str("<h");
        }
        match piece.split_once(" id=\"") {
            Some((level, rest)) if level.len() == 1 && level.bytes().all(|b| b.is_ascii_digit()) => {
                out.push_str(level);
                out.push_str(rest.split_once('"').map_or("", |(_, after)| after));
            }
            _ => out.push_str(piece),
        }
    }
    let mut out = without_comments(&out);
    // An empty line is left where a comment was a block of its own.
    while out.contains("\n\n") {
        out = out.replace("\n\n", "\n");
    }
    let out = out.trim_start_matches('\n');
    out.replace("<pre tabindex=\"0\">", "<pre>").replace("&quot;", "\"")
}

/// Takes comments away, as our stage does so that nothing hidden reaches a page.
fn without_comments(html: &str) -> String {
    let mut out = String::new();
    let mut rest = html;
    while let Some((before, after)) = rest.split_once("<!--") {
        out.push_str(before);
        let whole = after.strip_prefix('>').or_else(|| after.strip_prefix("->"));
        rest = whole.unwrap_or_else(|| after.split_once("-->").map_or("", |(_, rest)| rest));
    }
    out.push_str(rest);
    out
}

/// Examples whose result differs, and why.
const KNOWN: [(u64, &str); 2] = [
    (175, "one newline after raw HTML, which no reader sees; as pulldown-cmark has it"),
    (183, "the spaces before a comment stay where the comment is taken away"),
];

#[test]
fn the_examples_of_the_specification() {
    let path = std::env::var("BALLBAND_COMMONMARK")
        .expect("BALLBAND_COMMONMARK names the examples; run this through `bash tests/all`");
    let text = std::fs::read_to_string(path).expect("the examples can be read");
    let examples: Vec<serde_json::Value> = serde_json::from_str(&text).expect("the examples are JSON");
    assert_eq!(examples.len(), 652);
    let mut wrong = Vec::new();
    for example in &examples {
        let number = example["number"].as_u64().expect("a number");
        let (markdown, expected) =
            (example["markdown"].as_str().expect("markdown"), example["html"].as_str().expect("html"));
        let ours = plain(&to_html(markdown, &Nothing, 0));
        let differs = ours != plain(expected);
        let known = KNOWN.iter().any(|(known, _)| *known == number);
        if differs != known {
            wrong.push(format!("example {number}:\n{markdown}\nexpected:\n{expected}\nours:\n{ours}"));
        }
    }
    assert!(wrong.is_empty(), "{} differ\n{}", wrong.len(), wrong.join("\n---\n"));
}
