//! The colours that rows name: the trade's short words and a pattern's own names.

use std::ops::Range;

/// A colour that words name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named {
    /// Its label, as the pattern has it; empty where two colours have the name.
    pub label: String,
    /// Whether it is one of the pattern's, and not only the trade's word for some colour.
    pub own: bool,
    /// Where it stands.
    pub at: Range<usize>,
    /// Whether `in`, `with` or `using` stands before it.
    pub said: bool,
}

/// The colours of a pattern, by the names that its rows may use.
#[derive(Clone, Debug, Default)]
pub(super) struct Colours {
    /// Names in small letters, each with the label of its colour; an empty one where two colours have the name.
    own: Vec<(String, String)>,
}

/// Words that are no colour's name where they stand alone: what is worked comes first.
const TAKEN: &str = " k p sl knit purl slip work rep repeat to turn row rows rnd rnds round rounds times time more end and then from \
    until st sts stitch stitches tbl tog together around across place put bind cast bo co pm sm rm m marker inc dec increase \
    decrease next last first all each every in with using as for of on onto the a an both same pass pick join twice once into \
    rib patt pattern garter stockinette seed moss even rem remaining hold held knitwise purlwise kwise pwise wyif wyib ";

/// Words that are no colour's name even behind `in` or `with`: `in next st`, `with yarn in front`.
const NEVER: &str = " next same each every st sts stitch back front yarn the a an patt pattern rs ws ";

/// Words before a colour.
const BEFORE: [&str; 3] = ["in", "with", "using"];

impl Colours {
    /// Adds a name of a colour; one that two colours have is neither's.
    pub(super) fn add(&mut self, name: &str, label: &str) {
        let words: Vec<&str> = name.split_whitespace().collect();
        let name = if is_letter(name) { name.to_owned() } else { words.join(" ").to_lowercase() };
        match self.own.iter_mut().find(|(known, _)| *known == name) {
            // A label is that of its own colour, whatever else is called so.
            Some((known, other)) if *other != label && other.to_lowercase() != *known => other.clear(),
            Some(_) => {}
            None if name.is_empty() => {}
            None => self.own.push((name, label.to_owned())),
        }
    }

    /// Returns the colour that a text begins with: its length, its label, and whether it is the pattern's own. `said` tells
    /// whether a word before it says that it is one.
    pub(super) fn at<'a>(&'a self, text: &'a str, said: bool) -> Option<(usize, &'a str, bool)> {
        let word = text.get(..text.find(|c: char| !c.is_alphanumeric()).unwrap_or(text.len()))?;
        let never = || NEVER.split(' ').any(|never| never.eq_ignore_ascii_case(word));
        let taken = || never() || !said && TAKEN.split(' ').any(|taken| taken.eq_ignore_ascii_case(word));
        let own = self.own.iter().filter_map(|(name, label)| {
            let length = begins(text, name).filter(|_| !taken())?;
            Some((length, label.as_str(), true))
        });
        own.max_by_key(|(length, ..)| *length).or_else(|| self.in_words(text)).or_else(|| {
            let goes_on = text
                .get(word.len()..)
                .is_some_and(|rest| rest.starts_with('-') && rest.chars().nth(1).is_some_and(char::is_alphanumeric));
            (is_trade(word) && !goes_on).then_some((word.len(), word, false))
        })
    }

    /// The colour of "main colour", whose label is known only where the pattern has it.
    fn in_words<'a>(&'a self, text: &str) -> Option<(usize, &'a str, bool)> {
        let (length, label) = IN_WORDS.iter().find_map(|(words, label)| Some((begins(text, words)?, *label)))?;
        let known = self.own.iter().any(|(_, own)| own == label);
        Some((length, if known { label } else { "" }, true))
    }
}

/// The main and the contrasting colour in words, each with its label (common practice).
const IN_WORDS: [(&str, &str); 6] = [
    ("main colour", "MC"),
    ("main color", "MC"),
    ("contrast colour", "CC"),
    ("contrast color", "CC"),
    ("contrasting colour", "CC"),
    ("contrasting color", "CC"),
];

/// Whether a word stands before a colour's name.
pub(super) fn is_before(word: &str) -> bool {
    BEFORE.iter().any(|before| before.eq_ignore_ascii_case(word))
}

/// Whether what a word stands for may go by a letter, which is then no colour: `to marker A`, `in pattern B`.
pub(super) fn is_lettered(word: &str) -> bool {
    const LETTERED: &str = " m marker markers chart pattern patt pat needle needles holder holders hold motif panel cable section part \
        piece point size version option method repeat rep row rows rnd rnds round rounds side edge front back sleeve ";
    LETTERED.split(' ').any(|lettered| lettered.eq_ignore_ascii_case(word))
}

/// Whether a word is the trade's for a colour (common practice): the main and the contrasting ones, or a capital letter.
pub fn is_trade(word: &str) -> bool {
    let numbered = word.strip_prefix("CC").is_some_and(|number| number.bytes().all(|byte| byte.is_ascii_digit()));
    word == "MC" || numbered || is_letter(word)
}

/// Whether a word is a single letter that stands for a colour.
pub fn is_letter(word: &str) -> bool {
    matches!(word.as_bytes(), [b'A'..=b'H'])
}

/// How much of a text is a name, capitals and the width of spaces aside.
fn begins(text: &str, name: &str) -> Option<usize> {
    if is_letter(name) {
        return (text.starts_with(name) && !goes_on(text.get(name.len()..))).then_some(name.len());
    }
    // Most begin with another letter, which is quickly seen.
    if text.chars().next()?.to_lowercase().next() != name.chars().next() {
        return None;
    }
    let mut length = 0;
    for (at, word) in name.split(' ').enumerate() {
        let rest = text.get(length..)?;
        let spaces = rest.len() - rest.trim_start().len();
        if (at > 0) != (spaces > 0) {
            return None;
        }
        let mut wanted = word.chars();
        let mut found = 0;
        for c in rest.get(spaces..)?.chars() {
            let small: String = c.to_lowercase().collect();
            let before = wanted.clone();
            if !small.chars().all(|small| wanted.next() == Some(small)) {
                wanted = before;
                break;
            }
            found += c.len_utf8();
        }
        if wanted.next().is_some() {
            return None;
        }
        length += spaces + found;
    }
    (!goes_on(text.get(length..))).then_some(length)
}

fn goes_on(rest: Option<&str>) -> bool {
    rest.is_some_and(|rest| rest.starts_with(|c: char| c.is_alphanumeric() || c == '&'))
}
