//! The one-way rule: a folder under `src/` uses only those above it.

use std::fs;
use std::path::Path;

/// The rooms in the order of the flow; each may use those before it.
const ORDER: [&str; 12] = [
    "measure",
    "standards",
    "source",
    "finding",
    "notation",
    "entry",
    "catalogue",
    "reckon",
    "page",
    "render",
    "write",
    "preview",
];

/// Rooms that stand apart from the flow: nothing of ours may be used there but what is named.
const APART: [(&str, &[&str]); 1] = [("write", &[])];

fn allowed(room: &str) -> Vec<&'static str> {
    if let Some((_, list)) = APART.iter().find(|(name, _)| *name == room) {
        return list.to_vec();
    }
    ORDER.iter().copied().take_while(|name| *name != room).filter(|name| *name != "write").collect()
}

fn files(folder: &Path) -> Vec<std::path::PathBuf> {
    let mut all = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            all.extend(files(&path));
        } else if path.extension().is_some_and(|end| end == "rs") {
            all.push(path);
        }
    }
    all.sort();
    all
}

/// Returns the rooms a text names after `crate::`, also in a list in braces.
fn named(text: &str) -> Vec<String> {
    let mut rooms = Vec::new();
    for (at, _) in text.match_indices("crate::") {
        let rest = &text[at + "crate::".len()..];
        let list = rest.strip_prefix('{').and_then(|rest| rest.split('}').next());
        let words = list.map_or_else(|| vec![rest], |list| list.split(',').collect());
        for word in words {
            rooms.push(word.trim().chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect());
        }
    }
    rooms
}

#[test]
fn every_arrow_points_up() {
    let src = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut seen = 0;
    let mut wrong = Vec::new();
    for room in ORDER.iter().filter(|room| src.join(room).is_dir()) {
        let allowed = allowed(room);
        for file in files(&src.join(room)) {
            let text = fs::read_to_string(&file).unwrap();
            for used in named(&text) {
                seen += 1;
                let own = used == *room;
                if !own && !allowed.contains(&used.as_str()) {
                    wrong.push(format!("{} uses {used}", file.strip_prefix(&src).unwrap().display()));
                }
            }
        }
    }
    assert!(seen > 100, "only {seen} uses of crate:: were seen");
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn an_arrow_the_wrong_way_would_be_seen() {
    assert_eq!(named("use crate::{page, write};\nlet x = crate::render::theme();"), ["page", "write", "render"]);
    assert!(!allowed("reckon").contains(&"page"));
    assert!(allowed("page").contains(&"reckon"));
}

/// Whether a file is the desk's, which shows what is private and is in no site.
fn is_of_desk(file: &Path) -> bool {
    let path = file.strip_prefix(Path::new(env!("CARGO_MANIFEST_DIR")).join("src")).unwrap();
    path.starts_with("page/desk") || path == Path::new("render/desk.rs")
}

#[test]
fn what_makes_the_site_never_opens_what_is_private() {
    let src = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    for room in ["catalogue", "page", "render"] {
        for file in files(&src.join(room)).into_iter().filter(|file| !is_of_desk(file)) {
            let text = fs::read_to_string(&file).unwrap();
            assert!(!text.contains("for_desk"), "{} opens a private field", file.display());
            let asks = room != "catalogue" && (text.contains("secrets_in") || text.contains("secret_names"));
            assert!(!asks, "{} asks for private names", file.display());
        }
    }
}

/// What the desk reckons and shows is partly private, so only the desk's own page and the preview may ask for it.
#[test]
fn what_makes_the_site_never_asks_the_desk() {
    let src = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut seen = 0;
    for file in files(&src) {
        let text = fs::read_to_string(&file).unwrap();
        let asks =
            ["reckon::desk", "page::desk", "desk::households", "DeskContext"].iter().any(|name| text.contains(name));
        let may = is_of_desk(&file) || file.starts_with(src.join("preview")) || file.starts_with(src.join("command"));
        assert!(!asks || may, "{} asks the desk", file.display());
        seen += usize::from(asks);
    }
    assert!(seen >= 5, "only {seen} files were seen to ask it");
}
