//! Whatever reading accepts, the schema accepts: entries changed at random, both asked.

use super::{SCHEMAS, against, document, studio};
use ballband::entry::yaml::parse;
use ballband::entry::{Kind, read};
use ballband::source::load;
use ballband::source::memory::Memory;
use proptest::prelude::*;
use proptest::sample::{Index, select};
use proptest::test_runner::{Config, TestRunner};
use serde_json::{Map, Value, json};
use std::cell::Cell;

/// One entry or the studio's own keys, by the word of its schema.
type Base = (String, Value);

/// Entries of our studios, and one of each kind with every example.
fn bases() -> Vec<Base> {
    let mut all = Vec::new();
    for (path, text) in [studio("demo-data"), studio("content")].concat() {
        let Some(document) = document(&path, &text) else { continue };
        let value = parse(document.yaml).unwrap().to_json();
        let word = document.schema.trim_end_matches(".schema.json");
        match Kind::of_folder(word) {
            Some(kind) => {
                all.extend(value.as_object().unwrap().values().map(|entry| (kind.word().to_owned(), entry.clone())));
            }
            None => all.push((word.to_owned(), value)),
        }
    }
    for word in Kind::ALL.map(Kind::word).into_iter().chain(["studio"]) {
        let properties = SCHEMAS[&format!("{word}.schema.json")]["properties"].as_object().unwrap();
        let every: Map<String, Value> =
            properties.iter().map(|(key, property)| (key.clone(), property["examples"][0].clone())).collect();
        // Every key alone, too: a change that spoils another key says nothing of it.
        for (key, value) in &every {
            let mut entry = json!({ "title": "One", key: value });
            if word == "studio" && key != "url" {
                entry["url"] = json!("https://example.org");
            }
            all.push((word.to_owned(), entry));
        }
        all.push((word.to_owned(), Value::Object(every)));
    }
    all
}

/// Values that are right somewhere, or nearly.
fn odd() -> Vec<Value> {
    let texts = [
        "",
        " ",
        "–",
        "-",
        "0",
        " +5 ",
        "0 (0, 4) cm",
        "– (–, 4, 6) cm",
        "1½ in",
        "12,5 (13; 13,5) cm",
        "34 (37¼, 41)\" / 85 (93, 102.5) cm",
        "84/94/104 cm",
        "84 cm",
        "820 m",
        "905 yds",
        "4.5 skeins",
        "1 ball",
        "1¾ oz",
        "0.5 kg",
        "½ oz",
        "10%",
        "12.5 %",
        "7 percent",
        "2.5",
        "2,54",
        "2.5 cm",
        "US 6",
        "us 10½",
        "UK 000",
        "4 mm",
        "3.75 mm dpns",
        "£7",
        "6 EUR",
        "GBP 7.00",
        "7 jpy",
        "25 g 115 m",
        "115 g (4 oz), 384 m (420 yds)",
        "50 g = 112 m / 122 yd",
        "225m/100g",
        "S/M/L",
        "XS (S, M, L)",
        "36 (38, 40) cm",
        "One size",
        "DK",
        "dk",
        "UK aran",
        "4 ply",
        "3",
        "#3",
        "#fff",
        "#6B7F4C",
        "2026-02-28",
        "2024-02-29",
        "0000-01-01",
        "1:02:30",
        "99:59",
        "007:01",
        "https://example.org/?q=ü#x",
        "http://a",
        "mailto:a",
        "true",
        "Basic",
        "experienced",
        "EASY",
        "sketch",
        "test knit",
        "off",
        "round",
        "metric",
        "own",
        "women",
        "rectangle",
        "pattern:saltmarsh-yoke",
        "yarn:heron-dk",
        "person:a",
        "-",
        "--",
        "a-1",
        "+5",
        "007",
        "84 sts",
        "12 rounds",
        ".5",
        "1/2",
        "1 1/2",
        "1-1/2 in",
        "\u{feff}",
        "\u{a0}",
        "\u{85}a",
        "K",
        "5 \u{212a}g",
        "0.000",
        "(4, 5) cm",
        "4.\ncm",
        "chest",
        "Ärmel",
        "é",
        "10 CM",
        "10 In.",
        "10″",
        "10”",
        "5 M / 20 G",
    ];
    let mut all: Vec<Value> = texts.map(Value::from).to_vec();
    all.extend([
        json!(null),
        json!(true),
        json!(false),
        json!([]),
        json!({}),
        json!(0),
        json!(1),
        json!(-5),
        json!(7),
        json!(22),
    ]);
    all.extend([
        json!(2026),
        json!(2.5),
        json!(2.54),
        json!(4.125),
        json!(0.0),
        json!(-0.0),
        json!(1e20),
        json!(1e-7),
        json!(5.0),
    ]);
    all.extend([
        json!(u64::MAX),
        json!(4_294_967_295_u64),
        json!(4_294_967_296_u64),
        json!([null]),
        json!([[]]),
        json!({ "a": null }),
    ]);
    all
}

#[derive(Clone, Copy, Debug)]
enum Change {
    Replace,
    Remove,
    IntoList,
    IntoMap,
    AddAKey,
}

/// Returns the ways to every value inside one, as JSON pointers.
fn ways(value: &Value, here: &str, all: &mut Vec<String>) {
    all.push(here.to_owned());
    match value {
        Value::Array(items) => {
            for (index, item) in items.iter().enumerate() {
                ways(item, &format!("{here}/{index}"), all);
            }
        }
        Value::Object(entries) => {
            for (key, item) in entries {
                ways(item, &format!("{here}/{}", key.replace('~', "~0").replace('/', "~1")), all);
            }
        }
        _ => {}
    }
}

fn change(value: &mut Value, change: Change, at: Index, with: &Value) {
    let mut all = Vec::new();
    ways(value, "", &mut all);
    let way = &all[at.index(all.len())];
    let here = value.pointer_mut(way).unwrap();
    match change {
        Change::Replace => *here = with.clone(),
        Change::IntoList => *here = json!([here.clone(), with]),
        Change::IntoMap => *here = json!({ "MC": here.clone() }),
        Change::AddAKey => {
            if let Some(entries) = here.as_object_mut() {
                entries.insert("length".to_owned(), with.clone());
            }
        }
        Change::Remove => {
            let Some((parent, key)) = way.rsplit_once('/') else { return };
            match value.pointer_mut(parent).unwrap() {
                Value::Array(items) => drop(items.remove(key.parse().unwrap())),
                Value::Object(entries) => drop(entries.remove(&key.replace("~1", "/").replace("~0", "~"))),
                _ => {}
            }
        }
    }
}

/// Returns whether reading finds nothing wrong with an entry, and the entry as an editor sees it.
fn accepted(word: &str, entry: &Value) -> (bool, Value) {
    let (path, whole) = match Kind::of_word(word) {
        Some(kind) => (format!("{}.yaml", kind.folder()), json!({ "one": entry })),
        None => ("studio.yaml".to_owned(), entry.clone()),
    };
    let text = serde_yaml::to_string(&whole).unwrap();
    let (texts, unreadable) = load(&Memory::default().with(&path, text.as_str())).unwrap();
    let (_, findings) = read(&texts, &unreadable);
    (findings.is_empty(), parse(&text).unwrap().to_json())
}

#[test]
fn whatever_reading_accepts_the_schema_accepts() {
    let bases = bases();
    let mut values = odd();
    for (_, base) in &bases {
        let mut all = Vec::new();
        ways(base, "", &mut all);
        values.extend(all.iter().skip(1).map(|way| base.pointer(way).unwrap().clone()));
    }
    let kinds =
        vec![Change::Replace, Change::Replace, Change::Remove, Change::IntoList, Change::IntoMap, Change::AddAKey];
    let changes = proptest::collection::vec((select(kinds), any::<Index>(), any::<Index>()), 0..4);
    let asked = (any::<Index>(), changes);
    let (good, changed) = (Cell::new(0), Cell::new(0));
    let config = Config { cases: 3000, failure_persistence: None, ..Config::default() };
    let outcome = TestRunner::new(config).run(&asked, |(base, changes)| {
        let (word, base) = &bases[base.index(bases.len())];
        let mut entry = base.clone();
        for (kind, at, with) in changes {
            change(&mut entry, kind, at, &values[with.index(values.len())]);
        }
        // A note's day may stand in its name, which a register's key is no name for here.
        if word == "note" && entry.get("date").is_none() && entry.is_object() {
            entry["date"] = json!("2026-11-20");
        }
        let (accepted, seen) = accepted(word, &entry);
        if accepted {
            good.set(good.get() + 1);
            changed.set(changed.get() + usize::from(entry != *base));
            let schema = match Kind::of_word(word) {
                Some(kind) => format!("{}.schema.json", kind.folder()),
                None => format!("{word}.schema.json"),
            };
            let told = against(&schema, &seen);
            prop_assert!(told.is_empty(), "{word}: {entry}\n{told:?}");
        }
        Ok(())
    });
    if let Err(why) = outcome {
        panic!("{why}");
    }
    assert!(
        good.get() > 1000 && changed.get() > 250,
        "only {} accepted, {} of them changed",
        good.get(),
        changed.get()
    );
}

/// Every odd value under every key alone: random changes might miss one.
#[test]
fn every_odd_value_under_every_key() {
    let mut good = 0;
    for word in Kind::ALL.map(Kind::word).into_iter().chain(["studio"]) {
        let schema = &SCHEMAS[&format!("{word}.schema.json")];
        let named = |entry: &str| format!("{entry}.schema.json");
        let mut keys: Vec<(String, Option<(String, bool)>)> = Vec::new();
        for (key, property) in schema["properties"].as_object().unwrap() {
            keys.push((key.clone(), None));
            for (value, by_name) in [(property, false), (&property["additionalProperties"], true)] {
                let Some(part) = value["allOf"][0]["$ref"].as_str() else {
                    if by_name && value.is_object() {
                        keys.push((key.clone(), Some((String::new(), true))));
                    }
                    continue;
                };
                let part = &schema["definitions"][part.trim_start_matches("#/definitions/")];
                keys.extend(
                    part["properties"]
                        .as_object()
                        .unwrap()
                        .keys()
                        .map(|inner| (key.clone(), Some((inner.clone(), by_name)))),
                );
            }
        }
        for (key, inner) in keys {
            let example = schema["properties"][&key]["examples"][0].clone();
            for odd in odd() {
                let mut entry = json!({ "title": "One" });
                if word == "studio" {
                    entry["url"] = json!("https://example.org");
                }
                if word == "note" {
                    entry["date"] = json!("2026-11-20");
                }
                entry[&key] = match &inner {
                    None => odd,
                    Some((inner, true)) if inner.is_empty() => json!({ "name": odd }),
                    Some((inner, by_name)) => {
                        let first = example.get(0).unwrap_or(&example);
                        let mut part = if *by_name {
                            first.as_object().unwrap().values().next().unwrap().clone()
                        } else {
                            first.clone()
                        };
                        if !part.is_object() {
                            part = json!({ "title": "Another" });
                        }
                        part[inner] = odd;
                        if *by_name { json!({ "name": part }) } else { part }
                    }
                };
                let (accepted, _) = accepted(word, &entry);
                if accepted {
                    good += 1;
                    assert_eq!(against(&named(word), &entry), Vec::<String>::new(), "{word}: {entry}");
                }
            }
        }
    }
    assert!(good > 2000, "only {good} are accepted");
}
