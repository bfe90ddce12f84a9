//! What schemas say of each key: a meaning, and examples that are right.

use super::SCHEMAS;
use ballband::entry::field::{FieldInfo, Record};
use ballband::entry::schema::Schema;
use ballband::entry::{
    Abbreviation, After, Common, Disclosure, Erratum, Gauge, Kind, MadeFor, Mentioned, Note, OtherPattern, Outlet,
    Page, Pattern, Person, Piece, Project, Reached, Ruling, Sale, Sample, Story, Studio, Technique, TestKnit, Tester,
    ToDo, Used, Video, VideoSettings, WeighedSwatch, WorkedOn, Yarn, YarnUse, read, slug,
};
use ballband::source::load;
use ballband::source::memory::Memory;
use serde_json::{Map, Value, json};
use std::collections::{BTreeMap, BTreeSet};

type Fields = &'static [FieldInfo];

/// The records of whole entries.
fn entries() -> BTreeMap<String, Fields> {
    let kinds = [
        (Kind::Pattern, Pattern::FIELDS),
        (Kind::Project, Project::FIELDS),
        (Kind::Note, Note::FIELDS),
        (Kind::Yarn, Yarn::FIELDS),
        (Kind::Technique, Technique::FIELDS),
        (Kind::Person, Person::FIELDS),
        (Kind::Page, Page::FIELDS),
    ];
    kinds.into_iter().map(|(kind, fields)| (kind.word().to_owned(), fields)).collect()
}

/// The records that stand inside others.
fn parts() -> BTreeMap<String, Fields> {
    fn of<T: Record>() -> (String, Fields) {
        (slug(T::NAME), T::FIELDS)
    }
    let parts = [
        of::<Abbreviation>(),
        of::<After>(),
        of::<Disclosure>(),
        of::<Erratum>(),
        of::<Gauge>(),
        of::<MadeFor>(),
        of::<Mentioned>(),
        of::<OtherPattern>(),
        of::<Outlet>(),
        of::<Piece>(),
        of::<Reached>(),
        of::<Ruling>(),
        of::<Sale>(),
        of::<Sample>(),
        of::<Story>(),
        of::<TestKnit>(),
        of::<Tester>(),
        of::<ToDo>(),
        of::<Used>(),
        of::<Video>(),
        of::<VideoSettings>(),
        of::<WeighedSwatch>(),
        of::<WorkedOn>(),
        of::<YarnUse>(),
    ];
    let count = parts.len();
    let parts = BTreeMap::from(parts);
    assert_eq!(parts.len(), count, "two records have one name");
    parts
}

/// Holds the keys of a schema against those of its records.
fn hold(name: &str, schema: &Value, lists: &[Fields]) {
    let fields: Vec<&FieldInfo> = lists.iter().copied().flatten().collect();
    let properties = schema["properties"].as_object().unwrap();
    let keys: BTreeSet<&str> = properties.keys().map(String::as_str).collect();
    assert_eq!(keys, fields.iter().map(|field| field.key).collect(), "{name}");
    let required: BTreeSet<&str> =
        schema["required"].as_array().into_iter().flatten().map(|key| key.as_str().unwrap()).collect();
    assert_eq!(required, fields.iter().filter(|field| (field.required)()).map(|field| field.key).collect(), "{name}");
    assert_eq!(schema["additionalProperties"], false, "{name}");
    for field in fields {
        let property = &properties[field.key];
        let words = property["description"].as_str().unwrap();
        assert!(words.starts_with(field.doc.trim()) && words.contains(field.what), "{name}, {}: {words}", field.key);
        assert_eq!(words.contains("Private"), field.private, "{name}, {}: {words}", field.key);
        assert!(!property["examples"].as_array().unwrap().is_empty(), "{name}, {}", field.key);
    }
}

#[test]
fn every_key_is_in_its_schema_with_its_meaning_and_an_example() {
    hold("studio", &SCHEMAS["studio.schema.json"], &[Studio::FIELDS]);
    let (entries, parts) = (entries(), parts());
    let mut met = BTreeSet::new();
    for kind in Kind::ALL {
        let lists = [Common::FIELDS, entries[kind.word()]];
        let file = &SCHEMAS[&format!("{}.schema.json", kind.word())];
        let register = &SCHEMAS[&format!("{}.schema.json", kind.folder())];
        hold(kind.word(), file, &lists);
        let entry = register["additionalProperties"]["allOf"][0]["$ref"].as_str().unwrap();
        let entry = entry.strip_prefix("#/definitions/").unwrap();
        hold(kind.folder(), &register["definitions"][entry], &lists);
    }
    for (file, schema) in SCHEMAS.iter() {
        for (name, part) in schema["definitions"].as_object().into_iter().flatten() {
            for (key, property) in part["properties"].as_object().unwrap() {
                assert!(!property["description"].as_str().unwrap().is_empty(), "{file}, {name}, {key}");
                assert!(!property["examples"].as_array().unwrap().is_empty(), "{file}, {name}, {key}");
            }
            if let Some(fields) = parts.get(name) {
                hold(&format!("{file}, {name}"), part, &[fields]);
                met.insert(name.clone());
            }
        }
    }
    assert_eq!(met, parts.keys().cloned().collect(), "a record is in no schema");
}

/// Reads one entry, or the studio, and returns what is wrong with it.
fn told(schema: &str, keys: &Map<String, Value>) -> Vec<String> {
    let memory = match Kind::of_word(schema) {
        None => Memory::default().with("studio.yaml", serde_yaml::to_string(keys).unwrap()),
        Some(kind) => {
            let register = serde_yaml::to_string(&json!({ "one": keys })).unwrap();
            Memory::default().with(&format!("{}.yaml", kind.folder()), register)
        }
    };
    let (texts, unreadable) = load(&memory).unwrap();
    let (_, findings) = read(&texts, &unreadable);
    findings.iter().map(|finding| format!("{}: {}", finding.code.name, finding.message)).collect()
}

/// Returns a map of the first examples of the keys that must be there.
fn least(schema: &Value) -> Map<String, Value> {
    let required = schema["required"].as_array().into_iter().flatten().map(|key| key.as_str().unwrap());
    required.map(|key| (key.to_owned(), schema["properties"][key]["examples"][0].clone())).collect()
}

/// Returns the name of the record that a value is, or holds by names.
fn part_of(value: &Value) -> Option<&str> {
    value["allOf"][0]["$ref"].as_str()?.strip_prefix("#/definitions/")
}

#[test]
fn reading_accepts_every_example() {
    let mut read = 0;
    for schema in entries().keys().map(String::as_str).chain(["studio"]) {
        let whole = &SCHEMAS[&format!("{schema}.schema.json")];
        let mut entry = least(whole);
        if schema == "note" {
            entry.insert("date".to_owned(), json!("2026-11-20"));
        }
        let mut accept = |key: &str, value: Value| {
            let mut entry = entry.clone();
            entry.insert(key.to_owned(), value);
            assert_eq!(told(schema, &entry), Vec::<String>::new(), "{schema}, {key}: {}", entry[key]);
            read += 1;
        };
        for (key, property) in whole["properties"].as_object().unwrap() {
            for example in property["examples"].as_array().unwrap() {
                accept(key, example.clone());
            }
            let named = &property["additionalProperties"];
            for (part, by_name) in [(part_of(property), false), (part_of(named), true)] {
                let Some(part) = part.map(|part| &whole["definitions"][part]) else { continue };
                for (inner, property) in part["properties"].as_object().unwrap() {
                    for example in property["examples"].as_array().unwrap() {
                        let mut value = least(part);
                        value.insert(inner.clone(), example.clone());
                        accept(key, if by_name { json!({ "name": value }) } else { json!(value) });
                    }
                }
            }
        }
    }
    assert!(read > 150, "only {read} examples were read");
}

/// No list of words is read yet; when one is, its schema takes one of them as well as several.
#[test]
fn one_word_several_or_none_are_a_list_of_words() {
    let schema = Schema::words(&[("own", "hers"), ("bought", "paid for")]).or_list().described("How.".to_owned());
    let validator = jsonschema::draft7::new(&schema).unwrap();
    for right in [json!("own"), json!(["own", "bought"]), json!([]), json!(null)] {
        assert!(validator.is_valid(&right), "{right}");
    }
    for wrong in [json!("owned"), json!(["own", "borrowed"]), json!([["own"]]), json!({ "own": "own" })] {
        assert!(!validator.is_valid(&wrong), "{wrong}");
    }
}
