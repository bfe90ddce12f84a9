//! Words that pages put together from facts.

use crate::measure::{Percent, System};

/// Returns the unit of a system.
pub fn unit(system: System, metric: &str, imperial: &str) -> String {
    match system {
        System::Metric => metric.to_owned(),
        System::Imperial => imperial.to_owned(),
    }
}

/// Returns a text with its first letter large.
pub fn sentence(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}

/// Returns a count in words up to twelve, in figures beyond.
pub fn number(count: usize) -> String {
    const WORDS: [&str; 13] =
        ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
    WORDS.get(count).map_or_else(|| count.to_string(), |word| (*word).to_owned())
}

/// Returns a count with its noun: `one size`, `nine sizes`.
pub fn counted(count: usize, one: &str, many: &str) -> String {
    format!("{} {}", number(count), if count == 1 { one } else { many })
}

/// Returns words as a list that ends in "and".
pub fn list(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [only] => only.clone(),
        [before @ .., last] => format!("{} and {last}", before.join(", ")),
    }
}

/// Returns the name of a yarn in a sentence, with the label of its colour: `Heron DK (CC)`.
pub fn with_colour(yarn: Option<String>, colour: Option<&str>) -> String {
    let yarn = yarn.unwrap_or_else(|| "a yarn not named".to_owned());
    colour.map_or_else(|| yarn.clone(), |colour| format!("{yarn} ({colour})"))
}

/// Returns how far a yarn's length per weight is from another's, to the whole percent: `14% less length in the same weight`.
pub fn length_apart(apart: Percent) -> String {
    let percent = (apart.hundredths().unsigned_abs() + 50) / 100;
    match (percent, apart < Percent::ZERO) {
        (0, _) => "as much length in the same weight".to_owned(),
        (_, true) => format!("{percent}% less length in the same weight"),
        (_, false) => format!("{percent}% more length in the same weight"),
    }
}

/// Returns a range as `820 to 1,550 m` from its two ends as shown, or the one value if both are the same.
pub fn range(low: &str, high: &str) -> String {
    if low == high {
        return high.to_owned();
    }
    match (low.rsplit_once(' '), high.rsplit_once(' ')) {
        (Some((number, low_unit)), Some((_, high_unit))) if low_unit == high_unit => format!("{number} to {high}"),
        _ => format!("{low} to {high}"),
    }
}

/// Returns the first words of a text, whole words up to a number of characters, with an ellipsis if any are left out.
pub fn opening(text: &str, most: usize) -> String {
    let text = text.trim();
    if text.chars().count() <= most {
        return text.to_owned();
    }
    let cut: String = text.chars().take(most).collect();
    let whole = cut.rsplit_once(' ').map_or(cut.as_str(), |(before, _)| before);
    format!("{}…", whole.trim_end_matches([',', ';', ':', '.', ' ']))
}

/// Returns a note's title behind its number, `Note 12, Reeds`, or alone where it begins with that number itself.
pub fn numbered(number: u32, title: &str) -> String {
    let note = format!("Note {number}");
    let begins = title.get(..note.len()).is_some_and(|begins| begins.eq_ignore_ascii_case(&note));
    let ends = title.get(note.len()..).is_some_and(|rest| !rest.starts_with(|c: char| c.is_alphanumeric()));
    if begins && ends { title.to_owned() } else { format!("{note}, {title}") }
}
