//! The filter `cells`.

use pulldown_cmark_escape::escape_html;
use tera::{Error, Kwargs, State, TeraResult, Value};

/// Returns the cells of a table's row as HTML, each in the class of its column: `<td class="c1">84</td>`.
///
/// A loop in a template would do the same at many times the cost, and tables of sizes are most of a pattern's page.
///
/// # Errors
/// A value that is no list.
pub fn cells(values: &Value, _: Kwargs, _: &State<'_>) -> TeraResult<Value> {
    let values = values.as_array().ok_or_else(|| Error::message("`cells` takes a list of texts"))?;
    let mut row = String::with_capacity(values.len() * 32);
    for (at, value) in values.iter().enumerate() {
        row.push_str("<td class=\"c");
        row.push_str(&(at + 1).to_string());
        row.push_str("\">");
        // Writing to a text cannot fail.
        let _ = match value.as_str() {
            Some(text) => escape_html(&mut row, text),
            None => escape_html(&mut row, &value.to_string()),
        };
        row.push_str("</td>");
    }
    Ok(Value::safe_string(&row))
}
