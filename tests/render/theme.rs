//! The built-in theme, a studio's own templates, and the reference of what they may use.

use crate::support::{page, read, site};
use ballband::render::reference::reference;
use ballband::render::theme::BUILT_IN;
use std::fs;
use std::path::Path;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

#[test]
fn the_program_holds_every_file_of_the_theme() {
    for (folder, built_in) in [
        ("templates", BUILT_IN.templates.iter().map(|(name, _)| (*name).to_owned()).collect::<Vec<_>>()),
        ("assets", BUILT_IN.assets.iter().map(|(name, _)| (*name).to_owned()).collect()),
    ] {
        let at = root().join("themes").join(BUILT_IN.name).join(folder);
        let mut files: Vec<String> = walkdir::WalkDir::new(&at)
            .into_iter()
            .map(|entry| entry.unwrap())
            .filter(|entry| entry.file_type().is_file())
            .map(|entry| entry.path().strip_prefix(&at).unwrap().to_string_lossy().into_owned())
            .collect();
        let mut built_in = built_in;
        files.sort();
        built_in.sort();
        assert_eq!(files, built_in);
    }
}

/// To write it anew: `BALLBAND_BLESS=1 cargo test reference_page`, then read the difference.
#[test]
fn the_reference_page_is_true() {
    let path = root().join("themes/leaflet/REFERENCE.md");
    if std::env::var_os("BALLBAND_BLESS").is_some() {
        fs::write(&path, reference()).unwrap();
    }
    assert!(
        fs::read_to_string(&path).unwrap_or_default() == reference(),
        "themes/leaflet/REFERENCE.md is stale: BALLBAND_BLESS=1 cargo test reference_page"
    );
}

#[test]
fn a_studio_replaces_one_template_or_asset() {
    let site = site(&[
        ("pages/about.md", "---\ntitle: About\n---\n\nHello.\n"),
        ("themes/leaflet/templates/page.html", "<h1>{{ title }}</h1>{{ body | safe }}of {{ site.title }}"),
        ("themes/leaflet/assets/style.css", "body { color: red }"),
        ("themes/leaflet/assets/stamp.txt", "mine"),
    ]);
    assert_eq!(page(&site, "about/index.html"), "<h1>About</h1><p>Hello.</p>\nof Wrackline");
    assert_eq!(page(&site, "style.css"), "body { color: red }");
    assert_eq!(page(&site, "stamp.txt"), "mine");
    assert!(page(&site, "index.html").contains("<html"), "the others are as built in");
}

#[test]
fn an_error_in_a_template_names_file_line_and_entry() {
    let files = [
        ("pages/about.md", "---\ntitle: About\n---\n"),
        ("themes/leaflet/templates/page.html", "<h1>\n{{ titel.first }}</h1>"),
    ];
    let studied = read(&files);
    let (_, faults) = ballband::make(&studied);
    let [fault] = faults.as_slice() else { panic!("{faults:?}") };
    assert_eq!(fault.code.name, "template-fault");
    assert_eq!(fault.at.file.as_str(), "themes/leaflet/templates/page.html");
    assert_eq!(ballband::source::Position::of(studied.texts.of(&fault.at.file), fault.at.span.start).line, 2);
    assert!(fault.message.contains("`page:about`"), "{}", fault.message);
}

#[test]
fn a_template_that_cannot_be_read_is_told_before_any_page() {
    let studied = read(&[("themes/leaflet/templates/page.html", "<h1>{{ title }</h1>")]);
    let codes: Vec<_> = studied.findings.iter().map(|finding| finding.code.name).collect();
    assert_eq!(codes, ["template-fault"]);
    let studied = read(&[("studio.yaml", "title: W\nurl: https://example.org\ntheme: leaflat\n")]);
    let [finding] = studied.findings.as_slice() else { panic!("{:?}", studied.findings) };
    assert_eq!((finding.code.name, finding.help.as_deref()), ("unknown-theme", Some("did you mean `leaflet`?")));
}

/// What a writer types is text on the page, never markup, wherever it comes from.
#[test]
fn everything_is_escaped() {
    let evil = "<script>alert(1)</script>";
    let pattern = format!(
        "---\ntitle: '{evil}'\nsummary: '{evil}'\ngarment: '{evil}'\npublished: 2026-03-14\nconstruction: ['{evil}']\nsizes: '{evil} (M)'\nnotions: ['{evil}']\nerrata: [ {{ date: 2026-04-01, text: '{evil}' }} ]\nafter: [ {{ what: '{evil}', source: '{evil}' }} ]\n---\n"
    );
    let yarn = format!("wool:\n  title: '{evil}'\n  fibre: '{evil}'\n  care: ['{evil}']\n");
    let site = site(&[
        ("patterns/evil.md", &pattern),
        ("yarns.yaml", &yarn),
        ("studio.yaml", &format!("title: '{evil}'\nurl: https://example.org\n")),
    ]);
    for (path, text) in site.iter().filter(|(path, _)| path.ends_with(".html")) {
        assert!(!text.contains("<script>alert"), "{path}");
    }
}
