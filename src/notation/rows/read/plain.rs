//! Rows that change no count: `Knit 4 rows`, `Work even until it measures 10 cm`.

use super::super::lexicon::Lexicon;
use super::super::statement::Doing;
use super::cursor::{Bad, Cursor};
use super::descriptions::without_descriptions;
use super::effect::alters;

const PLAIN: [&str; 8] = ["knit", "purl", "work", "k", "p", "continue", "cont", "rib"];

/// Phrases of which a word alone could speak of stitches.
const PHRASES: [&str; 16] = [
    "cast-on edge",
    "cast on edge",
    "cast-on",
    "bind-off edge",
    "bound-off edge",
    "cast-off edge",
    "from cast on",
    "without shaping",
    "without further shaping",
    "less than",
    "short of",
    "as they appear",
    "as they face you",
    "as you come to them",
    "slipping markers",
    "slipping all markers",
];

/// The words that sentences of rows may hold that change no count; with any other nobody knows.
const QUIET: &str = " row rows rnd rnds round rounds ridge ridges in on of the a an all each every next these both and or then \
    with without for from to until till about approx approximately total at as more another further \
    st sts stitch stitches stockinette stocking garter rib ribs ribbing seed moss double reverse rev pattern patt pat patterns \
    main colour color yarn needle needles smaller larger \
    even straight plain knit purl knitting purling k p work working worked continue continuing cont \
    measure measures measuring length long desired deep tall is are reaches it piece fabric \
    cm mm inch inches edge beginning beg start cuff hem body sleeve leg foot heel toe back front neck yoke hat brim cord strap \
    armhole armholes shoulder shoulders hand palm crown gusset wrist waist hip elbow \
    swatch sock band scarf shawl mitten thumb top bottom side underarm \
    end ending ended begin starting after rs ws right wrong across around throughout way same \
    est established set before facing given described above below earlier \
    through back loop loops tbl marker markers m slipping ";

/// Words that say the next rows are as those before.
const AS_BEFORE: [&str; 3] = ["established", "set", "est"];

/// Reads rows that change no count: "Knit 4 rows", "Work even until it measures 10 cm".
pub(super) fn plain(cursor: &mut Cursor<'_>) -> Result<Option<Doing>, Bad> {
    let goes_on = cursor.sees("continue") || cursor.sees("cont");
    let ribs = cursor.sees("rib");
    if !cursor.any(&PLAIN) {
        return Ok(None);
    }
    let body = cursor.at;
    cursor.skip_sentence();
    if let Some(end) = worked_again(cursor.text.get(body..cursor.at).unwrap_or_default()) {
        cursor.at = body + end;
    }
    let end = cursor.at;
    let words = cursor.lexicon.without_colours(cursor.text.get(body..end).unwrap_or_default()).to_lowercase();
    let has = |wanted: &[&str]| tokens(&words).any(|word| wanted.contains(&word));
    // A list of stitches is a row.
    let rows = has(&["row", "rows", "rnd", "rnds", "round", "rounds"]);
    let measured =
        has(&["cm", "inch", "inches", "in"]) && tokens(&words).any(|word| is_length(word) || is_number(word));
    let long = (measured || has(&["until", "measures"])) && !has(&["rem", "remain", "remains"]);
    let even = has(&["even", "straight"]);
    if words.contains("to end") || words.contains("to last") || !(rows || long || even) {
        return Ok(None);
    }
    if !is_quiet(&words, cursor.lexicon) {
        return Ok(Some(Doing::Unsaid));
    }
    // "Continue until …" may be shaped as before; "continue straight" and "rib as set" are not.
    let straight = even
        || ribs
        || words.contains("without")
        || has(&["st", "stockinette", "garter", "rib", "ribbing", "seed", "moss"]);
    let as_before = !straight && (goes_on || has(&AS_BEFORE) || words.contains("as before"));
    Ok(Some(if as_before { Doing::Established } else { Doing::Plain { rows: how_many(&words) } }))
}

/// Where a sentence goes on with a row that is worked again: "Knit 7 rnds, then work dec rnd".
fn worked_again(words: &str) -> Option<usize> {
    let verb = |word: &str| matches!(word, "work" | "rep" | "repeat");
    words.match_indices(", ").map(|(at, _)| at).find(|at| {
        let mut next = tokens(words.get(*at..).unwrap_or_default()).skip_while(|word| matches!(*word, "then" | "and"));
        next.next().is_some_and(verb)
    })
}

/// The number before the word "rows", where no other stands in the sentence. A count behind the sentence is none of it.
fn how_many(words: &str) -> Option<u32> {
    const ROWS: [&str; 6] = ["row", "rows", "rnd", "rnds", "round", "rounds"];
    let words = words.split(['[', '.']).next()?;
    let more = ["more", "further", "additional"];
    let words = words.split(|c: char| c.is_whitespace() || c == ',');
    let mut words = words.filter(|word| !word.is_empty() && !more.contains(word)).peekable();
    let mut found = None;
    while let Some(word) = words.next() {
        if matches!(word, "every" | "until" | "for" | "or") {
            return None;
        }
        let before = words.peek().is_some_and(|next| ROWS.contains(next));
        match word.parse() {
            Ok(number) if before && found.is_none() => found = Some(number),
            _ if word.contains(|c: char| c.is_ascii_digit()) => return None,
            _ => {}
        }
    }
    found
}

/// The words and numbers of a text.
pub(super) fn tokens(words: &str) -> impl Iterator<Item = &str> {
    words.split(|c: char| !c.is_alphanumeric() && c != '\'').filter(|word| !word.is_empty())
}

/// Whether every word of a sentence, from behind its verb, is one that changes no count and names no row.
pub(super) fn is_quiet(words: &str, lexicon: &Lexicon) -> bool {
    let mut words = lexicon.without_colours(words).to_lowercase();
    for phrase in PHRASES {
        words = words.replace(phrase, " ");
    }
    words = without_descriptions(&without_brackets(&words), lexicon);
    // "Work row 3" is whatever row 3 is.
    let names_row =
        words.match_indices("row").chain(words.match_indices("rnd")).chain(words.match_indices("round")).any(
            |(at, word)| {
                let rest = words.get(at + word.len()..).unwrap_or_default();
                let rest = rest.strip_prefix('s').unwrap_or(rest).trim_start();
                rest.starts_with(|c: char| c.is_ascii_digit())
            },
        );
    let ribbed = tokens(&words).any(|word| matches!(word, "rib" | "ribbing" | "moss" | "seed"));
    let all: Vec<&str> = tokens(&words).collect();
    let quiet = all.iter().enumerate().all(|(at, word)| {
        let before = at.checked_sub(1).and_then(|before| all.get(before));
        let counted = before.is_some_and(|before| is_number(before));
        let stitches = match *word {
            // "4 rows St st", not "1 st".
            "st" => all.get(at + 1) != Some(&"st"),
            "sts" | "stitch" | "stitches" => true,
            _ => false,
        };
        if counted && stitches {
            return false;
        }
        is_number(word) || is_length(word) || (ribbed && is_ribs(word)) || QUIET.split(' ').any(|known| known == *word)
    });
    quiet && !names_row
}

/// Words without brackets that hold no figure and change no stitch: "(turning ridge)".
fn without_brackets(words: &str) -> String {
    let mut kept = words.to_owned();
    while let Some((start, end)) =
        kept.find('(').and_then(|start| Some((start, start + kept.get(start..)?.find(')')? + 1)))
    {
        let inside = kept.get(start..end).unwrap_or_default();
        if inside.contains(|c: char| c.is_ascii_digit()) || alters(inside) {
            break;
        }
        kept.replace_range(start..end, " ");
    }
    kept
}

fn is_number(word: &str) -> bool {
    const NAMES: &str = " one two three four five six seven eight nine ten eleven twelve half ";
    word.chars().all(char::is_numeric) || NAMES.split(' ').any(|name| name == word)
}

/// Whether a word is a number with its unit, or the `2x2` of a rib.
pub(super) fn is_length(word: &str) -> bool {
    let rest = word.trim_start_matches(char::is_numeric);
    let times = rest.strip_prefix('x').is_some_and(|rest| !rest.is_empty() && rest.chars().all(char::is_numeric));
    rest.len() < word.len() && (times || matches!(rest, "cm" | "mm" | "in"))
}

/// Whether a word is a part of a rib's name: the `k2` of "k2, p2 rib".
fn is_ribs(word: &str) -> bool {
    let rest = word.strip_prefix(['k', 'p']).unwrap_or_default();
    let digits = rest.trim_end_matches("tbl");
    !digits.is_empty() && digits.chars().all(|c| c.is_ascii_digit())
}
