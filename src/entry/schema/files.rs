//! Which schemas there are: one for the studio, two for each kind.

use super::shape::{Definitions, keys};
use crate::entry::field::{FieldInfo, Record};
use crate::entry::kind::{Kind, slug};
use crate::entry::{Common, Note, Page, Pattern, Person, Project, Studio, Technique, Yarn};
use serde_json::{Map, Value, json};

/// The folder of a studio that they stand in. It is hidden, so nothing in it is taken for an entry.
pub const FOLDER: &str = ".schemas";

/// What each of them begins to say of itself, by which one is known from another file of that name.
pub const MARK: &str = "Written by ballband";

/// Returns the name and the text of every schema.
///
/// `pattern.schema.json` is of the keys in a pattern's file, `patterns.schema.json` of the register `patterns.yaml`, and
/// so for each kind by its word and its folder; `studio.schema.json` is of `studio.yaml`.
pub fn files() -> Vec<(String, String)> {
    let name = |of: &str| format!("{of}.schema.json");
    let mut all = vec![(name("studio"), studio())];
    for kind in Kind::ALL {
        all.push((name(kind.word()), front_matter(kind)));
        all.push((name(kind.folder()), register(kind)));
    }
    all
}

fn studio() -> String {
    let mut definitions = Definitions::default();
    let keywords = keys(&[Studio::FIELDS], &mut definitions);
    text(
        "studio.yaml",
        "The studio: whose it is, where it is published and how it writes numbers.",
        keywords,
        definitions,
    )
}

fn front_matter(kind: Kind) -> String {
    let (what, fields) = record(kind);
    let mut definitions = Definitions::default();
    let keywords = keys(&[Common::FIELDS, fields], &mut definitions);
    let words =
        format!("The keys of {what}, which stand between two lines --- at the head of a file in `{}`.", kind.folder());
    text(what, &words, keywords, definitions)
}

fn register(kind: Kind) -> String {
    let (what, fields) = record(kind);
    let mut definitions = Definitions::default();
    let entry = keys(&[Common::FIELDS, fields], &mut definitions);
    let name = slug(what);
    let reference = json!([{ "$ref": format!("#/definitions/{name}") }]);
    definitions.0.insert(name, Value::Object(entry));
    let key =
        json!({ "pattern": "^[a-z0-9-]+$", "errorMessage": "write a key: lower-case letters, digits and hyphens" });
    let entry = json!({ "description": format!("The keys of {what}."), "type": "object", "allOf": reference });
    let keywords = Map::from_iter([("propertyNames".to_owned(), key), ("additionalProperties".to_owned(), entry)]);
    let words = "Each under its key: lower-case letters, digits and hyphens.";
    text(&format!("{}.yaml", kind.folder()), words, keywords, definitions)
}

fn record(kind: Kind) -> (&'static str, &'static [FieldInfo]) {
    fn of<T: Record>() -> (&'static str, &'static [FieldInfo]) {
        (T::NAME, T::FIELDS)
    }
    match kind {
        Kind::Pattern => of::<Pattern>(),
        Kind::Project => of::<Project>(),
        Kind::Note => of::<Note>(),
        Kind::Yarn => of::<Yarn>(),
        Kind::Technique => of::<Technique>(),
        Kind::Person => of::<Person>(),
        Kind::Page => of::<Page>(),
    }
}

fn text(title: &str, words: &str, keywords: Map<String, Value>, definitions: Definitions) -> String {
    let head = json!({
        "$schema": "http://json-schema.org/draft-07/schema#",
        "$comment": format!("{MARK}, which writes it again: changes made here are lost."),
        "title": title,
        "description": words,
        "type": "object",
    });
    let mut whole = head.as_object().cloned().unwrap_or_default();
    whole.extend(keywords);
    if !definitions.0.is_empty() {
        whole.insert("definitions".to_owned(), Value::Object(definitions.0));
    }
    format!("{:#}\n", Value::Object(whole))
}
