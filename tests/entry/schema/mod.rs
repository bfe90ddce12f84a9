//! The JSON Schemas, held against what reading accepts and refuses.

mod planted;
mod random;
mod words;

use ballband::entry::Kind;
use ballband::entry::schema::files;
use ballband::entry::yaml::parse;
use serde_json::Value;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::sync::LazyLock;

/// Every schema by the name of its file.
static SCHEMAS: LazyLock<BTreeMap<String, Value>> = LazyLock::new(|| {
    files().into_iter().map(|(name, text)| (name, serde_json::from_str(&text).expect("a schema is JSON"))).collect()
});

/// The same, ready to hold values against.
static VALIDATORS: LazyLock<BTreeMap<String, jsonschema::Validator>> = LazyLock::new(|| {
    let ready = |schema| jsonschema::draft7::new(schema).expect("a schema, with all it refers to");
    SCHEMAS.iter().map(|(name, schema)| (name.clone(), ready(schema))).collect()
});

/// The YAML of one file, and the schema it is to follow.
struct Document<'a> {
    schema: String,
    yaml: &'a str,
    /// Where the YAML begins in the file, in bytes.
    start: usize,
}

/// Returns the part of a studio's file that has a schema; none for other files.
fn document<'a>(path: &str, text: &'a str) -> Option<Document<'a>> {
    let named = |of: &str| format!("{of}.schema.json");
    let whole = |schema| Some(Document { schema, yaml: text, start: 0 });
    match path.split_once('/') {
        None if path == "studio.yaml" => whole(named("studio")),
        None => whole(named(Kind::of_folder(path.strip_suffix(".yaml")?)?.folder())),
        Some((folder, file)) if file.ends_with(".md") && !file.contains('/') => {
            let start = text.find("---\n")? + 4;
            let end = start + text[start..].find("---\n")?;
            Some(Document { schema: named(Kind::of_folder(folder)?.word()), yaml: &text[start..end], start })
        }
        Some(_) => None,
    }
}

/// Returns what a schema says against a value.
fn against(schema: &str, value: &Value) -> Vec<String> {
    VALIDATORS[schema].iter_errors(value).map(|error| format!("{}: {error}", error.instance_path())).collect()
}

/// Returns the files of a folder that may have a schema, as paths below it and texts.
fn studio(folder: &str) -> Vec<(String, String)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
    let files = walkdir::WalkDir::new(&root).sort_by_file_name().into_iter().map(|entry| entry.unwrap());
    let texts = files.filter(|entry| entry.path().extension().is_some_and(|end| end == "md" || end == "yaml"));
    let path = |entry: &walkdir::DirEntry| entry.path().strip_prefix(&root).unwrap().to_string_lossy().into_owned();
    texts.map(|entry| (path(&entry), fs::read_to_string(entry.path()).unwrap())).collect()
}

#[test]
fn every_file_of_our_studios_follows_its_schema() {
    let measured: Vec<(String, String)> = crate::bench::files(400, 1).collect();
    for (name, studio, least) in
        [("demo-data", studio("demo-data"), 60), ("content", studio("content"), 10), ("bench", measured, 400)]
    {
        let mut held = 0;
        for (path, text) in studio {
            let Some(document) = document(&path, &text) else { continue };
            let value = parse(document.yaml).unwrap().to_json();
            assert_eq!(against(&document.schema, &value), Vec::<String>::new(), "{name}/{path}");
            held += 1;
        }
        assert!(held >= least, "only {held} files of {name} have a schema");
    }
}

#[test]
fn schemas_follow_the_schema_of_schemas() {
    assert_eq!(SCHEMAS.len(), 1 + 2 * Kind::ALL.len());
    let meta = jsonschema::draft7::meta::validator();
    for (name, schema) in SCHEMAS.iter() {
        let told: Vec<String> = meta.iter_errors(schema).map(|error| error.to_string()).collect();
        assert_eq!(told, Vec::<String>::new(), "{name}");
        assert_eq!(schema["$schema"], "http://json-schema.org/draft-07/schema#", "{name}");
        assert!(VALIDATORS.contains_key(name));
    }
}

/// The line that an editor reads is a comment of the front matter to us.
#[test]
fn front_matter_may_name_its_schema_too() {
    let text = "---\n# yaml-language-server: $schema=../.schemas/page.schema.json\ntitle: About\n---\n\nHello.\n";
    assert!(crate::support::read(&[("pages/about.md", text)]).findings.is_empty());
}
