//! How many rows a sentence names that change no count: `Knit 3 rnds`.

use super::lexicon::Lexicon;
use super::statement::{Doing, Written};
use crate::measure::RunStyle;

const ROWS: [&str; 6] = ["row", "rows", "rnd", "rnds", "round", "rounds"];

/// Reads a text of rows.
///
/// Every line is a labelled row or a few sentences; a line that is indented goes on with the one above. Nothing is lost:
/// what cannot be read is a statement with its trouble. Places are bytes of `text`.
pub fn read(text: &str, lexicon: &Lexicon, style: RunStyle) -> Written {
    let mut written = super::read::read(text, lexicon, style);
    for statement in written.statements.iter_mut().filter(|statement| statement.doing == Doing::Plain) {
        if let Some(rows) = text.get(statement.at.clone()).and_then(rows) {
            statement.doing = Doing::PlainRows(rows);
        }
    }
    written
}

/// The number before the word "rows", where no other stands in the sentence. A count behind the sentence is none of it.
fn rows(sentence: &str) -> Option<u32> {
    let words = sentence.split(['[', '.']).next()?;
    let mut words = words.split(|c: char| c.is_whitespace() || c == ',').filter(|word| !word.is_empty()).peekable();
    let mut found = None;
    while let Some(word) = words.next() {
        if matches!(word.to_lowercase().as_str(), "every" | "until" | "for" | "or") {
            return None;
        }
        let before = words.peek().is_some_and(|next| ROWS.contains(&next.to_lowercase().as_str()));
        match word.parse() {
            Ok(number) if before && found.is_none() => found = Some(number),
            _ if word.contains(|c: char| c.is_ascii_digit()) => return None,
            _ => {}
        }
    }
    found
}
