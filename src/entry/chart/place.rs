//! Where the keys, values and cells of a chart stand in its file.

use crate::entry::Fenced;
use crate::entry::yaml::{On, Places, Step};
use std::ops::Range;

/// Returns where a key or a value stands in the file.
pub fn place(source: &Fenced, keys: &[&str], on: On) -> Range<usize> {
    let way: Vec<Step> = keys.iter().map(|key| Step::Key(Box::from(*key))).collect();
    let span = Places::of(&source.text).find(&way, on);
    let lines = source.text.get(span.clone()).and_then(|text| text.lines().next()).map_or(0, str::len);
    if span.is_empty() { source.opening() } else { source.place(&(span.start..span.start.saturating_add(lines))) }
}

/// Returns where cells of a row stand in the file; `has_marks` tells whether `|` is no cell but an edge of the repeat.
pub fn row_place(source: &Fenced, row: usize, cells: &Range<usize>, has_marks: bool) -> Range<usize> {
    let places = Places::of(&source.text);
    let rows = [Step::Key(Box::from("rows"))];
    let item = [rows.to_vec(), vec![Step::Item(row)]].concat();
    let list = places.find(&rows, On::Value);
    let span = match places.find(&item, On::Value) {
        // In a text of several lines an item has no place, and the nearest thing that has one is the key.
        span if span != places.find(&rows, On::Key) && span.start >= list.start && span != list => span,
        _ => line_of_rows(&source.text, places.find(&rows, On::Key).end, row).unwrap_or(list),
    };
    let raw = source.text.get(span.clone()).unwrap_or_default();
    let quoted = usize::from(raw.starts_with(['"', '\'']));
    let seen = raw.char_indices().skip(quoted).filter(|(_, c)| !(c.is_whitespace() || has_marks && *c == '|'));
    let inside: Vec<Range<usize>> = seen.map(|(at, c)| at..at.saturating_add(c.len_utf8())).collect();
    let wanted = inside.get(cells.clone()).unwrap_or_default();
    match (wanted.first(), wanted.last()) {
        (Some(first), Some(last)) => source.place(&(span.start + first.start..span.start + last.end)),
        _ => source.place(&span),
    }
}

/// Returns the line of a row in a text of several lines, of which the key ends at a byte.
fn line_of_rows(text: &str, key: usize, row: usize) -> Option<Range<usize>> {
    let mut at = key;
    let mut lines = text.get(key..)?.split_inclusive('\n');
    at = at.saturating_add(lines.next()?.len());
    let mut filled = lines.filter_map(|line| {
        let start = at.saturating_add(line.len().saturating_sub(line.trim_start().len()));
        at = at.saturating_add(line.len());
        let length = line.trim().len();
        (length > 0).then(|| start..start.saturating_add(length))
    });
    filled.nth(row)
}
