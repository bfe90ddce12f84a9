//! Numbers that count places: the `8th (7th, 6th)` of "every 8th (7th, 6th) round".

use std::borrow::Cow;

const ENDINGS: [&str; 4] = ["st", "nd", "rd", "th"];

/// Returns how long the ending of an ordinal number is that stands at a byte behind its figures; 0 where none does.
#[must_use]
pub fn ordinal_ending(text: &str, at: usize) -> usize {
    if !text.get(..at).is_some_and(|before| before.ends_with(|c: char| c.is_ascii_digit())) {
        return 0;
    }
    let behind = text.get(at..).unwrap_or_default();
    let ending = ENDINGS.iter().find(|ending| {
        let begins = behind.get(..ending.len()).is_some_and(|begin| begin.eq_ignore_ascii_case(ending));
        begins && !behind.get(ending.len()..).is_some_and(|rest| rest.starts_with(char::is_alphanumeric))
    });
    ending.map_or(0, |ending| ending.len())
}

/// Returns a text with spaces in the place of the endings of ordinal numbers, so that every other byte stays where it is.
#[must_use]
pub fn without_ordinals(text: &str) -> Cow<'_, str> {
    let mut plain = String::new();
    let mut done = 0;
    for (at, _) in text.char_indices() {
        let ending = if at < done { 0 } else { ordinal_ending(text, at) };
        if ending > 0 {
            plain.push_str(text.get(done..at).unwrap_or_default());
            plain.extend(std::iter::repeat_n(' ', ending));
            done = at + ending;
        }
    }
    if done == 0 {
        return Cow::Borrowed(text);
    }
    plain.push_str(text.get(done..).unwrap_or_default());
    Cow::Owned(plain)
}
