//! A bracket that holds numbers and nothing else, as behind the first value of a size run.

use super::number::{begins_number, is_dash};

/// Returns how long the bracket is that a text begins with, spaces before it included, if it holds nothing but numbers and the
/// signs between them: `(56, 64)`, `[5:6:6]`, `{–}`. Nothing for another one, or where none stands.
#[must_use]
pub fn numbers_in_brackets(text: &str) -> Option<usize> {
    let inner = text.trim_start();
    let close = match inner.chars().next()? {
        '(' => ')',
        '[' => ']',
        '{' => '}',
        _ => return None,
    };
    let of_numbers =
        |c: char| begins_number(c) || is_dash(c) || c.is_whitespace() || matches!(c, ',' | ';' | ':' | '.' | '/');
    // No further than the first sign that is none: a text may have many brackets that never close.
    let inside = inner.get(1..)?;
    let end = inside.find(|c| !of_numbers(c))?;
    let holds = inside.get(..end)?.contains(|c| begins_number(c) || is_dash(c));
    (holds && inside.get(end..)?.starts_with(close)).then(|| text.len() - inside.len() + end + close.len_utf8())
}
