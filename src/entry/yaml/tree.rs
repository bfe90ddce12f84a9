//! A YAML document as plain values.

use serde::de::{Deserialize, Deserializer, Error, MapAccess, SeqAccess, Visitor};
use serde_json::Value;
use std::fmt;

/// A YAML value. Unlike serde_yaml's own it keeps the order of keys and both of two equal ones, so that a duplicate is a
/// finding like any other instead of the end of the reading.
#[derive(Clone, Debug, PartialEq)]
pub enum Yaml {
    /// Nothing, or `~`.
    Null,
    /// `true` or `false`.
    Bool(bool),
    /// A whole number, as it is written.
    Number(String),
    /// A number with a fraction or an exponent, as text that reads as the same number but may be written otherwise:
    /// `1.10` has become `1.1`.
    Fraction(String),
    /// Any other text.
    Text(String),
    /// A list.
    List(Vec<Yaml>),
    /// Keys and values in the order of the file. A key that is no text is kept as its text.
    Map(Vec<(String, Yaml)>),
}

impl Yaml {
    /// Returns what the value is, in a writer's words.
    pub fn what(&self) -> &'static str {
        match self {
            Self::Null => "nothing",
            Self::Bool(_) => "true or false",
            Self::Number(_) | Self::Fraction(_) => "a number",
            Self::Text(_) => "a text",
            Self::List(_) => "a list",
            Self::Map(_) => "keys and values",
        }
    }

    /// Returns the value as JSON, which is how a schema sees it: of two equal keys the second, and no number where JSON
    /// has none, as for infinity.
    pub fn to_json(&self) -> Value {
        match self {
            Self::Null => Value::Null,
            Self::Bool(value) => Value::Bool(*value),
            Self::Number(text) | Self::Fraction(text) => text.parse().map_or(Value::Null, Value::Number),
            Self::Text(text) => Value::String(text.clone()),
            Self::List(items) => items.iter().map(Self::to_json).collect(),
            Self::Map(entries) => entries.iter().map(|(key, value)| (key.clone(), value.to_json())).collect(),
        }
    }

    /// Returns the text of a text, a number or a truth value.
    pub fn scalar(&self) -> Option<&str> {
        match self {
            Self::Bool(true) => Some("true"),
            Self::Bool(false) => Some("false"),
            Self::Number(text) | Self::Fraction(text) | Self::Text(text) => Some(text),
            Self::Null | Self::List(_) | Self::Map(_) => None,
        }
    }
}

/// Reads one YAML document; an empty one is [`Yaml::Null`].
///
/// # Errors
/// serde_yaml's own, if the text is not YAML.
pub fn parse(text: &str) -> Result<Yaml, serde_yaml::Error> {
    serde_yaml::from_str(text)
}

impl<'de> Deserialize<'de> for Yaml {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(Values)
    }
}

struct Values;

impl<'de> Visitor<'de> for Values {
    type Value = Yaml;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a text, a number, a list or keys and values")
    }

    fn visit_unit<E: Error>(self) -> Result<Yaml, E> {
        Ok(Yaml::Null)
    }

    fn visit_none<E: Error>(self) -> Result<Yaml, E> {
        Ok(Yaml::Null)
    }

    fn visit_some<D: Deserializer<'de>>(self, deserializer: D) -> Result<Yaml, D::Error> {
        Yaml::deserialize(deserializer)
    }

    fn visit_bool<E: Error>(self, value: bool) -> Result<Yaml, E> {
        Ok(Yaml::Bool(value))
    }

    fn visit_i64<E: Error>(self, value: i64) -> Result<Yaml, E> {
        Ok(Yaml::Number(value.to_string()))
    }

    fn visit_u64<E: Error>(self, value: u64) -> Result<Yaml, E> {
        Ok(Yaml::Number(value.to_string()))
    }

    fn visit_f64<E: Error>(self, value: f64) -> Result<Yaml, E> {
        Ok(Yaml::Fraction(value.to_string()))
    }

    fn visit_i128<E: Error>(self, value: i128) -> Result<Yaml, E> {
        Ok(Yaml::Number(value.to_string()))
    }

    fn visit_u128<E: Error>(self, value: u128) -> Result<Yaml, E> {
        Ok(Yaml::Number(value.to_string()))
    }

    fn visit_str<E: Error>(self, value: &str) -> Result<Yaml, E> {
        Ok(Yaml::Text(value.to_owned()))
    }

    fn visit_string<E: Error>(self, value: String) -> Result<Yaml, E> {
        Ok(Yaml::Text(value))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Yaml, A::Error> {
        let mut list = Vec::new();
        while let Some(item) = items.next_element()? {
            list.push(item);
        }
        Ok(Yaml::List(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Yaml, A::Error> {
        let mut map = Vec::new();
        while let Some((key, value)) = entries.next_entry::<Yaml, Yaml>()? {
            let key = match &key {
                Yaml::Null => String::from("~"),
                Yaml::Fraction(number) => {
                    return Err(A::Error::custom(format!("the key {number} is read as a number: put it in quotes")));
                }
                other => other.scalar().map(str::to_owned).ok_or_else(|| A::Error::custom("a key must be a text"))?,
            };
            map.push((key, value));
        }
        Ok(Yaml::Map(map))
    }
}
