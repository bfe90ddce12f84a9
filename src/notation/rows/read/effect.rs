//! What words that are no list of stitches do to them: work them, `k8`; change them, `increasing evenly`; or speak of some.

use super::super::lexicon::Lexicon;
use super::plain::tokens;

/// Phrases of which a word alone would speak of stitches.
const QUIET: [&str; 12] = [
    "cast-on",
    "cast on edge",
    "cast on tail",
    "cast-off",
    "cast off edge",
    "bind-off",
    "bind off edge",
    "bound-off",
    "co edge",
    "co tail",
    "bo edge",
    "pick up the yarn",
];

/// Words that change stitches, in whatever sentence they stand.
const VERBS: [&str; 24] = [
    "inc",
    "incr",
    "increase",
    "increasing",
    "increased",
    "dec",
    "decr",
    "decrease",
    "decreasing",
    "decreased",
    "bind",
    "binding",
    "bo",
    "cast",
    "casting",
    "co",
    "pick",
    "picking",
    "halve",
    "halving",
    "together",
    "tog",
    "kitchener",
    "into",
];

/// Words that do so to a stitch or a number of them, and else not: "make one", "drop a st", but "make sure", "drop the yarn".
const OF_STITCHES: [&str; 6] = ["make", "making", "drop", "dropping", "lose", "losing"];

/// What such a word before it names: "the dec rnd", "increase section".
const NAMES: &str =
    " row rows rnd rnds round rounds line lines point points section sections shaping part pattern chart ";

/// Whether words change stitches, or may: what is not known to leave them alone is not taken for an aside.
pub(super) fn alters(words: &str) -> bool {
    let mut words = words.to_lowercase();
    for phrase in QUIET {
        words = words.replace(phrase, " ");
    }
    let all: Vec<&str> = tokens(&words).collect();
    all.iter().enumerate().any(|(at, word)| {
        let behind = |ahead: usize| all.get(at + ahead).copied().unwrap_or_default();
        // "The dec rnd" is the name of one.
        let is_name = NAMES.split_whitespace().any(|name| name == behind(1));
        let stitch = |word: &str| matches!(word, "st" | "sts" | "stitch" | "stitches") || is_count(word);
        let of_stitches =
            |word: &&str| is_count(word) || matches!(*word, "knit" | "purl" | "work" | "slip" | "k" | "p");
        match *word {
            // "Pull the ends together" works none.
            "together" | "tog" | "into" => all.iter().take(at).rev().take(4).any(of_stitches),
            word if OF_STITCHES.contains(&word) => (1..=3).any(|ahead| stitch(behind(ahead))),
            word => VERBS.contains(&word) && !is_name,
        }
    })
}

/// Whether a word is a number, in figures or not.
pub(super) fn is_count(word: &str) -> bool {
    const NAMES: &str = " one two three four five six seven eight nine ten eleven twelve fifteen sixteen twenty ";
    !word.is_empty() && (word.chars().all(char::is_numeric) || NAMES.split(' ').any(|name| name == word))
}

/// Whether words that begin like an aside work stitches, or say how many there are more or fewer.
pub(super) fn works_here(words: &str, lexicon: &Lexicon) -> bool {
    let shapes = |word: &str| {
        let word = word.to_lowercase();
        let changes = word.starts_with("increas") || word.starts_with("decreas");
        let on = matches!(word.as_str(), "cast" | "casting" | "co" | "pick" | "picking");
        changes || on || matches!(word.as_str(), "inc" | "dec" | "bind" | "binding" | "bo")
    };
    // "Weave in the cast-on tail" shapes nothing.
    let after = tokens(words).skip_while(|word| !shapes(word)).skip(1).take(4);
    let shaped = after.into_iter().any(|word| word.chars().all(char::is_numeric));
    shaped || tokens(words).any(|word| is_stitch(word, lexicon))
}

/// Whether words, in small letters, go on with work on stitches.
pub(super) fn works(words: &str, lexicon: &Lexicon) -> bool {
    const VERBS: [&str; 12] = ["k", "p", "knit", "purl", "work", "place", "slip", "put", "bind", "bo", "cast", "co"];
    tokens(words).any(|word| VERBS.contains(&word) || is_stitch(word, lexicon)) || works_here(words, lexicon)
}

/// Whether a word works a stitch: `k8`, `yo`, or one of the pattern's own.
pub(super) fn is_stitch(word: &str, lexicon: &Lexicon) -> bool {
    let numbered = |letter: char| {
        let rest = word.strip_prefix([letter, letter.to_ascii_uppercase()]);
        rest.is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit()))
    };
    numbered('k') || numbered('p') || lexicon.find(word).is_some() || lexicon.own_at(word).is_some()
}

/// Whether words speak of a number of stitches: "10 sts", "the 10 held sts".
pub(super) fn names_stitches(words: &str) -> bool {
    let all: Vec<&str> = tokens(words).collect();
    all.windows(3).chain(all.windows(2)).any(|some| {
        let number = some.first().is_some_and(|word| is_count(word));
        number && some.last().is_some_and(|word| matches!(*word, "st" | "sts" | "stitch" | "stitches"))
    })
}

/// Whether words, in small letters, speak of increases or decreases.
pub(super) fn shapes(words: &str) -> bool {
    tokens(words).any(|word| {
        ["increas", "decreas"].iter().any(|change| word.starts_with(change))
            || matches!(word, "inc" | "dec" | "incs" | "decs")
    })
}
