//! Whether words that are no list of stitches change them all the same: `increasing evenly`, `bind off centre sts`.

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
