//! Recognises what YAML has made of a size run without quotes.
//!
//! A run holds commas, so inside YAML's `{ … }` and `[ … ]` it falls to pieces unless it stands in
//! quotes, and a run that begins with a dash becomes a list. These functions rebuild the likely run for
//! the advice; they are never used to go on as if it had been written.

/// The run that YAML cut at its commas, if the pieces look like one.
///
/// `["84 (94", "104) cm"]` gives `84 (94, 104) cm`. The pieces are the value and the keys (or items) that
/// follow it. Pieces are taken until the brackets are closed; `None` where they never close, or where the
/// first piece has none open.
#[must_use]
pub fn run_from_pieces(pieces: &[&str]) -> Option<String> {
    let mut run = String::new();
    for (index, piece) in pieces.iter().enumerate() {
        if index > 0 {
            run.push_str(", ");
        }
        run.push_str(piece.trim());
        let open = open_brackets(&run)?;
        if index == 0 && open == 0 {
            return None;
        }
        // The next key of the mapping must not be taken for a part of the run, so stop at the first chance.
        if open == 0 {
            return Some(run);
        }
    }
    None
}

/// The run that became a list because it begins with a dash: `(84, 92) cm` gives `– (84, 92) cm`.
///
/// `None` where the item does not begin with a bracket.
#[must_use]
pub fn run_from_list_item(item: &str) -> Option<String> {
    let item = item.trim();
    if item.starts_with(['(', '[', '{']) && open_brackets(item) == Some(0) { Some(format!("– {item}")) } else { None }
}

/// The text in YAML's quotes, for advice: single ones, or double ones where it holds a single one.
#[must_use]
pub fn quoted(run: &str) -> String {
    if run.contains('\'') {
        format!("\"{}\"", run.replace('\\', "\\\\").replace('"', "\\\""))
    } else {
        format!("'{run}'")
    }
}

/// How many brackets are open at the end; `None` where more are closed than opened.
fn open_brackets(text: &str) -> Option<usize> {
    let mut open = 0_usize;
    for c in text.chars() {
        match c {
            '(' | '[' | '{' => open += 1,
            ')' | ']' | '}' => open = open.checked_sub(1)?,
            _ => {}
        }
    }
    Some(open)
}
