//! The schema of one value, and of a record's keys.

use crate::entry::field::{FieldInfo, Record};
use crate::entry::kind::slug;
use crate::entry::yaml::{Yaml, parse};
use serde_json::{Map, Value, json};

/// What a value may be, as JSON Schema says it.
///
/// Each keyword speaks of one type only, as the standard has it: a `pattern` of texts, `maximum` of numbers, `items` of
/// lists. Types can therefore be added without changing what was said of the others, and a validator names the very
/// value that is wrong.
#[derive(Clone, Debug)]
pub struct Schema {
    types: Vec<&'static str>,
    keywords: Map<String, Value>,
    note: String,
    examples: Vec<Value>,
}

/// The records that a schema refers to, by name.
#[derive(Clone, Debug, Default)]
pub struct Definitions(pub Map<String, Value>);

impl Schema {
    /// Returns the schema of values of these types, with an example in YAML; no type at all is any value.
    pub fn of(types: &[&'static str], example: &str) -> Self {
        Self { types: types.to_vec(), keywords: Map::new(), note: String::new(), examples: vec![from_yaml(example)] }
    }

    /// Returns the schema of a few fixed words, each with its meaning.
    pub fn words(words: &[(&'static str, &str)]) -> Self {
        let meanings: Vec<String> = words
            .iter()
            .filter(|(_, meaning)| !meaning.is_empty())
            .map(|(word, meaning)| format!("{word}: {}", meaning.trim()))
            .collect();
        let all: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
        Self {
            examples: all.first().map(|word| json!(word)).into_iter().collect(),
            ..Self::of(&["string"], "").with("enum", all).saying(&meanings.join("\n"))
        }
    }

    /// Adds a keyword.
    #[must_use]
    pub fn with(mut self, keyword: &str, value: impl Into<Value>) -> Self {
        self.keywords.insert(keyword.to_owned(), value.into());
        self
    }

    /// Adds the pattern of a text, and what to write where it does not match.
    ///
    /// The pattern must never be narrower than the reader.
    #[must_use]
    pub fn pattern(self, pattern: &str, what: &str) -> Self {
        self.with("pattern", pattern).else_write(what)
    }

    /// Adds what to write where the value is something else.
    ///
    /// `errorMessage` is no part of the standard; editors that know it show it instead of types and patterns, and others
    /// pass over it.
    #[must_use]
    pub fn else_write(self, what: &str) -> Self {
        self.with("errorMessage", format!("write {what}"))
    }

    /// Adds a sentence to what is said of the value.
    #[must_use]
    pub fn saying(mut self, note: &str) -> Self {
        if !self.note.is_empty() && !note.is_empty() {
            self.note.push('\n');
        }
        self.note.push_str(note);
        self
    }

    /// Adds examples that an editor may offer beside the first.
    #[must_use]
    pub fn offering<'a>(mut self, examples: impl IntoIterator<Item = &'a str>) -> Self {
        for example in examples {
            let example = json!(example);
            if !self.examples.contains(&example) {
                self.examples.push(example);
            }
        }
        self
    }

    /// Allows nothing after the key.
    #[must_use]
    pub fn or_nothing(mut self) -> Self {
        if let Some(Value::Array(ways)) = self.keywords.get_mut("anyOf") {
            ways.push(json!({ "type": "null" }));
        }
        if let Some(Value::Array(words)) = self.keywords.get_mut("enum") {
            words.push(Value::Null);
        }
        if !self.types.is_empty() && !self.types.contains(&"null") {
            self.types.push("null");
        }
        self
    }

    /// Allows the number 0, and no other.
    #[must_use]
    pub fn or_zero(mut self) -> Self {
        let ways = json!([self.clone().bare(), { "const": 0 }]);
        self.keywords = Map::from_iter([("anyOf".to_owned(), ways)]);
        self.types.clear();
        self
    }

    /// Takes it back that there may be nothing after the key.
    #[must_use]
    pub fn not_nothing(mut self) -> Self {
        self.types.retain(|kind| *kind != "null");
        self
    }

    /// Allows a list of such values, or nothing.
    #[must_use]
    pub fn or_list(mut self) -> Self {
        let item = self.clone().bare();
        // Words are meant of every type, so that a list of them is another way altogether.
        if self.keywords.contains_key("enum") || self.keywords.contains_key("anyOf") {
            let ways = json!([item, { "type": "array", "items": item }]);
            self.keywords = Map::from_iter([("anyOf".to_owned(), ways)]);
            self.types.clear();
        } else if !self.types.is_empty() {
            self.types.push("array");
            self.keywords.insert("items".to_owned(), item);
        }
        self.examples = vec![Value::Array(self.examples)];
        self.saying("One, or a list.").or_nothing()
    }

    /// Allows what another schema allows too; of keywords that both have, this one's stay.
    #[must_use]
    pub fn or(mut self, other: Self) -> Self {
        for kind in other.types {
            if !self.types.contains(&kind) {
                self.types.push(kind);
            }
        }
        for (keyword, value) in other.keywords {
            self.keywords.entry(keyword).or_insert(value);
        }
        self.examples.extend(other.examples);
        self.saying(&other.note)
    }

    /// Returns the schema of names of the writer's own choice with such a value each, or nothing.
    pub fn named(self, what: &str) -> Self {
        let examples = self.examples.iter().map(|example| json!({ "name": example })).collect();
        let value = self.described(format!("Takes {what}."));
        Self { examples, ..Self::of(&["object", "null"], "").with("additionalProperties", value) }
    }

    /// Returns the schema as JSON, with what is said of the value.
    pub fn described(self, words: String) -> Value {
        let words = if self.note.is_empty() { words } else { format!("{words}\n{}", self.note) };
        let examples = self.examples.clone();
        let mut all = Map::from_iter([("description".to_owned(), Value::from(words))]);
        if let Value::Object(bare) = self.bare() {
            all.extend(bare);
        }
        all.insert("examples".to_owned(), Value::Array(examples));
        Value::Object(all)
    }

    fn bare(self) -> Value {
        let types = match *self.types.as_slice() {
            [] => None,
            [only] => Some(json!(only)),
            ref several => Some(json!(several)),
        };
        let types = types.map(|types| ("type".to_owned(), types));
        Value::Object(types.into_iter().chain(self.keywords).collect())
    }
}

/// Returns the schema of a record, whose keys are added to the definitions.
pub fn of_record<T: Record>(definitions: &mut Definitions) -> Schema {
    let mut example = Map::new();
    for field in T::FIELDS {
        let value = examples(field, &(field.schema)(definitions)).into_iter().next();
        example.extend(value.map(|value| (field.key.to_owned(), value)));
    }
    let keywords = keys(&[T::FIELDS], definitions);
    let types: &[&str] = if keywords.contains_key("required") { &["object"] } else { &["object", "null"] };
    let name = slug(T::NAME);
    let reference = json!([{ "$ref": format!("#/definitions/{name}") }]);
    definitions.0.insert(name, Value::Object(keywords));
    Schema { examples: vec![Value::Object(example)], ..Schema::of(types, "").with("allOf", reference) }
}

/// Returns what JSON Schema says of a map with the keys of these lists and no others.
///
/// It says nothing of the type, so that a value which may be something else too can refer to it.
pub fn keys(lists: &[&[FieldInfo]], definitions: &mut Definitions) -> Map<String, Value> {
    let mut properties = Map::new();
    let mut required = Vec::new();
    for field in lists.iter().copied().flatten() {
        let mut schema = (field.schema)(definitions);
        schema.examples = examples(field, &schema);
        let private = if field.private { "\nPrivate: it never reaches the site." } else { "" };
        let words = format!("{}\nTakes {}.{private}", field.doc.trim(), field.what);
        properties.insert(field.key.to_owned(), schema.described(words));
        if (field.required)() {
            required.push(field.key);
        }
    }
    let mut keywords = Map::from_iter([("properties".to_owned(), Value::Object(properties))]);
    if !required.is_empty() {
        keywords.insert("required".to_owned(), json!(required));
    }
    keywords.insert("additionalProperties".to_owned(), json!(false));
    keywords
}

/// Returns a key's own example, or else those of its value.
fn examples(field: &FieldInfo, schema: &Schema) -> Vec<Value> {
    match field.example {
        [] => schema.examples.clone(),
        own => own.iter().map(|example| from_yaml(example)).collect(),
    }
}

/// Returns an example as JSON; one that is not YAML, which a test would tell, as a text.
fn from_yaml(text: &str) -> Value {
    parse(text).as_ref().map_or_else(|_| Value::from(text), Yaml::to_json)
}
