//! The reference of what a template may use, made from the documentation of the contexts.
//!
//! A test compares it with the page that stands in the theme's folder.

use crate::page;
use schemars::{JsonSchema, SchemaGenerator};
use serde_json::Value;
use std::fmt::Write as _;

/// Returns the reference as Markdown.
pub fn reference() -> String {
    let mut generator = SchemaGenerator::default();
    let mut out = String::from(
        "# What a template may use\n\nMade from the documentation of the types in `src/page`; a test keeps it true. \
         A name with `?` may be absent: ask with `{% if name %}`. Everything is escaped but `body`, what is said to be HTML, and `head.json_ld`, which is JSON.\n\n\
         Beside the filters of Tera there is `cells`, which writes a list of texts as the cells of a table's row, each in the class \
         of its column: `{{ row.cells.first | cells }}` is `<td class=\"c1\">84</td><td class=\"c2\">94</td>`; and \
         `chart`, which draws a project's progress as SVG: `{{ project.progress_by_day | chart }}`, at most once on a page.\n",
    );
    section::<page::Site>(&mut out, &mut generator, "Every template: `site`");
    section::<page::HomeContext>(&mut out, &mut generator, "`home.html`");
    section::<page::PatternsContext>(&mut out, &mut generator, "`patterns.html`");
    section::<page::OnTheWayContext>(&mut out, &mut generator, "`on-the-way.html`");
    section::<page::PatternContext>(&mut out, &mut generator, "`pattern.html`");
    section::<page::TestKnitContext>(&mut out, &mut generator, "`test-knit.html`");
    section::<page::NeedlesContext>(&mut out, &mut generator, "`needles.html`");
    section::<page::FinishedContext>(&mut out, &mut generator, "`finished.html`");
    section::<page::ProjectContext>(&mut out, &mut generator, "`project.html`");
    section::<page::JournalContext>(&mut out, &mut generator, "`journal.html`");
    section::<page::NoteContext>(&mut out, &mut generator, "`note.html`");
    section::<page::YarnsContext>(&mut out, &mut generator, "`yarns.html`");
    section::<page::YarnContext>(&mut out, &mut generator, "`yarn.html`");
    section::<page::TechniquesContext>(&mut out, &mut generator, "`techniques.html`");
    section::<page::PeopleContext>(&mut out, &mut generator, "`people.html`");
    section::<page::PersonContext>(&mut out, &mut generator, "`person.html`");
    section::<page::PlainContext>(&mut out, &mut generator, "`page.html` and `technique.html`");
    section::<page::MissingContext>(&mut out, &mut generator, "`missing.html`");
    section::<page::BlockContext>(&mut out, &mut generator, "`block.html`");
    section::<page::RowsContext>(&mut out, &mut generator, "`rows.html`");
    out.push_str("\n## The types named above\n");
    let definitions: Vec<(String, Value)> = generator.take_definitions(false).into_iter().collect();
    for (name, schema) in definitions.iter().filter(|(name, _)| !name.ends_with("Context") && name != "Site") {
        let _ = write!(out, "\n### {name}\n\n{}\n\n", text(schema, "description"));
        fields(&mut out, schema);
    }
    out
}

fn section<T: JsonSchema>(out: &mut String, generator: &mut SchemaGenerator, title: &str) {
    let schema = T::json_schema(generator).to_value();
    let _ = write!(out, "\n## {title}\n\n");
    fields(out, &schema);
}

fn fields(out: &mut String, schema: &Value) {
    out.push_str("| name | type | meaning |\n|---|---|---|\n");
    for (name, field) in schema.get("properties").and_then(Value::as_object).into_iter().flatten() {
        let (kind, optional) = kind(field);
        let mark = if optional { "?" } else { "" };
        let _ = writeln!(out, "| `{name}`{mark} | {kind} | {} |", text(field, "description").replace('\n', " "));
    }
}

fn text<'a>(schema: &'a Value, key: &str) -> &'a str {
    schema.get(key).and_then(Value::as_str).unwrap_or_default()
}

/// Returns a type in words, and whether a value may be absent.
fn kind(schema: &Value) -> (String, bool) {
    if let Some(any) = schema.get("anyOf").and_then(Value::as_array) {
        let real = any.iter().find(|one| text(one, "type") != "null");
        return (real.map(|one| kind(one).0).unwrap_or_default(), true);
    }
    if let Some(target) = schema.get("$ref").and_then(Value::as_str) {
        return (target.rsplit('/').next().unwrap_or_default().to_owned(), false);
    }
    let (name, optional) = match schema.get("type") {
        Some(Value::Array(names)) => {
            (names.iter().filter_map(Value::as_str).find(|name| *name != "null").unwrap_or_default(), true)
        }
        Some(Value::String(name)) => (name.as_str(), false),
        _ => ("", false),
    };
    let words = match name {
        "string" => "text".to_owned(),
        "integer" => "whole number".to_owned(),
        "boolean" => "true or false".to_owned(),
        "array" => format!("list of {}", schema.get("items").map(|items| kind(items).0).unwrap_or_default()),
        other => other.to_owned(),
    };
    (words, optional)
}
