//! Where the words of a label end: at a colon, or at the dash of `Row 1 - K2`.

use super::super::name::RowName;
use super::label::ROW;

/// Words of a label beside the word row and its numbers.
const BESIDES: [&str; 11] = ["and", "to", "rs", "ws", "all", "every", "right", "wrong", "side", "r", "short"];

/// Returns how long the words of the label are that a text begins with, and with the sign behind them; nothing where it begins
/// with none.
pub(super) fn label_end(text: &str) -> Option<(usize, usize)> {
    let colon = colon(text);
    match (dash(text), colon) {
        // "Row 3 - WS: purl" goes on to its colon.
        (Some((dash, _)), Some(colon)) if text.get(dash..colon).is_some_and(is_more_of_it) => Some((colon, colon + 1)),
        (Some(dash), _) => Some(dash),
        (None, colon) => colon.map(|colon| (colon, colon + 1)),
    }
}

/// Whether what stands between a dash and a colon belongs to the label: sides and the word row, or a name that says what is
/// done in it, as in "Row 5 - Dec row:".
fn is_more_of_it(words: &str) -> bool {
    let lower = words.to_lowercase();
    let of_label = |word: &str| word.is_empty() || BESIDES.contains(&word) || ROW.contains(&word);
    let figures = words.contains(|c: char| c.is_ascii_digit() || c == ',');
    let named = !figures && RowName::of(words).is_some_and(|name| !name.is_plain());
    lower.split(|c: char| !c.is_alphanumeric()).all(of_label) || named
}

/// Where the colon of a label stands: before the sentence ends, outside brackets.
fn colon(text: &str) -> Option<usize> {
    let mut depth = 0_usize;
    for (at, c) in text.char_indices() {
        match c {
            '(' | '[' => depth += 1,
            ')' | ']' => depth = depth.saturating_sub(1),
            ':' if depth == 0 => return Some(at),
            '.' | '\n' | '*' | ';' => return None,
            _ => {}
        }
    }
    None
}

/// Where the dash stands that does for a colon, spaces round it and a numbered row before it; not that of "Rows 1 - 4".
fn dash(text: &str) -> Option<(usize, usize)> {
    let ends = text.find(['.', '\n', '*', ';', ':', '[']).unwrap_or(text.len());
    text.get(..ends)?.char_indices().filter(|(_, c)| matches!(c, '-' | '–' | '—')).find_map(|(at, c)| {
        let (before, behind) = (text.get(..at)?, text.get(at + c.len_utf8()..)?);
        let spaced = before.ends_with(' ') && behind.starts_with(' ');
        let ranges = behind.trim_start().starts_with(|c: char| c.is_ascii_digit());
        (spaced && !ranges && is_numbered(before)).then(|| (before.trim_end().len(), at + c.len_utf8()))
    })
}

/// Whether words are those of a numbered row and no others: `Rows 1 and 3 (RS)`.
fn is_numbered(words: &str) -> bool {
    let lower = words.to_lowercase();
    let mut all = lower.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).peekable();
    let begins = all.peek().is_some_and(|first| is_row_word(first) || matches!(*first, "r" | "short"));
    let is_figures = |word: &str| word.chars().all(|c| c.is_ascii_digit());
    begins
        && words.contains(|c: char| c.is_ascii_digit())
        && all.all(|word| is_figures(word) || BESIDES.contains(&word) || is_row_word(word))
}

/// Whether a word is `row`, `rnds`, or the `r1` and `row1` of houses that write it so.
fn is_row_word(word: &str) -> bool {
    let letters = word.trim_end_matches(|c: char| c.is_ascii_digit());
    ROW.contains(&letters) || (letters == "r" && (letters.len() < word.len()))
}

/// Returns how many letters stand for "row" in a text that goes on with its number: 1 of `R1` and `R 1`, 3 of `Row1`.
pub(super) fn short_row(text: &str) -> Option<usize> {
    let letters = text.bytes().take_while(u8::is_ascii_alphabetic).count();
    let (word, rest) = text.split_at_checked(letters)?;
    let is_figure = |text: &str| text.starts_with(|c: char| c.is_ascii_digit());
    let attached = is_figure(rest) && (word.eq_ignore_ascii_case("r") || ROW.contains(&word.to_lowercase().as_str()));
    let apart = word == "R" && rest.starts_with(' ') && is_figure(rest.trim_start());
    (attached || apart).then_some(letters)
}
