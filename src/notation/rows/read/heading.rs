//! A line that is only a name with a colon, from which rows are numbered anew: `Crown:`, `Sleeves (make 2):`, `Part 1 – Cuff:`.

use super::cursor::Cursor;
use super::effect::{alters, works_here};

/// Words that a sentence begins with which says what is done, not what it is called.
const VERBS: [&str; 23] = [
    "work", "knit", "purl", "k", "p", "cast", "co", "bind", "bo", "rep", "repeat", "continue", "cont", "dec",
    "decrease", "inc", "increase", "place", "pick", "slip", "for", "size", "sizes",
];

/// Whether a line is a heading. That of a chart may have figures anywhere: `Chart 2:`.
pub(super) fn is_heading(cursor: &Cursor<'_>) -> bool {
    let Some(name) = cursor.rest().strip_suffix(':') else { return false };
    let of_name = |c: char| c.is_alphabetic() || c.is_whitespace() || matches!(c, '-' | '\'' | '’' | ',');
    let in_chart = |c: char| c.is_ascii_digit() || c == '.';
    let is_plain = !name.is_empty() && name.chars().all(|c| of_name(c) || (names_chart(name) && in_chart(c)));
    (is_plain && !alters(name) && !works_here(name, cursor.lexicon)) || is_numbered(name, cursor)
}

/// Returns whether a heading names a chart.
pub(super) fn names_chart(line: &str) -> bool {
    let first = line.split(|c: char| c.is_whitespace() || c == ':').next();
    first.is_some_and(|word| word.eq_ignore_ascii_case("chart"))
}

/// Whether a line is a name with a number or words in brackets behind it.
fn is_numbered(name: &str, cursor: &Cursor<'_>) -> bool {
    let first = name.split(|c: char| !c.is_alphabetic()).next().unwrap_or_default();
    if first.is_empty() || VERBS.iter().any(|verb| first.eq_ignore_ascii_case(verb)) {
        return false;
    }
    let mut outside = String::new();
    let mut rest = name;
    while let Some((before, behind)) = rest.split_once('(') {
        let Some((inside, after)) = behind.split_once(')') else { return false };
        // "Front (k2, p2):" is no name.
        if inside.contains(['(', '*']) || works_here(inside, cursor.lexicon) {
            return false;
        }
        outside.push_str(before);
        rest = after;
    }
    outside.push_str(rest);
    // A number is a part's own if no word follows that it could count.
    let mut words = outside.split_whitespace().peekable();
    while let Some(word) = words.next() {
        let is_figures = word.trim_end_matches(',').chars().all(|c| c.is_ascii_digit());
        let joins = |next: &&str| matches!(*next, "-" | "–" | "—" | "&" | "and") || word.ends_with(',');
        let is_own = !is_figures || words.peek().is_none_or(joins);
        let of_name = |c: char| c.is_alphabetic() || matches!(c, '-' | '–' | '—' | '\'' | '’' | '&' | ',' | '/');
        if !(is_own && (is_figures || word.chars().all(of_name))) {
            return false;
        }
    }
    !works_here(&outside, cursor.lexicon) && !alters(&outside)
}
