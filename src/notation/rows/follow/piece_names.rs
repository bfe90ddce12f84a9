//! What pieces are called, and which of them words mean: "Sleeves (make 2)" is meant by "left sleeve".

/// Words that tell one of several pieces from the others.
const WHICH: [&str; 6] = ["left", "right", "first", "second", "upper", "lower"];

/// How many pieces a heading is of, as far as it tells: two where it names several or says "make 2".
pub(super) fn copies(name: &str) -> usize {
    let (outside, inside) = name.split_once('(').unwrap_or((name, ""));
    let several = |word: &str| word.len() > 3 && word.ends_with('s');
    let many = outside.split_whitespace().any(|word| several(&word.to_lowercase()));
    let said = words(inside).any(|word| matches!(word.as_str(), "2" | "two" | "both" | "alike" | "pair" | "twice"));
    if many || said { 2 } else { 1 }
}

/// How surely words that name a piece mean this one; nothing where they do not. The greater is the surer.
pub(super) fn is_of(name: &str, said: &str) -> Option<u8> {
    let name = name.split('(').next().unwrap_or_default();
    let has = |wanted: &String| words(name).any(|word| word == *wanted);
    let told_apart = |word: &String| WHICH.contains(&word.as_str());
    if words(name).eq(words(said)) {
        Some(2)
    } else if words(said).all(|word| has(&word)) {
        Some(1)
    } else {
        // Both sleeves are worked under one heading, and each has a side of its own in the join.
        let one = words(said).all(|word| told_apart(&word) || has(&word)) && !words(name).any(|word| told_apart(&word));
        one.then_some(0)
    }
}

/// The words of a name in small letters and without the s of several.
fn words(name: &str) -> impl Iterator<Item = String> + '_ {
    let all = name.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
    all.map(|word| word.to_lowercase().trim_end_matches('s').to_owned())
}
