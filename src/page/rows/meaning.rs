//! What an abbreviation means, and how it is said aloud.

use crate::page::words::number;
use crate::standards::abbreviations::{self, Kind};
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// A short form of the trade and its meaning.
pub type Meaning = (String, String);

/// Forms that mean something else in a row than in the trade's list, or that it lacks, with their meaning (common practice).
const IN_ROWS: [(&str, &str, &str); 8] = [
    ("m", "m", "marker"),
    ("rm", "rm", "remove marker"),
    ("bor", "BOR", "beginning of the round"),
    ("st", "st, sts", "stitch, stitches"),
    ("sts", "st, sts", "stitch, stitches"),
    ("inc'd", "inc’d", "increased"),
    ("dec'd", "dec’d", "decreased"),
    ("rnds", "rnd", "round"),
];

/// Units, which need no explaining, and short forms that are words of plain English too.
const PLAIN: [&str; 9] = ["cm", "mm", "g", "oz", "yd", "in", "bet", "pop", "alt"];

/// The trade's short forms in small letters, each with how it is written and what it means.
static STANDARD: LazyLock<BTreeMap<String, Meaning>> = LazyLock::new(|| {
    let mut all = BTreeMap::new();
    for row in abbreviations::all().iter().filter(|row| row.kind != Kind::RepeatMark) {
        for form in row.forms.iter().filter(|form| is_short(form)) {
            all.entry(form.to_lowercase()).or_insert_with(|| (form.clone(), row.meaning.clone()));
        }
    }
    for word in PLAIN {
        all.remove(word);
    }
    for (word, short, meaning) in IN_ROWS {
        all.insert(word.to_owned(), (short.to_owned(), meaning.to_owned()));
    }
    all
});

/// Whether a form is a short one: a word, or two of which the second is `st` or `tbl`.
fn is_short(form: &str) -> bool {
    match form.rsplit_once(' ') {
        None => !form.contains('/'),
        // The plain `k1 tbl` is a `k1` and a `tbl`.
        Some((_, last)) => last == "st" || (last == "tbl" && form.contains("tog")),
    }
}

/// Returns what a word, or two, of a row is short for: its form without the capital of a sentence, and its meaning.
///
/// A family goes by its number: `k5tog`, `C6F`, `M3`.
pub fn of_word(word: &str) -> Option<Meaning> {
    let lower = word.to_lowercase().replace('’', "'");
    match STANDARD.get(&lower) {
        // As she writes it, but for the capital that begins a sentence.
        Some((short, meaning)) if short.to_lowercase() == lower && !is_capitalised(word) => {
            Some((word.to_owned(), meaning.clone()))
        }
        Some(meaning) => Some(meaning.clone()),
        None => family(&lower).map(|meaning| (if is_capitalised(word) { lower } else { word.to_owned() }, meaning)),
    }
}

/// Whether only the first of a word's letters is a capital.
fn is_capitalised(word: &str) -> bool {
    let mut letters = word.chars().filter(|c| c.is_alphabetic());
    letters.next().is_some_and(char::is_uppercase) && !letters.any(char::is_uppercase)
}

/// Returns how long the letters are that a word begins with, where a number follows and the letters are short for something
/// that is done so many times: `k` in `k12`.
pub fn counted(word: &str) -> Option<(usize, Meaning)> {
    let letters = word.find(|c: char| c.is_ascii_digit()).filter(|letters| *letters > 0)?;
    let (before, digits) = word.split_at_checked(letters)?;
    let lower = before.to_lowercase();
    let known = matches!(lower.as_str(), "k" | "p" | "sl" | "bo" | "co" | "brk" | "brp");
    let meaning = STANDARD.get(&lower).filter(|_| known && digits.bytes().all(|byte| byte.is_ascii_digit()))?;
    Some((letters, meaning.clone()))
}

fn family(word: &str) -> Option<String> {
    let start = word.find(|c: char| c.is_ascii_digit())?;
    let (letters, rest) = word.split_at_checked(start)?;
    let (digits, end) = rest.split_at_checked(rest.bytes().take_while(u8::is_ascii_digit).count())?;
    let count: usize = digits.parse().ok().filter(|count| (2..=99).contains(count))?;
    let many = number(count);
    match (letters, end) {
        ("k", "tog") => Some(format!("knit {many} together")),
        ("p", "tog") => Some(format!("purl {many} together")),
        ("brk", "tog") => Some(format!("work {many} brioche stitches together into one")),
        ("c" | "t", "f" | "l" | "b" | "r") => Some(cable(count, letters == "t", matches!(end, "f" | "l"))),
        ("m", "") => Some(format!("make {many}")),
        ("yo", "") => Some(format!("yarn over {many} times")),
        _ => None,
    }
}

/// A cable named by all its stitches: half of them are held. Houses differ on the others, so of those only what is sure is said.
fn cable(stitches: usize, purled: bool, in_front: bool) -> String {
    let place = if in_front { "in front" } else { "behind" };
    if purled {
        return format!(
            "cross {} stitches with those on the cable needle {place}, some of them purled",
            number(stitches)
        );
    }
    if stitches % 2 == 1 {
        return format!("cross {} stitches with those on the cable needle {place}", number(stitches));
    }
    let half = number(stitches / 2);
    format!("hold {half} {place}, knit {half}, then knit {half} from the cable needle")
}

/// Returns what the cable is that a text begins with, `2/2 LC`, and how long its name is.
pub fn crossed(text: &str) -> Option<(usize, Meaning)> {
    let (over, rest) = leading(text)?;
    let (under, rest) = leading(rest.strip_prefix('/')?)?;
    let name = rest.strip_prefix(' ')?;
    let name = name.get(..name.find(|c: char| !c.is_alphanumeric()).unwrap_or(name.len()))?;
    let (over, under) = (number(over), number(under));
    // As in the table of chart symbols: those that cross in front are knitted.
    let meaning = match name {
        "RC" => format!("hold {under} behind, knit {over}, then knit {under} from the cable needle"),
        "LC" => format!("hold {over} in front, knit {under}, then knit {over} from the cable needle"),
        "RPC" => format!("hold {under} behind, knit {over}, then purl {under} from the cable needle"),
        "LPC" => format!("hold {over} in front, purl {under}, then knit {over} from the cable needle"),
        _ => return None,
    };
    let length = text.len() - rest.len() + 1 + name.len();
    Some((length, (text.get(..length)?.to_owned(), meaning)))
}

fn leading(text: &str) -> Option<(usize, &str)> {
    let (digits, rest) = text.split_at_checked(text.bytes().take_while(u8::is_ascii_digit).count())?;
    Some((digits.parse().ok()?, rest))
}

/// Returns how a short form is said, for those who hear it: `K 2 tog`, `S S K`, `2 over 2 L C`.
///
/// Letters and numbers stand apart, or a voice would try to read them as a word.
pub fn said(short: &str) -> String {
    let words: Vec<String> = short.split_inclusive(&[' ', ',', '/', '-', '&'][..]).map(said_word).collect();
    words.join(" ").split_whitespace().collect::<Vec<_>>().join(" ").replace(" ,", ",")
}

fn said_word(word: &str) -> String {
    let (word, end) = match word.chars().last() {
        Some(c) if !c.is_alphanumeric() => word.split_at_checked(word.len() - c.len_utf8()).unwrap_or((word, "")),
        _ => (word, ""),
    };
    let end = match end {
        "/" => "over",
        "&" => "and",
        "," => ",",
        _ => "",
    };
    let mut parts: Vec<String> = Vec::new();
    let mut rest = word;
    while let Some(first) = rest.chars().next() {
        let same = |c: char| c.is_ascii_digit() == first.is_ascii_digit();
        let (piece, after) = rest.split_at_checked(rest.find(|c| !same(c)).unwrap_or(rest.len())).unwrap_or((rest, ""));
        parts.push(if first.is_ascii_digit() { piece.to_owned() } else { said_letters(piece) });
        rest = after;
    }
    format!("{} {end}", parts.join(" "))
}

/// Letters one by one, but for those that are said as a word.
fn said_letters(letters: &str) -> String {
    const WORDS: [&str; 18] = [
        "tog", "inc", "dec", "rep", "rem", "patt", "pat", "beg", "cont", "foll", "prev", "approx", "mult", "opp",
        "wise", "inc'd", "dec'd", "col",
    ];
    let lower = letters.to_lowercase().replace('’', "'");
    if WORDS.contains(&lower.as_str()) {
        return lower;
    }
    if let Some(first) = lower.strip_suffix("wise") {
        return format!("{} wise", spelt(first));
    }
    if let Some(first) = lower.strip_suffix("tog").filter(|first| !first.is_empty()) {
        return format!("{} tog", spelt(first));
    }
    // Her own may be whole words.
    let is_word = lower.chars().count() > 6
        || (lower == letters && lower.chars().count() > 4 && lower.contains(['a', 'e', 'i', 'u']));
    if is_word { letters.to_owned() } else { spelt(&lower) }
}

fn spelt(letters: &str) -> String {
    let each: Vec<String> =
        letters.chars().filter(|c| c.is_alphanumeric()).map(|c| c.to_uppercase().collect()).collect();
    each.join(" ")
}
